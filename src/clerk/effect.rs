//! What the desk's window may have done.

use super::sound::Tone;
use super::worker::Ask;

/// An effect.
#[derive(Debug, PartialEq, Eq)]
pub enum Effect {
    /// Asked of the desk.
    Ask(Ask),
    /// Heard by whoever holds the scanner.
    Sound(Tone),
    /// The list is another.
    ShowList,
    /// The keys are heard by the window again, whatever had them.
    HearKeys,
}
