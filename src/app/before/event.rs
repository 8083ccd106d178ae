//! All that can happen before the feed.

use crate::record::Side;

use super::Count;

/// A question answered by choosing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// The latest stool's colour.
    Stool,
    /// Pink or brick-red staining.
    Urates,
    /// Needs waking.
    Sleepy,
    /// Yellow skin.
    Jaundice,
    /// Danger signs in the baby; the last choice is "none of these".
    BabyDanger,
    /// Danger signs in the mother; the last choice is "none of these".
    MotherDanger,
}

impl Question {
    /// In the order shown.
    pub const ALL: [Self; 6] = [
        Self::BabyDanger,
        Self::MotherDanger,
        Self::Stool,
        Self::Urates,
        Self::Sleepy,
        Self::Jaundice,
    ];
}

/// An event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// Less (-1) or more (1) of a number.
    Counted(Count, i32),
    /// A choice was touched.
    Chose(Question, usize),
    /// The breast on a side was told.
    BreastTold(Side, usize),
    /// The nipple on a side was told.
    NippleTold(Side, usize),
    /// Clothed or not.
    Clothed(bool),
    /// The weight as typed is to be kept.
    WeightTaken(String),
    /// The side for the feed.
    SideChosen(Side),
    /// The hold for the feed.
    HoldChosen(usize),
    /// Baby on.
    Started,
    /// The clock went on.
    Ticked,
    /// Back.
    BackWanted,
}
