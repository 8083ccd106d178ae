//! What the settings screen may have done.

use crate::app::deed::Deed;
use crate::app::preferences::Preferences;
use crate::app::route::Route;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Keep the settings.
    Keep(Box<Preferences>),
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Keep(preferences) => Self::Keep(preferences),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
