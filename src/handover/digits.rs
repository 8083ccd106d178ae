//! Bytes to the digits of a code, and back from whatever a scanner typed through whatever
//! keyboard layout.
//!
//! Text of a code: the preamble 01234567899876543210, two digits that name the piece (00 for an
//! enrolment), then 17 digits for every 7 bytes. The reader learns the layout from the preamble:
//! ten different characters followed by the same ten in mirror order stand for the ten digits.
//! What comes before it (a symbology prefix) and after the last digit (Enter, Tab) does not matter.

use super::HandoverError;
use super::limit::TEXT_CHARS_MOST;

/// What every code begins with.
pub const PREAMBLE: &str = "01234567899876543210";
const PREAMBLE_CHARS: usize = 20;
/// Digits that name the piece.
const NAME_DIGITS: usize = 2;
/// The name of an enrolment code.
pub const ENROLMENT: u8 = 0;

const BLOCK_BYTES: usize = 7;
/// Digits that hold 0 to 7 bytes: the least count whose numbers reach 256 to that power.
const DIGITS_FOR: [usize; BLOCK_BYTES + 1] = [0, 3, 5, 8, 10, 13, 15, 17];
/// How many characters of the preamble may be wrong for a code to be told as damaged, not foreign.
const PREAMBLE_WRONG_MOST: usize = 2;

/// Digits that so many bytes take behind the preamble and the name.
const fn digits_for(bytes: usize) -> usize {
    bytes / BLOCK_BYTES * DIGITS_FOR[BLOCK_BYTES] + DIGITS_FOR[bytes % BLOCK_BYTES]
}

/// The most bytes that fit a code of so many digits.
pub const fn bytes_in(digits: usize) -> usize {
    let digits = digits.saturating_sub(PREAMBLE_CHARS + NAME_DIGITS);
    let blocks = digits / DIGITS_FOR[BLOCK_BYTES];
    let left = digits % DIGITS_FOR[BLOCK_BYTES];
    let mut tail = 0;
    while DIGITS_FOR[tail + 1] <= left {
        tail += 1;
    }
    blocks * BLOCK_BYTES + tail
}

/// The text of a code with this name and these bytes. The name is taken modulo 100.
pub fn wrap(name: u8, bytes: &[u8]) -> String {
    let mut text = format!("{PREAMBLE}{:02}", name % 100);
    for block in bytes.chunks(BLOCK_BYTES) {
        let value = block
            .iter()
            .fold(0u64, |value, byte| value << 8 | u64::from(*byte));
        text += &format!("{value:0width$}", width = DIGITS_FOR[block.len()]);
    }
    text
}

/// What stands in a scanned text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Scanned {
    /// The name: the piece's number, or [`ENROLMENT`].
    pub name: u8,
    /// The digits behind the name, as values.
    digits: Vec<u8>,
    /// Whether the preamble itself was damaged.
    pub preamble_damaged: bool,
    /// What the keyboard gave for the digits 0 to 9; plain digits where the preamble was damaged.
    pub keys: [char; 10],
    /// Where the preamble begins, counted in characters of the text.
    pub begins: usize,
    /// Where the digits begin, counted in characters of the text.
    start: usize,
}

/// Finds the preamble, learns the layout, and takes the digits that follow.
///
/// # Errors
/// [`HandoverError::TooLarge`] for text longer than any code;
/// [`HandoverError::NotOurs`] where there is no preamble.
pub fn unwrap(text: &str) -> Result<Scanned, HandoverError> {
    if text.chars().nth(TEXT_CHARS_MOST).is_some() {
        return Err(HandoverError::TooLarge);
    }
    let chars: Vec<char> = text.chars().collect();
    let whole = chars.windows(PREAMBLE_CHARS).position(is_preamble);
    let preamble_damaged = whole.is_none();
    let (begins, start) = whole
        .map(|at| (at, at + PREAMBLE_CHARS))
        .or_else(|| near_preamble(&chars))
        .ok_or(HandoverError::NotOurs)?;
    let keys = std::array::from_fn(|digit| match whole {
        Some(at) => chars[at + digit],
        None => char::from(b'0' + digit as u8),
    });
    let digit = |c: char| {
        (0u8..)
            .zip(&keys)
            .find(|(_, it)| **it == c)
            .map(|(digit, _)| digit)
    };
    let digits: Vec<u8> = chars[start..].iter().map_while(|c| digit(*c)).collect();
    let (name, digits) = digits
        .split_at_checked(NAME_DIGITS)
        .ok_or(HandoverError::CodeDamaged)?;
    Ok(Scanned {
        name: name[0] * 10 + name[1],
        digits: digits.to_vec(),
        preamble_damaged,
        keys,
        begins,
        start: start + NAME_DIGITS,
    })
}

fn is_preamble(window: &[char]) -> bool {
    let (ten, mirror) = window.split_at(PREAMBLE_CHARS / 2);
    ten.iter().eq(mirror.iter().rev())
        && ten.iter().enumerate().all(|(at, c)| !ten[..at].contains(c))
}

/// The preamble in plain digits with a wrong character or two, or with one lost or doubled: where it
/// begins and ends.
fn near_preamble(chars: &[char]) -> Option<(usize, usize)> {
    let preamble: Vec<char> = PREAMBLE.chars().collect();
    let wrong_few = |window: &[char]| {
        let wrong = window.iter().zip(&preamble).filter(|(a, b)| a != b).count();
        wrong <= PREAMBLE_WRONG_MOST
    };
    let one_longer = |short: &[char], long: &[char]| {
        let same = |(a, b): &(&char, &char)| a == b;
        let begin = short.iter().zip(long).take_while(same).count();
        let end = short.iter().rev().zip(long.iter().rev());
        short.len() <= begin + end.take_while(same).count()
    };
    let begins = |length: usize, fits: &dyn Fn(&[char]) -> bool| {
        let at = chars.windows(length).position(fits)?;
        Some((at, at + length))
    };
    begins(PREAMBLE_CHARS, &wrong_few)
        .or_else(|| begins(PREAMBLE_CHARS + 1, &|it| one_longer(&preamble, it)))
        .or_else(|| begins(PREAMBLE_CHARS - 1, &|it| one_longer(it, &preamble)))
}

/// Digits in which a slip may hide a piece's number: the name, and what holds the header.
const SLIP_DIGITS: usize = NAME_DIGITS + 2 * DIGITS_FOR[BLOCK_BYTES];

impl Scanned {
    /// The bytes of whole blocks, and of a last part where `total` says that there is one: at most
    /// `total` bytes, fewer where the scan was cut. `None` for digits that no bytes give.
    pub fn bytes(&self, total: usize) -> Option<Vec<u8>> {
        let mut bytes = Vec::new();
        let mut rest = self.digits.as_slice();
        while bytes.len() < total {
            let length = (total - bytes.len()).min(BLOCK_BYTES);
            let Some((block, after)) = rest.split_at_checked(DIGITS_FOR[length]) else {
                break;
            };
            rest = after;
            let value = block
                .iter()
                .fold(0u64, |value, digit| value * 10 + u64::from(*digit));
            let octets = value.to_be_bytes();
            let (zero, octets) = octets.split_at(8 - length);
            if zero.iter().any(|byte| *byte != 0) {
                return None;
            }
            bytes.extend(octets);
        }
        Some(bytes)
    }

    /// What would stand here if one of the first digits, the name's or the header's, had been typed
    /// wrong, or were lost, or were one too many; and had the preamble been sound.
    pub fn with_one_slip(&self) -> impl Iterator<Item = Self> {
        let all: Vec<u8> = [self.name / 10, self.name % 10]
            .into_iter()
            .chain(self.digits.iter().copied())
            .collect();
        let other = Self {
            digits: Vec::new(),
            ..self.clone()
        };
        let places = 0..SLIP_DIGITS.min(all.len());
        let edits = places.flat_map(|at| {
            let change = (0..10).map(move |digit| (at, 1, Some(digit)));
            let add = (0..10).map(move |digit| (at, 0, Some(digit)));
            change.chain(add).chain([(at, 1, None)])
        });
        edits.filter_map(move |(at, taken, put)| {
            let mut digits = all[..at].to_vec();
            digits.extend(put);
            digits.extend(&all[at + taken..]);
            let (name, digits) = digits.split_at_checked(NAME_DIGITS)?;
            Some(Self {
                name: name[0] * 10 + name[1],
                digits: digits.to_vec(),
                preamble_damaged: false,
                ..other.clone()
            })
        })
    }

    /// Where the text goes on after a code of so many bytes, counted in characters.
    pub const fn end_after(&self, bytes: usize) -> usize {
        self.start + digits_for(bytes)
    }
}
