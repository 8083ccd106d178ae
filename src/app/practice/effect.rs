//! What the practice screen may have done. Nothing of it is kept.

use crate::app::deed::Deed;
use crate::app::route::Route;

/// An effect.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
