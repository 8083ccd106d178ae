//! All that can happen on the settings screen.

/// An event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    /// A language, by its place.
    LanguageChosen(usize),
    /// Day or night.
    NightChosen(bool),
    /// Left-handed or not.
    LeftHandedChosen(bool),
    /// The size of text, by its place.
    TextChosen(usize),
    /// Whether things may move.
    MotionChosen(bool),
    /// The largest code, by its place.
    CapChosen(usize),
    /// A PIN is to be set, or another one.
    PinWanted,
    /// Lock the data now.
    LockWanted,
    /// After how long they are locked, by its place.
    LockChosen(usize),
    /// How long a pair stays, by its place.
    StayChosen(usize),
    /// The specialist's sign as typed.
    SpecialistTyped(String),
    /// The desk's key as typed.
    DeskKeyTyped(String),
    /// The six words of the key from the file are those of the desk: it is to be kept.
    DeskFileKept,
    /// Back.
    BackWanted,
}
