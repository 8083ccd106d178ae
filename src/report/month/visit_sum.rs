//! What one visit adds to the month, small enough to be kept beside it.
//!
//! It holds counts, times and coded words, and the pair's id so that pairs can be told apart; no
//! name, label, ward number or free text. It was made by one version of the rules and from one state
//! of the visit: whoever keeps it makes it anew when one of these changes. It does not know whether
//! an amendment replaces its visit.

use serde::{Deserialize, Serialize};

use super::feed_sum::FeedSum;
use crate::record::{Folded, PairId, Sign, SignState, Visit, WallTime};
use crate::rhythm::Summary;

/// What one visit adds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitSum {
    pub(super) pair: PairId,
    pub(super) began: WallTime,
    pub(super) signed: bool,
    pub(super) receipt: bool,
    /// Whether medical review now was found; `None` where it was not judged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) review: Option<bool>,
    /// Each sign that was looked at, in the order of [`Sign::ALL`], with the gravest state in which a
    /// feed left it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) signs: Vec<(Sign, SignState)>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) feeds: Vec<FeedSum>,
}

impl VisitSum {
    /// What a visit adds. `folded` is the fold of its journal, `rhythms` one summary for each feed of
    /// it, in order; `review` tells whether a finding of medical review now held, `None` where that
    /// was not judged.
    pub fn of(
        pair: PairId,
        visit: &Visit,
        folded: &Folded,
        rhythms: &[Summary],
        review: Option<bool>,
    ) -> Self {
        let feeds = folded.feeds.iter().enumerate();
        let signs = Sign::ALL.iter();
        Self {
            pair,
            began: visit.began,
            signed: folded.signed.is_some(),
            receipt: folded.receipt.is_some(),
            review,
            signs: signs
                .filter_map(|sign| Some((*sign, folded.sign_at_worst(*sign)?)))
                .collect(),
            feeds: feeds
                .map(|(index, feed)| FeedSum::of(feed, rhythms.get(index)))
                .collect(),
        }
    }

    /// When the visit began.
    pub fn began(&self) -> WallTime {
        self.began
    }
}
