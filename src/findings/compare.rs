//! Before and after an adjustment: signs, pain, rate, sucks per swallow. It tells what was seen on
//! either side; whether the one came from the other it does not know.
//!
//! Both sides are looked at over watched time only, for at most [`COMPARED_MS`] each, and a side
//! ends at the next adjustment. With less than [`AFTER_LEAST_MS`] watched afterwards nothing is
//! told yet.

use crate::record::{Adjustment, At, Feed, Pain, Sign, SignState, Tap, TapWhat};
use crate::rhythm::{self, Rate};

/// Watched time that must have gone by after an adjustment, in milliseconds. Common practice: some
/// thirty sucks.
pub const AFTER_LEAST_MS: u64 = 30_000;
/// Watched time that is looked at on either side, at most, in milliseconds. Common practice: long
/// enough for a few runs, short enough to be about the adjustment.
pub const COMPARED_MS: u64 = 120_000;

/// One side of a comparison.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// Its start.
    pub from: At,
    /// Its end.
    pub to: At,
    /// Watched milliseconds in it.
    pub watched_ms: u64,
    /// The last pain told in it.
    pub pain: Option<Pain>,
    /// Sucks a minute within runs, with its 95 % interval; `None` with too few.
    pub sucks_per_min: Option<Rate>,
    /// Sucks a swallow, with its 95 % interval; `None` with too few.
    pub sucks_per_swallow: Option<Rate>,
}

/// A sign whose state is another one afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignShift {
    /// Which.
    pub sign: Sign,
    /// Before the adjustment; `None` for not looked yet.
    pub before: Option<SignState>,
    /// At the end of what is compared.
    pub after: Option<SignState>,
}

/// What was seen on either side.
#[derive(Debug, Clone, PartialEq)]
pub struct Sides {
    /// Before.
    pub before: Stretch,
    /// After.
    pub after: Stretch,
    /// Signs that changed, in the order of [`Sign::ALL`].
    pub signs: Vec<SignShift>,
}

/// An adjustment compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// What was tried.
    pub what: Adjustment,
    /// When.
    pub at: At,
    /// Watched milliseconds since then, up to what is compared.
    pub watched_ms: u64,
    /// Both sides; `None` while it is too early to tell.
    pub sides: Option<Sides>,
}

/// How two values with their intervals stand to each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shift {
    /// Lower: the intervals do not meet.
    Lower,
    /// Higher: the intervals do not meet.
    Higher,
    /// The intervals meet: a difference cannot be told.
    NotClear,
}

/// How `after` stands to `before`: told only if their intervals do not meet. That asks for more
/// than a test of the difference would.
pub fn shift(before: Rate, after: Rate) -> Shift {
    if after.high < before.low {
        Shift::Lower
    } else if before.high < after.low {
        Shift::Higher
    } else {
        Shift::NotClear
    }
}

/// Compares the adjustment of a place in a feed of a place; `None` if there is none there. `now`
/// ends a feed that runs.
pub fn compare(feeds: &[Feed], feed: usize, tried: usize, now: At) -> Option<Comparison> {
    let it = feeds.get(feed)?;
    let adjustment = it.adjustments.get(tried)?;
    let at = adjustment.at;
    let end = it.ended.map_or(now, |end| end.at);
    let next = it.adjustments.get(tried + 1).map_or(end, |next| next.at);
    let previous = tried
        .checked_sub(1)
        .and_then(|tried| it.adjustments.get(tried))
        .map_or(it.started, |previous| previous.at);
    let unwatched = unwatched(&it.taps, end);
    let to = later(at, next, &unwatched);
    let watched_ms = watched(at, to, &unwatched);
    let sides = (AFTER_LEAST_MS <= watched_ms).then(|| {
        let from = earlier(previous, at, &unwatched);
        Sides {
            before: stretch(it, from, at, &unwatched),
            after: stretch(it, at, to, &unwatched),
            signs: shifts(it, at, to),
        }
    });
    Some(Comparison {
        what: adjustment.what,
        at,
        watched_ms,
        sides,
    })
}

/// The stretches that nobody watched.
fn unwatched(taps: &[Tap], end: At) -> Vec<(At, At)> {
    let mut stretches = Vec::new();
    let mut since = None;
    for tap in taps {
        match tap.what {
            TapWhat::Unwatched => {
                since.get_or_insert(tap.at);
            }
            TapWhat::Watched => stretches.extend(since.take().map(|since| (since, tap.at))),
            _ => {}
        }
    }
    stretches.extend(since.map(|since| (since, end.max(since))));
    stretches
}

fn watched(from: At, to: At, unwatched: &[(At, At)]) -> u64 {
    let away: u64 = unwatched
        .iter()
        .map(|(since, until)| (*until).min(to).since_ms((*since).max(from)))
        .sum();
    to.since_ms(from).saturating_sub(away)
}

/// The time, not after `end`, until which [`COMPARED_MS`] were watched from `from` on.
fn later(from: At, end: At, unwatched: &[(At, At)]) -> At {
    let mut to = from.plus_ms(COMPARED_MS);
    for (since, until) in unwatched {
        if *since < to && from < *until {
            to = to.plus_ms(until.since_ms((*since).max(from)));
        }
    }
    to.min(end).max(from)
}

/// The time, not before `start`, from which [`COMPARED_MS`] were watched until `to`.
fn earlier(start: At, to: At, unwatched: &[(At, At)]) -> At {
    let mut from = to.minus_ms(COMPARED_MS);
    for (since, until) in unwatched.iter().rev() {
        if from < *until && *since < to {
            from = from.minus_ms((*until).min(to).since_ms(*since));
        }
    }
    from.max(start).min(to)
}

fn stretch(feed: &Feed, from: At, to: At, unwatched: &[(At, At)]) -> Stretch {
    let within = |at: At| from <= at && at < to;
    let mut taps = Vec::new();
    let mut state = [None; 2];
    for tap in feed.taps.iter().filter(|tap| tap.at < from) {
        match tap.what {
            TapWhat::Off | TapWhat::On => state[0] = Some(tap.what),
            TapWhat::Unwatched | TapWhat::Watched => state[1] = Some(tap.what),
            _ => {}
        }
    }
    let held = state.into_iter().flatten();
    taps.extend(held.map(|what| Tap { at: from, what }));
    taps.extend(feed.taps.iter().filter(|tap| within(tap.at)));
    let way = rhythm::way(&taps);
    Stretch {
        from,
        to,
        watched_ms: watched(from, to, unwatched),
        pain: feed
            .pains
            .iter()
            .rev()
            .find(|pain| within(pain.at))
            .map(|pain| pain.pain),
        sucks_per_min: way.sucks_per_min,
        sucks_per_swallow: way.sucks_per_swallow,
    }
}

/// The signs that stand otherwise at `to` than they did at `at`. What was seen before the baby came
/// off and went on again still stands: an attachment tried anew is compared with the one before.
fn shifts(feed: &Feed, at: At, to: At) -> Vec<SignShift> {
    let state = |sign: Sign, until: &dyn Fn(At) -> bool| {
        feed.signs
            .iter()
            .rfind(|change| change.sign == sign && until(change.at))
            .and_then(|change| change.state)
    };
    Sign::ALL
        .iter()
        .map(|sign| SignShift {
            sign: *sign,
            before: state(*sign, &|time| time <= at),
            after: state(*sign, &|time| time <= to),
        })
        .filter(|shift| shift.before != shift.after)
        .collect()
}
