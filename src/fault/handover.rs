//! The handover's errors: a code, a record or a key that was refused.

use super::Explained;
use crate::handover::HandoverError;
use crate::words::{Arg, Words};

/// A handover's error in words: `err-handover-<word>` and `rec-handover-<word>`.
pub fn handover(error: &HandoverError, words: &Words) -> Explained {
    let args: Vec<(&str, Arg)> = error
        .numbers()
        .into_iter()
        .map(|(name, number)| (name, number.into()))
        .collect();
    Explained::of(&format!("handover-{}", error.word()), &args, words)
}
