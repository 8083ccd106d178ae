//! What a scanner and a keyboard made of the test code.

use crate::handover::test_code::{self, Slips, TEST_NAME};
use crate::handover::{VersionCap, digits, qr};

/// What came behind the code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Suffix {
    /// Nothing.
    Nothing,
    /// Enter.
    Enter,
    /// The tabulator key.
    Tab,
    /// Other characters.
    Other(String),
}

/// The answer to a test code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScannerReport {
    /// The largest version that the code stands for.
    pub cap: VersionCap,
    /// How many digits it has.
    pub digits: usize,
    /// What the keyboard gave for the digits 0 to 9.
    pub keys: [char; 10],
    /// What came before the code.
    pub prefix: String,
    /// What came behind it.
    pub suffix: Suffix,
    /// What was lost, doubled or wrong.
    pub slips: Slips,
    /// Characters a second; nothing if all came at once.
    pub per_second: Option<u32>,
}

/// A text that is not named as a test code is one if fewer than one in so many digits differ.
const UNNAMED_SLIPS: usize = 4;
/// Nothing is compared that is longer than so many test codes.
const LENGTHS_MOST: usize = 2;
/// What stands for a character that is no digit.
const NO_DIGIT: u8 = 10;

impl ScannerReport {
    /// Whether a text calls itself a test code.
    pub(super) fn is_named(text: &str) -> bool {
        digits::unwrap(text).is_ok_and(|scanned| scanned.name == TEST_NAME)
    }

    /// The report, if the text is a test code.
    pub(super) fn of(
        text: &str,
        known: Option<[char; 10]>,
        ended_by: Option<char>,
        per_second: Option<u32>,
    ) -> Option<Self> {
        let scanned = digits::unwrap(text).ok();
        let plain = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'];
        let keys = scanned
            .as_ref()
            .filter(|scanned| !scanned.preamble_damaged)
            .map(|scanned| scanned.keys)
            .or(known)
            .unwrap_or(plain);
        let digit = |c: char| (0u8..).zip(&keys).find(|(_, key)| **key == c);
        let chars: Vec<char> = text.chars().collect();
        let begins = match &scanned {
            Some(scanned) => scanned.begins,
            None => chars.iter().position(|c| digit(*c).is_some())?,
        };
        let ends = chars.iter().rposition(|c| digit(*c).is_some())? + 1;
        let heard: Vec<u8> = chars
            .get(begins..ends)?
            .iter()
            .map(|c| digit(*c).map_or(NO_DIGIT, |(digit, _)| digit))
            .collect();
        let length = |cap: &VersionCap| qr::digits_most(cap.version());
        let cap = VersionCap::ALL
            .into_iter()
            .min_by_key(|cap| length(cap).abs_diff(told_length(&heard).unwrap_or(heard.len())))?;
        let sent: Vec<u8> = test_code::text(cap).bytes().map(|it| it - b'0').collect();
        let is_named = scanned.is_some_and(|scanned| scanned.name == TEST_NAME);
        let differ = sent.len().abs_diff(heard.len());
        if LENGTHS_MOST * sent.len() < heard.len()
            || (!is_named && sent.len() <= differ * UNNAMED_SLIPS)
        {
            return None;
        }
        let slips = test_code::slips(&sent, &heard);
        if !is_named && sent.len() <= slips.count() * UNNAMED_SLIPS {
            return None;
        }
        let behind: String = chars[ends..].iter().collect();
        let suffix = match (behind.is_empty(), ended_by) {
            (true, None) => Suffix::Nothing,
            (true, Some('\r' | '\n')) => Suffix::Enter,
            (true, Some('\t')) => Suffix::Tab,
            (_, ended_by) => Suffix::Other(behind.chars().chain(ended_by).collect()),
        };
        Some(Self {
            cap,
            digits: sent.len(),
            keys,
            prefix: chars[..begins].iter().collect(),
            suffix,
            slips,
            per_second,
        })
    }

    /// Whether the digits arrive as digits.
    pub fn is_plain(&self) -> bool {
        ('0'..='9').eq(self.keys)
    }
}

/// The length that the text tells of itself, if it is one that a test code has.
fn told_length(heard: &[u8]) -> Option<usize> {
    let from = digits::PREAMBLE.len() + 2;
    let told = heard.get(from..from + 4)?;
    let told = told.iter().fold(0, |told, it| told * 10 + usize::from(*it));
    let lengths = VersionCap::ALL.map(|cap| qr::digits_most(cap.version()));
    lengths.contains(&told).then_some(told)
}
