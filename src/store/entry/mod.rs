//! Entries: appended one by one, never changed, and durable when the call returns.

use rusqlite::{Connection, params};

use super::row::{Columns, blob};
use super::{Store, StoreError, door, visit};
use crate::record::{
    Entry, Journal, RecordError, StoredEntry, VisitId, What, from_stored, to_stored,
};

impl Store {
    /// Adds an entry to a visit. When this returns, it is on the disk.
    ///
    /// # Errors
    /// `NotKept` without its visit; `Refused` if it does not follow the last entry, or would
    /// change a signed visit; then nothing was stored.
    pub fn append(&self, visit: VisitId, entry: &Entry) -> Result<(), StoreError> {
        if !changes_head(&entry.what) {
            // One statement is its own transaction: the quick way, for taps.
            return insert(&self.connection, visit, entry);
        }
        let transaction = door::begin(&self.connection)?;
        insert(&transaction, visit, entry)?;
        visit::note(&transaction, visit, &journal(&transaction, visit)?)?;
        transaction.commit()?;
        Ok(())
    }
}

/// Whether the visit's row has to follow.
fn changes_head(what: &What) -> bool {
    matches!(
        what,
        What::Signed { .. }
            | What::ReceiptTaken { .. }
            | What::NextLook { .. }
            | What::Struck { .. }
    )
}

/// Adds one row.
pub(super) fn insert(
    connection: &Connection,
    visit: VisitId,
    entry: &Entry,
) -> Result<(), StoreError> {
    let stored = to_stored(entry)?;
    let at_ms = i64::try_from(stored.at_ms).map_err(|_| RecordError::OutOfRange {
        what: "milliseconds since the visit began",
        given: i64::MAX,
        low: 0,
        high: i64::MAX,
    })?;
    let rows = connection
        .prepare_cached(include_str!("append.sql"))?
        .execute(params![
            blob(visit.uuid()),
            stored.seq,
            at_ms,
            stored.utc_ms,
            stored.offset_min,
            stored.kind,
            stored.body,
        ])?;
    if rows == 1 {
        Ok(())
    } else {
        Err(StoreError::NotKept { what: "visit" })
    }
}

/// A visit's journal through the checked constructors.
pub(super) fn journal(connection: &Connection, visit: VisitId) -> Result<Journal, StoreError> {
    let mut statement = connection.prepare_cached(include_str!("of_visit.sql"))?;
    let mut rows = statement.query([blob(visit.uuid())])?;
    let mut entries = Vec::new();
    while let Some(row) = rows.next()? {
        let mut columns = Columns::new(row, 0);
        let stored = StoredEntry {
            seq: columns.get()?,
            // Never negative: the table checks it.
            at_ms: columns.get::<i64>()?.unsigned_abs(),
            utc_ms: columns.get()?,
            offset_min: columns.get()?,
            kind: columns.get()?,
            body: columns.get()?,
        };
        entries.push(from_stored(&stored)?);
    }
    Ok(Journal::of(entries)?)
}
