//! Pictures back to text: the tablet reads each code that it drew before showing it, and the desk
//! reads pictures of codes.

use rxing::common::HybridBinarizer;
use rxing::multi::MultipleBarcodeReader;
use rxing::multi::qrcode::QRCodeMultiReader;
use rxing::{BarcodeFormat, BinaryBitmap, DecodeHints, Luma8LuminanceSource};

use super::qr::QUIET_MODULES;
use super::{Code, HandoverError};

/// Pixels of a module where the tablet reads its own code.
const PX_PER_MODULE: usize = 3;

/// Reads a drawn code and compares it with what it was drawn from.
///
/// # Errors
/// [`HandoverError::ReadBackFailed`] naming the piece.
pub fn check(code: &Code, text: &str, piece: u8) -> Result<(), HandoverError> {
    let (side, pixels) = code.to_luma(PX_PER_MODULE, QUIET_MODULES);
    match read_one(pixels, side, side) {
        Some(read) if read == text => Ok(()),
        _ => Err(HandoverError::ReadBackFailed { piece }),
    }
}

/// The text of one code in a picture in greys, given row by row.
pub fn read_one(pixels: Vec<u8>, width: usize, height: usize) -> Option<String> {
    let (width, height) = sides(&pixels, width, height)?;
    rxing::helpers::detect_in_luma(pixels, width, height, Some(BarcodeFormat::QR_CODE))
        .ok()
        .map(|found| found.getText().to_owned())
}

/// The texts of all codes in a picture in greys, given row by row; none where nothing is found.
pub fn read_all(pixels: Vec<u8>, width: usize, height: usize) -> Vec<String> {
    let Some((side_w, side_h)) = sides(&pixels, width, height) else {
        return Vec::new();
    };
    let hints = DecodeHints {
        TryHarder: Some(true),
        ..DecodeHints::default()
    };
    let mut texts: Vec<String> = Luma8LuminanceSource::new(pixels.clone(), side_w, side_h)
        .and_then(|source| {
            QRCodeMultiReader::new().decode_multiple_with_hints(
                &mut BinaryBitmap::new(HybridBinarizer::new(source)),
                &hints,
            )
        })
        .map(|found| found.iter().map(|one| one.getText().to_owned()).collect())
        .unwrap_or_default();
    if texts.is_empty() {
        texts.extend(read_one(pixels, width, height));
    }
    texts
}

fn sides(pixels: &[u8], width: usize, height: usize) -> Option<(u32, u32)> {
    let fits = 0 < width && 0 < height && width.checked_mul(height)? == pixels.len();
    fits.then_some(())?;
    Some((u32::try_from(width).ok()?, u32::try_from(height).ok()?))
}
