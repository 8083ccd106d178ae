//! All that the Ward screen shows.

use crate::findings::{WardFound, WardPlace};
use crate::growth::Growth;
use crate::record::{Pair, WallTime};

/// One pair on the list.
#[derive(Debug, Clone)]
pub struct Line {
    /// The pair.
    pub pair: Pair,
    /// Weight and age, as of when the list was made.
    pub growth: Growth,
    /// Its place in the list, and why.
    pub place: WardPlace,
    /// What was found last.
    pub found: Option<WardFound>,
    /// A signed visit waits for the desk's receipt.
    pub waiting: bool,
    /// When the next look is due.
    pub next_look: Option<WallTime>,
}

/// The model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    /// The pairs, in the order shown.
    pub lines: Vec<Line>,
    /// The list came at least once.
    pub loaded: bool,
}
