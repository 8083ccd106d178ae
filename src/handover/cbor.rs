//! Wire values to deterministic CBOR (RFC 8949, section 4.2.1) and back.
//!
//! Whole numbers, bytes, text, lists, maps, true, false and null; nothing else is written or
//! taken. Knows nothing of what the values mean.

use std::convert::Infallible;

use minicbor::data::Type;
use minicbor::{Decoder, Encoder};

use super::HandoverError;
use super::limit::{DEPTH_MOST, ITEMS_MOST};

/// One wire value.
#[derive(Clone, PartialEq, Eq)]
pub enum Item {
    /// Nothing.
    Null,
    /// Yes or no.
    Bool(bool),
    /// A whole number.
    Int(i64),
    /// Bytes.
    Bytes(Vec<u8>),
    /// Text.
    Text(String),
    /// A list.
    List(Vec<Item>),
    /// A map, in the order of its encoded keys.
    Map(Vec<(Item, Item)>),
}

/// The kind alone: a value may hold a person's words.
impl std::fmt::Debug for Item {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Null => f.write_str("Null"),
            Self::Bool(_) => f.write_str("Bool(…)"),
            Self::Int(_) => f.write_str("Int(…)"),
            Self::Bytes(bytes) => write!(f, "Bytes({})", bytes.len()),
            Self::Text(text) => write!(f, "Text({})", text.len()),
            Self::List(items) => write!(f, "List({})", items.len()),
            Self::Map(pairs) => write!(f, "Map({})", pairs.len()),
        }
    }
}

/// Writes a value. The same value always gives the same bytes.
///
/// # Errors
/// Never for values in memory; an error of the writer is handed on.
pub fn to_bytes(item: &Item) -> Result<Vec<u8>, HandoverError> {
    let mut encoder = Encoder::new(Vec::new());
    put(&mut encoder, item).map_err(|_| HandoverError::NotReadable)?;
    Ok(encoder.into_writer())
}

fn put(
    encoder: &mut Encoder<Vec<u8>>,
    item: &Item,
) -> Result<(), minicbor::encode::Error<Infallible>> {
    match item {
        Item::Null => encoder.null()?.ok(),
        Item::Bool(value) => encoder.bool(*value)?.ok(),
        Item::Int(value) => encoder.i64(*value)?.ok(),
        Item::Bytes(bytes) => encoder.bytes(bytes)?.ok(),
        Item::Text(text) => encoder.str(text)?.ok(),
        Item::List(items) => {
            encoder.array(items.len() as u64)?;
            items.iter().try_for_each(|item| put(encoder, item))
        }
        Item::Map(pairs) => {
            let mut encoded = Vec::with_capacity(pairs.len());
            for (key, value) in pairs {
                let mut inner = Encoder::new(Vec::new());
                put(&mut inner, key)?;
                encoded.push((inner.into_writer(), value));
            }
            encoded.sort_by(|a, b| a.0.cmp(&b.0));
            encoder.map(encoded.len() as u64)?;
            for (key, value) in encoded {
                encoder.writer_mut().extend_from_slice(&key);
                put(encoder, value)?;
            }
            Ok(())
        }
    }
}

/// Reads a value; anything but the one deterministic form of it is refused.
///
/// # Errors
/// [`HandoverError::NotReadable`] for anything that [`to_bytes`] would not have written so;
/// [`HandoverError::TooLarge`] for too many values.
pub fn from_bytes(bytes: &[u8]) -> Result<Item, HandoverError> {
    let mut reader = Reader {
        decoder: Decoder::new(bytes),
        left: ITEMS_MOST,
    };
    let item = reader.item(0)?;
    if to_bytes(&item)? == bytes {
        Ok(item)
    } else {
        Err(HandoverError::NotReadable)
    }
}

struct Reader<'b> {
    decoder: Decoder<'b>,
    left: usize,
}

impl Reader<'_> {
    fn item(&mut self, depth: usize) -> Result<Item, HandoverError> {
        if DEPTH_MOST < depth {
            return Err(HandoverError::NotReadable);
        }
        self.left = self.left.checked_sub(1).ok_or(HandoverError::TooLarge)?;
        self.value(depth)
            .ok_or(HandoverError::NotReadable)
            .flatten()
    }

    /// `None` where the bytes are no CBOR of ours, an inner error where an inner value is not.
    fn value(&mut self, depth: usize) -> Option<Result<Item, HandoverError>> {
        let decoder = &mut self.decoder;
        let item = match decoder.datatype().ok()? {
            Type::Null => {
                decoder.null().ok()?;
                Item::Null
            }
            Type::Bool => Item::Bool(decoder.bool().ok()?),
            Type::U8
            | Type::U16
            | Type::U32
            | Type::U64
            | Type::I8
            | Type::I16
            | Type::I32
            | Type::I64
            | Type::Int => Item::Int(decoder.i64().ok()?),
            Type::Bytes => Item::Bytes(decoder.bytes().ok()?.to_vec()),
            Type::String => Item::Text(decoder.str().ok()?.to_owned()),
            Type::Array => {
                let count = decoder.array().ok()??;
                return Some(
                    (0..count)
                        .map(|_| self.item(depth + 1))
                        .collect::<Result<_, _>>()
                        .map(Item::List),
                );
            }
            Type::Map => {
                let count = decoder.map().ok()??;
                return Some(
                    (0..count)
                        .map(|_| Ok((self.item(depth + 1)?, self.item(depth + 1)?)))
                        .collect::<Result<Vec<_>, _>>()
                        .map(Item::Map),
                );
            }
            _ => return None,
        };
        Some(Ok(item))
    }
}
