//! What the Pair screen may have done.

use crate::app::deed::Deed;
use crate::app::route::Route;
use crate::record::{Pair, PairId, VisitId, What};

/// An effect.
#[derive(Debug, Clone, PartialEq)]
pub enum Effect {
    /// Keep a pair; its id is given by the shell if it is new.
    Save(Box<Pair>),
    /// Begin a visit.
    Begin(PairId),
    /// Add an entry to the visit that is open.
    Note(What),
    /// Open a visit.
    Open(VisitId),
    /// Leave.
    Leave,
}

impl From<Effect> for Deed {
    fn from(effect: Effect) -> Self {
        match effect {
            Effect::Save(pair) => Self::SavePair(pair),
            Effect::Begin(pair) => Self::BeginVisit(pair),
            Effect::Note(what) => Self::Note(what),
            Effect::Open(visit) => Self::OpenVisit(visit),
            Effect::Leave => Self::Go(Route::Ward),
        }
    }
}
