//! The Ward list in one query: pairs by what is due. No judgement: what is due was said by the
//! specialist.

use super::{Store, StoreError, pair, visit};
use crate::record::{Pair, WallTime};

/// One line of the Ward list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WardRow {
    /// The pair.
    pub pair: Pair,
    /// Its last visit.
    pub last: Option<visit::VisitHead>,
    /// When to look again, as the last visit says.
    pub next_look: Option<WallTime>,
    /// How many signed visits wait for the desk's receipt.
    pub waiting: u32,
}

impl WardRow {
    /// Whether any visit waits for the desk's receipt.
    pub const fn is_waiting(&self) -> bool {
        0 < self.waiting
    }
}

impl Store {
    /// All pairs: the next look that is due first on top, then those with none, by bed.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn ward(&self) -> Result<Vec<WardRow>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("list.sql"))?;
        let mut rows = statement.query([])?;
        let mut ward = Vec::new();
        while let Some(row) = rows.next()? {
            let has_visit = row.get::<_, Option<[u8; 16]>>(pair::COLUMNS)?.is_some();
            let last = if has_visit {
                Some(visit::read_head(row, pair::COLUMNS)?)
            } else {
                None
            };
            ward.push(WardRow {
                pair: pair::read(row, 0)?,
                next_look: last.as_ref().and_then(|last| last.next_look),
                last,
                waiting: row.get("waiting")?,
            });
        }
        Ok(ward)
    }
}
