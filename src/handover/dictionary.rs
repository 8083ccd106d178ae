//! The frozen list of stored words that travel as numbers. Position in the file is the number.
//!
//! The list is never edited once records are out; words may be added at its end. A word that is not
//! in it travels as text, which older desks can read: a word that is added today is of use only to
//! tablets whose desk has it, so add what is to come, as the versions of rules, before it is needed.
//! Knows nothing of what the words mean.

use std::collections::HashMap;
use std::sync::OnceLock;

const LIST: &str = include_str!("dictionary_1.txt");

fn words() -> &'static [&'static str] {
    static WORDS: OnceLock<Vec<&'static str>> = OnceLock::new();
    WORDS.get_or_init(|| LIST.split_whitespace().collect())
}

/// The number of a word.
pub fn number(word: &str) -> Option<u16> {
    static NUMBERS: OnceLock<HashMap<&'static str, u16>> = OnceLock::new();
    NUMBERS
        .get_or_init(|| words().iter().copied().zip(0u16..).collect())
        .get(word)
        .copied()
}

/// The word of a number.
pub fn word(number: u16) -> Option<&'static str> {
    words().get(usize::from(number)).copied()
}

/// How many words it has.
pub fn len() -> usize {
    words().len()
}
