//! Pairs in and out.

use rusqlite::{OptionalExtension, Row, params};

use super::row::{Columns, blob, words_json};
use super::{Store, StoreError};
use crate::record::{Pair, PairId};

impl Store {
    /// Keeps a pair; one of the same id is brought up to date.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn save_pair(&self, pair: &Pair) -> Result<(), StoreError> {
        self.connection
            .prepare_cached(include_str!("save.sql"))?
            .execute(params![
                blob(pair.id.uuid()),
                pair.mother_id.map(blob),
                pair.bed.as_str(),
                pair.initials.as_str(),
                pair.mother_number.as_ref().map(|number| number.as_str()),
                pair.baby_number.as_ref().map(|number| number.as_str()),
                pair.birth.utc_ms(),
                pair.birth.offset_min(),
                pair.sex.as_word(),
                pair.gestation.map(i64::from),
                pair.birth_weight.map(i64::from),
                pair.way_of_birth.map(|way| way.as_word()),
                pair.babies,
                words_json(&pair.risk_notes),
                words_json(&pair.reasons),
                pair.language.as_ref().map(|language| language.tag()),
            ])?;
        Ok(())
    }

    /// All pairs by bed and initials.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn pairs(&self) -> Result<Vec<Pair>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("list.sql"))?;
        let mut rows = statement.query([])?;
        let mut pairs = Vec::new();
        while let Some(row) = rows.next()? {
            pairs.push(read(row, 0)?);
        }
        Ok(pairs)
    }

    /// One pair, if it is kept.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn pair(&self, id: PairId) -> Result<Option<Pair>, StoreError> {
        self.connection
            .prepare_cached(include_str!("get.sql"))?
            .query_row([blob(id.uuid())], |row| Ok(read(row, 0)))
            .optional()?
            .transpose()
    }
}

/// How many columns [`read`] takes.
pub(super) const COLUMNS: usize = 16;

/// Reads a pair from the columns that begin at `first`, through the checked constructors.
pub(super) fn read(row: &Row<'_>, first: usize) -> Result<Pair, StoreError> {
    let mut columns = Columns::new(row, first);
    Ok(Pair {
        id: PairId::of(columns.uuid()?),
        mother_id: columns.uuid_or_none()?,
        bed: columns.label()?,
        initials: columns.label()?,
        mother_number: columns.label_or_none()?,
        baby_number: columns.label_or_none()?,
        birth: columns.wall()?,
        sex: columns.word("sex")?,
        gestation: columns.checked_or_none()?,
        birth_weight: columns.checked_or_none()?,
        way_of_birth: columns.word_or_none("way of birth")?,
        babies: columns.get()?,
        risk_notes: columns.words("risk notes")?,
        reasons: columns.words("reasons")?,
        language: columns.language_or_none()?,
    })
}
