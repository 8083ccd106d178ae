//! A code that carries no record: digits in a known order, to see what a scanner makes of them.
//!
//! Text: the preamble, the name 99, the text's own length in four digits, then blocks of ten that
//! each hold all ten digits, in steps of 1, 3, 7 and 9 from a start that rises by 3. It fills a code of the
//! largest version that is allowed, so a scanner that reads it reads every code. The code can be
//! printed: it holds nothing of anybody.

use super::{Code, HandoverError, VersionCap, digits, qr};

/// The name of a test code: no piece has it.
pub const TEST_NAME: u8 = 99;
/// Steps of the blocks: the numbers below ten that have no factor in common with it.
const STEPS: [usize; 4] = [1, 3, 7, 9];
const BLOCK_DIGITS: usize = 10;
/// By how much each block begins higher. With 1, a block of step 9 and the next of step 1 would look
/// like a preamble.
const BLOCK_BEGINS: usize = 3;

/// The text of the test code for this largest version.
pub fn text(cap: VersionCap) -> String {
    let length = qr::digits_most(cap.version());
    let mut text = format!("{}{TEST_NAME:02}{length:04}", digits::PREAMBLE);
    let left = length - text.len();
    text.extend((0..left).map(|place| {
        let (block, at) = (place / BLOCK_DIGITS, place % BLOCK_DIGITS);
        let digit = (BLOCK_BEGINS * block + at * STEPS[block % STEPS.len()]) % 10;
        char::from(b'0' + digit as u8)
    }));
    text
}

/// The code itself.
///
/// # Errors
/// Never: the text is made for the version.
pub fn code(cap: VersionCap) -> Result<Code, HandoverError> {
    qr::draw_digits_at(&text(cap), cap.version())
}

/// What became of the digits of a test code on their way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Slips {
    /// Digits that did not arrive.
    pub lost: usize,
    /// Digits that arrived once more.
    pub doubled: usize,
    /// Digits that arrived as others.
    pub wrong: usize,
    /// The place of the first slip, from 1.
    pub first: Option<usize>,
}

impl Slips {
    /// How many there were.
    pub const fn count(&self) -> usize {
        self.lost + self.doubled + self.wrong
    }
}

/// The fewest slips by which digits that were sent became those that were heard (the edit distance
/// of Levenshtein 1966, by the usual table).
pub fn slips(sent: &[u8], heard: &[u8]) -> Slips {
    // What is the same at both ends needs no table.
    let pairs = sent.iter().zip(heard);
    let begin = pairs.take_while(|(a, b)| a == b).count();
    let (sent, heard) = (&sent[begin..], &heard[begin..]);
    let pairs = sent.iter().rev().zip(heard.iter().rev());
    let end = pairs.take_while(|(a, b)| a == b).count();
    let slips = in_a_table(&sent[..sent.len() - end], &heard[..heard.len() - end]);
    Slips {
        first: slips.first.map(|first| begin + first),
        ..slips
    }
}

fn in_a_table(sent: &[u8], heard: &[u8]) -> Slips {
    let width = heard.len() + 1;
    let mut cost = vec![0u32; (sent.len() + 1) * width];
    for (place, cell) in cost.iter_mut().enumerate() {
        *cell = u32::try_from(place / width + place % width).unwrap_or(u32::MAX);
    }
    for (row, a) in sent.iter().enumerate() {
        for (column, b) in heard.iter().enumerate() {
            let at = row * width + column;
            let step = cost[at] + u32::from(a != b);
            cost[at + width + 1] = step.min(1 + cost[at + 1]).min(1 + cost[at + width]);
        }
    }
    let mut slips = Slips::default();
    let (mut row, mut column) = (sent.len(), heard.len());
    while 0 < row || 0 < column {
        let here = cost[row * width + column];
        let before = |rows: usize, columns: usize| {
            let fits = rows <= row && columns <= column;
            fits.then(|| cost[(row - rows) * width + column - columns])
        };
        let same = 0 < row && 0 < column && sent[row - 1] == heard[column - 1];
        if same && before(1, 1) == Some(here) {
            (row, column) = (row - 1, column - 1);
            continue;
        }
        if before(1, 0).is_some_and(|cost| cost < here) {
            slips.lost += 1;
            row -= 1;
        } else if before(0, 1).is_some_and(|cost| cost < here) {
            slips.doubled += 1;
            column -= 1;
        } else {
            slips.wrong += 1;
            (row, column) = (row - 1, column - 1);
        }
        slips.first = Some(row + 1);
    }
    slips
}
