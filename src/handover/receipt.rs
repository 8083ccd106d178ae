//! The receipt: a number that the desk can only show once it has opened and kept these very bytes.
//!
//! HMAC-SHA-256 with the secret inside the record as its key, over "stored" and the digest of the
//! sealed bytes, modulo 10^9; nine digits, and a check digit by ISO 7064 MOD 11,10. Shown in
//! groups of three, three and four.

use hmac::{Hmac, KeyInit, Mac};
use sha2::{Digest, Sha256};

const DIGITS: u32 = 9;
const ALL_DIGITS: usize = DIGITS as usize + 1;

/// A receipt, its check digit included.
#[derive(Clone, PartialEq, Eq)]
pub struct Receipt {
    digits: [u8; ALL_DIGITS],
}

/// What typed digits are, beside the receipt that is waited for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReceiptCheck {
    /// It is the receipt.
    Fits,
    /// Too few or too many digits, other characters, or a check digit that does not fit: mistyped.
    Mistyped,
    /// A receipt as such, of another record or another showing of it.
    OfAnotherRecord,
}

impl Receipt {
    /// The receipt of sealed bytes by the secret inside them.
    pub fn of(secret: &[u8; 16], sealed: &[u8]) -> Self {
        let modulus = 10u64.pow(DIGITS);
        // HMAC takes keys of any length.
        let number = Hmac::<Sha256>::new_from_slice(secret).map_or(0, |mut mac| {
            mac.update(b"stored");
            mac.update(&Sha256::digest(sealed));
            mac.finalize()
                .into_bytes()
                .iter()
                .fold(0u64, |number, byte| {
                    (number * 256 + u64::from(*byte)) % modulus
                })
        });
        let mut digits = [0; ALL_DIGITS];
        let mut left = number;
        for digit in digits[..DIGITS as usize].iter_mut().rev() {
            *digit = (left % 10) as u8;
            left /= 10;
        }
        digits[DIGITS as usize] = check_digit(&digits[..DIGITS as usize]);
        Self { digits }
    }

    /// Its ten digits without spaces, as they are kept.
    pub fn digits(&self) -> String {
        self.digits
            .iter()
            .map(|digit| char::from(b'0' + digit))
            .collect()
    }

    /// Its ten digits in groups, as they are shown.
    pub fn grouped(&self) -> String {
        let digits = self.digits();
        format!("{} {} {}", &digits[..3], &digits[3..6], &digits[6..])
    }

    /// Compares it with what was typed; spaces, dashes and dots do not matter.
    pub fn check(&self, typed: &str) -> ReceiptCheck {
        match typed_digits(typed) {
            Some(typed) if typed == self.digits => ReceiptCheck::Fits,
            Some(_) => ReceiptCheck::OfAnotherRecord,
            None => ReceiptCheck::Mistyped,
        }
    }
}

impl std::fmt::Debug for Receipt {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Receipt(…)")
    }
}

/// Ten digits whose check digit fits.
fn typed_digits(typed: &str) -> Option<[u8; ALL_DIGITS]> {
    let digits: Vec<u8> = typed
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, '-' | '.' | '\u{2010}'..='\u{2015}'))
        .take(ALL_DIGITS + 1)
        .map(|c| c.to_digit(10).and_then(|digit| u8::try_from(digit).ok()))
        .collect::<Option<_>>()?;
    let digits: [u8; ALL_DIGITS] = digits.try_into().ok()?;
    (check_digit(&digits[..DIGITS as usize]) == digits[DIGITS as usize]).then_some(digits)
}

/// The check digit of ISO 7064 MOD 11,10 for digits 0 to 9.
pub fn check_digit(digits: &[u8]) -> u8 {
    let product = digits.iter().fold(10u32, |product, digit| {
        let sum = (product + u32::from(*digit)) % 10;
        (if sum == 0 { 10 } else { sum }) * 2 % 11
    });
    ((11 - product) % 10) as u8
}
