//! How well what was seen fits each phase, given the feed's own numbers.

use super::chain::{self, Stages};
use super::own::Own;
use super::parameter::{FLOW_EBB_ODDS, GAP_SPREAD_BY, ODD_GAP_SHARE, PHASES, REST_MS_CEILING};

/// The most missed sucks in a row that a gap within a run can hide.
pub(super) const MISSED_MOST: usize = 3;

/// A gap within a run, seen by one phase.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct GapFit {
    /// How well it fits: the logarithm of its density, softened.
    pub(super) ln: f64,
    /// Sucks that it spans, one and those missed, expected.
    pub(super) sucks: f64,
    /// Square of its departure from the mean, relative, for one suck of a phase of usual spread.
    pub(super) square: f64,
    /// The sucks that it spans if it fits any number of them.
    pub(super) spans: Spans,
}

/// The sucks that a gap within a run spans.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Spans {
    /// How probable it is that it fits a number of sucks at all.
    pub(super) known: f64,
    /// If it does, how many, expected.
    pub(super) sucks: f64,
    /// Their variance.
    pub(super) variance: f64,
}

impl Spans {
    /// Adds what one phase makes of the gap, by the phase's share.
    pub(super) fn add(&mut self, of_phase: &Self, share: f64) {
        self.known += share * of_phase.known;
        self.sucks += share * of_phase.sucks;
        self.variance += share * of_phase.variance;
    }
}

/// How a gap within a run fits one phase: it spans one suck, or two to four with those between
/// missed, or fits nothing. Departures of the sucks that it spans add up.
pub(super) fn gap(own: &Own, phase: usize, gap_ms: f64) -> GapFit {
    let mean = own.gap_ms[phase];
    let relative_spread = own.gap_spread[phase];
    let spread = relative_spread * mean * ROOT_TWO_PI;
    let precision = 1.0 / (relative_spread * relative_spread);
    let relative = gap_ms / mean;
    let mut share = 1.0 - own.missed;
    let odd = ODD_GAP_SHARE / REST_MS_CEILING as f64;
    // What fits nothing counts as one suck of usual spread.
    let mut all = odd;
    let mut sucks = odd;
    let mut square = odd * relative_spread * relative_spread;
    let mut counts_squared = 0.0;
    let mut count = 1.0_f64;
    for _ in 0..=MISSED_MOST {
        let departure = relative - count;
        let of_one = departure * departure / count;
        let squared = of_one * precision;
        if squared < FAR_SQUARED {
            let density = share * (-0.5 * squared).exp() / (spread * count.sqrt());
            all += density;
            sucks += density * count;
            counts_squared += density * count * count;
            square += density * of_one;
        }
        share *= own.missed;
        count += 1.0;
    }
    let fitting = (all - odd).max(f64::MIN_POSITIVE);
    let spans = (sucks - odd) / fitting;
    GapFit {
        ln: own.gaps.power * all.ln(),
        sucks: sucks / all,
        square: square / all / (GAP_SPREAD_BY[phase] * GAP_SPREAD_BY[phase]),
        spans: Spans {
            known: (all - odd) / all,
            sucks: spans,
            variance: (counts_squared / fitting - spans * spans).max(0.0),
        },
    }
}

/// A gap so many squared deviations away adds nothing that counts.
pub(super) const FAR_SQUARED: f64 = 40.0;
/// The square root of two pi.
pub(super) const ROOT_TWO_PI: f64 = 2.506_628_274_631_000_5;

/// How well a suck with so many swallows fits each stage.
pub(super) fn swallows(own: &Own, swallows: u8) -> Stages {
    let mut shares = chain::by_stage(&own.swallow);
    for (share, ebb) in chain::of_flow(&mut shares).iter_mut().zip(FLOW_EBB_ODDS) {
        let odds = *share * ebb;
        *share = odds / (1.0 - *share + odds);
    }
    match swallows {
        0 => shares.map(|it| 1.0 - it),
        1 => shares,
        // More swallows than sucks: milk comes faster still.
        _ => shares.map(|it| it * it),
    }
}

/// The evidence of runs and rests, one and a half times: a chance of a rest that is alike at every suck
/// makes runs less even than they are (their spread at the breast has no published figure; common
/// practice).
fn one_and_a_half(fit: f64) -> f64 {
    fit * fit.sqrt()
}

/// How well a suck that is followed by no rest fits each phase.
pub(super) fn no_rest(own: &Own) -> [f64; PHASES] {
    own.rest_chance.map(|chance| one_and_a_half(1.0 - chance))
}

/// How well a suck that is followed by a rest fits each phase.
pub(super) fn rest(own: &Own, rest_ms: f64) -> [f64; PHASES] {
    let ln_ms = rest_ms.ln();
    std::array::from_fn(|phase| {
        let deviation = (ln_ms - own.rest_ln_ms[phase]) / own.rest_spread;
        let density = (-0.5 * deviation * deviation).exp() / own.rest_spread;
        one_and_a_half(own.rest_chance[phase] * density)
    })
}

/// How probable it is that a time with no tap is a rest and not missed taps, 0 to 1.
pub(super) fn rest_probability(own: &Own, phases: &[f64; PHASES], silent_ms: f64) -> f64 {
    let mut rest = 0.0;
    let mut sucking = 0.0;
    for (phase, weight) in phases.iter().enumerate() {
        let missed = (silent_ms / own.gap_ms[phase] - 0.5).max(0.0).floor();
        rest += weight * own.rest_chance[phase];
        sucking += weight * (1.0 - own.rest_chance[phase]) * own.missed.powf(missed);
    }
    rest / (rest + sucking).max(1e-300)
}
