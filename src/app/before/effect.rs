//! What the screen before the feed may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::What;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Add an entry.
    Note(What),
    /// To the bedside.
    Bedside,
    /// To what came of the feeds.
    LookBack,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Note(what) => Self::Note(what),
            Effect::Bedside => Self::Go(Route::Bedside),
            Effect::LookBack => Self::Go(Route::LookingBack),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
