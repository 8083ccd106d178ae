//! What the taps mean: runs, rests, phases, first flow, rates, and the reasons to doubt them.
//!
//! `push` is the only algorithm; the batch function loops over it. Knows only `record`; no clock,
//! no disk, no screen. Analysis does not fail, it doubts.

mod summary;

pub use summary::{
    Doubt, Interval, Live, Phase, PhaseRates, PhaseSpan, Rate, RestStatistics, Run, RunStatistics,
    Summary, TotalsMs,
};

/// The version of the rules that make a [`Summary`]; goes wherever a computed number goes.
pub const RULE_VERSION: &str = "rhythm-1";
