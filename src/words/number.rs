//! Numbers as people of each language read them: decimal mark, a real minus sign, per cent, clock.
//!
//! Thousands are not grouped: weights in grams have four digits, and ward charts write them plain.

use super::Words;

/// The minus sign (U+2212), as wide as the plus sign. A hyphen is not one.
const MINUS: char = '\u{2212}';

impl Words {
    /// A number with so many decimals, as `7.1` or `7,1`; rounded to nearest, and never "−0.0".
    /// What is not a number is a dash.
    pub fn number(&self, value: f64, decimals: usize) -> String {
        self.written(value, decimals, false)
    }

    /// As [`Words::number`] with the sign always shown, as `+120` or `−7.1`; zero has none.
    pub fn signed(&self, value: f64, decimals: usize) -> String {
        self.written(value, decimals, true)
    }

    /// A number that is already in per cent, with its sign if negative: `7.1%` or `7,1 %`.
    pub fn percent(&self, value: f64, decimals: usize) -> String {
        self.number(value, decimals) + self.lang().before_percent() + "%"
    }

    /// As [`Words::percent`] with the sign always shown.
    pub fn signed_percent(&self, value: f64, decimals: usize) -> String {
        self.signed(value, decimals) + self.lang().before_percent() + "%"
    }

    /// Milliseconds as minutes and whole seconds gone by, `6:42`; from an hour on `1:06:42`.
    pub fn duration_clock(&self, ms: u64) -> String {
        let seconds = ms / 1000;
        let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
        if hours == 0 {
            format!("{minutes}:{seconds:02}")
        } else {
            format!("{hours}:{minutes:02}:{seconds:02}")
        }
    }

    fn written(&self, value: f64, decimals: usize, plus: bool) -> String {
        if !value.is_finite() {
            return "–".to_owned();
        }
        let digits = format!("{:.decimals$}", value.abs());
        let is_zero = digits.bytes().all(|b| b == b'0' || b == b'.');
        let sign = match (is_zero, value < 0.0) {
            (true, _) => None,
            (false, true) => Some(MINUS),
            (false, false) => plus.then_some('+'),
        };
        let mark = self.lang().decimal_mark();
        sign.into_iter()
            .chain(digits.chars().map(|c| if c == '.' { mark } else { c }))
            .collect()
    }
}
