//! What the settings screen may have done.

use crate::app::deed::Deed;
use crate::app::preferences::Preferences;
use crate::app::route::Route;

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Keep the settings.
    Keep(Box<Preferences>),
    /// Set a PIN.
    Pin,
    /// Lock the data.
    Lock,
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Keep(preferences) => Self::Keep(preferences),
            Effect::Pin => Self::Go(Route::Pin),
            Effect::Lock => Self::Lock,
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
