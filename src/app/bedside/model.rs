//! All that the bedside screen remembers besides the visit itself.

use crate::record::{At, Sign};

/// Milliseconds without a tap, while a feed is watched and the baby is on, after which the screen
/// asks whether it was a rest. Common practice: longer than usual rests late in a feed.
pub const SILENT_ASK_MS: u64 = 40_000;
/// Milliseconds after a latch at which early pain is asked about once (common practice: early pain
/// is expected to have gone by then).
pub const EARLY_PAIN_MS: u64 = 20_000;
/// How long that question stays, in milliseconds (common practice).
pub const EARLY_PAIN_SHOWN_MS: u64 = 60_000;

/// What is picked from over the signs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sheet {
    /// Nothing: the signs are seen.
    #[default]
    None,
    /// Which hold.
    Hold,
    /// What is being tried.
    Adjustment,
    /// Who ended the feed.
    End,
    /// What to look for in a sign, and what to try.
    Help(Sign),
}

/// A quiet question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Question {
    /// No tap since: a rest, or looked away?
    Silent(At),
}

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// What is picked from.
    pub sheet: Sheet,
    /// The question that is asked.
    pub question: Option<Question>,
    /// The silence that was answered, by its start, so that it is not asked again.
    pub answered: Option<At>,
}
