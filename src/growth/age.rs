//! Age from the birth instant: whole hours, whole days, and the day of the WHO table.
//!
//! Counts elapsed time between two instants, so neither a clock change nor another time zone
//! moves it. Knows no calendar.

use crate::record::WallTime;

/// Milliseconds in an hour.
pub(crate) const HOUR_MS: i64 = 3_600_000;
/// Milliseconds in a day of 24 hours.
pub(crate) const DAY_MS: i64 = 24 * HOUR_MS;

/// How long ago the baby was born; never negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Age {
    ms: i64,
}

impl Age {
    /// The age at an instant; `None` before birth.
    pub const fn of(birth: WallTime, at: WallTime) -> Option<Self> {
        let ms = at.since_ms(birth);
        if ms < 0 { None } else { Some(Self { ms }) }
    }

    /// An age of so many whole hours.
    pub const fn of_hours(hours: u32) -> Self {
        Self {
            ms: hours as i64 * HOUR_MS,
        }
    }

    /// Whole hours since birth.
    pub const fn hours(self) -> i64 {
        self.ms / HOUR_MS
    }

    /// Whole days of 24 hours since birth: 0 through the first 24 hours.
    pub const fn days(self) -> i64 {
        self.ms / DAY_MS
    }

    /// Whether more than so many whole days have passed; exactly so many are not more.
    pub const fn is_beyond_days(self, days: i64) -> bool {
        days * DAY_MS < self.ms
    }

    /// The day of life, as the ward counts: 1 through the first 24 hours.
    pub const fn day_of_life(self) -> i64 {
        self.days() + 1
    }

    /// The day of life in which the middle of the last 24 hours lay: the one that a count over
    /// the last 24 hours is held against. 1 up to 36 hours of age.
    pub const fn day_of_last_count(self) -> i64 {
        let middle = self.ms - DAY_MS / 2;
        if middle < 0 { 1 } else { middle / DAY_MS + 1 }
    }

    /// The day in the WHO table: rounded to whole days, halves up (WHO 2006, as the WHO's own
    /// software rounds).
    pub const fn who_day(self) -> i64 {
        (self.ms + DAY_MS / 2) / DAY_MS
    }

    /// Milliseconds since birth.
    pub const fn as_ms(self) -> i64 {
        self.ms
    }
}
