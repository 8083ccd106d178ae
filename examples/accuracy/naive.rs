//! What a fixed gap and a fixed rate would say: what a rule without a model comes to.

use feedside::record::{At, TapWhat};
use feedside::rhythm::Phase;

/// The naive rule: a gap above 2 s is a rest, and flow is a rate below 1.2 a second over the last
/// five gaps.
#[derive(Default)]
pub struct Naive {
    times: Vec<u64>,
}

impl Naive {
    pub fn push(&mut self, at: At, what: TapWhat) -> Phase {
        if what.is_suck() {
            if self
                .times
                .last()
                .is_some_and(|last| last + 2_000 < at.as_ms())
            {
                self.times.clear();
            }
            self.times.push(at.as_ms());
        }
        let last: Vec<u64> = self.times.iter().rev().take(6).copied().collect();
        let per_s = match (last.first(), last.last()) {
            (Some(to), Some(from)) if from < to => {
                (last.len() - 1) as f64 * 1_000.0 / (to - from) as f64
            }
            _ => 2.0,
        };
        if per_s < 1.2 {
            Phase::Flow
        } else {
            Phase::Quick
        }
    }
}
