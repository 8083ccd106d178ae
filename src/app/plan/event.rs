//! All that can happen on the plan screen.

/// An event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// A usual item was touched: agreed, or taken back.
    Chose(usize),
    /// An item in own words.
    WordsAdded(String),
    /// When to look again, by its place.
    NextLookChosen(usize),
    /// A note.
    NoteAdded(String),
    /// Sign; or, if signed, show the codes.
    SignWanted,
    /// Back.
    BackWanted,
}
