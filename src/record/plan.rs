//! What is agreed at the end: plan items and when to look again.

use serde::{Deserialize, Serialize};

use super::word::words;
use super::{Coded, Text};

words!(
    /// A plan item of the usual kind.
    PlanWhat {
        /// Feed when the baby asks, and at least so often as the ward's guidance says.
        FeedOften = "feed_often",
        /// Plenty of skin to skin.
        SkinToSkin = "skin_to_skin",
        /// Wake the baby for feeds for now.
        WakeForFeeds = "wake_for_feeds",
        /// Keep the hold that worked today.
        KeepHold = "keep_hold",
        /// Work on wide mouth and chin in at each feed.
        WorkOnAttachment = "work_on_attachment",
        /// Compress the breast when sucking slows.
        Compressions = "compressions",
        /// Offer both breasts.
        BothBreasts = "both_breasts",
        /// Express after feeds.
        ExpressAfterFeeds = "express_after_feeds",
        /// Give expressed milk after feeds, by the agreed way.
        GiveExpressedMilk = "give_expressed_milk",
        /// Weigh again.
        WeighAgain = "weigh_again",
        /// Count nappies.
        CountNappies = "count_nappies",
        /// Care for the nipples.
        NippleCare = "nipple_care",
        /// Somebody to watch the next feed.
        WatchNextFeed = "watch_next_feed",
        /// A doctor or the on-call team was told.
        MedicalTeamTold = "medical_team_told",
    }
);

/// One thing agreed: of a usual kind, in her own words, or both.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlanItem {
    /// The usual kind, if it is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub what: Option<Coded<PlanWhat>>,
    /// Words of her own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<Text>,
}
