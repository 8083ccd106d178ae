//! How well runs are found.

use std::collections::HashSet;

use feedside::practice::{Simulated, TruthPhase};
use feedside::record::At;
use feedside::rhythm::{Phase, Summary};

/// A run is found if its ends are so near to those of a true one, in milliseconds.
const RUN_NEAR_MS: u64 = 1_000;

/// Runs that were, that are told, and that are found.
#[derive(Default)]
pub struct Runs {
    real: usize,
    told: usize,
    found: usize,
}

impl Runs {
    /// Twice those found over those that were and those told, in per cent.
    pub fn f1(&self) -> f64 {
        200.0 * self.found as f64 / (self.real + self.told).max(1) as f64
    }

    pub fn add(&mut self, summary: &Summary, feed: &Simulated) {
        // Runs that the hand was away from are not asked for.
        let unwatched: Vec<(At, At)> = summary
            .phases
            .iter()
            .filter(|it| it.phase == Phase::Unwatched)
            .map(|it| (it.from, it.to))
            .collect();
        let away = |from: At, to: At| {
            unwatched
                .iter()
                .any(|it| it.0 <= to.plus_ms(1_000) && from <= it.1.plus_ms(1_000))
        };
        let mut truth: Vec<(At, At)> = Vec::new();
        for span in &feed.truth.phases {
            if matches!(span.phase, TruthPhase::Rest | TruthPhase::Off) {
                continue;
            }
            match truth.last_mut() {
                Some(last) if last.1 == span.from => last.1 = span.to,
                _ => truth.push((span.from, span.to)),
            }
        }
        truth.retain(|it| !away(it.0, it.1));
        let told: Vec<(At, At)> = summary
            .runs
            .iter()
            .map(|it| (it.from, it.to))
            .filter(|it| !away(it.0, it.1))
            .collect();
        self.real += truth.len();
        self.told += told.len();
        let mut used = HashSet::new();
        for run in told {
            let found = truth.iter().position(|it| {
                it.0.as_ms().abs_diff(run.0.as_ms()) <= RUN_NEAR_MS
                    && it.1.as_ms().abs_diff(run.1.as_ms()) <= RUN_NEAR_MS
            });
            self.found += usize::from(found.is_some_and(|it| used.insert(it)));
        }
    }
}
