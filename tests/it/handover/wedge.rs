//! What a keyboard-wedge scanner set to US types into a computer set to something else.
//!
//! Rows: what the unshifted digit keys 0 to 9 give on each layout. Source: the number rows of
//! xkeyboard-config 2.35.1 (symbols/fr, be, cz, sk, hu), the native digits of Unicode, and common
//! practice for Caps Lock and Shift.

use feedside::handover::{Collector, Offered, VersionCap};

use super::codes::packed;
use super::sample;

/// Layout, and what the digit keys 0 to 9 give.
const LAYOUTS: [(&str, &str); 13] = [
    ("us", "0123456789"),
    ("fr", "à&é\"'(-è_ç"),
    ("be", "à&é\"'(§è!ç"),
    ("cz", "é+ěščřžýáí"),
    ("sk", "é+ľščťžýáí"),
    ("de, at, us and most others", "0123456789"),
    ("hu", "ö123456789"),
    ("fr, caps lock on some systems", "0123456789"),
    ("cz, caps lock", "É+ĚŠČŘŽÝÁÍ"),
    ("shift held down", ")!@#$%^&*("),
    ("de, shift held down", "=!\"§$%&/()"),
    ("Arabic-Indic", "٠١٢٣٤٥٦٧٨٩"),
    ("Devanagari", "०१२३४५६७८९"),
];

fn typed(text: &str, digits: &str) -> String {
    let digits: Vec<char> = digits.chars().collect();
    text.chars()
        .map(|c| digits[c.to_digit(10).unwrap() as usize])
        .collect()
}

#[test]
fn a_code_is_read_through_any_layout_with_any_prefix_and_suffix() {
    let packed = packed(&sample::smallest(), 6, VersionCap::V20);
    assert_eq!(packed.pieces.len(), 1);
    for (layout, digits) in LAYOUTS {
        for prefix in ["", "]Q1", "]Q", "\u{2}", "ID:00", "9", "&&", "01234567"] {
            for suffix in ["", "\r\n", "\n", "\t", "  ", "\u{3}", "77"] {
                let scan = format!("{}{}{suffix}", prefix, typed(&packed.pieces[0], digits));
                let offered = Collector::new().offer(&scan);
                assert!(
                    matches!(&offered, Offered::Complete { sealed, .. } if *sealed == packed.sealed),
                    "{layout}, {prefix:?}, {suffix:?}: {offered:?}"
                );
            }
        }
    }
}

#[test]
fn a_digit_key_that_gives_what_another_gives_is_not_guessed_at() {
    let packed = packed(&sample::smallest(), 6, VersionCap::V20);
    let scan = typed(&packed.pieces[0], "0122456789");
    assert!(matches!(Collector::new().offer(&scan), Offered::Refused(_)));
}
