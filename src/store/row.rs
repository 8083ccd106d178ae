//! From columns to the record's checked values and back, for the tablet's data and the desk's inbox; the
//! record itself knows no SQLite.

use rusqlite::Row;
use rusqlite::types::FromSql;
use uuid::Uuid;

use super::StoreError;
use crate::record::{Coded, Label, Language, RecordError, StoredWord, WallTime};

/// An id as its 16 bytes.
pub(crate) fn blob(id: Uuid) -> [u8; 16] {
    id.into_bytes()
}

/// Stored words as a JSON list.
pub(crate) fn words_json<T: StoredWord>(words: &[Coded<T>]) -> String {
    let words: Vec<&str> = words.iter().map(Coded::word).collect();
    serde_json::Value::from(words).to_string()
}

/// Columns read one after the other.
pub(crate) struct Columns<'a, 'row> {
    row: &'a Row<'row>,
    next: usize,
}

impl<'a, 'row> Columns<'a, 'row> {
    /// Begins at a column.
    pub(crate) const fn new(row: &'a Row<'row>, first: usize) -> Self {
        Self { row, next: first }
    }

    /// A column as it is.
    pub(crate) fn get<T: FromSql>(&mut self) -> Result<T, StoreError> {
        let value = self.row.get(self.next)?;
        self.next += 1;
        Ok(value)
    }

    pub(crate) fn uuid(&mut self) -> Result<Uuid, StoreError> {
        Ok(Uuid::from_bytes(self.get()?))
    }

    pub(crate) fn uuid_or_none(&mut self) -> Result<Option<Uuid>, StoreError> {
        Ok(self.get::<Option<[u8; 16]>>()?.map(Uuid::from_bytes))
    }

    pub(crate) fn label(&mut self) -> Result<Label, StoreError> {
        Ok(Label::new(&self.get::<String>()?)?)
    }

    pub(crate) fn label_or_none(&mut self) -> Result<Option<Label>, StoreError> {
        let text: Option<String> = self.get()?;
        Ok(text.as_deref().map(Label::new).transpose()?)
    }

    pub(crate) fn language_or_none(&mut self) -> Result<Option<Language>, StoreError> {
        let tag: Option<String> = self.get()?;
        Ok(tag.as_deref().map(Language::new).transpose()?)
    }

    pub(crate) fn wall(&mut self) -> Result<WallTime, StoreError> {
        Ok(WallTime::new(self.get()?, self.get()?)?)
    }

    pub(crate) fn wall_or_none(&mut self) -> Result<Option<WallTime>, StoreError> {
        let (utc_ms, offset_min): (Option<i64>, Option<i16>) = (self.get()?, self.get()?);
        match (utc_ms, offset_min) {
            (Some(utc_ms), Some(offset_min)) => Ok(Some(WallTime::new(utc_ms, offset_min)?)),
            _ => Ok(None),
        }
    }

    /// A number that a checked constructor takes.
    pub(crate) fn checked_or_none<T: TryFrom<i64, Error = RecordError>>(
        &mut self,
    ) -> Result<Option<T>, StoreError> {
        let number: Option<i64> = self.get()?;
        Ok(number.map(T::try_from).transpose()?)
    }

    /// A stored word that must be known.
    pub(crate) fn word<T: StoredWord>(&mut self, what: &'static str) -> Result<T, StoreError> {
        let word: String = self.get()?;
        Ok(T::of_word(&word).ok_or(RecordError::NotKnown { what })?)
    }

    pub(crate) fn word_or_none<T: StoredWord>(
        &mut self,
        what: &'static str,
    ) -> Result<Option<T>, StoreError> {
        let word: Option<String> = self.get()?;
        let known = |word: String| T::of_word(&word).ok_or(RecordError::NotKnown { what });
        Ok(word.map(known).transpose()?)
    }

    /// A JSON list of stored words; unknown ones are kept.
    pub(crate) fn words<T: StoredWord>(
        &mut self,
        what: &'static str,
    ) -> Result<Vec<Coded<T>>, StoreError> {
        let list: String = self.get()?;
        let words: Vec<String> =
            serde_json::from_str(&list).map_err(|_| RecordError::NotKnown { what })?;
        Ok(words.iter().map(|word| Coded::of_word(word)).collect())
    }
}
