//! What a keyboard-wedge scanner types, to whole codes: any layout and prefix, with or without a
//! suffix, run together, doubled, or cut in two.
//!
//! Pure: characters in, what became of them out. Reads no keyboard and opens nothing. Every code
//! begins with the preamble, so text is cut before each preamble and each cut is offered by itself.

use crate::handover::limit::TEXT_CHARS_MOST;
use crate::handover::pieces::{HEADER_BYTES, Piece};
use crate::handover::{Collector, HandoverError, Offered, digits};

/// Digits of the preamble and of the name behind it.
const HEAD_CHARS: usize = digits::PREAMBLE.len() + 2;

/// Listens to one scanner.
#[derive(Default)]
pub struct Listener {
    collector: Collector,
    /// Typed since the last separator and not taken yet.
    line: String,
    /// Whether a code was taken since the last separator: what follows it is its suffix.
    taken: bool,
    /// A code that was cut: the next line may be its rest.
    cut: Option<String>,
}

impl Listener {
    /// One that has heard nothing.
    pub fn new() -> Self {
        Self::default()
    }

    /// Hears what was typed since the last time. A code is taken as soon as it is whole; what was
    /// wrong is told when the line ends or the next code begins.
    pub fn push(&mut self, typed: &str) -> Vec<Offered> {
        let mut heard = Vec::new();
        for c in typed.chars() {
            // Enter, Tab and whatever else a scanner is set to send in between.
            if c.is_control() {
                self.end_line(&mut heard);
            } else {
                self.line.push(c);
            }
            if TEXT_CHARS_MOST <= self.line.len() {
                self.take_whole(&mut heard);
                if TEXT_CHARS_MOST <= self.line.len() {
                    self.end_line(&mut heard);
                }
            }
        }
        self.take_whole(&mut heard);
        heard
    }

    /// Nothing more comes: tells what is left.
    pub fn finish(&mut self) -> Vec<Offered> {
        let mut heard = Vec::new();
        self.end_line(&mut heard);
        heard
    }

    /// Hears one whole scan.
    pub fn scan(&mut self, text: &str) -> Vec<Offered> {
        let mut heard = self.push(text);
        heard.extend(self.finish());
        heard
    }

    /// Lets go of a record, so that it can be scanned again from the beginning.
    pub fn forget(&mut self, transfer: u32) {
        self.collector.forget(transfer);
    }

    /// The pieces still missing of records begun: transfer, count, missing.
    pub fn missing(&self) -> Vec<(u32, u8, Vec<u8>)> {
        self.collector
            .waiting()
            .into_iter()
            .map(|it| (it.transfer, it.count, it.missing))
            .collect()
    }

    /// Takes what is certainly at its end: codes before another preamble, and a last one that is
    /// whole.
    fn take_whole(&mut self, heard: &mut Vec<Offered>) {
        let mut codes = codes_in(&self.line);
        let Some(last) = codes.pop() else { return };
        for code in codes {
            heard.push(self.collector.offer(code));
            self.taken = true;
        }
        match self.collector.offer_whole(last) {
            // It may go on.
            None => self.line = last.to_owned(),
            Some(offered) => {
                heard.push(offered);
                self.taken = true;
                self.cut = None;
                // What stands behind it: a suffix, or the beginning of the next code.
                self.line = behind(last).to_owned();
            }
        }
    }

    fn end_line(&mut self, heard: &mut Vec<Offered>) {
        self.take_whole(heard);
        let line = std::mem::take(&mut self.line);
        let after_a_code = std::mem::take(&mut self.taken);
        if line.trim().is_empty() {
            return;
        }
        if !codes_in(&line).is_empty() {
            // A new code begins here, so an older cut one will not go on.
            self.cut = None;
            let offered = self.collector.offer(&line);
            self.told(line, offered, heard);
        } else if let Some(begun) = self.cut.take() {
            let joined = begun + line.as_str();
            let offered = self.collector.offer(&joined);
            self.told(joined, offered, heard);
        } else if !after_a_code {
            let offered = self.collector.offer(&line);
            self.told(line, offered, heard);
        }
    }

    /// Notes whether the text may go on in the next line.
    fn told(&mut self, text: String, offered: Offered, heard: &mut Vec<Offered>) {
        let is_cut = match &offered {
            Offered::Refused(HandoverError::PieceCut { .. } | HandoverError::CodeDamaged) => true,
            Offered::Refused(HandoverError::NotOurs) => begins_a_preamble(&text),
            _ => false,
        };
        if is_cut && text.len() < TEXT_CHARS_MOST {
            self.cut = Some(text);
        }
        heard.push(offered);
    }
}

impl std::fmt::Debug for Listener {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Listener")
    }
}

/// Whether a short text could be the beginning of a preamble: ten characters, all different, then
/// the same in mirror order as far as it goes.
fn begins_a_preamble(text: &str) -> bool {
    let chars: Vec<char> = text.trim().chars().collect();
    let half = digits::PREAMBLE.len() / 2;
    let (ten, mirror) = chars.split_at(chars.len().min(half));
    let differ = ten.iter().enumerate().all(|(at, c)| !ten[..at].contains(c));
    chars.len() < HEAD_CHARS && differ && mirror.iter().zip(ten.iter().rev()).all(|(a, b)| a == b)
}

/// The text cut before each preamble in it; what stands before the first stays with the first.
/// Empty where there is none.
fn codes_in(text: &str) -> Vec<&str> {
    let mut begins = Vec::new();
    let mut from = 0;
    while let Some(at) = preamble_in(&text[from..]) {
        begins.push(from + at);
        // Past this preamble: at least its first character.
        let step = text[from + at..]
            .chars()
            .take(HEAD_CHARS)
            .map(char::len_utf8)
            .sum::<usize>();
        from += at + step;
    }
    if begins.is_empty() {
        return Vec::new();
    }
    let ends = begins.iter().skip(1).copied().chain([text.len()]);
    let begins = [0].into_iter().chain(begins.iter().skip(1).copied());
    begins
        .zip(ends)
        .map(|(begin, end)| &text[begin..end])
        .collect()
}

/// What stands behind the whole code that a text begins with.
fn behind(code: &str) -> &str {
    let end = digits::unwrap(code).ok().and_then(|scanned| {
        let total = Piece::bytes_told(&scanned.bytes(HEADER_BYTES + 1)?)?;
        code.char_indices().nth(scanned.end_after(total))
    });
    end.map_or("", |(byte, _)| &code[byte..])
}

/// Where the first preamble begins, in bytes.
fn preamble_in(text: &str) -> Option<usize> {
    let scanned = digits::unwrap(text).ok()?;
    let at = scanned.end_after(0).checked_sub(HEAD_CHARS)?;
    text.char_indices().nth(at).map(|(byte, _)| byte)
}
