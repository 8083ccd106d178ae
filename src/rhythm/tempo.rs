//! The feed's usual gap between sucks, and from it what counts as a rest.
//!
//! Rule: `rest-gap`. The usual gap is the median of all gaps of no more than [`REST_MS_FLOOR`],
//! to 20 ms. Gaps count whether or not somebody looked away in them, so that looking away changes
//! no rule. Fixed memory.

use super::parameter::{REST_GAPS, REST_MS_CEILING, REST_MS_FLOOR, USUAL_GAP_MS, USUAL_GAP_WEIGHT};

/// Width of a class of gaps, in milliseconds.
const CLASS_MS: u64 = 20;
const CLASSES: usize = (REST_MS_FLOOR / CLASS_MS) as usize + 1;

/// How many gaps there were of each length.
#[derive(Debug, Clone)]
pub(super) struct Tempo {
    classes: [u32; CLASSES],
    total: u32,
    /// The class of the median, and how many gaps lie below it: moved step by step.
    median: usize,
    below: u32,
}

impl Tempo {
    pub(super) fn new() -> Self {
        let mut classes = [0; CLASSES];
        let median = (USUAL_GAP_MS / CLASS_MS) as usize;
        classes[median] = USUAL_GAP_WEIGHT;
        Self {
            classes,
            total: USUAL_GAP_WEIGHT,
            median,
            below: 0,
        }
    }

    /// Takes a gap.
    pub(super) fn push(&mut self, gap_ms: u64) {
        if REST_MS_FLOOR < gap_ms {
            return;
        }
        let class = ((gap_ms / CLASS_MS) as usize).min(CLASSES - 1);
        self.classes[class] += 1;
        self.total += 1;
        if class < self.median {
            self.below += 1;
        }
        let half = self.total / 2;
        while half < self.below {
            self.median -= 1;
            self.below -= self.classes[self.median];
        }
        while self.below + self.classes[self.median] <= half {
            self.below += self.classes[self.median];
            self.median += 1;
        }
    }

    /// The usual gap, in milliseconds.
    pub(super) fn usual_ms(&self) -> f64 {
        (self.median as u64 * CLASS_MS + CLASS_MS / 2) as f64
    }

    /// A gap longer than this is a rest, in milliseconds.
    pub(super) fn rest_ms(&self) -> u64 {
        ((self.usual_ms() * REST_GAPS) as u64).clamp(REST_MS_FLOOR, REST_MS_CEILING)
    }
}
