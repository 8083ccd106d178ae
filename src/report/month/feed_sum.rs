//! What one feed adds to the month: what was told of it, and what its taps mean. Nothing here is a
//! count over feeds, and no time of the day is kept.

use serde::{Deserialize, Serialize};

use crate::record::{Adjustment, Feed, NippleAfter, Pain};
use crate::rhythm::Summary;

/// One feed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct FeedSum {
    /// What the taps mean; `None` if that was not worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rhythm: Option<RhythmSum>,
    /// The first and the last word about pain, while it ran or after; `None` if never told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pain: Option<PainSum>,
    /// What was tried, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tried: Vec<Adjustment>,
    /// The nipple after it; `None` if not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nipple_after: Option<NippleAfter>,
}

/// What the taps of one feed mean.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct RhythmSum {
    /// Time watched.
    pub watched_ms: u64,
    /// From the feed's start to the first flow; `None` if milk flowing was not seen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_flow_ms: Option<u64>,
    /// Time of milk flowing.
    pub flow_ms: u64,
    /// Share of the time watched on the breast spent sucking, in tenths of a per cent; `None` if
    /// none was watched.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sucking_tenths_percent: Option<u16>,
}

/// The first and the last word about pain in one feed; the same if there was one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct PainSum {
    /// The first.
    pub first: Pain,
    /// The last.
    pub last: Pain,
}

impl FeedSum {
    pub(super) fn of(feed: &Feed, rhythm: Option<&Summary>) -> Self {
        let mut pains = feed.all_pains().map(|it| it.pain);
        let first = pains.next();
        let last = pains.last().or(first);
        Self {
            rhythm: rhythm.map(|it| RhythmSum::of(feed, it)),
            pain: first.zip(last).map(|(first, last)| PainSum { first, last }),
            tried: feed.adjustments.iter().map(|it| it.what).collect(),
            nipple_after: feed.nipple_after,
        }
    }
}

impl RhythmSum {
    fn of(feed: &Feed, rhythm: &Summary) -> Self {
        Self {
            watched_ms: rhythm.watched_ms,
            first_flow_ms: rhythm.first_flow.map(|at| at.since_ms(feed.started)),
            flow_ms: rhythm.totals_ms.flow,
            sucking_tenths_percent: rhythm.share_sucking.and_then(tenths_percent),
        }
    }
}

/// A share of 0 to 1 in tenths of a per cent.
fn tenths_percent(share: f64) -> Option<u16> {
    // Held within 0 to 1000, so nothing is lost.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let tenths = |share: f64| (share.clamp(0.0, 1.0) * 1000.0).round() as u16;
    share.is_finite().then(|| tenths(share))
}
