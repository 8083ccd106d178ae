//! What the month's screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;

/// An effect.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Ask the store for the figures, or for more of them.
    Ask,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Ask => Self::AskMonth,
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
