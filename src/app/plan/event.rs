//! All that can happen on the plan screen.

/// An event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    /// The screen was come to.
    Came,
    /// A usual item was touched: agreed, or taken back.
    Chose(usize),
    /// Whom to call if it gets worse, by its place: told, or taken back.
    CallChosen(usize),
    /// A weight or a nappy is to be put in.
    WeighWanted,
    /// The mother's sheet is to be shown, or no longer.
    SheetWanted(bool),
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
