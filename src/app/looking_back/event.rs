//! All that can happen while looking back.

use crate::record::TapWhat;

/// A fact found after the feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum After {
    /// The nipple.
    Nipple,
    /// The breast.
    Breast,
    /// The baby.
    Baby,
}

impl After {
    /// In the order shown.
    pub const ALL: [Self; 3] = [Self::Nipple, Self::Breast, Self::Baby];
}

/// An event.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// Another feed is to be shown.
    FeedChosen(usize),
    /// The strip was touched at a time, in seconds of the visit.
    Picked(f64),
    /// A boundary, by its place, was put at a time, in seconds of the visit.
    BoundaryPut(usize, f64),
    /// Zoomed by a factor about a time, in seconds of the visit.
    Zoomed(f64, f64),
    /// Moved by a share of what is shown.
    Panned(f64),
    /// The tap that is picked out is taken back.
    StrikeWanted,
    /// A tap is added where the strip was touched.
    AddWanted(TapWhat),
    /// A fact was told.
    AfterTold(After, usize),
    /// Pain after the feed was told: 0 to 10, below 0 for "cannot say".
    PainTold(i32),
    /// A finding is acknowledged, by its place.
    Acknowledged(usize),
    /// All that was told is to be shown, or no longer.
    EntriesWanted(bool),
    /// An entry is taken back, by its place among those shown.
    EntryStruck(usize),
    /// Another feed of the same visit.
    AnotherFeed,
    /// On to the plan.
    PlanWanted,
    /// Back.
    BackWanted,
}
