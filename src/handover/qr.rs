//! Text of a code to a square of modules: numeric or byte mode, error correction M, never a mode
//! chosen by the library (which could take bytes for Kanji).

use qrcode::bits::Bits;
use qrcode::{EcLevel, QrCode, Version};

use super::pieces::HEADER_BYTES;
use super::{HandoverError, digits};

/// The quiet zone in modules (ISO/IEC 18004).
pub const QUIET_MODULES: usize = 4;

/// The largest code that the desk's scanner is trusted with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum VersionCap {
    /// For a scanner that reads poorly.
    V15,
    /// For an unknown scanner.
    #[default]
    V20,
    /// For a scanner that passed the set-up test.
    V25,
}

impl VersionCap {
    /// All settings, smallest first.
    pub const ALL: [Self; 3] = [Self::V15, Self::V20, Self::V25];

    /// The version of a code: 4 more modules a side for each.
    pub const fn version(self) -> u8 {
        match self {
            Self::V15 => 15,
            Self::V20 => 20,
            Self::V25 => 25,
        }
    }
}

/// A code: a square of modules, row by row, true for dark.
#[derive(Clone, PartialEq, Eq)]
pub struct Code {
    /// Modules of a side, without the quiet zone.
    pub side: usize,
    /// The modules, row by row.
    pub modules: Vec<bool>,
}

impl std::fmt::Debug for Code {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Code({} modules a side)", self.side)
    }
}

impl Code {
    /// Its version, 1 to 40.
    pub const fn version(&self) -> usize {
        self.side.saturating_sub(17) / 4
    }

    /// The picture in greys, 0 for dark and 255 for light: pixels of a side, and the pixels row by
    /// row, with `quiet` light modules around ([`QUIET_MODULES`] is the standard's).
    pub fn to_luma(&self, px_per_module: usize, quiet: usize) -> (usize, Vec<u8>) {
        let side_px = (self.side + 2 * quiet) * px_per_module;
        let mut pixels = vec![255; side_px * side_px];
        for (place, _) in self.modules.iter().enumerate().filter(|(_, dark)| **dark) {
            let (x, y) = (place % self.side + quiet, place / self.side + quiet);
            for row in y * px_per_module..(y + 1) * px_per_module {
                let from = row * side_px + x * px_per_module;
                pixels[from..from + px_per_module].fill(0);
            }
        }
        (side_px, pixels)
    }
}

/// Data bits of a code of this version at error correction M.
fn data_bits(version: u8) -> usize {
    Bits::new(Version::Normal(version.into()))
        .max_len(EcLevel::M)
        .unwrap_or(0)
}

/// Digits that a code of this version holds at error correction M (ISO/IEC 18004, table 7).
pub fn digits_most(version: u8) -> usize {
    let count_bits = match version {
        ..=9 => 10,
        10..=26 => 12,
        _ => 14,
    };
    let bits = data_bits(version).saturating_sub(4 + count_bits);
    let left = match bits % 10 {
        0..=3 => 0,
        4..=6 => 1,
        _ => 2,
    };
    bits / 10 * 3 + left
}

/// Bytes that a code of this version holds at error correction M in byte mode.
pub fn bytes_most(version: u8) -> usize {
    let count_bits = if version <= 9 { 8 } else { 16 };
    data_bits(version).saturating_sub(4 + count_bits) / 8
}

/// Bytes of a sealed record that one piece holds in a code of this version.
pub fn payload_most(version: u8) -> usize {
    digits::bytes_in(digits_most(version)).saturating_sub(HEADER_BYTES)
}

/// The smallest version that needs no more codes than the cap does.
pub fn version_for(sealed_bytes: usize, cap: VersionCap) -> u8 {
    let pieces = |version| sealed_bytes.div_ceil(payload_most(version).max(1));
    let fewest = pieces(cap.version());
    (1..cap.version())
        .find(|version| pieces(*version) == fewest)
        .unwrap_or(cap.version())
}

/// Draws digits in the smallest code that holds them.
///
/// # Errors
/// [`HandoverError::TooLarge`] where the cap does not hold them.
pub fn draw_digits(text: &str, cap: VersionCap) -> Result<Code, HandoverError> {
    let version = (1..=cap.version())
        .find(|version| text.len() <= digits_most(*version))
        .ok_or(HandoverError::TooLarge)?;
    draw_digits_at(text, version)
}

/// Draws digits in a code of this version.
///
/// # Errors
/// [`HandoverError::TooLarge`] where it does not hold them.
pub fn draw_digits_at(text: &str, version: u8) -> Result<Code, HandoverError> {
    draw(version, |bits| bits.push_numeric_data(text.as_bytes()))
}

/// Draws plain text in byte mode in the smallest code that holds it.
///
/// # Errors
/// [`HandoverError::TooLarge`] where the version `most` does not hold it.
pub fn draw_plain(text: &str, most: u8) -> Result<Code, HandoverError> {
    let version = (1..=most)
        .find(|version| text.len() <= bytes_most(*version))
        .ok_or(HandoverError::TooLarge)?;
    draw(version, |bits| bits.push_byte_data(text.as_bytes()))
}

fn draw(
    version: u8,
    push: impl FnOnce(&mut Bits) -> qrcode::types::QrResult<()>,
) -> Result<Code, HandoverError> {
    let mut bits = Bits::new(Version::Normal(version.into()));
    push(&mut bits)
        .and_then(|()| bits.push_terminator(EcLevel::M))
        .and_then(|()| QrCode::with_bits(bits, EcLevel::M))
        .map(|code| Code {
            side: code.width(),
            modules: code
                .to_colors()
                .into_iter()
                .map(|colour| colour == qrcode::Color::Dark)
                .collect(),
        })
        .map_err(|_| HandoverError::TooLarge)
}
