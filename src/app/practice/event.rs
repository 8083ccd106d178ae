//! All that can happen on the practice screen.

use crate::app::bedside::PadKind;

/// An event.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event {
    /// A kind of baby, by its place.
    BabyChosen(usize),
    /// A speed, by its place.
    SpeedChosen(usize),
    /// A length, by its place.
    MinutesChosen(usize),
    /// A new feed is to be played.
    StartWanted,
    /// The same feed for a second observer.
    SecondWanted,
    /// A pad was tapped.
    Tapped(PadKind),
    /// The feed is to end now.
    StopWanted,
    /// Back to choosing.
    AnotherWanted,
    /// The clock went on.
    Ticked,
    /// Back.
    BackWanted,
}
