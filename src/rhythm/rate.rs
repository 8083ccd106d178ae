//! Rates and their 95 % intervals, by phase and for the whole feed.
//!
//! - Sucks per minute: 60 000 over the mean gap within runs. A gap that hides missed taps counts
//!   as the sucks that it spans, as far as gaps tell; one that fits no number of sucks says
//!   nothing.
//! - Sucks per swallow: sucks over swallows as tapped. What a hand misses is not known, so the
//!   interval is for what the baby did and reaches further down: a hand that misses swallows makes
//!   them seem more than they are.
//! - A phase's sucks are shared out by their probability.
//!
//! Two questions, two intervals (see [`Rate`]):
//! - How does this baby suck in this phase, or in this stretch? The runs seen are a sample of its
//!   way, so the interval comes from how much runs differ.
//! - What did this baby do in this feed? Nearly all of it was seen. What is uncertain is what was
//!   not: time unwatched, which may lie in one phase; sucks and swallows missed; and the hand's
//!   unsteadiness at both ends of a run.

use std::ops::Range;

use super::cluster::{Ratio, alike, interval, ratio};
use super::label::phase as phase_of;
use super::own::Own;
use super::parameter::{GAP_SPREAD, PHASES};
use super::smooth::Smoothed;
use super::suck::Suck;
use super::summary::{Phase, PhaseRates, Rate};
use super::watch::Before;

/// With fewer gaps no rate is told.
const GAPS_LEAST: f64 = 5.0;
/// With fewer swallows no sucks per swallow are told.
const SWALLOWS_LEAST: f64 = 3.0;
/// A hand's unsteadiness at one end of a run, in milliseconds, one standard deviation: 30 to 60
/// (Repp 2005, from memory); ends of runs are few, so that one of the steadier hands is taken.
const JITTER_MS: f64 = 36.0;
/// What jitter and odd gaps may shift a mean rate by, relative, one standard deviation. Common
/// practice.
const RATE_MODEL: f64 = 0.0009;
/// How far the count of sucks that gaps hide may be off, as a share of it, one standard deviation:
/// gaps follow no normal distribution. Common practice.
const HIDDEN_MODEL: f64 = 0.045;
/// How far the rate of a phase in one feed wanders from the baby's way, relative, one standard
/// deviation, before the feed has shown it. Common practice.
const RATE_WANDERS: f64 = 0.03;
/// How many runs with a run before them that starting value is worth.
const RATE_WANDERS_WEIGHT: f64 = 20.0;
/// It wanders no less, likewise: where runs look unlike each other, chance had a hand in it.
const RATE_WANDERS_LEAST: f64 = 0.012;
/// How much more of the wandering there is than a run and the next have in common: they are some
/// twenty seconds apart and have parted by then. Common practice.
const WANDERS_OVER_ALIKE: f64 = 1.6;
/// Share of swallows that a hand misses over and above the share of sucks that it misses (which
/// gaps tell): 5 to 20 % against 0 to 15 % (common practice, no published figure).
const SWALLOWS_MISSED_MORE: f64 = 0.045;
/// How far that may be off, one standard deviation: two of them below is a hand that misses no
/// more of one than of the other.
const SWALLOWS_MISSED_SPREAD: f64 = 0.0225;

/// A total of some quantity and of what it is per, run by run, for each phase.
type Strata = [Vec<(f64, f64)>; PHASES];

/// What an interval is for.
#[derive(Debug, Clone, Copy)]
enum Meant {
    /// The baby's way, of which the runs are a sample.
    Way,
    /// What it did, of which this share was not seen.
    Done { unseen: f64 },
}

impl Meant {
    /// The variance that comes from how runs and phases differ.
    fn sampled(self, ratio: &Ratio) -> f64 {
        match self {
            Self::Way => ratio.between,
            // Of what was not seen, each run is as good as one that was, and all of it may lie in
            // one phase.
            Self::Done { unseen } => unseen * ratio.between + unseen * unseen * ratio.strata,
        }
    }

    const fn is_done(self) -> bool {
        matches!(self, Self::Done { .. })
    }
}

fn totals(strata: &[Vec<(f64, f64)>]) -> (f64, f64) {
    strata
        .iter()
        .flatten()
        .fold((0.0, 0.0), |sum, it| (sum.0 + it.0, sum.1 + it.1))
}

/// What the sucks of a feed add up to.
struct Totals {
    /// Milliseconds of gaps within runs, and the sucks that they span.
    gaps: Strata,
    /// The variance of these sucks.
    spans: f64,
    /// The variance of a phase's rate that runs do not show by how they differ.
    wanders: f64,
    /// Sucks with a swallow, and sucks.
    swallows: Strata,
}

impl Totals {
    fn of(sucks: &[Suck], smoothed: &Smoothed, rest_ms: u64) -> Self {
        let new_run = |suck: &Suck| suck.before.ms().is_none_or(|ms| rest_ms < ms);
        let runs = sucks.iter().filter(|suck| new_run(suck)).count().max(1);
        let mut gaps: Strata = std::array::from_fn(|_| vec![(0.0, 0.0); runs]);
        let mut swallows = gaps.clone();
        let mut variance = 0.0;
        let mut run = 0;
        for (index, suck) in sucks.iter().enumerate() {
            if 0 < index && new_run(suck) {
                run += 1;
            }
            let swallow = f64::from(suck.swallows.min(1));
            let spans = smoothed.spans[index];
            let gap_ms = match suck.before {
                Before::Gap(ms) if ms <= rest_ms => ms as f64,
                _ => 0.0,
            };
            variance += spans.known * spans.variance;
            for (phase, share) in smoothed.phases[index].iter().enumerate() {
                let swallows = &mut swallows[phase][run];
                *swallows = (swallows.0 + share * swallow, swallows.1 + share);
                let known = share * spans.known;
                let gaps = &mut gaps[phase][run];
                *gaps = (gaps.0 + known * gap_ms, gaps.1 + known * spans.sucks);
            }
        }
        Self {
            wanders: wanders(&gaps),
            gaps,
            spans: variance,
            swallows,
        }
    }

    /// The share of sucks missed. Gaps tell of those within a run alone: of the share missed, as
    /// far as a run goes on.
    fn missed(&self, own: &Own) -> f64 {
        let ends = self.swallows[0].len() as f64 / totals(&self.swallows).1.max(1.0);
        let goes_on = (1.0 - ends) * (1.0 - own.missed) + own.missed;
        (own.missed / goes_on).min(0.5)
    }

    fn sucks_per_min(&self, phases: Range<usize>, own: &Own, meant: Meant) -> Option<Rate> {
        let gaps = &self.gaps[phases];
        let (all_ms, spans) = totals(gaps);
        if spans < GAPS_LEAST {
            return None;
        }
        let ratio = ratio(gaps, GAP_SPREAD * GAP_SPREAD / spans)?;
        let value = 60_000.0 / ratio.value;
        let known = if meant.is_done() {
            let runs = (0..gaps[0].len())
                .filter(|run| gaps.iter().any(|it| 0.0 < it[*run].1))
                .count();
            RATE_MODEL.powi(2)
                + (HIDDEN_MODEL * own.missed).powi(2)
                + 2.0 * runs as f64 * (JITTER_MS / all_ms).powi(2)
                + self.spans / (spans * spans)
        } else {
            self.wanders
        };
        let sampled = (meant.sampled(&ratio), ratio.freedom);
        Some(interval(value, value, sampled, known))
    }

    fn sucks_per_swallow(&self, phases: Range<usize>, own: &Own, meant: Meant) -> Option<Rate> {
        let swallows = &self.swallows[phases];
        let (count, sucks) = totals(swallows);
        if count < SWALLOWS_LEAST {
            return None;
        }
        // What chance alone gives.
        let share = count / sucks;
        let alone = (1.0 - share).max(0.05) / count;
        let ratio = ratio(swallows, alone)?;
        let value = 1.0 / ratio.value;
        let missed_sucks = self.missed(own);
        let missed = (missed_sucks + SWALLOWS_MISSED_MORE).min(0.5);
        let heard = 1.0 - missed;
        let mut known = (SWALLOWS_MISSED_SPREAD / heard).powi(2);
        if meant.is_done() {
            // Which swallows were missed is chance, and so is which sucks were, and how many swallows
            // went with them.
            known += (missed + missed_sucks * (heard - share).max(0.0)) / count;
        }
        let sampled = (meant.sampled(&ratio), ratio.freedom);
        let told = interval(value, value * heard, sampled, known);
        Some(Rate {
            low: told.low.max(1.0).min(value),
            ..told
        })
    }
}

fn rates(totals: &Totals, phase: Option<usize>, own: &Own, meant: Meant) -> PhaseRates {
    let range = phase.map_or(0..PHASES, |it| it..it + 1);
    PhaseRates {
        phase: phase.map(phase_of),
        sucks_per_min: totals.sucks_per_min(range.clone(), own, meant),
        sucks_per_swallow: totals.sucks_per_swallow(range, own, meant),
    }
}

/// The variance of the rate of a phase that runs of this feed do not show by how they differ: a
/// rate that wanders slowly is seen in runs that depart alike from their phases' rates.
fn wanders(gaps: &Strata) -> f64 {
    let (alike, pairs) = alike(gaps);
    let shown = WANDERS_OVER_ALIKE * alike;
    let weight = RATE_WANDERS_WEIGHT;
    let variance = (weight * RATE_WANDERS.powi(2) + pairs * shown) / (weight + pairs);
    variance.max(RATE_WANDERS_LEAST.powi(2))
}

/// The rates of each sucking phase that occurs, as the baby's way; then of the whole feed, as what
/// it did, where this share of its time was not seen.
pub(super) fn of(
    sucks: &[Suck],
    smoothed: &Smoothed,
    labels: &[Phase],
    rest_ms: u64,
    unseen: f64,
) -> Vec<PhaseRates> {
    let totals = Totals::of(sucks, smoothed, rest_ms);
    let of = |phase, meant| rates(&totals, phase, &smoothed.own, meant);
    let mut all: Vec<PhaseRates> = (0..PHASES)
        .filter(|index| labels.contains(&phase_of(*index)))
        .map(|index| of(Some(index), Meant::Way))
        .collect();
    all.push(of(None, Meant::Done { unseen }));
    all
}

/// The rates of all these sucks together, as the baby's way.
pub(super) fn way(sucks: &[Suck], smoothed: &Smoothed, rest_ms: u64) -> PhaseRates {
    let totals = Totals::of(sucks, smoothed, rest_ms);
    rates(&totals, None, &smoothed.own, Meant::Way)
}
