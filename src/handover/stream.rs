//! Columns of whole numbers as LEB128 bytes (7 bits a byte, least first), signed ones zigzag.

use super::HandoverError;

/// Writes numbers behind each other.
#[derive(Default)]
pub(super) struct Writer(Vec<u8>);

impl Writer {
    pub(super) fn number(&mut self, mut value: u64) {
        while 0x80 <= value {
            self.0.push((value & 0x7f) as u8 | 0x80);
            value >>= 7;
        }
        self.0.push(value as u8);
    }

    pub(super) fn signed(&mut self, value: i64) {
        self.number(((value << 1) ^ (value >> 63)) as u64);
    }

    pub(super) fn finish(self) -> Vec<u8> {
        self.0
    }
}

/// Reads numbers behind each other; never past the end.
pub(super) struct Reader<'b>(&'b [u8]);

impl<'b> Reader<'b> {
    pub(super) const fn new(bytes: &'b [u8]) -> Self {
        Self(bytes)
    }

    pub(super) fn number(&mut self) -> Result<u64, HandoverError> {
        let mut value = 0u64;
        for shift in (0..64).step_by(7) {
            let (&byte, rest) = self.0.split_first().ok_or(HandoverError::NotReadable)?;
            self.0 = rest;
            let low = u64::from(byte & 0x7f);
            if shift == 63 && 1 < low {
                return Err(HandoverError::NotReadable);
            }
            value |= low << shift;
            if byte & 0x80 == 0 {
                return Ok(value);
            }
        }
        Err(HandoverError::NotReadable)
    }

    pub(super) fn signed(&mut self) -> Result<i64, HandoverError> {
        let raw = self.number()?;
        Ok((raw >> 1) as i64 ^ -((raw & 1) as i64))
    }

    /// A number that must fit a smaller type.
    pub(super) fn small<T: TryFrom<u64>>(&mut self) -> Result<T, HandoverError> {
        T::try_from(self.number()?).map_err(|_| HandoverError::NotReadable)
    }

    /// A count of rows, at most `most`.
    pub(super) fn count(&mut self, most: u64) -> Result<u64, HandoverError> {
        let count = self.number()?;
        if most < count {
            return Err(HandoverError::TooLarge);
        }
        Ok(count)
    }

    /// That nothing is left.
    pub(super) fn end(&self) -> Result<(), HandoverError> {
        if self.0.is_empty() {
            Ok(())
        } else {
            Err(HandoverError::NotReadable)
        }
    }
}
