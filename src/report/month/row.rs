//! One figure as a row: a count, a time, a share, a spread. What is told of too few, or of nothing,
//! says so. Knows nothing of what the figures are about.

use super::card::{Row, Shown};
use super::{Share, Spread};

/// Hours and minutes, in milliseconds.
const HOUR_MS: u64 = 3_600_000;
const MINUTE_MS: u64 = 60_000;

impl Shown<'_> {
    pub(super) fn count(&self, label: &str, count: u32) -> Row {
        self.row(label, self.words.number(count.into(), 0))
    }

    /// Hours and whole minutes.
    pub(super) fn time(&self, label: &str, ms: u64) -> Row {
        let whole = |count: u64| i64::try_from(count).unwrap_or(i64::MAX).into();
        let args = [
            ("hours", whole(ms / HOUR_MS)),
            ("minutes", whole(ms % HOUR_MS / MINUTE_MS)),
        ];
        self.row(label, self.words.say_with("month-hours", &args))
    }

    pub(super) fn share(&self, label: &str, share: Share, quiet: &str) -> Row {
        self.share_of(self.words.say(label), share, self.words.say(quiet))
    }

    /// So many of so many; in per cent too, if they are enough for it.
    pub(super) fn share_of(&self, label: String, share: Share, quiet: String) -> Row {
        let words = self.words;
        let counts = [("of", share.of.into()), ("all", share.out_of.into())];
        let value = match share.percent() {
            _ if share.out_of == 0 => words.say("month-nothing"),
            None => words.say_with("month-share", &counts),
            Some(percent) => {
                let [of, all] = counts;
                let args = [of, all, ("percent", words.percent(percent, 0).into())];
                words.say_with("month-share-percent", &args)
            }
        };
        Row {
            label,
            value,
            quiet,
        }
    }

    /// A spread of times, in minutes and seconds.
    pub(super) fn times(&self, label: &str, spread_ms: &Spread) -> Row {
        // A time is not negative, and shorter than 2^52 ms.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let clock = |ms: f64| self.words.duration_clock(ms.round() as u64);
        self.spread(label, spread_ms, clock)
    }

    /// A spread of shares, in per cent.
    pub(super) fn percents(&self, label: &str, spread: &Spread) -> Row {
        self.spread(label, spread, |percent| self.words.percent(percent, 0))
    }

    fn spread(&self, label: &str, spread: &Spread, put: impl Fn(f64) -> String) -> Row {
        let words = self.words;
        let count = [("count", spread.count.into())];
        let (value, quiet) = match &spread.quartiles {
            None => (words.say("month-too-few"), "month-too-few-quiet"),
            Some(it) => {
                let args = [
                    ("median", put(it.median).into()),
                    ("low", put(it.low).into()),
                    ("high", put(it.high).into()),
                ];
                (words.say_with("month-spread", &args), "month-spread-quiet")
            }
        };
        Row {
            label: words.say(label),
            value,
            quiet: words.say_with(quiet, &count),
        }
    }

    /// The rows, or one that says that there is none: of what was looked for, or for want of a look.
    pub(super) fn or_none(&self, rows: Vec<Row>, label: &str, was_looked: bool) -> Vec<Row> {
        if !rows.is_empty() {
            return rows;
        }
        let value = if was_looked {
            "month-none-noted"
        } else {
            "month-nothing"
        };
        vec![self.row(label, self.words.say(value))]
    }

    fn row(&self, label: &str, value: String) -> Row {
        Row {
            label: self.words.say(label),
            value,
            quiet: String::new(),
        }
    }
}
