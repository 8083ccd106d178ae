//! Simulated feeds with known truth, for training and for tests.
//!
//! A baby is drawn from published figures, then a hand taps what it saw, with the misses and the
//! unsteadiness of a hand. Knows only `record`: no clock, and the analysis is not known here, so
//! that the two cannot agree by construction. Randomness comes in as a seed; the same seed gives
//! the same feed.

mod agreement;
mod baby;
mod feed;
mod hand;
mod tapping;
mod truth;

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;

use crate::record::Tap;

pub use agreement::{
    COUNT_WINDOW_MS, HandSeen, Kappa, MATCH_MS_MOST, counts, hand_seen, intraclass, kappa,
};
pub use baby::{Baby, Profile, Sucking};
pub use hand::{Hand, HandLevel};
pub use truth::{PhaseTruth, Truth, TruthPhase, Way, truth_json};

/// The longest feed that is simulated, in minutes.
pub const MINUTES_MOST: u32 = 360;

/// One simulated feed: what the hand tapped, and what was true.
#[derive(Debug, Clone, PartialEq)]
pub struct Simulated {
    /// What the hand tapped, times rising.
    pub taps: Vec<Tap>,
    /// What the baby did.
    pub truth: Truth,
}

/// Simulates a feed of so many minutes (1 to [`MINUTES_MOST`]) from latch to end.
pub fn simulate(baby: Baby, hand: Hand, seed: u64, minutes: u32) -> Simulated {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let length_ms = f64::from(minutes.clamp(1, MINUTES_MOST)) * 60_000.0;
    let truth = feed::of(&baby.profile(), length_ms, &mut random);
    let taps = tapping::of(&truth, hand, &mut random);
    Simulated { taps, truth }
}
