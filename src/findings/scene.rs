//! All that a rule may look at, and small questions that several rules ask.

use super::rule::Verdict;
use super::{Limit, Missing, Policy};
use crate::growth::{Age, Growth};
use crate::record::{At, Feed, Folded, LastDay, Pair, StoolColour, Tap, TapWhat, WallTime};
use crate::rhythm::Summary;

/// The first seconds of a feed, in which pain may be felt: about 20 (common practice).
pub(super) const FIRST_SECONDS_MS: u64 = 20_000;

/// What a visit is judged by.
pub(super) struct Scene<'a> {
    pub pair: &'a Pair,
    pub visit: &'a Folded,
    pub rhythms: &'a [Summary],
    pub growth: &'a Growth,
    pub policy: &'a Policy,
    pub now: WallTime,
}

impl Scene<'_> {
    /// The age now; `None` before birth.
    pub fn age(&self) -> Option<Age> {
        Age::of(self.pair.birth, self.now)
    }

    /// Whole hours of age now.
    pub fn age_hours(&self) -> Option<i64> {
        self.age().map(Age::hours)
    }

    pub fn limit(&self, limit: Limit) -> i64 {
        self.policy.limit(limit)
    }

    /// Something told of the last 24 hours; lacking if it was not.
    pub fn told<T>(
        &self,
        what: impl Fn(&LastDay) -> Option<T>,
        word: Missing,
    ) -> Result<T, Verdict> {
        let told = self.visit.last_day.as_ref().and_then(what);
        told.ok_or_else(|| Verdict::Lacks(vec![word]))
    }

    /// Stool colours told or seen in the visit.
    pub fn stools(&self) -> Vec<StoolColour> {
        let told = self.visit.last_day.as_ref().and_then(|day| day.stool);
        let seen = self.visit.nappies.iter().filter_map(|(_, it)| it.stool);
        told.into_iter().chain(seen).collect()
    }

    /// Whether urates were told or seen; `None` if nobody said.
    pub fn urates(&self) -> Option<bool> {
        let told = self.visit.last_day.as_ref().and_then(|day| day.urates);
        let seen = self.visit.nappies.iter().any(|(_, it)| it.urates);
        if seen { Some(true) } else { told }
    }

    /// Each feed with its rhythm, where there is one.
    pub fn fed(&self) -> impl Iterator<Item = (&Feed, &Summary)> {
        self.visit.feeds.iter().zip(self.rhythms)
    }
}

/// What was told of pain in one latch: from the baby's going on to the next going on or the end.
pub(super) struct Latch {
    /// How long it lasted, in milliseconds; `None` while it does.
    pub lasted_ms: Option<u64>,
    /// Each score with the milliseconds since the baby went on. What is told once the baby has come
    /// off is of the latch before.
    pub scores: Vec<(u64, i64)>,
}

/// The latches of a feed, in order.
pub(super) fn latches(feed: &Feed) -> Vec<Latch> {
    let scored = scored_pains(feed);
    let is_on = |tap: &Tap| tap.what == TapWhat::On;
    let begun = feed.taps.iter().enumerate().filter(|(_, tap)| is_on(tap));
    let latch = |(place, on): (usize, &Tap)| {
        let after = &feed.taps[place + 1..];
        let next = after.iter().find(|tap| is_on(tap)).map(|tap| tap.at);
        let is_end = |tap: &&Tap| matches!(tap.what, TapWhat::Off | TapWhat::On | TapWhat::End);
        let end = after.iter().find(is_end);
        let is_of_it = |at: At| on.at <= at && next.is_none_or(|next| at < next);
        Latch {
            lasted_ms: end.map(|end| end.at.since_ms(on.at)),
            scores: scored
                .iter()
                .filter(|(_, at, _)| is_of_it(At::ms(*at)))
                .map(|(since_on, _, score)| (*since_on, *score))
                .collect(),
        }
    };
    begun.map(latch).collect()
}

/// Pain scores of a feed told later than the first seconds after the baby last went on, each with
/// its time.
pub(super) fn late_pains(feed: &Feed) -> Vec<(u64, i64)> {
    scored_pains(feed)
        .into_iter()
        .filter(|(since_on, _, _)| FIRST_SECONDS_MS < *since_on)
        .map(|(_, at, score)| (at, score))
        .collect()
}

/// Pain scores of a feed: milliseconds since the baby last went on, time, score.
pub(super) fn scored_pains(feed: &Feed) -> Vec<(u64, u64, i64)> {
    let on_before = |at| {
        let on = |tap: &&Tap| tap.what == TapWhat::On && tap.at <= at;
        feed.taps
            .iter()
            .rfind(on)
            .map_or(feed.started, |tap| tap.at)
    };
    feed.pains
        .iter()
        .filter_map(|it| {
            let score = i64::from(it.pain.value()?);
            Some((it.at.since_ms(on_before(it.at)), it.at.as_ms(), score))
        })
        .collect()
}

/// Held with numbers, or judged and not held.
pub(super) fn held_if(holds: bool, numbers: &[i64]) -> Verdict {
    if holds {
        Verdict::Held(numbers.to_vec())
    } else {
        Verdict::NotHeld
    }
}

/// One missing thing.
pub(super) fn lacks(missing: Missing) -> Verdict {
    Verdict::Lacks(vec![missing])
}

/// Turns the early return of a rule into its verdict.
pub(super) fn settle(verdict: Result<Verdict, Verdict>) -> Verdict {
    verdict.unwrap_or_else(|early| early)
}
