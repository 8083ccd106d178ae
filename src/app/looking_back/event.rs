//! All that can happen while looking back.

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
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// Another feed is to be shown.
    FeedChosen(usize),
    /// A fact was told.
    AfterTold(After, usize),
    /// A finding is acknowledged, by its place.
    Acknowledged(usize),
    /// Another feed of the same visit.
    AnotherFeed,
    /// On to the plan.
    PlanWanted,
    /// Back.
    BackWanted,
}
