//! All that can happen on the hand-over screen.

use super::{Kind, Shown};

/// An event.
#[derive(Debug)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// The codes were made and read back.
    Made(Box<Shown>),
    /// They could not be made.
    Failed(String),
    /// The piece before.
    Previous,
    /// The next piece.
    Next,
    /// The record, the record with every tap, or the note.
    KindChosen(Kind),
    /// A key of the keypad: a figure, delete, or take.
    Keyed(String),
    /// Amend the signed visit.
    AmendWanted,
    /// Back.
    BackWanted,
}
