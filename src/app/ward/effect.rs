//! What the Ward screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::PairId;

/// An effect.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Show a pair.
    Show(PairId),
    /// Show an empty form.
    Form,
    /// Go to the practice screen.
    Practice,
    /// Go to the settings.
    Settings,
    /// Go to the last days in figures.
    Month,
    /// Fill in the invented ward.
    Demo,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Show(pair) => Self::ShowPair(pair),
            Effect::Form => Self::ShowForm(None),
            Effect::Practice => Self::Go(Route::Practice),
            Effect::Settings => Self::Go(Route::Settings),
            Effect::Month => Self::Go(Route::Month),
            Effect::Demo => Self::FillDemo,
        }
    }
}
