//! Rates and their 95 % intervals, by phase and for the whole feed.
//!
//! - Sucks per minute: 60 000 over the mean gap within runs. A gap that hides missed taps counts
//!   as the sucks that it spans, as far as gaps tell.
//! - Sucks per swallow: sucks over swallows as tapped; what was never heard is not made up for.
//! - Sucks of one run resemble each other, so the intervals come from how much runs differ (a
//!   ratio estimator with runs as clusters: Cochran 1977, Sampling Techniques, 3rd ed., 6.3 and
//!   9A), on the logarithm, with Student's t. For the whole feed the phases are strata: that they
//!   differ makes nothing uncertain.
//! - A phase's sucks are shared out by their probability.
//! - What a hand misses is not known. Sucks per swallow are told as tapped; their interval is for
//!   what the baby did, and so reaches further down: a hand that misses swallows makes them seem
//!   more than they are.

use super::live::phase as phase_of;
use super::own::Own;
use super::parameter::{GAP_SPREAD, PHASES};
use super::smooth::Smoothed;
use super::student::student_95;
use super::suck::Suck;
use super::summary::{Phase, PhaseRates, Rate};
use super::watch::Before;

/// With fewer gaps no rate is told.
const GAPS_LEAST: f64 = 5.0;
/// With fewer swallows no sucks per swallow are told.
const SWALLOWS_LEAST: f64 = 3.0;
/// With fewer runs of equal weight, how much runs differ is not taken from them.
const CLUSTERS_LEAST: f64 = 3.0;
/// The most that an interval reaches up or down, as a logarithm.
const WIDTH_MOST: f64 = 3.0;
/// What a hand's jitter and misses may shift a rate by, relative, one standard deviation: jitter
/// alone 1 to 2 % over ten sucks (worked out from 30 to 60 ms a tap).
const RATE_HAND: f64 = 0.02;
/// Share of swallows that a hand misses over and above the share of sucks that it misses (which
/// gaps tell): 5 to 20 % against 0 to 15 % (common practice, no published figure).
const SWALLOWS_MISSED_MORE: f64 = 0.04;
/// How far that may be off, one standard deviation.
const SWALLOWS_MISSED_SPREAD: f64 = 0.035;

/// A total of some quantity and of what it is per, run by run.
#[derive(Debug, Clone, Default)]
struct Clusters {
    runs: Vec<(f64, f64)>,
}

/// A ratio of two totals.
#[derive(Debug, Clone, Copy)]
struct Ratio {
    value: f64,
    /// The variance of its logarithm.
    variance: f64,
    /// Student's degrees of freedom.
    freedom: f64,
}

impl Clusters {
    fn new(runs: usize) -> Self {
        Self {
            runs: vec![(0.0, 0.0); runs],
        }
    }

    fn add(&mut self, run: usize, top: f64, bottom: f64) {
        self.runs[run].0 += top;
        self.runs[run].1 += bottom;
    }

    fn totals(&self) -> (f64, f64) {
        self.runs.iter().fold((0.0, 0.0), |(top, bottom), run| {
            (top + run.0, bottom + run.1)
        })
    }

    /// The ratio of the totals of some strata together. `alone` is the variance for one item where
    /// there are too few runs to tell.
    fn ratio(strata: &[Self], alone: f64) -> Option<Ratio> {
        let (mut top, mut bottom) = (0.0, 0.0);
        let runs = strata.first()?.runs.len();
        let (mut residuals, mut sizes) = (vec![0.0; runs], vec![0.0; runs]);
        for stratum in strata {
            let (its_top, its_bottom) = stratum.totals();
            if its_bottom <= 0.0 {
                continue;
            }
            let ratio = its_top / its_bottom;
            for (run, (run_top, run_bottom)) in stratum.runs.iter().enumerate() {
                residuals[run] += run_top - ratio * run_bottom;
                sizes[run] += run_bottom;
            }
            top += its_top;
            bottom += its_bottom;
        }
        if top <= 0.0 || bottom <= 0.0 {
            return None;
        }
        // How many runs of equal size would weigh as much.
        let clusters = bottom * bottom / sizes.iter().map(|size| size * size).sum::<f64>();
        let (variance, freedom) = if clusters < CLUSTERS_LEAST {
            (2.0 * alone, CLUSTERS_LEAST)
        } else {
            let squares: f64 = residuals.iter().map(|it| it * it).sum();
            let between = squares / (top * top) * clusters / (clusters - 1.0);
            // Few runs can agree by chance.
            (between.max(0.5 * alone), clusters - 1.0)
        };
        Some(Ratio {
            value: top / bottom,
            variance,
            freedom,
        })
    }
}

/// An interval about the logarithm of `centre`, stretched to hold `value`.
fn rate(value: f64, centre: f64, variance: f64, freedom: f64) -> Rate {
    let width = (student_95(freedom) * variance.sqrt())
        .min(WIDTH_MOST)
        .exp();
    Rate {
        value,
        low: (centre / width).min(value),
        high: (centre * width).max(value),
    }
}

fn sucks_per_min(gaps: &[Clusters]) -> Option<Rate> {
    let count: f64 = gaps.iter().map(|it| it.totals().1).sum();
    if count < GAPS_LEAST {
        return None;
    }
    let ratio = Clusters::ratio(gaps, GAP_SPREAD * GAP_SPREAD / count)?;
    let value = 60_000.0 / ratio.value;
    let variance = ratio.variance + RATE_HAND * RATE_HAND;
    Some(rate(value, value, variance, ratio.freedom))
}

fn sucks_per_swallow(swallows: &[Clusters], own: &Own) -> Option<Rate> {
    let (count, sucks) = swallows
        .iter()
        .map(Clusters::totals)
        .fold((0.0, 0.0), |sum, it| (sum.0 + it.0, sum.1 + it.1));
    if count < SWALLOWS_LEAST {
        return None;
    }
    // What chance alone gives.
    let alone = (1.0 - count / sucks).max(0.05) / count;
    let ratio = Clusters::ratio(swallows, alone)?;
    let value = 1.0 / ratio.value;
    let heard = 1.0 - (own.missed + SWALLOWS_MISSED_MORE).min(0.5);
    let variance = ratio.variance + (SWALLOWS_MISSED_SPREAD / heard).powi(2);
    let told = rate(value, value * heard, variance, ratio.freedom);
    Some(Rate {
        low: told.low.max(1.0).min(value),
        ..told
    })
}

/// The rates of each sucking phase that occurs, then of the whole feed.
pub(super) fn of(
    sucks: &[Suck],
    smoothed: &Smoothed,
    labels: &[Phase],
    rest_ms: u64,
) -> Vec<PhaseRates> {
    let new_run = |suck: &Suck| suck.before.ms().is_none_or(|ms| rest_ms < ms);
    let runs = sucks.iter().filter(|suck| new_run(suck)).count().max(1);
    let mut gaps: [Clusters; PHASES] = std::array::from_fn(|_| Clusters::new(runs));
    let mut swallows = gaps.clone();
    let mut run = 0;
    for (index, suck) in sucks.iter().enumerate() {
        if 0 < index && new_run(suck) {
            run += 1;
        }
        let swallow = f64::from(suck.swallows.min(1));
        for (phase, share) in smoothed.phases[index].iter().enumerate() {
            swallows[phase].add(run, share * swallow, *share);
            if let Before::Gap(ms) = suck.before
                && ms <= rest_ms
            {
                gaps[phase].add(run, share * ms as f64, share * smoothed.spans[index]);
            }
        }
    }
    let mut rates: Vec<PhaseRates> = (0..PHASES)
        .filter(|index| labels.contains(&phase_of(*index)))
        .map(|index| PhaseRates {
            phase: Some(phase_of(index)),
            sucks_per_min: sucks_per_min(&gaps[index..=index]),
            sucks_per_swallow: sucks_per_swallow(&swallows[index..=index], &smoothed.own),
        })
        .collect();
    rates.push(PhaseRates {
        phase: None,
        sucks_per_min: sucks_per_min(&gaps),
        sucks_per_swallow: sucks_per_swallow(&swallows, &smoothed.own),
    });
    rates
}
