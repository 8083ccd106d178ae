//! What the lock's screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::store::vault::{Pin, Typed};

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Try to open the data; only while they are locked.
    Try(Typed),
    /// Set the PIN, with the one before or the rescue code.
    Set(Option<Typed>, Pin),
    /// Leave.
    Leave,
}

/// Inside, where there is nothing to open.
impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Set(current, pin) => Self::SetPin(current, pin),
            Effect::Try(_) | Effect::Leave => Self::Go(Route::Settings),
        }
    }
}
