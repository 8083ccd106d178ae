//! The errors of a ward policy file: where it is wrong, and how.

use super::Explained;
use crate::findings::{Limit, PolicyError, PolicyNeeded, PolicyWrong, Unit};
use crate::words::{Arg, Words};

/// A policy file's error in words, with line and column.
pub fn policy(error: &PolicyError, words: &Words) -> Explained {
    let (name, more): (_, Vec<(&str, Arg)>) = match &error.wrong {
        PolicyWrong::TooLarge { most } => ("policy-too-large", vec![("most", (*most).into())]),
        PolicyWrong::NotToml { .. } => ("policy-not-toml", vec![]),
        PolicyWrong::UnknownKey { key } => {
            ("policy-unknown-key", vec![("key", key.as_str().into())])
        }
        PolicyWrong::Missing { key } => ("policy-missing", vec![("key", (*key).into())]),
        PolicyWrong::WrongKind { key, needed } => (
            "policy-needs",
            vec![
                ("key", key.as_str().into()),
                ("needed", needed_there(*needed, words).into()),
            ],
        ),
        PolicyWrong::OutOfBounds {
            limit,
            given,
            low,
            high,
        } => {
            let shown = |value: i64| Arg::from(as_written(*limit, value, words));
            (
                "policy-out-of-bounds",
                vec![
                    ("key", limit.as_word().into()),
                    ("given", shown(*given)),
                    ("low", shown(*low)),
                    ("high", shown(*high)),
                ],
            )
        }
        PolicyWrong::Disordered { lower, higher } => (
            "policy-disordered",
            vec![
                ("lower", lower.as_word().into()),
                ("higher", higher.as_word().into()),
            ],
        ),
    };
    let mut args = vec![("line", error.line.into()), ("column", error.column.into())];
    args.extend(more);
    Explained::of(name, &args, words)
}

/// A threshold's number as the file writes it.
#[allow(clippy::cast_precision_loss)]
fn as_written(limit: Limit, value: i64, words: &Words) -> String {
    match limit.facts().unit {
        // Tenths of a per cent and of a degree are far below 2^52.
        Unit::TenthsPercent | Unit::TenthsCelsius => words.number(value as f64 / 10.0, 1),
        _ => value.to_string(),
    }
}

fn needed_there(needed: PolicyNeeded, words: &Words) -> String {
    let id = match needed {
        PolicyNeeded::ShortText => "needed-policy-text",
        PolicyNeeded::Date => "needed-policy-date",
        PolicyNeeded::Table => "needed-policy-table",
        PolicyNeeded::OneDecimal => "needed-policy-decimal",
        PolicyNeeded::Whole => "needed-policy-whole",
    };
    words.say(id)
}
