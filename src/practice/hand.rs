//! The hand that taps: how unsteady it is and what it misses. Draws nothing itself.

use crate::record::words;

words!(
    /// Named levels of a hand's noise.
    HandLevel {
        /// A hand that misses nothing: the truth itself.
        Perfect = "perfect",
        /// Practised and rested.
        Careful = "careful",
        /// An ordinary watch.
        Usual = "usual",
        /// At the end of a long night.
        Tired = "tired",
    }
);

/// A hand's noise. Shares lie between 0 and 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hand {
    /// Standard deviation of each tap's time, in milliseconds.
    pub jitter_ms: f64,
    /// Share of sucks that are not tapped.
    pub missed_suck: f64,
    /// Share of swallows that are not noticed.
    pub missed_swallow: f64,
    /// Share of taps that come twice.
    pub doubled: f64,
}

impl HandLevel {
    /// The noise of this level. Jitter: 30 ms is the standard deviation of practised tapping to
    /// a beat at a keyboard, and it about doubles untrained (Repp 2005, Psychon Bull Rev 12:969,
    /// from memory). Misses at the bedside: no published figure; common practice spans these.
    pub const fn hand(self) -> Hand {
        match self {
            Self::Perfect => Hand {
                jitter_ms: 0.0,
                missed_suck: 0.0,
                missed_swallow: 0.0,
                doubled: 0.0,
            },
            Self::Careful => Hand {
                jitter_ms: 30.0,
                missed_suck: 0.03,
                missed_swallow: 0.05,
                doubled: 0.002,
            },
            Self::Usual => Hand {
                jitter_ms: 45.0,
                missed_suck: 0.08,
                missed_swallow: 0.12,
                doubled: 0.005,
            },
            Self::Tired => Hand {
                jitter_ms: 60.0,
                missed_suck: 0.15,
                missed_swallow: 0.20,
                doubled: 0.010,
            },
        }
    }
}
