//! The month's figures, and which count is out of what: the only place where that is said. Knows no
//! words and no ward policy: the same feeds look the same on every ward.

use super::{Share, Spread};
use crate::findings::Limit;
use crate::record::{Adjustment, Sign};

/// How many days it looks back.
pub const DAYS: i64 = 30;
/// A feed tells of milk flowing if it was watched for at least so long, in milliseconds (common
/// practice: no flow in a shorter look says nothing).
pub const FLOW_WATCHED_LEAST_MS: u64 = 180_000;
/// Pain from this score on is counted: the default of the rule on pain at the end of a feed,
/// whatever the ward has set.
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
