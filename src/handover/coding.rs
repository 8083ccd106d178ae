//! A record to the bytes that are signed, and back: one byte that names the coding, then the
//! content in it.
//!
//! Coding 1: CBOR in raw DEFLATE, the plain one, which any program can write. Coding 2: the
//! content squeezed by the range coder, a third of the size. Both hold the same content.

use super::cbor::Item;
use super::limit::INFLATED_BYTES_MOST;
use super::{Handed, HandoverError, cbor, deflate, squeeze, wire};

/// CBOR in raw DEFLATE.
pub const DEFLATED: u8 = 1;
/// Squeezed by the range coder.
pub const SQUEEZED: u8 = 2;

/// Lays a record out in the smaller coding. It is read back to the same record before it is given.
///
/// # Errors
/// [`HandoverError::TooLarge`] for more than a record may hold; [`HandoverError::NotReadable`]
/// where reading back gave something else.
pub fn pack(handed: &Handed) -> Result<Vec<u8>, HandoverError> {
    let content = cbor::to_bytes(&wire::to_wire(handed)?)?;
    if INFLATED_BYTES_MOST < content.len() {
        return Err(HandoverError::TooLarge);
    }
    // In the order of its written keys from here on.
    let item = cbor::from_bytes(&content)?;
    let deflated = packed_as(DEFLATED, &item)?;
    let packed = match packed_as(SQUEEZED, &item) {
        Ok(squeezed) if squeezed.len() <= deflated.len() => squeezed,
        Ok(_) | Err(HandoverError::TooLarge) => deflated,
        Err(error) => return Err(error),
    };
    if unpack(&packed)? == *handed {
        Ok(packed)
    } else {
        Err(HandoverError::NotReadable)
    }
}

/// A content in one coding, its byte in front.
///
/// # Errors
/// [`HandoverError::TooLarge`]; [`HandoverError::UnknownVersion`] for another coding.
pub fn packed_as(coding: u8, item: &Item) -> Result<Vec<u8>, HandoverError> {
    let bytes = match coding {
        DEFLATED => deflate::deflate(&cbor::to_bytes(item)?)?,
        SQUEEZED => squeeze::squeeze(item)?,
        found => return Err(HandoverError::UnknownVersion { found }),
    };
    Ok([&[coding], bytes.as_slice()].concat())
}

/// The content of signed bytes.
///
/// # Errors
/// [`HandoverError::UnknownVersion`] for another coding; [`HandoverError::CannotUnpack`];
/// [`HandoverError::TooLarge`]; [`HandoverError::NotReadable`] for what is no CBOR of ours.
pub fn content(packed: &[u8]) -> Result<Item, HandoverError> {
    match packed.split_first() {
        Some((&DEFLATED, bytes)) => cbor::from_bytes(&deflate::inflate(bytes)?),
        Some((&SQUEEZED, bytes)) => squeeze::unsqueeze(bytes),
        Some((&found, _)) => Err(HandoverError::UnknownVersion { found }),
        None => Err(HandoverError::CannotUnpack),
    }
}

/// Reads signed bytes.
///
/// # Errors
/// As [`content`], and as [`wire::of_wire`].
pub fn unpack(packed: &[u8]) -> Result<Handed, HandoverError> {
    wire::of_wire(content(packed)?)
}
