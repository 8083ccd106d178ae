//! All that the screen before the feed remembers besides the visit itself.

use crate::record::{Hold, LastDay, Nappy, Side, WallTime, WeighingMoment};

/// The steps of scales that are offered, in grams (common practice: baby scales on wards).
pub const SCALE_STEPS_G: [i64; 4] = [1, 2, 5, 10];

/// A number that is asked with less and more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Count {
    /// Feeds in 24 hours.
    Feeds,
    /// Wet nappies.
    Wet,
    /// Dirty nappies.
    Dirty,
    /// Hours since the last wet nappy.
    HoursSinceWet,
    /// Temperature, in tenths of a degree.
    Temperature,
    /// Expressed milk, in steps of 5 ml.
    Expressed,
    /// Formula or donor milk, in steps of 5 ml.
    Supplement,
}

impl Count {
    /// In the order shown.
    pub const ALL: [Self; 7] = [
        Self::Feeds,
        Self::Wet,
        Self::Dirty,
        Self::HoursSinceWet,
        Self::Temperature,
        Self::Expressed,
        Self::Supplement,
    ];
}

/// What is wrong with a weight as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WeightTrouble {
    /// Not a whole number of grams.
    NotGrams,
    /// Far from the birth weight; taken when kept once more.
    Far(u32),
    /// Taken earlier, and when was not yet told.
    NoTime,
}

/// A part of the time at which a weight was taken earlier.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TimePart {
    /// The day.
    Day,
    /// The hour.
    Hour,
    /// The minute, in steps of five.
    Minute,
}

impl TimePart {
    /// In the order shown.
    pub const ALL: [Self; 3] = [Self::Day, Self::Hour, Self::Minute];
}

/// When a weight was taken that is told now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Earlier {
    /// The time that is shown.
    pub at: WallTime,
    /// Whether she set it: the one it starts with is nobody's word.
    pub set: bool,
}

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// All answers as they are to be, where some were changed here and are not yet in the journal.
    pub draft: Option<LastDay>,
    /// The number whose start is shown and not told: only a second touch tells it.
    pub offered: Option<Count>,
    /// When the draft was last changed, by the device's clock in milliseconds.
    pub changed_ms: Option<u64>,
    /// The weight as typed.
    pub weight: String,
    /// Weighed with clothes or a nappy on.
    pub clothed: bool,
    /// The scale's step in grams, if it was told; kept from one weight to the next.
    pub step_g: Option<i64>,
    /// When the weight is taken, as to a feed; `None` is not tied to one.
    pub moment: Option<WeighingMoment>,
    /// When the weight was taken, where that was earlier.
    pub earlier: Option<Earlier>,
    /// The nappy that is told, before it is added; `None` while nothing was touched.
    pub nappy: Option<Nappy>,
    /// What is wrong with the weight.
    pub trouble: Option<WeightTrouble>,
    /// The breast for the feed.
    pub side: Option<Side>,
    /// The hold for the feed.
    pub hold: Option<Hold>,
}
