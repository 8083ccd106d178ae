//! What the bedside screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::What;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Add an entry.
    Note(What),
    /// Add an entry that happened at a time of the device's clock, in milliseconds.
    NoteAt(u64, What),
    /// To the screen before the feed.
    Before,
    /// Look back at the feed.
    LookBack,
    /// Leave; the feed goes on.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Note(what) => Self::Note(what),
            Effect::NoteAt(boot_ms, what) => Self::NoteAt(boot_ms, what),
            Effect::Before => Self::Go(Route::Before),
            Effect::LookBack => Self::Go(Route::LookingBack),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
