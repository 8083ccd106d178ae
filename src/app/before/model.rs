//! All that the screen before the feed remembers besides the visit itself.

use crate::record::{Hold, LastDay, Nappy, Side, WeighingMoment};

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
}

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// Answers changed here and not yet in the journal.
    pub draft: LastDay,
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
    /// The nappy that is told, before it is added; `None` while nothing was touched.
    pub nappy: Option<Nappy>,
    /// What is wrong with the weight.
    pub trouble: Option<WeightTrouble>,
    /// The breast for the feed.
    pub side: Option<Side>,
    /// The hold for the feed.
    pub hold: Option<Hold>,
}
