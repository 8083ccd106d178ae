//! What can be typed to open the file: the PIN of whoever uses the tablet, or the rescue code that
//! was written down when the PIN was set.
//!
//! Both are digits, so that one pad of keys serves. Wiped when dropped, and never in `Debug`.

use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

use super::PinFault;

/// How many digits a PIN has. Six at the least: at what each guess costs (see `slot`), all of a
/// million take days on one computer that has the folder; each further digit ten times as long.
/// A choice of this project.
const PIN_DIGITS: std::ops::RangeInclusive<usize> = 6..=12;

/// How many digits a rescue code has: as many as nobody guesses, at any cost (some 2^99).
const RESCUE_DIGITS: usize = 30;

/// How many digits of a rescue code stand together.
const RESCUE_GROUP: usize = 5;

/// The fewest different digits of a PIN that can be set.
const DIFFERENT_LEAST: usize = 3;

/// A PIN.
#[derive(Clone, PartialEq, Eq, Zeroize, ZeroizeOnDrop)]
pub struct Pin(String);

impl Pin {
    /// A PIN that can be set.
    ///
    /// # Errors
    /// `Length` unless it has six to twelve digits; `Easy` for a run up or down by one, or of fewer
    /// than three different digits.
    pub fn new(digits: &str) -> Result<Self, PinFault> {
        if !is_digits(digits) || !PIN_DIGITS.contains(&digits.len()) {
            return Err(PinFault::Length);
        }
        let bytes = digits.as_bytes();
        let goes_by = |step: u8| {
            bytes
                .windows(2)
                .all(|pair| (pair[0] - b'0' + step) % 10 == pair[1] - b'0')
        };
        let different = (b'0'..=b'9').filter(|digit| bytes.contains(digit)).count();
        if different < DIFFERENT_LEAST || goes_by(1) || goes_by(9) {
            return Err(PinFault::Easy);
        }
        Ok(Self(digits.to_owned()))
    }

    pub(super) fn digits(&self) -> &[u8] {
        self.0.as_bytes()
    }
}

/// A rescue code.
#[derive(Clone, PartialEq, Eq, Zeroize, ZeroizeOnDrop)]
pub struct RescueCode(String);

impl RescueCode {
    /// A code made of random bytes.
    pub fn from_random(random: [u8; 16]) -> Self {
        // Of 2^128 numbers, 10^30 remainders: none is likelier than another by more than 1 in 10^8.
        let number = u128::from_le_bytes(random) % 10_u128.pow(30);
        Self(format!("{number:030}"))
    }

    pub(super) fn digits(&self) -> &[u8] {
        self.0.as_bytes()
    }

    /// As it is written down.
    pub fn shown(&self) -> Zeroizing<String> {
        in_groups(&self.0)
    }
}

/// Digits as a rescue code is written down, or as much of one as is typed: five together.
pub fn in_groups(digits: &str) -> Zeroizing<String> {
    // As long as it becomes, so that it never grows and leaves a copy behind.
    let mut shown = Zeroizing::new(String::with_capacity(2 * digits.len()));
    for (place, digit) in digits.chars().enumerate() {
        if 0 < place && place % RESCUE_GROUP == 0 {
            shown.push(' ');
        }
        shown.push(digit);
    }
    shown
}

/// Something typed to open the file.
#[derive(Clone, PartialEq, Eq)]
pub enum Typed {
    /// A PIN.
    Pin(Pin),
    /// A rescue code.
    Rescue(RescueCode),
}

impl Typed {
    /// The most digits that are ever typed.
    pub const DIGITS_MOST: usize = RESCUE_DIGITS;

    /// What digits are by their number. One that is too easy to be set may have been set by an
    /// earlier version, so it is tried like any other.
    ///
    /// # Errors
    /// `Length` where they can be neither.
    pub fn read(digits: &str) -> Result<Self, PinFault> {
        match digits.len() {
            _ if !is_digits(digits) => Err(PinFault::Length),
            RESCUE_DIGITS => Ok(Self::Rescue(RescueCode(digits.to_owned()))),
            length if PIN_DIGITS.contains(&length) => Ok(Self::Pin(Pin(digits.to_owned()))),
            _ => Err(PinFault::Length),
        }
    }
}

fn is_digits(text: &str) -> bool {
    text.bytes().all(|byte| byte.is_ascii_digit())
}

macro_rules! silent {
    ($($it:ident),*) => {$(
        impl std::fmt::Debug for $it {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str(stringify!($it))
            }
        }
    )*};
}
silent!(Pin, RescueCode, Typed);
