//! What the plan screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::What;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Add an entry.
    Note(What),
    /// To weight and nappies.
    Before,
    /// To the codes.
    Codes,
    /// Back to Looking back.
    LookBack,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Note(what) => Self::Note(what),
            Effect::Before => Self::Go(Route::Before),
            Effect::Codes => Self::Go(Route::Handover),
            Effect::LookBack => Self::Go(Route::LookingBack),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
