//! What the hand-over screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::What;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Make the codes; with every tap, or without.
    Pack(bool),
    /// Add an entry.
    Note(What),
    /// Begin an amendment.
    Amend,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Pack(taps) => Self::Pack(taps),
            Effect::Note(what) => Self::Note(what),
            Effect::Amend => Self::Amend,
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
