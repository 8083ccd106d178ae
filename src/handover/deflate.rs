//! Bytes to raw DEFLATE (RFC 1951) and back, with a limit on what may come out.

use std::io::{Read, Write};

use flate2::Compression;
use flate2::read::DeflateDecoder;
use flate2::write::DeflateEncoder;

use super::HandoverError;
use super::limit::INFLATED_BYTES_MOST;

/// Squeezes bytes.
///
/// # Errors
/// Never for bytes in memory; an error of the writer is handed on.
pub fn deflate(bytes: &[u8]) -> Result<Vec<u8>, HandoverError> {
    let mut encoder = DeflateEncoder::new(Vec::new(), Compression::best());
    encoder
        .write_all(bytes)
        .and_then(|()| encoder.finish())
        .map_err(|_| HandoverError::CannotUnpack)
}

/// Unpacks bytes, never to more than [`INFLATED_BYTES_MOST`].
///
/// # Errors
/// [`HandoverError::CannotUnpack`] for damaged or cut input and for bytes after the end;
/// [`HandoverError::TooLarge`] for what would be larger.
pub fn inflate(bytes: &[u8]) -> Result<Vec<u8>, HandoverError> {
    let mut decoder = DeflateDecoder::new(bytes);
    let mut out = Vec::new();
    decoder
        .by_ref()
        .take(INFLATED_BYTES_MOST as u64 + 1)
        .read_to_end(&mut out)
        .map_err(|_| HandoverError::CannotUnpack)?;
    if INFLATED_BYTES_MOST < out.len() {
        return Err(HandoverError::TooLarge);
    }
    if decoder.total_in() == bytes.len() as u64 {
        Ok(out)
    } else {
        Err(HandoverError::CannotUnpack)
    }
}
