//! Rates and their 95 % intervals, by phase and for the whole feed.
//!
//! - Sucks per minute: 60 000 over the mean gap within runs. A gap that hides missed taps counts
//!   as the sucks that it spans, as far as gaps tell.
//! - Sucks per swallow: sucks over swallows as tapped; what was never heard is not made up for.
//! - Sucks of one run resemble each other, so the intervals come from how much runs differ (a
//!   ratio estimator with runs as clusters: Cochran 1977, Sampling Techniques, 3rd ed., 6.3 and
//!   9A), on the logarithm, with Student's t.
//! - A phase's sucks are shared out by their probability.
//! - What a hand misses is not known; the interval of sucks per swallow is widened for it.

use super::parameter::PHASES;
use super::smooth::{Smoothed, Suck};
use super::summary::{Phase, PhaseRates, Rate};
use super::watch::Before;

/// With fewer gaps no rate is told.
const GAPS_LEAST: f64 = 5.0;
/// With fewer swallows no sucks per swallow are told.
const SWALLOWS_LEAST: f64 = 3.0;
/// What a hand's clock and misses may shift a rate by, relative, one standard deviation: jitter
/// moves a mean over ten sucks by 1 to 2 % (worked out from 30 to 60 ms a tap).
const RATE_HAND: f64 = 0.01;
/// What missed swallows against missed sucks may shift sucks per swallow by, relative, one
/// standard deviation: 5 to 20 % against 0 to 15 % (common practice, no published figure).
const RATIO_HAND: f64 = 0.06;

/// A total of some quantity and of what it is per, run by run.
#[derive(Debug, Clone, Default)]
struct Clusters {
    runs: Vec<(f64, f64)>,
}

impl Clusters {
    fn add(&mut self, run: usize, top: f64, bottom: f64) {
        if self.runs.len() <= run {
            self.runs.resize(run + 1, (0.0, 0.0));
        }
        self.runs[run].0 += top;
        self.runs[run].1 += bottom;
    }

    fn totals(&self) -> (f64, f64) {
        self.runs.iter().fold((0.0, 0.0), |(top, bottom), run| {
            (top + run.0, bottom + run.1)
        })
    }

    /// The ratio of totals, the variance of its logarithm, and the degrees of freedom.
    fn ratio(&self) -> Option<(f64, f64, f64)> {
        let (top, bottom) = self.totals();
        if top <= 0.0 || bottom <= 0.0 {
            return None;
        }
        let ratio = top / bottom;
        let (mut squares, mut weights) = (0.0, 0.0);
        for (run_top, run_bottom) in &self.runs {
            let residual = run_top - ratio * run_bottom;
            squares += residual * residual;
            weights += run_bottom * run_bottom;
        }
        // How many runs of equal size would weigh as much.
        let clusters = bottom * bottom / weights;
        if clusters < 1.5 {
            return Some((ratio, f64::INFINITY, 1.0));
        }
        let variance = squares / (top * top) * clusters / (clusters - 1.0);
        Some((ratio, variance, clusters - 1.0))
    }
}

/// Student's t for a 95 % interval, by the series of Cornish and Fisher about the normal quantile
/// (Abramowitz and Stegun 26.7.5).
pub(super) fn student_95(freedom: f64) -> f64 {
    const Z: f64 = 1.959_963_984_540_054;
    let z2 = Z * Z;
    let g1 = Z * (z2 + 1.0) / 4.0;
    let g2 = Z * ((5.0 * z2 + 16.0) * z2 + 3.0) / 96.0;
    let g3 = Z * (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) / 384.0;
    let n = freedom.max(2.0);
    Z + g1 / n + g2 / (n * n) + g3 / (n * n * n)
}

fn rate(value: f64, variance: f64, freedom: f64) -> Rate {
    let width = (student_95(freedom) * variance.sqrt()).min(3.0).exp();
    Rate {
        value,
        low: value / width,
        high: value * width,
    }
}

#[derive(Default)]
struct Counted {
    gaps: Clusters,
    swallows: Clusters,
}

impl Counted {
    fn sucks_per_min(&self) -> Option<Rate> {
        let (top, bottom) = self.gaps.totals();
        if bottom < GAPS_LEAST {
            return None;
        }
        let (mean_ms, variance, freedom) = self.gaps.ratio()?;
        // With a single run, the usual spread of gaps.
        let plain = super::parameter::GAP_SPREAD * super::parameter::GAP_SPREAD / bottom;
        let variance = if variance.is_finite() {
            variance
        } else {
            4.0 * plain
        };
        debug_assert!(0.0 < top);
        Some(rate(
            60_000.0 / mean_ms,
            variance + RATE_HAND * RATE_HAND,
            freedom,
        ))
    }

    fn sucks_per_swallow(&self) -> Option<Rate> {
        let (swallows, sucks) = self.swallows.totals();
        if swallows < SWALLOWS_LEAST {
            return None;
        }
        let (share, variance, freedom) = self.swallows.ratio()?;
        // Never narrower than half of what chance alone gives: few runs can agree by chance.
        let chance = (1.0 - share).max(0.05) / swallows;
        let variance = if variance.is_finite() {
            variance.max(0.5 * chance)
        } else {
            2.0 * chance
        };
        debug_assert!(swallows <= sucks + 1e-9);
        Some(rate(
            1.0 / share,
            variance + RATIO_HAND * RATIO_HAND,
            freedom,
        ))
    }
}

/// The rates of each sucking phase that occurs, then of the whole feed.
pub(super) fn of(
    sucks: &[Suck],
    smoothed: &Smoothed,
    labels: &[Phase],
    rest_ms: u64,
) -> Vec<PhaseRates> {
    let mut counted: [Counted; PHASES + 1] = Default::default();
    let mut run = 0;
    for (index, suck) in sucks.iter().enumerate() {
        if 0 < index && suck.before.ms().is_none_or(|ms| rest_ms < ms) {
            run += 1;
        }
        let swallow = f64::from(suck.swallows.min(1));
        let shares = smoothed.phases[index];
        for (phase, counted) in counted.iter_mut().enumerate() {
            let share = shares.get(phase).copied().unwrap_or(1.0);
            counted.swallows.add(run, share * swallow, share);
            if let Before::Gap(ms) = suck.before
                && ms <= rest_ms
            {
                counted
                    .gaps
                    .add(run, share * ms as f64, share * smoothed.spans[index]);
            }
        }
    }
    let mut rates = Vec::new();
    for (index, counted) in counted.iter().enumerate() {
        let phase = (index < PHASES).then(|| super::live::phase(index));
        if phase.is_none_or(|phase| labels.contains(&phase)) {
            rates.push(PhaseRates {
                phase,
                sucks_per_min: counted.sucks_per_min(),
                sucks_per_swallow: counted.sucks_per_swallow(),
            });
        }
    }
    rates
}
