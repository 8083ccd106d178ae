//! What a rule can lack. The word is part of the message id `missing-<word>`.

use crate::record::words;

words!(
    /// Something that was not told, not looked at, or not there.
    Missing {
        /// A birth instant that lies before now.
        Birth = "birth",
        /// The birth weight.
        BirthWeight = "birth_weight",
        /// Any weight after birth.
        Weight = "weight",
        /// A weight without clothes.
        UnclothedWeight = "unclothed_weight",
        /// A weight that is recent enough for the age.
        RecentWeight = "recent_weight",
        /// A weight that was checked: the last one is asked about.
        CheckedWeight = "checked_weight",
        /// A second weight at least 24 hours apart.
        SecondWeight = "second_weight",
        /// The gestation at birth.
        Gestation = "gestation",
        /// The baby's sex.
        Sex = "sex",
        /// The way of birth.
        WayOfBirth = "way_of_birth",
        /// A growth reference for a baby born before 37 weeks.
        EarlyReference = "early_reference",
        /// A whole day since birth, over which to count.
        WholeDay = "whole_day",
        /// Whether a stool was ever passed.
        Meconium = "meconium",
        /// Whether the urine is dark.
        DarkUrine = "dark_urine",
        /// How many feeds in 24 hours.
        Feeds = "feeds",
        /// How many wet nappies in 24 hours.
        Wet = "wet",
        /// Hours since the last wet nappy.
        WetGap = "wet_gap",
        /// How many dirty nappies in 24 hours.
        Dirty = "dirty",
        /// The stool's colour.
        StoolColour = "stool_colour",
        /// Whether urates were seen.
        Urates = "urates",
        /// How much formula or donor milk was given.
        Supplement = "supplement",
        /// How much expressed milk was given.
        Expressed = "expressed",
        /// Whether the baby needs waking.
        Sleepy = "sleepy",
        /// Whether yellow skin was seen.
        Jaundice = "jaundice",
        /// The temperature.
        Temperature = "temperature",
        /// Whether the baby has danger signs.
        BabyDanger = "baby_danger",
        /// Whether the mother has danger signs.
        MotherDanger = "mother_danger",
        /// A look for the sign.
        Sign = "sign",
        /// A clear view of the sign.
        SignClear = "sign_clear",
        /// A watched feed.
        Feed = "feed",
        /// A longer watched stretch at the breast.
        WatchedTime = "watched_time",
        /// A feed without long unwatched time or unresolved touches.
        CleanRhythm = "clean_rhythm",
        /// The end of the feed.
        FeedEnd = "feed_end",
        /// Pain told after the first seconds of the feed.
        Pain = "pain",
        /// Pain asked after the feed.
        PainAfter = "pain_after",
        /// The nipple before the feed.
        NippleBefore = "nipple_before",
        /// The breast before the feed.
        BreastBefore = "breast_before",
        /// The nipple after the feed.
        NippleAfter = "nipple_after",
        /// The breast after the feed.
        BreastAfter = "breast_after",
        /// The baby's state after the feed.
        BabyState = "baby_state",
    }
);
