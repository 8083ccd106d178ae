//! Small sentences that several screens share: age, change, times, stored words.
//!
//! Words come from `words`, numbers from the rooms below; nothing is decided here.

use crate::growth::{Age, Growth};
use crate::record::{StoredWord, WallTime};
use crate::words::Words;

/// The word of a stored value: `thing` and its stored word make the message id.
pub fn stored<T: StoredWord>(words: &Words, thing: &str, value: T) -> String {
    coded(words, thing, value.word())
}

/// The word of a stored word; a word of another version is shown as it was written.
pub fn coded(words: &Words, thing: &str, word: &str) -> String {
    let id = format!("{thing}-{}", word.replace('_', "-"));
    if words.has(&id) {
        words.say(&id)
    } else {
        word.to_owned()
    }
}

/// "day 3, 76 h".
pub fn age(words: &Words, age: Option<Age>) -> String {
    age.map_or_else(
        || words.say("frame-not-known"),
        |age| {
            words.say_with(
                "pair-days-hours",
                &[
                    ("days", i64::from(age.days()).into()),
                    ("hours", i64::from(age.hours()).into()),
                ],
            )
        },
    )
}

/// "−7.2 %", or nothing.
pub fn change(words: &Words, growth: &Growth) -> String {
    growth.change.as_ref().map_or_else(String::new, |change| {
        format!(
            "{} %",
            words.signed(f64::from(change.tenths_percent()) / 10.0, 1)
        )
    })
}

/// Minutes and seconds, as "6:42".
pub fn clock(ms: u64) -> String {
    let seconds = ms / 1000;
    format!("{}:{:02}", seconds / 60, seconds % 60)
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
