//! What was worked out from visits' journals, kept beside them: a visit's gist holds as long as no
//! entry follows. What stands in it is its maker's business.

use rusqlite::params;

use super::row::{Columns, blob};
use super::{Store, StoreError, door};
use crate::record::{PairId, VisitId};

/// A visit as the Ward list needs it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitGist {
    /// The visit.
    pub visit: VisitId,
    /// Whom it is about.
    pub pair: PairId,
    /// The number of its last entry; 0 while it has none.
    pub seq: u32,
    /// What was kept of it, if that still holds.
    pub body: Option<String>,
}

impl Store {
    /// All visits that no amendment replaces, those of a pair together, its earliest first.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn gists(&self) -> Result<Vec<VisitGist>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("all.sql"))?;
        let mut rows = statement.query([])?;
        let mut gists = Vec::new();
        while let Some(row) = rows.next()? {
            let mut columns = Columns::new(row, 0);
            gists.push(VisitGist {
                visit: VisitId::of(columns.uuid()?),
                pair: PairId::of(columns.uuid()?),
                seq: columns.get()?,
                body: columns.get()?,
            });
        }
        Ok(gists)
    }

    /// Keeps what was worked out from visits' journals up to their entries `seq`, all or none.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn keep_gists(&self, gists: &[(VisitId, u32, String)]) -> Result<(), StoreError> {
        if gists.is_empty() {
            return Ok(());
        }
        let transaction = door::begin(&self.connection)?;
        for (visit, seq, body) in gists {
            transaction
                .prepare_cached(include_str!("keep.sql"))?
                .execute(params![blob(visit.uuid()), seq, body])?;
        }
        transaction.commit()?;
        Ok(())
    }
}
