//! Small sentences that several screens share: title, age, change, times, stored words.
//!
//! Words come from `words`, numbers from the rooms below; nothing is decided here.

use crate::growth::{Age, Centile, Growth};
use crate::record::{PainAt, Pair, WallTime};
use crate::words::Words;

pub use crate::report::phrase::{of as stored, word as coded};

/// "Bay 2 · Bed 4 · A. W.": whom a screen is about.
pub fn title(pair: &Pair) -> String {
    format!("{} · {}", pair.bed.as_str(), pair.initials.as_str())
}

/// "3 days, 76 h".
pub fn age(words: &Words, age: Option<Age>) -> String {
    age.map_or_else(
        || words.say("frame-not-known"),
        |age| {
            words.say_with(
                "pair-days-hours",
                &[("days", age.days().into()), ("hours", age.hours().into())],
            )
        },
    )
}

/// "−7.2 %", or nothing.
pub fn change(words: &Words, growth: &Growth) -> String {
    growth
        .weight
        .and_then(|weight| weight.change)
        .map_or_else(String::new, |change| {
            words.signed_percent(tenths(change.tenths_percent()), 1)
        })
}

/// A whole number of tenths as a number.
#[allow(clippy::cast_precision_loss)]
pub fn tenths(tenths: i64) -> f64 {
    // Tenths of a per cent and of a centile are far below 2^52.
    tenths as f64 / 10.0
}

/// "30.6", or "<0.4" and ">99.6" at the ends.
pub fn centile(words: &Words, centile: Centile) -> String {
    match centile {
        Centile::Below => format!("<{}", words.number(0.4, 1)),
        Centile::Tenths(value) => words.number(tenths(value.into()), 1),
        Centile::Above => format!(">{}", words.number(99.6, 1)),
    }
}

/// The key of a pain row that is chosen: 0 to 10, -1 cannot say, -2 not told.
pub fn pain_key(told: Option<&PainAt>) -> i32 {
    told.map_or(-2, |told| told.pain.value().map_or(-1, i32::from))
}

/// Minutes and seconds with two places each, as "06:42".
pub fn wide_clock(ms: u64) -> String {
    let seconds = ms / 1000;
    format!("{:02}:{:02}", seconds / 60, seconds % 60)
}

/// A time of the day, with the date where it is another day than now.
pub fn time(words: &Words, time: WallTime, now: WallTime) -> String {
    let local = time.local().with_timezone(now.local().offset());
    if local.date_naive() == now.local().date_naive() {
        words.time(local)
    } else {
        words.date_time(local)
    }
}
