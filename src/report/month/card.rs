//! The month's figures as cards of rows, in the order in which they are shown. Which figures there
//! are, under which heading; how one is put in words is the file `row`. Knows no screen.

use super::counted::FLOW_WATCHED_LEAST_MS;
use super::{Month, PAIN_FROM_SCORE, Share};
use crate::record::{Adjustment, Sign};
use crate::report::phrase;
use crate::words::Words;

/// The most signs, and the most adjustments, that are shown: one glance.
const SHOWN_MOST: usize = 5;

/// One figure in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// What it is.
    pub label: String,
    /// The figure.
    pub value: String,
    /// What it is out of, or how it is to be read; empty if there is nothing to say.
    pub quiet: String,
}

/// Figures that belong together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// What they are about.
    pub heading: String,
    /// In order.
    pub rows: Vec<Row>,
}

/// In words, in the order in which they are shown. None of a month without a visit.
pub fn cards(month: &Month, words: &Words) -> Vec<Card> {
    if month.visits == 0 {
        return Vec::new();
    }
    let shown = Shown { words };
    let card = |heading: &str, rows| Card {
        heading: words.say(heading),
        rows,
    };
    vec![
        card("month-visits-heading", shown.visits(month)),
        card("month-milk-heading", shown.milk(month)),
        card("month-pain-heading", shown.pain(month)),
        card("month-signs-heading", shown.signs(month)),
        card("month-tried-heading", shown.tried(month)),
        card("month-nipple-heading", shown.nipple(month)),
    ]
}

/// The words that figures are shown in.
pub(super) struct Shown<'a> {
    pub(super) words: &'a Words,
}

impl Shown<'_> {
    fn visits(&self, month: &Month) -> Vec<Row> {
        vec![
            self.count("month-visits", month.visits),
            self.count("month-pairs", month.pairs),
            self.count("month-feeds", month.feeds),
            self.time("month-watched", month.watched_ms),
            self.share(
                "level-medical-review-now",
                month.review,
                "month-review-quiet",
            ),
            self.share("month-signed", month.signed, "month-signed-quiet"),
            self.share("month-receipt", month.receipt, "month-receipt-quiet"),
            self.share("month-waiting", month.waiting, "month-receipt-quiet"),
        ]
    }

    fn milk(&self, month: &Month) -> Vec<Row> {
        let minutes = i64::try_from(FLOW_WATCHED_LEAST_MS / 60_000).unwrap_or_default();
        let args = [("minutes", minutes.into())];
        let quiet = self.words.say_with("month-flow-quiet", &args);
        vec![
            self.share_of(self.words.say("month-flow"), month.flow, quiet),
            self.times("month-first-flow", &month.first_flow_ms),
            self.times("month-flow-time", &month.flow_ms),
            self.percents("month-sucking", &month.sucking_percent),
        ]
    }

    fn pain(&self, month: &Month) -> Vec<Row> {
        let label = |id| {
            self.words
                .say_with(id, &[("score", PAIN_FROM_SCORE.into())])
        };
        let quiet = || self.words.say("month-pain-quiet");
        vec![
            self.share("month-pain-told", month.pain_told, "month-pain-told-quiet"),
            self.share_of(label("month-pain-first"), month.pain_first, quiet()),
            self.share_of(label("month-pain-last"), month.pain_last, quiet()),
        ]
    }

    /// The signs most often not seen, the largest share first; equal shares in the usual order.
    fn signs(&self, month: &Month) -> Vec<Row> {
        let each = || Sign::ALL.iter().copied().zip(month.not_seen);
        let mut missed: Vec<(Sign, Share)> = each().filter(|(_, it)| 0 < it.of).collect();
        missed.sort_by(|(_, one), (_, other)| other.larger(*one));
        let rows = missed.into_iter().take(SHOWN_MOST).map(|(sign, share)| {
            let quiet = self.words.say("month-signs-quiet");
            self.share_of(phrase::of(self.words, "sign", sign), share, quiet)
        });
        let was_looked = each().any(|(_, it)| 0 < it.out_of);
        self.or_none(rows.collect(), "month-signs-all", was_looked)
    }

    /// What was tried most often first; equally often in the usual order.
    fn tried(&self, month: &Month) -> Vec<Row> {
        let each = Adjustment::ALL.iter().copied().zip(month.tried);
        let mut tried: Vec<(Adjustment, u32)> = each.filter(|(_, times)| 0 < *times).collect();
        tried.sort_by_key(|(_, times)| std::cmp::Reverse(*times));
        let rows = tried.into_iter().take(SHOWN_MOST).map(|(what, times)| Row {
            label: phrase::of(self.words, "adjustment", what),
            value: self
                .words
                .say_with("month-times", &[("count", times.into())]),
            quiet: String::new(),
        });
        self.or_none(rows.collect(), "month-tried-all", 0 < month.feeds)
    }

    fn nipple(&self, month: &Month) -> Vec<Row> {
        [
            ("month-nipple-misshapen", month.nipple_misshapen),
            ("month-nipple-blanched", month.nipple_blanched),
            ("month-nipple-damaged", month.nipple_damaged),
        ]
        .into_iter()
        .map(|(label, share)| self.share(label, share, "month-nipple-quiet"))
        .collect()
    }
}
