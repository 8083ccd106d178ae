//! The sums of the visits taken together. What each figure counts is said where it stands, in
//! `counted`; nothing is put in words here, and the order of the visits does not matter.

use std::collections::BTreeSet;

use super::feed_sum::{FeedSum, RhythmSum};
use super::{DAYS, FLOW_WATCHED_LEAST_MS, Month, PAIN_FROM_SCORE, Share, Spread, VisitSum};
use crate::record::{Adjustment, NippleAfter, Pain, Sign, SignState, WallTime};

/// A day of 24 hours, in milliseconds.
const DAY_MS: i64 = 24 * 3_600_000;

impl Month {
    /// The figures of the visits begun in the [`DAYS`] times 24 hours up to and including now. A
    /// visit that begins later (a clock was set) is left out.
    pub fn of(sums: &[VisitSum], now: WallTime) -> Self {
        let visits: Vec<&VisitSum> = sums.iter().filter(|it| is_within(it.began, now)).collect();
        let feeds: Vec<&FeedSum> = visits.iter().flat_map(|it| &it.feeds).collect();
        let mut month = Self {
            visits: count(visits.len()),
            pairs: count(
                visits
                    .iter()
                    .map(|it| it.pair)
                    .collect::<BTreeSet<_>>()
                    .len(),
            ),
            feeds: count(feeds.len()),
            watched_ms: rhythms(&feeds).map(|it| it.watched_ms).sum(),
            not_seen: std::array::from_fn(|index| not_seen(&visits, Sign::ALL[index])),
            tried: std::array::from_fn(|index| tried(&feeds, Adjustment::ALL[index])),
            ..Self::default()
        };
        month.take_handing_over(&visits);
        month.take_milk(&feeds);
        month.take_pain(&feeds);
        month.take_nipples(&feeds);
        month
    }

    fn take_handing_over(&mut self, visits: &[&VisitSum]) {
        self.review = Share::of_told(visits.iter().filter_map(|it| it.review));
        self.signed = Share::of_told(visits.iter().map(|it| it.signed));
        let signed = || visits.iter().filter(|it| it.signed);
        self.receipt = Share::of_told(signed().map(|it| it.receipt));
        self.waiting = Share::of_told(signed().map(|it| !it.receipt));
    }

    fn take_milk(&mut self, feeds: &[&FeedSum]) {
        let watched = || rhythms(feeds).filter(|it| FLOW_WATCHED_LEAST_MS <= it.watched_ms);
        let first_flows: Vec<_> = watched().filter_map(|it| it.first_flow_ms).collect();
        let flows: Vec<_> = watched().map(|it| it.flow_ms).collect();
        let tenths = watched().filter_map(|it| it.sucking_tenths_percent);
        let percents: Vec<_> = tenths.map(|it| f64::from(it) / 10.0).collect();
        self.flow = Share::of_told(watched().map(|it| it.first_flow_ms.is_some()));
        self.first_flow_ms = Spread::of(&floats(&first_flows));
        self.flow_ms = Spread::of(&floats(&flows));
        self.sucking_percent = Spread::of(&percents);
    }

    fn take_pain(&mut self, feeds: &[&FeedSum]) {
        let told = || feeds.iter().filter_map(|it| it.pain);
        let is_much = |pain: Pain| pain.value().map(|score| PAIN_FROM_SCORE <= score.into());
        self.pain_told = Share::of_told(feeds.iter().map(|it| it.pain.is_some()));
        self.pain_first = Share::of_told(told().filter_map(|it| is_much(it.first)));
        self.pain_last = Share::of_told(told().filter_map(|it| is_much(it.last)));
    }

    fn take_nipples(&mut self, feeds: &[&FeedSum]) {
        let out_of_told = |these: &[NippleAfter]| {
            let told = feeds.iter().filter_map(|it| it.nipple_after);
            Share::of_told(told.map(|it| these.contains(&it)))
        };
        self.nipple_misshapen = out_of_told(&[NippleAfter::Flattened, NippleAfter::Creased]);
        self.nipple_blanched = out_of_told(&[NippleAfter::Blanched]);
        self.nipple_damaged = out_of_told(&[NippleAfter::Damaged]);
    }
}

/// Whether a visit that began then is one of the [`DAYS`] up to now.
pub fn is_within(began: WallTime, now: WallTime) -> bool {
    (0..=DAYS * DAY_MS).contains(&now.since_ms(began))
}

fn rhythms<'a>(feeds: &[&'a FeedSum]) -> impl Iterator<Item = &'a RhythmSum> {
    feeds.iter().filter_map(|it| it.rhythm.as_ref())
}

fn not_seen(visits: &[&VisitSum], sign: Sign) -> Share {
    let words = visits.iter().flat_map(|it| &it.signs);
    let of_sign = words.filter(|(it, _)| *it == sign);
    Share::of_told(of_sign.filter_map(|(_, state)| match state {
        SignState::Seen => Some(false),
        SignState::NotSeen => Some(true),
        SignState::Unclear => None,
    }))
}

fn tried(feeds: &[&FeedSum], what: Adjustment) -> u32 {
    let all = feeds.iter().flat_map(|it| &it.tried);
    count(all.filter(|it| **it == what).count())
}

fn count(many: usize) -> u32 {
    u32::try_from(many).unwrap_or(u32::MAX)
}

// Times of a feed are far below 2^52 ms, so nothing is lost.
#[allow(clippy::cast_precision_loss)]
fn floats(values_ms: &[u64]) -> Vec<f64> {
    values_ms.iter().map(|it| *it as f64).collect()
}
