//! What a keyboard-wedge scanner types, to whole codes: any layout and prefix, with or without a
//! suffix, run together, doubled, or cut in two.
//!
//! Pure: characters in, what became of them out. Reads no keyboard, no clock, and opens nothing.
//! Every code begins with the preamble, so text is cut before each preamble and each cut is offered
//! by itself.

mod cut;
mod report;

use crate::handover::limit::TEXT_CHARS_MOST;
use crate::handover::{Collector, HandoverError, Offered, Waiting, digits};
use cut::{HEAD_CHARS, begins_a_preamble, behind, chars_needed, codes_in, is_one_preamble};
pub use report::{ScannerReport, Suffix};

/// What was heard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Heard {
    /// A code, and what became of it.
    Code(Offered),
    /// The test code, and what the scanner made of it.
    Test(Box<ScannerReport>),
}

/// Listens to one scanner.
#[derive(Default)]
pub struct Listener {
    collector: Collector,
    /// Typed since the last separator and not taken yet.
    line: String,
    /// How many characters that is.
    line_chars: usize,
    /// The line cannot hold a whole code before it has so many characters.
    needed_chars: usize,
    /// When the line's first and last characters came, and how many came with the first.
    times: Option<Times>,
    /// Whether a code was taken since the last separator: what follows it is its suffix.
    taken: bool,
    /// A code that was cut: the next line may be its rest.
    cut: Option<String>,
    /// What the keyboard gave for the ten digits, by the last sound code.
    keys: Option<[char; 10]>,
}

/// Times of a line, in milliseconds of any clock.
#[derive(Clone, Copy)]
struct Times {
    first_ms: i64,
    last_ms: i64,
    first_chars: usize,
}

impl Listener {
    /// One that has heard nothing.
    pub fn new() -> Self {
        Self::default()
    }

    /// Hears what was typed since the last time, at a time that is not known.
    pub fn push(&mut self, typed: &str) -> Vec<Heard> {
        self.push_at(typed, None)
    }

    /// Hears what was typed since the last time. A code is taken as soon as it is whole; what was
    /// wrong is told when the line ends or the next code begins. The time, in milliseconds, is for
    /// the test code's speed alone.
    pub fn push_at(&mut self, typed: &str, now_ms: Option<i64>) -> Vec<Heard> {
        let mut heard = Vec::new();
        for c in typed.chars() {
            // Enter, Tab and whatever else a scanner is set to send in between.
            if c.is_control() {
                self.end_line(Some(c), &mut heard);
                continue;
            }
            if self.line_chars == 0 {
                self.times = now_ms.map(|now_ms| Times {
                    first_ms: now_ms,
                    last_ms: now_ms,
                    first_chars: 0,
                });
            }
            self.line.push(c);
            self.line_chars += 1;
            if let (Some(times), Some(now_ms)) = (&mut self.times, now_ms) {
                times.last_ms = now_ms;
                times.first_chars += usize::from(now_ms == times.first_ms);
            }
            if TEXT_CHARS_MOST <= self.line.len() {
                self.take_whole(&mut heard);
                if TEXT_CHARS_MOST <= self.line.len() {
                    self.end_line(None, &mut heard);
                }
            }
        }
        self.take_whole(&mut heard);
        heard
    }

    /// Nothing more comes for now: tells what is left. The rest of a cut code may still follow.
    pub fn finish(&mut self) -> Vec<Heard> {
        let mut heard = Vec::new();
        self.end_line(None, &mut heard);
        heard
    }

    /// Hears one whole scan.
    pub fn scan(&mut self, text: &str) -> Vec<Heard> {
        let mut heard = self.push(text);
        heard.extend(self.finish());
        heard
    }

    /// Whether something was typed that is not told yet.
    pub fn is_within(&self) -> bool {
        !self.line.trim().is_empty()
    }

    /// Lets go of a record, so that it can be scanned again from the beginning.
    pub fn forget(&mut self, transfer: u32) {
        self.collector.forget(transfer);
    }

    /// The records begun of which pieces are still missing.
    pub fn waiting(&self) -> Vec<Waiting> {
        self.collector.waiting()
    }

    /// Takes what is certainly at its end: codes before another preamble, and a last one that is
    /// whole.
    fn take_whole(&mut self, heard: &mut Vec<Heard>) {
        if self.line_chars < self.needed_chars.max(HEAD_CHARS) {
            return;
        }
        let line = std::mem::take(&mut self.line);
        let mut codes = codes_in(&line);
        let Some(last) = codes.pop() else {
            self.line = line;
            return;
        };
        for code in codes {
            let one = self.one(code, None);
            heard.push(one);
            self.taken = true;
        }
        let rest = match self.collector.offer_whole(last) {
            // It may go on.
            None => {
                self.needed_chars = chars_needed(last).min(TEXT_CHARS_MOST);
                last
            }
            Some(offered) => {
                self.learn(last);
                heard.push(Heard::Code(offered));
                self.taken = true;
                self.cut = None;
                self.needed_chars = 0;
                // What stands behind it: a suffix, or the beginning of the next code.
                behind(last)
            }
        };
        self.line_chars = rest.chars().count();
        self.line = rest.to_owned();
    }

    fn end_line(&mut self, ended_by: Option<char>, heard: &mut Vec<Heard>) {
        self.take_whole(heard);
        let line = std::mem::take(&mut self.line);
        self.needed_chars = 0;
        let after_a_code = std::mem::take(&mut self.taken);
        if !line.trim().is_empty() {
            let cut_in_its_preamble = self.cut.take_if(|begun| is_one_preamble(begun, &line));
            if let Some(begun) = cut_in_its_preamble {
                self.tell(begun + line.as_str(), ended_by, heard);
            } else if !codes_in(&line).is_empty() {
                // A new code begins here, so an older cut one will not go on.
                self.cut = None;
                self.tell(line, ended_by, heard);
            } else if let Some(begun) = self.cut.take() {
                self.tell(begun + line.as_str(), ended_by, heard);
            } else if !after_a_code {
                self.tell(line, ended_by, heard);
            }
        }
        self.line_chars = 0;
    }

    /// Tells what a text is, and notes whether it may go on in the next line.
    fn tell(&mut self, text: String, ended_by: Option<char>, heard: &mut Vec<Heard>) {
        let told = self.one(&text, ended_by);
        let is_cut = match &told {
            Heard::Code(Offered::Refused(
                HandoverError::PieceCut { .. } | HandoverError::CodeDamaged,
            )) => true,
            Heard::Code(Offered::Refused(HandoverError::NotOurs)) => begins_a_preamble(&text),
            _ => false,
        };
        if is_cut && text.len() < TEXT_CHARS_MOST {
            self.cut = Some(text);
        }
        heard.push(told);
    }

    /// What one text is: a code, the test code, or, read through the layout that the last sound
    /// code showed, one of them with a damaged preamble.
    fn one(&mut self, text: &str, ended_by: Option<char>) -> Heard {
        if ScannerReport::is_named(text) {
            let per_second = self.per_second();
            if let Some(report) = ScannerReport::of(text, self.keys, ended_by, per_second) {
                return Heard::Test(Box::new(report));
            }
        }
        let mut offered = self.collector.offer(text);
        if offered == Offered::Refused(HandoverError::NotOurs)
            && let Some(keys) = self.keys
        {
            offered = self.collector.offer(&in_digits(text, &keys));
        }
        if let Offered::Refused(HandoverError::NotOurs | HandoverError::CodeDamaged) = offered {
            let per_second = self.per_second();
            if let Some(report) = ScannerReport::of(text, self.keys, ended_by, per_second) {
                return Heard::Test(Box::new(report));
            }
        } else if !matches!(offered, Offered::Refused(_)) {
            self.learn(text);
        }
        Heard::Code(offered)
    }

    /// Keeps the layout that a sound code showed.
    fn learn(&mut self, text: &str) {
        if let Ok(scanned) = digits::unwrap(text)
            && !scanned.preamble_damaged
        {
            self.keys = Some(scanned.keys);
        }
    }

    /// Characters a second of the present line, if it took any time.
    fn per_second(&self) -> Option<u32> {
        let times = self.times?;
        let ms = u64::try_from(times.last_ms - times.first_ms).ok()?;
        let chars = self.line_chars.checked_sub(times.first_chars)?;
        let per_second = (chars as u64 * 1_000).checked_div(ms)?;
        u32::try_from(per_second).ok()
    }
}

impl std::fmt::Debug for Listener {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Listener")
    }
}

/// The text with what the keyboard gave for each digit put right; what is no digit stays.
fn in_digits(text: &str, keys: &[char; 10]) -> String {
    let right = |c: char| {
        let digit = (0..).zip(keys).find(|(_, it)| **it == c);
        digit
            .and_then(|(digit, _)| char::from_digit(digit, 10))
            .unwrap_or(c)
    };
    text.chars().map(right).collect()
}
