//! All that the screen before the feed remembers besides the visit itself.

use crate::record::{Hold, LastDay, Side};

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
    /// What is wrong with the weight.
    pub trouble: Option<WeightTrouble>,
    /// The breast for the feed.
    pub side: Option<Side>,
    /// The hold for the feed.
    pub hold: Option<Hold>,
}
