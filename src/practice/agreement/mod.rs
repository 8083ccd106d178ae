//! How well a hand agrees with the truth, and two observers with each other.
//!
//! Knows taps, times and categories. It does not know how phases are found: whoever compares phases
//! brings them, moment by moment. It describes the watching, and grades nobody.

mod chance;
mod counts;
mod hand;

pub use chance::{Kappa, kappa};
pub use counts::{COUNT_WINDOW_MS, counts, intraclass};
pub use hand::{HandSeen, MATCH_MS_MOST, hand_seen};
