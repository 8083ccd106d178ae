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
        /// If it gets worse, the doctor for the baby is called.
        CallBabyDoctor = "call_baby_doctor",
        /// If it gets worse, the doctor for the mother is called.
        CallMotherDoctor = "call_mother_doctor",
        /// If it gets worse, the midwife in charge is called.
        CallMidwifeInCharge = "call_midwife_in_charge",
        /// If it gets worse, the feeding team is called.
        CallFeedingTeam = "call_feeding_team",
    }
);

impl PlanWhat {
    /// Whether it says whom to call. Older versions wrote that in words, in the tablet's language.
    pub const fn is_call(self) -> bool {
        matches!(
            self,
            Self::CallBabyDoctor
                | Self::CallMotherDoctor
                | Self::CallMidwifeInCharge
                | Self::CallFeedingTeam
        )
    }
}

/// One thing agreed: of a usual kind, in her own words, or both.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlanItem {
    /// The usual kind, if it is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub what: Option<Coded<PlanWhat>>,
    /// Words of her own; where it says whom to call, the ward's own words for that, as a number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<Text>,
}

impl PlanItem {
    /// Whom to call, if it says that.
    pub fn call(&self) -> Option<PlanWhat> {
        let known = self.what.as_ref().and_then(Coded::known);
        known.filter(|what| what.is_call())
    }

    /// Words that stand for themselves, as somebody wrote them: not the number of whom to call.
    pub fn own_words(&self) -> Option<&Text> {
        self.words.as_ref().filter(|_| self.call().is_none())
    }
}
