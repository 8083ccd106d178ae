//! The feed's own numbers: the published means, moved towards what this feed shows.
//!
//! Babies differ by tens of per cent, mostly in all phases alike. So each phase is drawn towards
//! the baby's common departure from the means, and that towards the means: three levels of normal
//! distributions (logarithms of gaps, log odds of swallows), solved in closed form.

use super::evidence::GapFit;
use super::parameter::{
    GAP_BABY_SPREAD, GAP_MS, GAP_PHASE_SPREAD, GAP_SPREAD, GAP_SPREAD_WEIGHT, MISSED,
    MISSED_WEIGHT, PHASES, REST_CHANCE, REST_CHANCE_WEIGHT, REST_MS, REST_WEIGHT, SWALLOW,
    SWALLOW_BABY_SPREAD, SWALLOW_PHASE_SPREAD,
};

/// The numbers of one feed, by sucking phase where they differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Own {
    /// Mean gap within a run, in milliseconds.
    pub(super) gap_ms: [f64; PHASES],
    /// Spread of such gaps, relative.
    pub(super) gap_spread: f64,
    /// Share of sucks not tapped.
    pub(super) missed: f64,
    /// Share of sucks with a swallow noticed.
    pub(super) swallow: [f64; PHASES],
    /// Chance that a rest follows a suck.
    pub(super) rest_chance: [f64; PHASES],
    /// Mean logarithm of a rest's milliseconds.
    pub(super) rest_ln_ms: [f64; PHASES],
}

/// What a feed has shown, each suck shared out over the phases by their probability.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Sums {
    /// Sucks.
    pub(super) sucks: [f64; PHASES],
    /// Those with a swallow.
    pub(super) swallows: [f64; PHASES],
    /// Gaps within runs.
    pub(super) gaps: [f64; PHASES],
    /// Their milliseconds, each over the number of sucks that it spans.
    pub(super) gap_ms: [f64; PHASES],
    /// Squares of their departures from the mean, relative, all phases.
    pub(super) squares: f64,
    /// Sucks missed within gaps, all phases.
    pub(super) missed: f64,
    /// Sucks that were followed by another suck, rest or not.
    pub(super) followed: [f64; PHASES],
    /// Those followed by a rest.
    pub(super) rests: [f64; PHASES],
    /// The logarithms of these rests' milliseconds.
    pub(super) rest_ln_ms: [f64; PHASES],
}

/// Draws three estimates towards their common departure from `means`, and that towards none.
/// `shown` holds estimate and variance of each.
fn drawn(
    means: [f64; PHASES],
    shown: [(f64, f64); PHASES],
    baby_spread: f64,
    phase_spread: f64,
) -> [f64; PHASES] {
    let phase_variance = phase_spread * phase_spread;
    let (mut weights, mut departure) = (1.0 / (baby_spread * baby_spread), 0.0);
    for (mean, (value, variance)) in means.iter().zip(shown) {
        let weight = 1.0 / (variance + phase_variance);
        weights += weight;
        departure += weight * (value - mean);
    }
    let baby = departure / weights;
    std::array::from_fn(|phase| {
        let (value, variance) = shown[phase];
        let from = means[phase] + baby;
        from + (value - from) * phase_variance / (phase_variance + variance)
    })
}

/// Log odds.
fn logit(share: f64) -> f64 {
    (share / (1.0 - share)).ln()
}

/// How many sucks a phase's starting share of swallows is worth while it is put into log odds.
const SWALLOW_START_WEIGHT: f64 = 3.0;

impl Own {
    /// The numbers of a feed that has shown nothing yet.
    pub(super) fn start() -> Self {
        Self::of(&Sums::default())
    }

    /// The numbers of a feed.
    pub(super) fn of(sums: &Sums) -> Self {
        let gaps: f64 = sums.gaps.iter().sum();
        let gap_variance = (GAP_SPREAD * GAP_SPREAD * GAP_SPREAD_WEIGHT + sums.squares)
            / (GAP_SPREAD_WEIGHT + gaps);
        let gap_ln = drawn(
            GAP_MS.map(f64::ln),
            std::array::from_fn(|phase| {
                let count = sums.gaps[phase];
                if count < 0.5 {
                    (GAP_MS[phase].ln(), 1e9)
                } else {
                    ((sums.gap_ms[phase] / count).ln(), gap_variance / count)
                }
            }),
            GAP_BABY_SPREAD,
            GAP_PHASE_SPREAD,
        );
        let swallow = drawn(
            SWALLOW.map(logit),
            std::array::from_fn(|phase| {
                let count = sums.sucks[phase];
                let all = count + SWALLOW_START_WEIGHT;
                let share = (sums.swallows[phase] + SWALLOW[phase] * SWALLOW_START_WEIGHT) / all;
                let share = share.clamp(0.005, 0.98);
                (
                    logit(share),
                    1.0 / (count.max(1e-9) * share * (1.0 - share)),
                )
            }),
            SWALLOW_BABY_SPREAD,
            SWALLOW_PHASE_SPREAD,
        );
        Self {
            gap_ms: gap_ln.map(f64::exp),
            gap_spread: gap_variance.sqrt().clamp(0.06, 0.5),
            missed: ((MISSED * MISSED_WEIGHT + sums.missed) / (MISSED_WEIGHT + gaps + sums.missed))
                .clamp(0.002, 0.4),
            swallow: swallow.map(|odds| 1.0 / (1.0 + (-odds).exp())),
            rest_chance: std::array::from_fn(|phase| {
                (REST_CHANCE[phase] * REST_CHANCE_WEIGHT + sums.rests[phase])
                    / (REST_CHANCE_WEIGHT + sums.followed[phase])
            }),
            rest_ln_ms: std::array::from_fn(|phase| {
                (REST_MS[phase].ln() * REST_WEIGHT + sums.rest_ln_ms[phase])
                    / (REST_WEIGHT + sums.rests[phase])
            }),
        }
    }
}

impl Sums {
    /// Takes a suck with its swallows, shared out by `phases`.
    pub(super) fn add_suck(&mut self, phases: &[f64; PHASES], swallow: bool) {
        for (phase, share) in phases.iter().enumerate() {
            self.sucks[phase] += share;
            if swallow {
                self.swallows[phase] += share;
            }
        }
    }

    /// Takes a gap within a run that ends with a suck of these `phases`.
    pub(super) fn add_gap(
        &mut self,
        before: &[f64; PHASES],
        phases: &[f64; PHASES],
        gap_ms: f64,
        fits: &[GapFit; PHASES],
    ) {
        for phase in 0..PHASES {
            let (share, fit) = (phases[phase], fits[phase]);
            self.gaps[phase] += share;
            self.gap_ms[phase] += share * gap_ms / fit.sucks;
            self.squares += share * fit.square;
            self.missed += share * (fit.sucks - 1.0);
            self.followed[phase] += before[phase];
        }
    }

    /// Takes a rest after a suck of these phases.
    pub(super) fn add_rest(&mut self, before: &[f64; PHASES], rest_ms: f64) {
        let ln_ms = rest_ms.ln();
        for (phase, share) in before.iter().enumerate() {
            self.followed[phase] += share;
            self.rests[phase] += share;
            self.rest_ln_ms[phase] += share * ln_ms;
        }
    }
}
