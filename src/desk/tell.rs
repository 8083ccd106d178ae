//! The desk's answers in words.

use super::big::big;
use super::inbox::{Kept, RecordHead, Tablet};
use super::listen::{ScannerReport, Suffix};
use super::table::UnknownWord;
use super::{DeskError, Said};
use crate::handover::Waiting;
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
        Said::Test(report) => scanner_lines(report, words),
        Said::TabletKnown(tablet) => vec![tablet_line(tablet, words)],
        Said::Refused(error) => return refused(error, words),
    };
    lines.join("\n") + "\n"
}

/// A code that takes longer than this is a burden: people hold the tablet meanwhile. A choice of this
/// project.
const CODE_S_MOST: u64 = 15;

/// What a scanner and a keyboard made of the test code, and what to do about it.
fn scanner_lines(report: &ScannerReport, words: &Words) -> Vec<String> {
    let keys: String = report.keys.iter().collect();
    let mut lines = vec![if report.is_plain() {
        words.say("desk-scanner-plain")
    } else {
        words.say_with("desk-scanner-keys", &[("keys", keys.into())])
    }];
    lines.push(if report.prefix.is_empty() {
        words.say("desk-scanner-no-prefix")
    } else {
        let prefix = [("prefix", seen(&report.prefix).into())];
        words.say_with("desk-scanner-prefix", &prefix)
    });
    lines.push(match &report.suffix {
        Suffix::Nothing => words.say("desk-scanner-no-suffix"),
        Suffix::Enter => words.say("desk-scanner-enter"),
        Suffix::Tab => words.say("desk-scanner-tab"),
        Suffix::Other(suffix) => {
            let suffix = [("suffix", seen(suffix).into())];
            words.say_with("desk-scanner-suffix", &suffix)
        }
    });
    match report.per_second {
        Some(per_second) if 0 < per_second => {
            let seconds = report.digits as u64 / u64::from(per_second) + 1;
            let args = [
                ("speed", per_second.into()),
                ("seconds", i64::try_from(seconds).unwrap_or(i64::MAX).into()),
            ];
            lines.push(words.say_with("desk-scanner-speed", &args));
            if CODE_S_MOST < seconds {
                lines.push(words.say("desk-scanner-slow"));
            }
        }
        _ => lines.push(words.say("desk-scanner-no-speed")),
    }
    let version = [("version", i64::from(report.cap.version()).into())];
    match report.slips.first {
        None => {
            let digits = [("digits", report.digits.into())];
            lines.push(words.say_with("desk-scanner-all", &digits));
            lines.push(words.say_with("desk-scanner-good", &version));
        }
        Some(first) => {
            let args = [
                ("digits", report.digits.into()),
                ("lost", report.slips.lost.into()),
                ("doubled", report.slips.doubled.into()),
                ("wrong", report.slips.wrong.into()),
                ("first", first.into()),
            ];
            lines.push(words.say_with("desk-scanner-loss", &args));
            lines.push(words.say_with("desk-scanner-bad", &version));
        }
    }
    lines
}

/// Characters as they can be shown in a line: those that move the cursor by their number.
fn seen(text: &str) -> String {
    text.chars()
        .map(|c| match c {
            c if c.is_control() => format!("<{:02X}>", u32::from(c)),
            c => c.to_string(),
        })
        .collect()
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

/// What is told beside a receipt: which record it is for, and what has to be said with it.
pub fn kept_about(kept: &Kept, words: &Words) -> Vec<String> {
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
    lines
}

fn kept_lines(kept: &Kept, words: &Words) -> String {
    let mut lines = kept_about(kept, words);
    lines.push(words.say("desk-receipt"));
    let receipt = grouped(&kept.head.receipt);
    format!("{}\n\n{}\n  {receipt}\n", lines.join("\n"), big(&receipt))
}

/// Bed, initials, when and by whom.
pub fn record(head: &RecordHead, words: &Words) -> String {
    let args = [
        ("bed", head.bed.as_str().into()),
        ("initials", head.initials.as_str().into()),
        ("began", words.date_time(head.began.local()).into()),
        ("specialist", head.specialist.as_str().into()),
    ];
    words.say_with("desk-record", &args)
}

/// What has to be said beside a record, the gravest first.
pub fn marks(head: &RecordHead, words: &Words) -> Vec<String> {
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

/// Doubts about a record of a later version: a sentence for each word that this one does not know.
pub fn unknown_lines(unknown: &[UnknownWord], words: &Words) -> Vec<String> {
    let line = |it: &UnknownWord| {
        let of = words.say(&format!("desk-unknown-{}", it.of));
        let args = [("of", of.into()), ("word", it.word.as_str().into())];
        words.say_with("desk-unknown-word", &args)
    };
    unknown.iter().map(line).collect()
}

/// What is still missing of a record begun.
pub fn missing_line(waiting: &Waiting, words: &Words) -> String {
    let args = [
        ("missing", listed(&waiting.missing).into()),
        ("many", waiting.missing.len().into()),
        ("count", i64::from(waiting.count).into()),
    ];
    words.say_with("desk-still-missing", &args)
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
fn listed(numbers: &[u8]) -> String {
    let numbers: Vec<String> = numbers.iter().map(u8::to_string).collect();
    numbers.join(", ")
}

/// Ten digits in groups of three, three and four.
pub fn grouped(digits: &str) -> String {
    match (digits.get(..3), digits.get(3..6), digits.get(6..)) {
        (Some(a), Some(b), Some(c)) => format!("{a} {b} {c}"),
        _ => digits.to_owned(),
    }
}
