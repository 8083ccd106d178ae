//! Leaving: a pair goes from the tablet, whole, when the desk has all of it and the set number of
//! days has passed. What may go is guarded a second time by the file's own triggers.

use rusqlite::Connection;

use super::{Store, StoreError, door};
use crate::record::{RecordError, WallTime};

/// How long a pair is kept after the last that was told of it, in days of 24 hours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct KeepDays(u16);

/// Whether traces of what left may still be in the file: set together with the leaving, so that a
/// process that is killed before they are gone is followed by one that goes on.
const TRACES: &str = "traces";
const TRACES_LEFT: &str = "left";

const DAYS_LEAST: u16 = 1;
const DAYS_MOST: u16 = 365;
const DAY_MS: i64 = 24 * 60 * 60 * 1_000;

impl KeepDays {
    /// From 1 to 365 days.
    ///
    /// # Errors
    /// Outside that range.
    pub fn new(days: i64) -> Result<Self, RecordError> {
        u16::try_from(days)
            .ok()
            .filter(|days| (DAYS_LEAST..=DAYS_MOST).contains(days))
            .map(Self)
            .ok_or(RecordError::OutOfRange {
                what: "days to keep",
                given: days,
                low: DAYS_LEAST.into(),
                high: DAYS_MOST.into(),
            })
    }

    /// Days.
    pub const fn days(self) -> u16 {
        self.0
    }
}

impl Default for KeepDays {
    /// 30 days. A choice of this project.
    fn default() -> Self {
        Self(30)
    }
}

impl Store {
    /// Lets go of every pair of which nothing is waited for any more, and tells how many left.
    ///
    /// A pair leaves when it has a visit; each of its visits is signed and has a receipt, or is
    /// replaced, over any number of amendments, by one that has; and its latest entry (of a visit
    /// without entries its beginning) was made at least the days before `now`. Its entries, gists,
    /// visits and itself go together, all pairs in one transaction. Until then every visit of it
    /// stays, so that its weights stay whole while it is looked after. A pair without visits stays,
    /// and so do settings and key material.
    ///
    /// With a clock set back, pairs stay longer. With a clock far ahead, pairs leave sooner than was
    /// set, but none that the desk does not have.
    ///
    /// # Errors
    /// As [`StoreError`]. `Locked` or `Full` may also come when the pairs have left and only their
    /// traces in the file could not be overwritten; the next call tries that again.
    pub fn let_leave(&self, now: WallTime, keep: KeepDays) -> Result<u32, StoreError> {
        let told_last_utc_ms = now.utc_ms() - i64::from(keep.days()) * DAY_MS;
        let transaction = door::begin(&self.connection)?;
        let mut left = 0;
        for pair in which(&transaction, told_last_utc_ms)? {
            leave(&transaction, pair)?;
            left += 1;
        }
        if 0 < left {
            transaction
                .prepare_cached(include_str!("../setting/set.sql"))?
                .execute([TRACES, TRACES_LEFT])?;
        }
        transaction.commit()?;
        if self.setting(TRACES)?.as_deref() == Some(TRACES_LEFT) {
            // What left was overwritten where it stood, but a page that was once split may hold a
            // copy of what moved to its neighbour: the file is written anew without them.
            self.connection.execute_batch("VACUUM")?;
            // And the log holds pages as they were, until it is cut.
            cut_log(&self.connection)?;
            self.set_setting(TRACES, "none")?;
        }
        Ok(left)
    }
}

/// The pairs that leave.
fn which(connection: &Connection, told_last_utc_ms: i64) -> Result<Vec<[u8; 16]>, StoreError> {
    let mut statement = connection.prepare_cached(include_str!("which.sql"))?;
    let pairs = statement.query_map([told_last_utc_ms], |row| row.get(0))?;
    Ok(pairs.collect::<Result<_, _>>()?)
}

/// Marks a pair, then takes it out.
fn leave(connection: &Connection, pair: [u8; 16]) -> Result<(), StoreError> {
    let mut mark_visit = connection.prepare_cached(include_str!("mark_visit.sql"))?;
    while 0 < mark_visit.execute([pair])? {}
    for step in [
        include_str!("mark_pair.sql"),
        include_str!("entries.sql"),
        include_str!("gists.sql"),
        include_str!("visits.sql"),
        include_str!("pair.sql"),
    ] {
        connection.prepare_cached(step)?.execute([pair])?;
    }
    Ok(())
}

/// Cuts the log to nothing.
fn cut_log(connection: &Connection) -> Result<(), StoreError> {
    let is_held: bool =
        connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get(0))?;
    if is_held {
        return Err(StoreError::Locked);
    }
    Ok(())
}
