//! A comparison of before and after as the lines of a table. The numbers come from `findings`; only
//! words and places are chosen here.

use super::{say, ui};
use crate::findings::{AFTER_LEAST_MS, Comparison, Shift, Sides, shift};
use crate::record::{At, Pain, SignState};
use crate::rhythm::Rate;
use crate::words::Words;

/// "Free the head, at 3:20", counted from a feed's start.
pub fn heading(compared: &Comparison, started: At, words: &Words) -> String {
    words.say_with(
        "bedside-compare-heading",
        &[
            (
                "what",
                say::stored(words, "adjustment", compared.what).into(),
            ),
            (
                "time",
                words.duration_clock(compared.at.since_ms(started)).into(),
            ),
        ],
    )
}

/// How much was watched, or that it is too early to tell.
pub fn quiet(compared: &Comparison, words: &Words) -> String {
    let seconds = |ms: u64| i64::try_from(ms / 1000).unwrap_or(i64::MAX);
    match &compared.sides {
        None => words.say_with(
            "bedside-compare-early",
            &[
                ("seconds", seconds(compared.watched_ms).into()),
                ("least", seconds(AFTER_LEAST_MS).into()),
            ],
        ),
        Some(sides) => words.say_with(
            "bedside-compare-spans",
            &[
                (
                    "before",
                    words.duration_clock(sides.before.watched_ms).into(),
                ),
                ("after", words.duration_clock(sides.after.watched_ms).into()),
            ],
        ),
    }
}

/// One line a thing; none while it is too early.
pub fn rows(compared: &Comparison, words: &Words) -> Vec<ui::CompareRow> {
    let Some(sides) = &compared.sides else {
        return vec![];
    };
    let mut rows = vec![
        pain(sides, words),
        rate(
            "bedside-compare-rate",
            [sides.before.sucks_per_min, sides.after.sucks_per_min],
            0,
            words,
        ),
        rate(
            "bedside-compare-ratio",
            [
                sides.before.sucks_per_swallow,
                sides.after.sucks_per_swallow,
            ],
            1,
            words,
        ),
    ];
    rows.extend(sides.signs.iter().map(|sign| {
        row(
            say::stored(words, "sign", sign.sign),
            [state(sign.before, words), state(sign.after, words)],
            words.say("bedside-compare-changed"),
        )
    }));
    rows
}

fn row(label: String, [before, after]: [String; 2], told: String) -> ui::CompareRow {
    ui::CompareRow {
        label: label.into(),
        before: before.into(),
        after: after.into(),
        told: told.into(),
    }
}

fn state(state: Option<SignState>, words: &Words) -> String {
    state.map_or_else(
        || words.say("state-not-looked"),
        |state| say::stored(words, "state", state),
    )
}

fn pain(sides: &Sides, words: &Words) -> ui::CompareRow {
    let both = [sides.before.pain, sides.after.pain];
    let told = |pain: Option<Pain>| match pain {
        None => words.say("bedside-compare-none"),
        Some(Pain::CannotSay) => words.say("bedside-pain-cannot-say"),
        Some(Pain::Score(score)) => score.value().to_string(),
    };
    let difference = match both.map(|pain| pain.and_then(Pain::value)) {
        [Some(before), Some(after)] if after < before => words.say("bedside-compare-lower"),
        [Some(before), Some(after)] if before < after => words.say("bedside-compare-higher"),
        [Some(_), Some(_)] => words.say("bedside-compare-same"),
        _ => String::new(),
    };
    row(
        words.say("bedside-compare-pain"),
        both.map(told),
        difference,
    )
}

fn rate(label: &str, both: [Option<Rate>; 2], decimals: usize, words: &Words) -> ui::CompareRow {
    let told = |rate: Option<Rate>| {
        rate.map_or_else(
            || words.say("bedside-compare-few"),
            |rate| {
                words.say_with(
                    "bedside-compare-interval",
                    &[
                        ("value", words.number(rate.value, decimals).into()),
                        ("low", words.number(rate.low, decimals).into()),
                        ("high", words.number(rate.high, decimals).into()),
                    ],
                )
            },
        )
    };
    let difference = match both {
        [Some(before), Some(after)] => words.say(match shift(before, after) {
            Shift::Lower => "bedside-compare-lower",
            Shift::Higher => "bedside-compare-higher",
            Shift::NotClear => "bedside-compare-not-clear",
        }),
        _ => String::new(),
    };
    row(words.say(label), both.map(told), difference)
}
