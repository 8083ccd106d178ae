//! From fingers to taps. The toolkit merges all fingers into one pointer, so that two thumbs or a
//! resting hand would make it count one pad twice and the other not at all.
//!
//! Two ways, one trait. Where raw touches can be had before the toolkit takes them, `router` sends
//! each finger where it belongs and every count is exact. Elsewhere `merged` reads what the toolkit
//! makes of them: it counts what is sure, and says of the rest that it could not be told. Both are
//! pure: places, fingers and times in, taps out. `door` joins them to the screen.
//!
//! Knows nothing of feeds. A pad counts when it is touched, never when it is left.

mod door;
#[cfg(not(target_os = "android"))]
mod hook;
mod merged;
mod router;

pub use door::{Door, connect};
#[cfg(not(target_os = "android"))]
pub use hook::{drawn_at_once, raw_of, set};
pub use merged::{Felt, FeltKind, Merged};
pub use router::{PadPlace, Phase, Place, Pointer, RESTING_MS, RawTouch, Router};

use super::bedside::PadKind;

/// One way from what is felt to taps.
pub trait FromFingers {
    /// What it hears of the fingers.
    type Raw;

    /// Hears one thing.
    fn hear(&mut self, raw: Self::Raw) -> Heard;

    /// The clock went on to a time, in milliseconds.
    fn tick(&mut self, at_ms: u64) -> Heard;
}

/// A tap on a pad.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PadTap {
    /// Which.
    pub pad: PadKind,
    /// When it was touched, in milliseconds on the clock that came in.
    pub at_ms: u64,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Heard {
    /// Taps to count.
    pub taps: Vec<PadTap>,
    /// A tap that was counted and turned out to be a hand at rest.
    pub withdrawn: Option<PadTap>,
    /// Touches of which it cannot be told whether and where they were taps.
    pub unresolved: u32,
    /// Whether the toolkit is to be kept from it.
    pub kept: bool,
    /// What the toolkit's one pointer is to do instead.
    pub pointer: Vec<Pointer>,
}
