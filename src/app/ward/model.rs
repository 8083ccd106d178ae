//! All that the Ward screen shows.

use crate::findings::Level;
use crate::growth::Growth;
use crate::record::{Pair, VisitId, WallTime};

/// One pair on the list.
#[derive(Debug, Clone)]
pub struct Line {
    /// The pair.
    pub pair: Pair,
    /// Weight and age, as of when the list was made.
    pub growth: Growth,
    /// Medical review now was found in the last visit and not acknowledged.
    pub review: bool,
    /// The gravest level found in the last visit.
    pub level: Option<Level>,
    /// The last visit is not signed.
    pub open: Option<VisitId>,
    /// The last visit is signed and the desk's receipt is missing.
    pub waiting: bool,
    /// There was a visit.
    pub seen: bool,
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
