//! The month's figures: the sums of its visits taken together. Which count is out of what is said
//! here, and nowhere else. Knows no words and no ward policy: the same feeds look the same on every
//! ward.

use std::collections::BTreeSet;

use super::feed_sum::{FeedSum, RhythmSum};
use super::{Share, Spread, VisitSum};
use crate::findings::Limit;
use crate::record::{Adjustment, NippleAfter, Pain, Sign, SignState, WallTime};

/// How many days it looks back.
pub const DAYS: i64 = 30;
/// A day of 24 hours, in milliseconds.
const DAY_MS: i64 = 24 * 3_600_000;
/// A feed tells of milk flowing if it was watched for at least so long, in milliseconds (common
/// practice: milk often flows within the first two minutes, and a shorter look says nothing).
pub const FLOW_WATCHED_LEAST_MS: u64 = 180_000;
/// Pain from this score on is counted: the published default of the rule on pain at the end of a
/// feed, whatever the ward has set.
pub const PAIN_FROM_SCORE: i64 = Limit::PainEnd.facts().default;

/// The figures of the last days.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Month {
    /// Visits.
    pub visits: u32,
    /// Pairs that were visited.
    pub pairs: u32,
    /// Feeds in these visits.
    pub feeds: u32,
    /// Time watched in all feeds.
    pub watched_ms: u64,
    /// Visits with a finding of medical review now, out of those that were judged.
    pub review: Share,
    /// Visits signed, out of all.
    pub signed: Share,
    /// Visits with the desk's receipt, out of those signed.
    pub receipt: Share,
    /// Visits still waiting for it, out of those signed.
    pub waiting: Share,
    /// Feeds in which milk flowing was seen, out of those watched for [`FLOW_WATCHED_LEAST_MS`].
    pub flow: Share,
    /// From the feed's start to the first flow, in milliseconds, over the feeds of `flow` in which
    /// it was seen.
    pub first_flow_ms: Spread,
    /// Time of milk flowing in a feed, in milliseconds, over all feeds that `flow` is out of: 0 where
    /// none was seen.
    pub flow_ms: Spread,
    /// Share of the time watched on the breast spent sucking, in per cent, over the same feeds.
    pub sucking_percent: Spread,
    /// Feeds in which a word about pain was told ("cannot say" is one), out of all.
    pub pain_told: Share,
    /// Feeds with pain from [`PAIN_FROM_SCORE`] on at the first word, out of those in which the
    /// first word was a score.
    pub pain_first: Share,
    /// The same at the last word.
    pub pain_last: Share,
    /// For each sign, by [`Sign::index`]: visits in which it was not seen at the last word, out of
    /// those in which it was seen or not seen at the last word.
    pub not_seen: [Share; Sign::ALL.len()],
    /// How often each adjustment was tried, in the order of [`Adjustment::ALL`].
    pub tried: [u32; Adjustment::ALL.len()],
    /// Feeds after which the nipple was flattened, slanted or creased, out of those after which it
    /// was told of.
    pub nipple_misshapen: Share,
    /// Feeds after which its tip was white, out of the same.
    pub nipple_blanched: Share,
    /// Feeds after which it was cracked, blistered or bleeding, out of the same.
    pub nipple_damaged: Share,
}

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

fn is_within(began: WallTime, now: WallTime) -> bool {
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
