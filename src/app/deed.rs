//! What a screen may have done to the world, as data. Each screen's effects become these; the shell
//! does them in one match.

use crate::record::{Pair, PairId, VisitId, What};
use crate::store::vault::{Pin, Typed};

use super::preferences::Preferences;
use super::route::Route;

/// One deed.
#[derive(Debug, Clone, PartialEq)]
pub enum Deed {
    /// Go to a screen.
    Go(Route),
    /// Add an entry to the open visit.
    Note(What),
    /// Add an entry that happened at a time of the device's clock, in milliseconds.
    NoteAt(u64, What),
    /// Ask for the ward's list.
    AskWard,
    /// Ask for the month's figures, or for more of them.
    AskMonth,
    /// Ask for a pair's story and show it.
    ShowPair(PairId),
    /// Show the form: for a new pair, or to change one.
    ShowForm(Option<PairId>),
    /// Keep a pair.
    SavePair(Box<Pair>),
    /// Begin a visit with the pair that is shown.
    BeginVisit(PairId),
    /// Open a visit that was begun.
    OpenVisit(VisitId),
    /// Fill the store with the invented ward.
    FillDemo,
    /// Keep the settings.
    Keep(Box<Preferences>),
    /// Make the codes of the open visit; with every tap, or without.
    Pack(bool),
    /// Set the PIN, with the one before or the rescue code.
    SetPin(Option<Typed>, Pin),
    /// Lock the data.
    Lock,
    /// Begin an amendment of the open visit.
    Amend,
}
