//! Taps: what the hand told while the eye watched. The only input of the rhythm.

use serde::{Deserialize, Serialize};

use super::At;
use super::word::words;

words!(
    /// What one row of a tap file, or one entry of a feed, tells about the rhythm.
    TapWhat {
        /// Baby on the breast.
        On = "on",
        /// Baby off the breast.
        Off = "off",
        /// One jaw movement, no swallow noticed with it.
        Suck = "suck",
        /// One jaw movement and a swallow heard or seen with it.
        SuckSwallow = "suck_swallow",
        /// A swallow heard alone.
        Swallow = "swallow",
        /// From here on nobody looked.
        Unwatched = "unwatched",
        /// From here on somebody looked again.
        Watched = "watched",
        /// The feed's end.
        End = "end",
    }
);

words!(
    /// A phase that sucks lie in, as the specialist tells it.
    SuckPhase {
        /// Quick sucks, few swallows.
        Quick = "quick",
        /// Milk flowing.
        Flow = "flow",
        /// Flutter at the sleepy end.
        Flutter = "flutter",
    }
);

/// A boundary between two phases that the specialist moved. Her word wins over what is computed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct BoundaryMoved {
    /// Where it was told to be, as computed or as moved before.
    pub was: At,
    /// Where she puts it.
    pub now: At,
    /// The phase before it.
    pub before: SuckPhase,
    /// The phase after it.
    pub after: SuckPhase,
}

/// One tap and its time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Tap {
    /// When it was tapped.
    pub at: At,
    /// What it tells.
    pub what: TapWhat,
}

impl Tap {
    /// A tap at so many milliseconds.
    pub const fn new(at_ms: u64, what: TapWhat) -> Self {
        Self {
            at: At::ms(at_ms),
            what,
        }
    }
}

impl TapWhat {
    /// Whether it is a jaw movement.
    pub const fn is_suck(self) -> bool {
        matches!(self, Self::Suck | Self::SuckSwallow)
    }

    /// Whether it is, or carries, a swallow.
    pub const fn is_swallow(self) -> bool {
        matches!(self, Self::SuckSwallow | Self::Swallow)
    }
}
