//! The record's errors: a value that was refused.

use super::Explained;
use crate::record::RecordError;
use crate::words::{Arg, Words};

/// A record's error in words.
pub fn record(error: &RecordError, words: &Words) -> Explained {
    let (name, args): (_, Vec<(&str, Arg)>) = match error {
        RecordError::OutOfRange {
            what,
            given,
            low,
            high,
        } => (
            "record-out-of-range",
            vec![
                ("what", named(what, words)),
                ("given", (*given).into()),
                ("low", (*low).into()),
                ("high", (*high).into()),
            ],
        ),
        RecordError::Empty { what } => ("record-empty", vec![("what", named(what, words))]),
        RecordError::TooLong { what, most } => (
            "record-too-long",
            vec![("what", named(what, words)), ("most", (*most).into())],
        ),
        RecordError::NotPrintable { what } => {
            ("record-not-printable", vec![("what", named(what, words))])
        }
        RecordError::OutOfOrder { .. } => ("record-out-of-order", vec![]),
        RecordError::NothingToStrike(_) => ("record-nothing-to-strike", vec![]),
        RecordError::AlreadySigned => ("record-already-signed", vec![]),
        RecordError::Unreadable { .. } => ("record-unreadable", vec![]),
        RecordError::NotKnown { what } => ("record-not-known", vec![("what", named(what, words))]),
    };
    Explained::of(name, &args, words)
}

/// What a value is of, in the reader's language: message `value-<its name with hyphens>`.
fn named(what: &str, words: &Words) -> Arg {
    let id = format!("value-{}", what.to_lowercase().replace(' ', "-"));
    if words.has(&id) {
        words.say(&id).into()
    } else {
        words.say("value-other").into()
    }
}
