//! All that can happen on the bedside screen.

use crate::record::Sign;

/// Which pad or key was tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PadKind {
    /// One jaw movement.
    Suck,
    /// One jaw movement with a swallow.
    SuckSwallow,
    /// A swallow alone.
    Swallow,
}

/// One of the act keys.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Act {
    /// To the other breast.
    OtherBreast,
    /// Came off, or back on.
    OffOn,
    /// Another hold.
    ChangeHold,
    /// Try something.
    TryChange,
    /// End the feed.
    EndFeed,
}

/// An event.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event {
    /// A pad was tapped just now.
    Tapped(PadKind),
    /// A pad was touched at a time of the device's clock, in milliseconds.
    TappedAt(PadKind, u64),
    /// The touch of that time was a hand at rest.
    Withdrawn(PadKind, u64),
    /// A touch could not be told apart from others.
    Unresolved,
    /// A sign's state was touched: 0 none, 1 seen, 2 unclear, 3 not seen.
    SignSet(Sign, i32),
    /// A sign was touched long.
    HelpWanted(Sign),
    /// Pain was told: 0 to 10, or -1 for "cannot say".
    PainTold(i32),
    /// An act key.
    Acted(Act),
    /// The key "looked away" or "watching again".
    LookedAway,
    /// Take back.
    TakenBack,
    /// The question was answered: true for resting.
    Answered(bool),
    /// A choice of the sheet.
    Chose(usize),
    /// The sheet was closed.
    SheetClosed,
    /// The clock went on.
    Ticked,
    /// Back.
    BackWanted,
}
