//! The signs that are looked for: five of position, seven of attachment.

use super::word::words;

words!(
    /// One thing looked for at the breast.
    Sign {
        /// Whole baby close, no gap.
        Close = "close",
        /// Head free to tip back.
        HeadFree = "head_free",
        /// Ear, shoulder and hip in line.
        InLine = "in_line",
        /// Nose level with the nipple at the start.
        NoseToNipple = "nose_to_nipple",
        /// Both can keep it up.
        CanBeKeptUp = "can_be_kept_up",
        /// Mouth wide open.
        MouthWide = "mouth_wide",
        /// Chin into the breast.
        ChinIn = "chin_in",
        /// Nose clear of the breast.
        NoseClear = "nose_clear",
        /// Cheeks full and round.
        CheeksFull = "cheeks_full",
        /// More areola seen above the top lip than below the lower.
        MoreAreolaAbove = "more_areola_above",
        /// Lower lip turned out.
        LowerLipOut = "lower_lip_out",
        /// Quiet, no clicking.
        Quiet = "quiet",
    }
);

impl Sign {
    /// Whether it is a sign of position (the others are of attachment).
    pub const fn is_position(self) -> bool {
        matches!(
            self,
            Self::Close | Self::HeadFree | Self::InLine | Self::NoseToNipple | Self::CanBeKeptUp
        )
    }

    /// Its place among all signs, 0 to 11.
    pub const fn index(self) -> usize {
        self as usize
    }
}

words!(
    /// What was made of a sign. "Not looked yet" is the absence of any state.
    SignState {
        /// It was there.
        Seen = "seen",
        /// It could not be told.
        Unclear = "unclear",
        /// It was not there.
        NotSeen = "not_seen",
    }
);
