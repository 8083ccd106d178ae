//! Visits in and out: the head as a row, the journal from its entries.

use rusqlite::{Connection, OptionalExtension, Row, params};

use super::row::{Columns, blob};
use super::{Store, StoreError, door, entry};
use crate::record::{Journal, Label, PairId, Visit, VisitId, WallTime, fold};

/// A visit without its journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct VisitHead {
    /// Its id.
    pub id: VisitId,
    /// Whom it is about.
    pub pair: PairId,
    /// When it began.
    pub began: WallTime,
    /// Who was at the bedside.
    pub specialist: Label,
    /// The visit that it amends.
    pub replaces: Option<VisitId>,
    /// Whether it is signed.
    pub signed: bool,
    /// Whether the desk's receipt was taken.
    pub receipt: bool,
    /// When to look again, if that was said.
    pub next_look: Option<WallTime>,
    /// When its last entry was made; its beginning while it has none.
    pub last_wall: WallTime,
}

impl Store {
    /// Keeps a visit that begins, with whatever its journal holds already (an amendment's does).
    ///
    /// # Errors
    /// `NotKept` without its pair or the visit that it amends; `Refused` if it was begun before.
    pub fn begin_visit(&self, visit: &Visit) -> Result<(), StoreError> {
        if self.pair(visit.pair)?.is_none() {
            return Err(StoreError::NotKept { what: "pair" });
        }
        if let Some(amended) = visit.replaces
            && head_columns(&self.connection, amended)?.is_none()
        {
            return Err(StoreError::NotKept { what: "visit" });
        }
        let transaction = door::begin(&self.connection)?;
        transaction
            .prepare_cached(include_str!("begin.sql"))?
            .execute(params![
                blob(visit.id.uuid()),
                blob(visit.pair.uuid()),
                visit.began.utc_ms(),
                visit.began.offset_min(),
                visit.specialist.as_str(),
                visit.replaces.map(|id| blob(id.uuid())),
            ])?;
        for entry in visit.journal.entries() {
            entry::insert(&transaction, visit.id, entry)?;
        }
        note(&transaction, visit.id, &visit.journal)?;
        transaction.commit()?;
        Ok(())
    }

    /// A visit with its journal, rebuilt through the checked constructors; unknown kinds are kept.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn visit(&self, id: VisitId) -> Result<Option<Visit>, StoreError> {
        let Some(visit) = head_columns(&self.connection, id)? else {
            return Ok(None);
        };
        Ok(Some(Visit {
            journal: entry::journal(&self.connection, id)?,
            ..visit
        }))
    }

    /// The heads of a pair's visits, earliest first, an amendment after what it amends.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn visits_of(&self, pair: PairId) -> Result<Vec<VisitHead>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("head.sql"))?;
        let mut rows = statement.query([blob(pair.uuid())])?;
        let mut heads = Vec::new();
        while let Some(row) = rows.next()? {
            heads.push(read_head(row, 0)?);
        }
        Ok(heads)
    }

    /// The visit begun last that is not signed: where to go on after a crash.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn open_visit(&self) -> Result<Option<VisitId>, StoreError> {
        self.connection
            .prepare_cached(include_str!("open.sql"))?
            .query_row([], |row| Ok(Columns::new(row, 0).uuid()))
            .optional()?
            .transpose()
            .map(|id| id.map(VisitId::of))
    }
}

/// A visit's own columns, with an empty journal.
fn head_columns(connection: &Connection, id: VisitId) -> Result<Option<Visit>, StoreError> {
    connection
        .prepare_cached(include_str!("get.sql"))?
        .query_row([blob(id.uuid())], |row| {
            let mut columns = Columns::new(row, 0);
            Ok((|| {
                Ok(Visit {
                    id: VisitId::of(columns.uuid()?),
                    pair: PairId::of(columns.uuid()?),
                    began: columns.wall()?,
                    specialist: columns.label()?,
                    replaces: columns.uuid_or_none()?.map(VisitId::of),
                    journal: Journal::new(),
                })
            })())
        })
        .optional()?
        .transpose()
}

/// Reads a head from the columns that begin at `first`.
pub(super) fn read_head(row: &Row<'_>, first: usize) -> Result<VisitHead, StoreError> {
    let mut columns = Columns::new(row, first);
    let (id, pair) = (columns.uuid()?, columns.uuid()?);
    let began = columns.wall()?;
    Ok(VisitHead {
        id: VisitId::of(id),
        pair: PairId::of(pair),
        began,
        specialist: columns.label()?,
        replaces: columns.uuid_or_none()?.map(VisitId::of),
        signed: columns.get()?,
        receipt: columns.get()?,
        next_look: columns.wall_or_none()?,
        last_wall: columns.wall_or_none()?.unwrap_or(began),
    })
}

/// Takes from the journal what the Ward list asks for. It can be made again from the journal.
pub(super) fn note(
    connection: &Connection,
    id: VisitId,
    journal: &Journal,
) -> Result<(), StoreError> {
    let folded = fold(journal);
    connection
        .prepare_cached(include_str!("note.sql"))?
        .execute(params![
            blob(id.uuid()),
            journal.is_signed(),
            folded.receipt.is_some(),
            folded.next_look.map(WallTime::utc_ms),
            folded.next_look.map(WallTime::offset_min),
        ])?;
    Ok(())
}
