//! What Looking back may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::What;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Add an entry.
    Note(What),
    /// To another feed.
    Before,
    /// Back to a feed that goes on.
    Bedside,
    /// To the plan.
    Plan,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Note(what) => Self::Note(what),
            Effect::Before => Self::Go(Route::Before),
            Effect::Bedside => Self::Go(Route::Bedside),
            Effect::Plan => Self::Go(Route::Plan),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
