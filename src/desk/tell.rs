//! The desk's answers in words.

use super::big::big;
use super::inbox::{Kept, RecordHead, Tablet};
use super::{DeskError, Said};
use crate::words::Words;

/// An answer in lines, each ending in a line feed.
pub fn tell(said: &Said, words: &Words) -> String {
    let lines = match said {
        Said::Piece {
            index,
            count,
            missing,
            again,
        } => {
            let args = [
                ("index", i64::from(*index).into()),
                ("count", i64::from(*count).into()),
                ("missing", listed(missing).into()),
                ("many", missing.len().into()),
            ];
            vec![if *again {
                words.say_with("desk-piece-again", &args)
            } else {
                words.say_with("desk-piece", &args)
            }]
        }
        Said::Kept(kept) => return kept_lines(kept, words),
        Said::TabletAsks(tablet) => {
            let six = tablet.fingerprint().join(" ");
            vec![
                words.say_with("desk-tablet-asks", &[("words", six.into())]),
                words.say("desk-tablet-asks-do"),
            ]
        }
        Said::TabletKnown(tablet) => vec![tablet_line(tablet, words)],
        Said::Refused(error) => return refused(error, words),
    };
    lines.join("\n") + "\n"
}

/// What is known of a tablet that shows its key.
fn tablet_line(tablet: &Tablet, words: &Words) -> String {
    let mut args = vec![
        ("name", tablet.name.as_str().into()),
        ("words", tablet.public.fingerprint().join(" ").into()),
    ];
    match tablet.struck {
        None => words.say_with("desk-tablet-known", &args),
        Some(since) => {
            args.push(("since", words.date_time(since.local()).into()));
            words.say_with("desk-tablet-known-struck", &args)
        }
    }
}

/// A refusal: what happened, and on the next line what to do.
pub(super) fn refused(error: &DeskError, words: &Words) -> String {
    let explained = error.explained(words);
    format!("{}\n{}\n", explained.happened, explained.now_do)
}

fn kept_lines(kept: &Kept, words: &Words) -> String {
    let head = &kept.head;
    let number = [("number", head.number.into())];
    let mut lines = vec![
        if kept.again {
            words.say_with("desk-kept-again", &number)
        } else {
            words.say_with("desk-kept", &number)
        },
        record(head, words),
    ];
    lines.extend(marks(head, words));
    if let Some(since) = kept.key_retired {
        let args = [
            ("since", words.date_time(since.local()).into()),
            ("tablet", head.tablet.as_str().into()),
        ];
        lines.push(words.say_with("desk-key-was-retired", &args));
    }
    lines.push(words.say("desk-receipt"));
    let receipt = grouped(&head.receipt);
    format!("{}\n\n{}\n  {receipt}\n", lines.join("\n"), big(&receipt))
}

/// Bed, initials, when and by whom.
fn record(head: &RecordHead, words: &Words) -> String {
    let args = [
        ("bed", head.bed.as_str().into()),
        ("initials", head.initials.as_str().into()),
        ("began", words.date_time(head.began.local()).into()),
        ("specialist", head.specialist.as_str().into()),
    ];
    words.say_with("desk-record", &args)
}

/// What has to be said beside a record, the gravest first.
fn marks(head: &RecordHead, words: &Words) -> Vec<String> {
    let mut marks = Vec::new();
    if 0 < head.reviews_now {
        let args = [("count", head.reviews_now.into())];
        marks.push(words.say_with("desk-reviews-now", &args));
    }
    if !head.is_signed {
        marks.push(words.say("desk-not-signed"));
    }
    if head.replaces.is_some() {
        marks.push(words.say("desk-amends"));
    }
    if let Some(number) = head.replaced_by {
        marks.push(words.say_with("desk-replaced-by", &[("number", number.into())]));
    }
    marks
}

/// One record's lines in the list.
pub(super) fn inbox_lines(head: &RecordHead, words: &Words) -> String {
    let args = [
        ("number", head.number.into()),
        ("record", record(head, words).into()),
        ("arrived", words.date_time(head.arrived.local()).into()),
        ("tablet", head.tablet.as_str().into()),
        ("receipt", grouped(&head.receipt).into()),
    ];
    let mut text = words.say_with("desk-inbox-line", &args) + "\n";
    for mark in marks(head, words) {
        text += &format!("   {mark}\n");
    }
    text
}

/// Whole numbers with commas between.
pub(super) fn listed(numbers: &[u8]) -> String {
    let numbers: Vec<String> = numbers.iter().map(u8::to_string).collect();
    numbers.join(", ")
}

/// Ten digits in groups of three, three and four.
fn grouped(digits: &str) -> String {
    match (digits.get(..3), digits.get(3..6), digits.get(6..)) {
        (Some(a), Some(b), Some(c)) => format!("{a} {b} {c}"),
        _ => digits.to_owned(),
    }
}
