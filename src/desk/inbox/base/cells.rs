//! Values into statements and out of rows, alike for both databases.

use uuid::Uuid;

use super::DeskError;
use crate::record::{Label, RecordError, WallTime};
use crate::store::StoreError;

/// A value as both databases keep it.
#[derive(Clone)]
pub(in crate::desk::inbox) enum Value {
    Null,
    Whole(i64),
    Text(String),
    Bytes(Vec<u8>),
}

impl std::fmt::Debug for Value {
    /// A value may be a person's.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Value")
    }
}

impl From<i64> for Value {
    fn from(it: i64) -> Self {
        Self::Whole(it)
    }
}

impl From<i16> for Value {
    fn from(it: i16) -> Self {
        Self::Whole(it.into())
    }
}

impl From<u32> for Value {
    fn from(it: u32) -> Self {
        Self::Whole(it.into())
    }
}

impl From<bool> for Value {
    fn from(it: bool) -> Self {
        Self::Whole(it.into())
    }
}

impl From<&str> for Value {
    fn from(it: &str) -> Self {
        Self::Text(it.to_owned())
    }
}

impl From<&[u8]> for Value {
    fn from(it: &[u8]) -> Self {
        Self::Bytes(it.to_vec())
    }
}

impl<const N: usize> From<&[u8; N]> for Value {
    fn from(it: &[u8; N]) -> Self {
        Self::Bytes(it.to_vec())
    }
}

impl<T: Into<Self>> From<Option<T>> for Value {
    fn from(it: Option<T>) -> Self {
        it.map_or(Self::Null, Into::into)
    }
}

/// The values of a row, read one after the other.
pub(in crate::desk::inbox) struct Cells(std::vec::IntoIter<Value>);

impl Cells {
    pub fn new(values: Vec<Value>) -> Self {
        Self(values.into_iter())
    }

    /// A whole number of a narrower kind.
    pub fn whole<T: TryFrom<i64>>(&mut self) -> Result<T, DeskError> {
        self.whole_or_none()?.ok_or_else(unreadable)
    }

    pub fn whole_or_none<T: TryFrom<i64>>(&mut self) -> Result<Option<T>, DeskError> {
        match self.0.next() {
            Some(Value::Null) => Ok(None),
            Some(Value::Whole(it)) => T::try_from(it).map(Some).map_err(|_| unreadable()),
            _ => Err(unreadable()),
        }
    }

    pub fn yes(&mut self) -> Result<bool, DeskError> {
        Ok(self.whole::<i64>()? != 0)
    }

    pub fn text(&mut self) -> Result<String, DeskError> {
        self.text_or_none()?.ok_or_else(unreadable)
    }

    pub fn text_or_none(&mut self) -> Result<Option<String>, DeskError> {
        match self.0.next() {
            Some(Value::Null) => Ok(None),
            Some(Value::Text(it)) => Ok(Some(it)),
            _ => Err(unreadable()),
        }
    }

    pub fn bytes(&mut self) -> Result<Vec<u8>, DeskError> {
        self.bytes_or_none()?.ok_or_else(unreadable)
    }

    fn bytes_or_none(&mut self) -> Result<Option<Vec<u8>>, DeskError> {
        match self.0.next() {
            Some(Value::Null) => Ok(None),
            Some(Value::Bytes(it)) => Ok(Some(it)),
            _ => Err(unreadable()),
        }
    }

    /// Bytes of a fixed number.
    pub fn array<const N: usize>(&mut self) -> Result<[u8; N], DeskError> {
        self.bytes()?.try_into().map_err(|_| unreadable())
    }

    pub fn uuid(&mut self) -> Result<Uuid, DeskError> {
        Ok(Uuid::from_bytes(self.array()?))
    }

    pub fn uuid_or_none(&mut self) -> Result<Option<Uuid>, DeskError> {
        let bytes = self.bytes_or_none()?;
        let uuid = bytes.map(|bytes| Uuid::from_slice(&bytes)).transpose();
        uuid.map_err(|_| unreadable())
    }

    pub fn label(&mut self) -> Result<Label, DeskError> {
        Ok(Label::new(&self.text()?)?)
    }

    pub fn wall(&mut self) -> Result<WallTime, DeskError> {
        Ok(WallTime::new(self.whole()?, self.whole()?)?)
    }

    pub fn wall_or_none(&mut self) -> Result<Option<WallTime>, DeskError> {
        match (self.whole_or_none()?, self.whole_or_none()?) {
            (Some(utc_ms), Some(offset_min)) => Ok(Some(WallTime::new(utc_ms, offset_min)?)),
            _ => Ok(None),
        }
    }
}

/// A column that is not what this version reads.
fn unreadable() -> DeskError {
    StoreError::Unreadable(RecordError::NotKnown { what: "column" }).into()
}
