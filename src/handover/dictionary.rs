//! The frozen list of stored words that travel as numbers. Position in the file is the number.
//!
//! The list belongs to wire version 1 and is never edited once records are out: a word that is not
//! in it travels as text. Knows nothing of what the words mean.

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
