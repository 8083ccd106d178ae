//! Plain forms of values for files: hex, Base64, times, and the units of findings as UCUM.

use crate::findings::{Number, Unit};
use crate::record::WallTime;

/// Small hex digits, two a byte.
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Base64 with padding (RFC 4648, section 4).
pub fn base64(bytes: &[u8]) -> String {
    const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let byte = |index: usize| u32::from(chunk.get(index).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for place in 0..4 {
            if place <= chunk.len() {
                let six = (bits >> (18 - 6 * place)) & 0x3f;
                text.push(char::from(ALPHABET[six as usize]));
            } else {
                text.push('=');
            }
        }
    }
    text
}

/// A time on the wall as RFC 3339 with milliseconds and offset.
pub(super) fn iso(wall: WallTime) -> String {
    wall.local()
        .to_rfc3339_opts(chrono::SecondsFormat::Millis, false)
}

/// A finding's number in a UCUM unit, with the decimals it is shown with.
pub(super) fn in_ucum(number: &Number) -> (f64, &'static str, usize) {
    // A finding's numbers are far below 2^52, so nothing is lost.
    #[allow(clippy::cast_precision_loss)]
    let value = number.value as f64;
    match number.unit {
        Unit::Gram => (value, "g", 0),
        Unit::TenthsPercent => (value / 10.0, "%", 1),
        Unit::Count => (value, "{count}", 0),
        Unit::Hour => (value, "h", 0),
        Unit::Day => (value, "d", 0),
        Unit::Second => (value, "s", 0),
        Unit::Score => (value, "{score}", 0),
        Unit::TenthsCelsius => (value / 10.0, "Cel", 1),
        Unit::HundredthsSd => (value / 100.0, "{sd}", 2),
        Unit::Tenths => (value / 10.0, "1", 1),
        Unit::Millilitre => (value, "mL", 0),
    }
}
