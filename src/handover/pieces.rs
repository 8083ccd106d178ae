//! A sealed record to equal pieces, each with its header, and back.
//!
//! Header, 13 bytes: kind and version, transfer (4 bytes), index, count, length of the payload
//! (2 bytes), CRC-32 over all that and the payload (4 bytes); numbers with the highest byte first.

use super::HandoverError;
use super::limit::{PIECES_MOST, SEALED_BYTES_MOST};

/// Bytes before a piece's payload.
pub const HEADER_BYTES: usize = 13;
/// Version 1 of a piece: the high half of the byte says what it is.
pub const PIECE_VERSION_1: u8 = 0x11;

/// Version 1 of an enrolment.
pub const ENROLMENT_VERSION_1: u8 = 0x41;

/// One piece, checked. An enrolment travels in the same form, with index and count 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    /// Kind and version.
    pub version: u8,
    /// The transfer's number.
    pub transfer: u32,
    /// Its number, from 1.
    pub index: u8,
    /// How many pieces there are.
    pub count: u8,
    /// Its part of the sealed record.
    pub payload: Vec<u8>,
}

/// The CRC-32 that is also used by Ethernet and zip (check value 0xCBF43926).
pub fn crc(parts: &[&[u8]]) -> u32 {
    let mut hasher = crc32fast::Hasher::new();
    for part in parts {
        hasher.update(part);
    }
    hasher.finalize()
}

/// Cuts a sealed record into pieces of at most `payload_most` bytes, equal up to one byte.
///
/// # Errors
/// [`HandoverError::TooLarge`] for more bytes or pieces than a transfer may have.
pub fn cut(sealed: &[u8], transfer: u32, payload_most: usize) -> Result<Vec<Piece>, HandoverError> {
    let count = sealed.len().div_ceil(payload_most.max(1)).max(1);
    if SEALED_BYTES_MOST < sealed.len() || usize::from(PIECES_MOST) < count {
        return Err(HandoverError::TooLarge);
    }
    let (each, longer) = (sealed.len() / count, sealed.len() % count);
    let count = u8::try_from(count).map_err(|_| HandoverError::TooLarge)?;
    let mut rest = sealed;
    Ok((1..=count)
        .map(|index| {
            let length = each + usize::from(usize::from(index) <= longer);
            let (payload, after) = rest.split_at(length);
            rest = after;
            Piece {
                version: PIECE_VERSION_1,
                transfer,
                index,
                count,
                payload: payload.to_vec(),
            }
        })
        .collect())
}

impl Piece {
    /// Header and payload.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = vec![self.version];
        bytes.extend(self.transfer.to_be_bytes());
        bytes.extend([self.index, self.count]);
        // Payloads are cut far below 64 KiB.
        bytes.extend((self.payload.len() as u16).to_be_bytes());
        let crc = crc(&[&bytes, &self.payload]);
        bytes.extend(crc.to_be_bytes());
        bytes.extend(&self.payload);
        bytes
    }

    /// Reads a piece; bytes after it do not matter. `told` is the number that stands outside.
    /// Later versions keep this header, so a sound check under another version is no damage.
    ///
    /// # Errors
    /// [`HandoverError::PieceCut`] and [`HandoverError::PieceDamaged`], each naming the piece by
    /// the number inside where the check holds, else by the number outside;
    /// [`HandoverError::CodeDamaged`] where that is none;
    /// [`HandoverError::UnknownVersion`].
    pub fn of_bytes(bytes: &[u8], told: u8) -> Result<Self, HandoverError> {
        let (damaged, cut) = if (1..=PIECES_MOST).contains(&told) {
            let piece = told;
            (
                HandoverError::PieceDamaged { piece },
                HandoverError::PieceCut { piece },
            )
        } else {
            (HandoverError::CodeDamaged, HandoverError::CodeDamaged)
        };
        let Some((header, rest)) = bytes.split_at_checked(HEADER_BYTES) else {
            return Err(cut);
        };
        let (plain, check) = header.split_at(HEADER_BYTES - 4);
        let &[version, a, b, c, d, index, count, high, low] = plain else {
            return Err(damaged);
        };
        let length = usize::from(u16::from_be_bytes([high, low]));
        let known = matches!(version, PIECE_VERSION_1 | ENROLMENT_VERSION_1);
        let Some(payload) = rest.get(..length) else {
            return Err(if known && index == told { cut } else { damaged });
        };
        if crc(&[plain, payload]).to_be_bytes() != check {
            return Err(damaged);
        }
        if !known {
            let found = version & 0x0f;
            return Err(HandoverError::UnknownVersion { found });
        }
        let places = match version {
            PIECE_VERSION_1 => (1..=PIECES_MOST).contains(&count) && (1..=count).contains(&index),
            _ => count == 0 && index == 0,
        };
        if !places {
            return Err(damaged);
        }
        if index != told {
            // The check covers the number inside, so it is the one outside that is wrong.
            return Err(match version {
                PIECE_VERSION_1 => HandoverError::PieceDamaged { piece: index },
                _ => HandoverError::CodeDamaged,
            });
        }
        Ok(Self {
            version,
            transfer: u32::from_be_bytes([a, b, c, d]),
            index,
            count,
            payload: payload.to_vec(),
        })
    }

    /// How many bytes a piece takes that begins so; `None` before its header is whole.
    pub fn bytes_told(bytes: &[u8]) -> Option<usize> {
        let header = bytes.get(..HEADER_BYTES)?;
        let length = u16::from_be_bytes([header[7], header[8]]);
        Some(HEADER_BYTES + usize::from(length))
    }
}
