//! Two times: since the visit began (for counting) and on the wall (for the record).
//!
//! Neither is read here; both come in from a clock outside.

use chrono::{DateTime, FixedOffset, TimeZone, Utc};
use serde::{Deserialize, Serialize};

use super::RecordError;
use super::error::in_range;

/// Milliseconds since the visit began, from a clock that goes on while the device sleeps.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct At(u64);

impl At {
    /// The visit's beginning.
    pub const START: Self = Self(0);

    /// So many milliseconds after the beginning.
    pub const fn ms(ms: u64) -> Self {
        Self(ms)
    }

    /// Milliseconds since the beginning.
    pub const fn as_ms(self) -> u64 {
        self.0
    }

    /// Milliseconds from an earlier time to this one; zero if it is not earlier.
    pub const fn since_ms(self, earlier: Self) -> u64 {
        self.0.saturating_sub(earlier.0)
    }

    /// This time and so many milliseconds more.
    pub const fn plus_ms(self, ms: u64) -> Self {
        Self(self.0.saturating_add(ms))
    }

    /// This time and so many milliseconds less, not before the beginning.
    pub const fn minus_ms(self, ms: u64) -> Self {
        Self(self.0.saturating_sub(ms))
    }
}

/// An instant on the wall: UTC, and the offset that the wall clock showed, in minutes east.
/// The default is the beginning of 1970.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct WallTime {
    utc_ms: i64,
    offset_min: i16,
}

/// The years 1970 to 2199, in milliseconds.
const UTC_MS_MOST: i64 = 7_258_118_400_000 - 1;
/// Civil offsets lie between 14 hours west and 14 hours east.
const OFFSET_MIN_MOST: i64 = 14 * 60;

impl WallTime {
    /// An instant from milliseconds since 1970 UTC and minutes east of UTC.
    ///
    /// # Errors
    /// Outside the years 1970 to 2199, or more than 14 hours from UTC.
    pub fn new(utc_ms: i64, offset_min: i16) -> Result<Self, RecordError> {
        in_range("time", utc_ms, 0, UTC_MS_MOST)?;
        in_range(
            "offset",
            offset_min.into(),
            -OFFSET_MIN_MOST,
            OFFSET_MIN_MOST,
        )?;
        Ok(Self { utc_ms, offset_min })
    }

    /// An instant from a date and time with its offset; seconds of the offset are dropped.
    ///
    /// # Errors
    /// As [`WallTime::new`].
    pub fn of(time: DateTime<FixedOffset>) -> Result<Self, RecordError> {
        let minutes = time.offset().local_minus_utc() / 60;
        Self::new(
            time.timestamp_millis(),
            i16::try_from(minutes).unwrap_or(i16::MAX),
        )
    }

    /// Milliseconds since 1970 UTC.
    pub const fn utc_ms(self) -> i64 {
        self.utc_ms
    }

    /// Minutes east of UTC.
    pub const fn offset_min(self) -> i16 {
        self.offset_min
    }

    /// The date and time as the wall clock showed it.
    pub fn local(self) -> DateTime<FixedOffset> {
        let utc: DateTime<Utc> = DateTime::from_timestamp_millis(self.utc_ms).unwrap_or_default();
        FixedOffset::east_opt(i32::from(self.offset_min) * 60).map_or_else(
            || utc.fixed_offset(),
            |offset| offset.from_utc_datetime(&utc.naive_utc()),
        )
    }

    /// Milliseconds from an earlier instant to this one; negative if it is later.
    pub const fn since_ms(self, earlier: Self) -> i64 {
        self.utc_ms - earlier.utc_ms
    }

    /// The same wall clock so many milliseconds later (or earlier), held inside the allowed years.
    pub fn plus_ms(self, ms: i64) -> Self {
        Self {
            utc_ms: self.utc_ms.saturating_add(ms).clamp(0, UTC_MS_MOST),
            offset_min: self.offset_min,
        }
    }
}

impl Serialize for WallTime {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(
            &self
                .local()
                .to_rfc3339_opts(chrono::SecondsFormat::Millis, false),
        )
    }
}

impl<'de> Deserialize<'de> for WallTime {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let time = DateTime::parse_from_rfc3339(&text).map_err(|_| {
            serde::de::Error::custom(
                "a date and time with an offset was expected, as 2026-03-01T04:30:00+00:00",
            )
        })?;
        Self::of(time).map_err(serde::de::Error::custom)
    }
}
