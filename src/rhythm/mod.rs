//! What the taps mean: runs, rests, phases, first flow, rates, and the reasons to doubt them.
//!
//! `push` is the only algorithm; the batch function loops over it. Knows only `record`; no clock,
//! no disk, no screen. Analysis does not fail, it doubts. It describes a feed for the specialist,
//! who judges; it diagnoses nothing.
//!
//! How it works, in the order of the files:
//! 1. `watch`: each tap is a suck, a doubled tap, a swallow alone or a mark; the gap before a suck
//!    is known, or was broken by time off the breast or time that nobody looked.
//! 2. `tempo`: a gap is a rest if it is longer than [`REST_GAPS`] of the feed's own usual gaps,
//!    and never if it is not longer than [`REST_MS_FLOOR`]. Missed taps do not split a run.
//! 3. `own`: how fast this baby sucks, swallows and rests, drawn from the published means towards
//!    what this feed shows, phase by phase.
//! 4. `evidence`: how well a suck, its swallow and its gap fit each phase. Milk that flows grows less
//!    until it stops. Looking back, `series` knows that a hand taps both ends of a gap, and `pace` that
//!    in some babies each run has a pace of its own; live and in long feeds, the evidence of gaps is
//!    taken by less for it.
//! 5. `chain`: phases last for a while and follow each other in an order: quick sucks first, milk
//!    flowing for about two minutes at a time, flutter at the end, from early on, or now and then in
//!    a baby that dozes. `pass` goes forward and back over it.
//! 6. `now` goes forward only. Looking back, `learn` takes the feed's own numbers from all of it,
//!    quickly, on `block`s of sucks (`judge_block`) and in several readings, begun as in
//!    `first_reading`; `smooth` then judges every suck (`judge_suck`), and tells its phase less surely
//!    than the model, which is not the baby, is of it.
//! 7. `boundary`: where the specialist moved a boundary, her word wins; what was computed is kept
//!    beside it.
//! 8. `tile`, `rate` with `cluster`, `doubt`: what is told of it.

mod block;
mod boundary;
mod chain;
mod cluster;
mod doubt;
mod evidence;
mod file;
mod first_reading;
mod gap_class;
mod json;
mod judge_block;
mod judge_suck;
mod label;
mod learn;
mod live;
mod now;
mod own;
mod pace;
mod parameter;
mod pass;
mod rate;
mod ring;
mod series;
mod smooth;
mod student;
mod suck;
mod summary;
mod tempo;
mod tile;
mod watch;

pub use cluster::{Ratio, alike, interval, ratio};
pub use doubt::{FEW_SUCKS, FEW_SWALLOWS, LONG_SILENCE_MS, LONG_UNWATCHED_SHARE};
pub use file::{LINE_MOST, ROWS_MOST, TapFileError, read_taps, write_taps};
pub use json::json;
pub use live::{Rhythm, of, way};
pub use parameter::{DOUBLED_MS, REST_GAPS, REST_MS_CEILING, REST_MS_FLOOR};
pub use pass::{Hidden, course, posterior};
pub use series::{Beat, run_ln};
pub use student::student_95;
pub use summary::{
    Computed, Doubt, Interval, Live, Phase, PhaseRates, PhaseSpan, Rate, RestStatistics, Run,
    RunStatistics, Summary, TotalsMs,
};

/// The version of the rules that make a [`Summary`]; goes wherever a computed number goes.
pub const RULE_VERSION: &str = "rhythm-11";
