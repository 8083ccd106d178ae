//! Small helpers to lay values out as wire values and to take them apart again, checked.

use super::super::cbor::Item;
use super::super::{HandoverError, dictionary};
use crate::record::{Label, WallTime};

/// The most characters of a text or word that is no label and no note.
const TEXT_CHARS_MOST: usize = 8_000;

/// A list.
pub(super) fn list(items: impl IntoIterator<Item = Item>) -> Item {
    Item::List(items.into_iter().collect())
}

/// A map by small numbers, without the fields that are not there.
pub(super) fn map<const N: usize>(fields: [(i64, Option<Item>); N]) -> Item {
    Item::Map(
        fields
            .into_iter()
            .filter_map(|(key, value)| Some((Item::Int(key), value?)))
            .collect(),
    )
}

/// A stored word: below zero by its number in the frozen list, otherwise as text.
pub(super) fn word(word: &str) -> Item {
    dictionary::number(word).map_or_else(
        || Item::Text(word.to_owned()),
        |number| Item::Int(-1 - i64::from(number)),
    )
}

/// A column of whole numbers.
pub(super) fn ints(values: impl IntoIterator<Item = i64>) -> Item {
    list(values.into_iter().map(Item::Int))
}

/// A list of stored words.
pub(super) fn words<'a>(all: impl IntoIterator<Item = &'a str>) -> Item {
    list(all.into_iter().map(word))
}

/// An instant: milliseconds since 1970 UTC and minutes east.
pub(super) fn wall(time: WallTime) -> Item {
    list([
        Item::Int(time.utc_ms()),
        Item::Int(time.offset_min().into()),
    ])
}

/// Small letters and digits, two a byte.
pub(super) fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The bytes of a text that [`hex`] could have written.
pub(super) fn bytes_of_hex(text: &str) -> Option<Vec<u8>> {
    let bytes = text
        .as_bytes()
        .chunks(2)
        .map(|pair| u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok())
        .collect::<Option<Vec<_>>>()?;
    (hex(&bytes) == text && !bytes.is_empty()).then_some(bytes)
}

impl Item {
    pub(super) fn int(self) -> Result<i64, HandoverError> {
        match self {
            Self::Int(value) => Ok(value),
            _ => Err(HandoverError::NotReadable),
        }
    }

    /// A column of whole numbers.
    pub(super) fn ints(self) -> Result<Vec<i64>, HandoverError> {
        self.each(Item::int)
    }

    /// A column of a table of so many rows.
    pub(super) fn column(self, rows: usize) -> Result<Vec<i64>, HandoverError> {
        let column = self.ints()?;
        if column.len() == rows {
            Ok(column)
        } else {
            Err(HandoverError::NotReadable)
        }
    }

    pub(super) fn small<T: TryFrom<i64>>(self) -> Result<T, HandoverError> {
        T::try_from(self.int()?).map_err(|_| HandoverError::NotReadable)
    }

    pub(super) fn bool(self) -> Result<bool, HandoverError> {
        match self {
            Self::Bool(value) => Ok(value),
            _ => Err(HandoverError::NotReadable),
        }
    }

    pub(super) fn bytes(self) -> Result<Vec<u8>, HandoverError> {
        match self {
            Self::Bytes(bytes) => Ok(bytes),
            _ => Err(HandoverError::NotReadable),
        }
    }

    pub(super) fn fixed_bytes<const N: usize>(self) -> Result<[u8; N], HandoverError> {
        self.bytes()?
            .try_into()
            .map_err(|_| HandoverError::NotReadable)
    }

    pub(super) fn uuid(self) -> Result<uuid::Uuid, HandoverError> {
        self.fixed_bytes().map(uuid::Uuid::from_bytes)
    }

    pub(super) fn text(self) -> Result<String, HandoverError> {
        match self {
            Self::Text(text) if text.chars().count() <= TEXT_CHARS_MOST => Ok(text),
            Self::Text(_) => Err(HandoverError::TooLarge),
            _ => Err(HandoverError::NotReadable),
        }
    }

    pub(super) fn label(self) -> Result<Label, HandoverError> {
        Ok(Label::new(&self.text()?)?)
    }

    pub(super) fn word(self) -> Result<String, HandoverError> {
        match self {
            Self::Int(value) => u16::try_from(-1 - value)
                .ok()
                .and_then(dictionary::word)
                .map(str::to_owned)
                .ok_or(HandoverError::NotReadable),
            other => other.text(),
        }
    }

    /// A value with a stored word of this version.
    pub(super) fn known<T: crate::record::StoredWord>(
        self,
        what: &'static str,
    ) -> Result<T, HandoverError> {
        T::of_word(&self.word()?).ok_or(HandoverError::NotPossible(
            crate::record::RecordError::NotKnown { what },
        ))
    }

    /// A stored word of any version.
    pub(super) fn coded<T: crate::record::StoredWord>(
        self,
    ) -> Result<crate::record::Coded<T>, HandoverError> {
        Ok(crate::record::Coded::of_word(&self.word()?))
    }

    pub(super) fn wall(self) -> Result<WallTime, HandoverError> {
        let [utc_ms, offset_min] = self.array()?;
        Ok(WallTime::new(utc_ms.int()?, offset_min.small()?)?)
    }

    pub(super) fn list(self) -> Result<Vec<Item>, HandoverError> {
        match self {
            Self::List(items) => Ok(items),
            _ => Err(HandoverError::NotReadable),
        }
    }

    pub(super) fn array<const N: usize>(self) -> Result<[Item; N], HandoverError> {
        self.list()?
            .try_into()
            .map_err(|_| HandoverError::NotReadable)
    }

    pub(super) fn each<T>(
        self,
        read: impl FnMut(Item) -> Result<T, HandoverError>,
    ) -> Result<Vec<T>, HandoverError> {
        self.list()?.into_iter().map(read).collect()
    }
}

/// The fields of a map, taken one by one; none may be left over.
pub(super) struct Fields(Vec<(Item, Item)>);

impl Fields {
    pub(super) fn of(item: Item) -> Result<Self, HandoverError> {
        match item {
            Item::Map(pairs) => Ok(Self(pairs)),
            _ => Err(HandoverError::NotReadable),
        }
    }

    pub(super) fn maybe(&mut self, key: i64) -> Option<Item> {
        let place = self.0.iter().position(|(it, _)| *it == Item::Int(key))?;
        Some(self.0.remove(place).1)
    }

    pub(super) fn take(&mut self, key: i64) -> Result<Item, HandoverError> {
        self.maybe(key).ok_or(HandoverError::NotReadable)
    }

    pub(super) fn end(self) -> Result<(), HandoverError> {
        if self.0.is_empty() {
            Ok(())
        } else {
            Err(HandoverError::NotReadable)
        }
    }
}
