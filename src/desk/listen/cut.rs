//! Scanned text cut into codes: where each begins, and what stands behind it.

use crate::handover::digits::{self, Scanned};
use crate::handover::pieces::{HEADER_BYTES, Piece};

/// Digits of the preamble and of the name behind it.
pub(super) const HEAD_CHARS: usize = digits::PREAMBLE.len() + 2;
/// No code holds a piece of more bytes: version 40 at error correction L, 7,089 digits (ISO/IEC
/// 18004, table 7; from memory).
const PIECE_BYTES_MOST: usize = digits::bytes_in(7_089);

/// Whether a short text could be the beginning of a preamble: ten characters, all different, then
/// the same in mirror order as far as it goes.
pub(super) fn begins_a_preamble(text: &str) -> bool {
    let chars: Vec<char> = text.trim().chars().collect();
    let half = digits::PREAMBLE.len() / 2;
    let (ten, mirror) = chars.split_at(chars.len().min(half));
    let differ = ten.iter().enumerate().all(|(at, c)| !ten[..at].contains(c));
    chars.len() < HEAD_CHARS && differ && mirror.iter().zip(ten.iter().rev()).all(|(a, b)| a == b)
}

/// Whether a text that could be the beginning of a preamble and the line behind it are one whole
/// preamble where the line alone has a damaged one.
pub(super) fn is_one_preamble(begun: &str, line: &str) -> bool {
    let is_whole = |text: &str| digits::unwrap(text).is_ok_and(|it| !it.preamble_damaged);
    begins_a_preamble(begun) && !is_whole(line) && is_whole(&format!("{begun}{line}"))
}

/// The text cut before each preamble in it; what stands before the first stays with the first.
/// Empty where there is none.
pub(super) fn codes_in(text: &str) -> Vec<&str> {
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
pub(super) fn behind(code: &str) -> &str {
    let end = digits::unwrap(code).ok().and_then(|scanned| {
        let end = end_told(&scanned)?;
        code.char_indices().nth(end)
    });
    end.map_or("", |(byte, _)| &code[byte..])
}

/// How many characters of the text are needed before the code in it can be whole; zero where that
/// cannot be told yet, or what is told is more than any code holds.
pub(super) fn chars_needed(code: &str) -> usize {
    let scanned = digits::unwrap(code).ok();
    scanned.and_then(|scanned| end_told(&scanned)).unwrap_or(0)
}

/// Where the code ends by its own header, counted in characters.
fn end_told(scanned: &Scanned) -> Option<usize> {
    let total = Piece::bytes_told(&scanned.bytes(HEADER_BYTES + 1)?)?;
    (total <= PIECE_BYTES_MOST).then(|| scanned.end_after(total))
}

/// Where the first preamble begins, in bytes.
fn preamble_in(text: &str) -> Option<usize> {
    let begins = digits::unwrap(text).ok()?.begins;
    text.char_indices().nth(begins).map(|(byte, _)| byte)
}
