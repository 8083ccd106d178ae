//! The desk's public key as text that a person types: thirteen groups of five characters.
//!
//! Four characters of a group carry 20 bits, the fifth checks them and the group's place: any one
//! wrong character, any two swapped in a group, and any two groups swapped are noticed, and the
//! group is named. Capital letters and digits without I, L, O and U; small letters are taken too,
//! and I, L and O are taken for the digits they look like.

use super::super::HandoverError;
use super::DeskPublic;

/// Groups of a typed key.
pub const KEY_GROUPS: usize = 13;
/// Characters of a group, the last of them its check.
pub const KEY_GROUP_CHARS: usize = 5;

const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// The first four bits of the text.
const TYPED_VERSION: u8 = 1;

impl DeskPublic {
    /// The key as text, in groups with a space between them.
    pub fn to_typed(&self) -> String {
        let mut bytes = vec![TYPED_VERSION << 4];
        bytes.extend(self.to_bytes());
        // 4 bits of version and 256 bits of key are exactly 52 times 5 bits; the low half of the
        // first byte is left out.
        let bit = |place: usize| {
            let place = if place < 4 { place } else { place + 4 };
            bytes[place / 8] >> (7 - place % 8) & 1
        };
        let values: Vec<u8> = (0..KEY_GROUPS * (KEY_GROUP_CHARS - 1))
            .map(|digit| (0..5).fold(0, |value, at| value << 1 | bit(digit * 5 + at)))
            .collect();
        let groups: Vec<String> = values
            .chunks(KEY_GROUP_CHARS - 1)
            .zip(1u8..)
            .map(|(group, number)| {
                group
                    .iter()
                    .chain([&check(number, group)])
                    .map(|value| char::from(ALPHABET[usize::from(*value)]))
                    .collect()
            })
            .collect();
        groups.join(" ")
    }

    /// The key from typed text; spaces, line breaks and dashes do not matter.
    ///
    /// # Errors
    /// [`HandoverError::KeyLengthWrong`] for too few or too many characters;
    /// [`HandoverError::KeyGroupWrong`] naming the first group that does not pass its check;
    /// [`HandoverError::UnknownVersion`]; [`HandoverError::KeyUnusable`].
    pub fn from_typed(text: &str) -> Result<Self, HandoverError> {
        let chars: Vec<char> = text
            .chars()
            .filter(|c| !c.is_whitespace() && !matches!(c, '-' | '\u{2010}'..='\u{2015}'))
            .take(KEY_GROUPS * KEY_GROUP_CHARS * 4)
            .collect();
        if chars.len() != KEY_GROUPS * KEY_GROUP_CHARS {
            return Err(HandoverError::KeyLengthWrong {
                given: u32::try_from(chars.len()).unwrap_or(u32::MAX),
            });
        }
        let mut bits = Vec::with_capacity(260);
        for (group, number) in chars.chunks(KEY_GROUP_CHARS).zip(1u8..) {
            let wrong = HandoverError::KeyGroupWrong { group: number };
            let values: Option<Vec<u8>> = group.iter().copied().map(value).collect();
            match values.as_deref() {
                Some([payload @ .., last]) if *last == check(number, payload) => {
                    for value in payload {
                        bits.extend((0..5).rev().map(|at| value >> at & 1));
                    }
                }
                _ => return Err(wrong),
            }
        }
        let octet = |bits: &[u8]| bits.iter().fold(0u8, |byte, bit| byte << 1 | bit);
        let (version, key) = bits.split_at(4);
        match octet(version) {
            TYPED_VERSION => {}
            found => return Err(HandoverError::UnknownVersion { found }),
        }
        let mut bytes = [0; 32];
        for (byte, bits) in bytes.iter_mut().zip(key.chunks(8)) {
            *byte = octet(bits);
        }
        Self::of(&bytes)
    }
}

fn value(typed: char) -> Option<u8> {
    let typed = match typed.to_ascii_uppercase() {
        'I' | 'L' => '1',
        'O' => '0',
        other => other,
    };
    ALPHABET
        .iter()
        .position(|it| char::from(*it) == typed)
        .and_then(|place| u8::try_from(place).ok())
}

/// The sum over the field of 32 elements of each value times its own weight (2, 4, 8, 16), and the
/// group's number times 5 more powers of two.
fn check(number: u8, group: &[u8]) -> u8 {
    let mut weight = 1;
    let mut sum = 0;
    for value in group {
        weight = times(weight, 2);
        sum ^= times(weight, *value);
    }
    sum ^ times(times(weight, 2), number & 31)
}

/// Multiplication in the field of 32 elements (polynomial x^5 + x^2 + 1).
const fn times(mut a: u8, mut b: u8) -> u8 {
    let mut product = 0;
    while b != 0 {
        if b & 1 == 1 {
            product ^= a;
        }
        a <<= 1;
        if a & 32 != 0 {
            a ^= 0b10_0101;
        }
        b >>= 1;
    }
    product
}
