//! All that can happen before the feed.

use crate::record::Side;

use super::{Count, TimePart};

/// A question answered by choosing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// The latest stool's colour.
    Stool,
    /// Pink or brick-red staining.
    Urates,
    /// Whether a first stool was ever passed.
    Meconium,
    /// Dark urine.
    DarkUrine,
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
    pub const ALL: [Self; 8] = [
        Self::BabyDanger,
        Self::MotherDanger,
        Self::Meconium,
        Self::Stool,
        Self::Urates,
        Self::DarkUrine,
        Self::Sleepy,
        Self::Jaundice,
    ];
}

/// A key of the nappy that is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NappyKey {
    /// Wet.
    Wet,
    /// Heavy for its size; so it is wet, too.
    Heavy,
    /// Pink or brick-red staining.
    Urates,
    /// Dirty, with the colour by its place.
    Stool(usize),
}

/// An event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// Less (-1) or more (1) of a number.
    Counted(Count, i32),
    /// A number was touched: it is taken back.
    CountCleared(Count),
    /// A choice was touched; the chosen one is taken back.
    Chose(Question, usize),
    /// The breast on a side was told.
    BreastTold(Side, usize),
    /// The nipple on a side was told.
    NippleTold(Side, usize),
    /// Clothed or not.
    Clothed(bool),
    /// The scale's step by its place; touched again it is not known.
    StepChosen(usize),
    /// When the weight is taken, by its place.
    MomentChosen(usize),
    /// The weight was taken earlier, or is taken now.
    EarlierChosen(bool),
    /// Less (-1) or more (1) of a part of the earlier time.
    EarlierStepped(TimePart, i32),
    /// A key of the nappy.
    NappyTouched(NappyKey),
    /// The nappy as told is added.
    NappyAdded,
    /// A weight of this visit that is asked about is right.
    SaidRight(usize),
    /// A weight of this visit that is asked about is taken back and typed anew.
    CorrectWanted(usize),
    /// The weight as typed is to be kept.
    WeightTaken(String),
    /// The side for the feed.
    SideChosen(Side),
    /// The hold for the feed.
    HoldChosen(usize),
    /// Baby on.
    Started,
    /// To the findings and the plan, with a feed or without.
    FindingsWanted,
    /// The screen is left by other ways than its own.
    Left,
    /// The clock went on.
    Ticked,
    /// Back.
    BackWanted,
}
