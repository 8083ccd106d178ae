//! How the gaps of a run fit a phase, each with those before it: a suck is tapped by an unsteady hand,
//! and a tap that comes late makes the gap before it longer and the one after it shorter. Knows
//! the phases at some paces; not how they change: each sees the gaps before as its own.
//!
//! The jaw's own departures are each gap's own; the hand's belong to a tap and so to two gaps. How far
//! off the last tap was is known from the gap that it ended, the more so the less the jaw departs
//! (Kalman's filter, 1960, J Basic Eng 82:35, of a moving average). In a few gaps the filter is
//! as sure as it gets, so that what a gap costs is worked out once.

use super::evidence::{FAR_SQUARED, MISSED_MOST, ROOT_TWO_PI};
use super::gap_class::Fine;
use super::own::Own;
use super::parameter::{ODD_GAP_SHARE, PHASES, REST_MS_CEILING};
use super::suck::Suck;

/// After so many gaps the filter is as sure as it gets.
const SETTLED: usize = 5;
/// A gap nearer to the mean than this, in squared deviations and in means, is one of one suck and not
/// asked whether it is anything else: it hardly ever is.
const NEAR_SQUARED: f64 = 9.0;
/// See [`NEAR_SQUARED`].
const NEAR_MEANS: f64 = 0.4;

/// A number for each phase.
type Phases = [f64; PHASES];

/// What a gap of one suck costs, so many gaps after the run began.
#[derive(Clone, Copy, Default)]
struct Step {
    /// One over the variance of the gap.
    precision: Phases,
    /// The squared deviations within which it is near.
    near: Phases,
    /// The logarithm of its density at the mean.
    ln_most: Phases,
    /// The share of a departure that is the hand's, on the tap that ends the gap.
    hand_share: Phases,
}

/// A gap that spans so many sucks, those between missed, in a run that has gone on for long.
#[derive(Clone, Copy, Default)]
struct Spanning {
    sucks: f64,
    precision: f64,
    /// Its density at the mean.
    most: f64,
    hand_share: f64,
}

/// How a baby sucks within a run, and the hand taps it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Beat {
    /// Mean gap, in milliseconds.
    pub gap_ms: f64,
    /// Spread of gaps, in milliseconds.
    pub spread_ms: f64,
    /// The share of their variance that is the hand's and not the jaw's, 0 to less than 1.
    pub hand_share: f64,
    /// Share of sucks that are not tapped, 0 to less than 1.
    pub missed: f64,
}

/// How well the gaps of one run fit a beat: the logarithm of their density in milliseconds.
pub fn run_ln(beat: Beat, gaps_ms: &[f64]) -> f64 {
    let mut series = Series::new([beat; PHASES]);
    let ln = gaps_ms.iter().enumerate();
    ln.map(|(step, gap_ms)| series.next(step.min(SETTLED - 1), *gap_ms)[0])
        .sum()
}

/// The gaps of runs of one pace, seen by each phase.
struct Series {
    /// Mean gap, in milliseconds.
    mean_ms: Phases,
    steps: [Step; SETTLED],
    spanning: [[Spanning; MISSED_MOST + 1]; PHASES],
    /// How late the last tap is taken to be, in milliseconds.
    late_ms: Phases,
}

impl Series {
    /// Of runs with such a beat in each phase.
    fn new(beats: [Beat; PHASES]) -> Self {
        let mut series = Self {
            mean_ms: beats.map(|it| it.gap_ms),
            steps: [Step::default(); SETTLED],
            spanning: [[Spanning::default(); MISSED_MOST + 1]; PHASES],
            late_ms: [0.0; PHASES],
        };
        for (phase, beat) in beats.iter().enumerate() {
            let variance = beat.spread_ms * beat.spread_ms;
            let hand = 0.5 * beat.hand_share * variance;
            let jaw = variance - 2.0 * hand;
            // How far off the tap before may be.
            let mut before = hand;
            for step in &mut series.steps {
                let of_gap = jaw + hand + before;
                step.precision[phase] = 1.0 / of_gap;
                let near_ms = NEAR_MEANS * beat.gap_ms;
                step.near[phase] = (near_ms * near_ms / of_gap).min(NEAR_SQUARED);
                step.ln_most[phase] = ((1.0 - beat.missed) / (ROOT_TWO_PI * of_gap.sqrt())).ln();
                step.hand_share[phase] = hand / of_gap;
                before = hand * (1.0 - step.hand_share[phase]);
            }
            let mut sucks = 1.0;
            let mut share = 1.0 - beat.missed;
            for spanning in &mut series.spanning[phase] {
                let of_gap = sucks * jaw + hand + before;
                *spanning = Spanning {
                    sucks,
                    precision: 1.0 / of_gap,
                    most: share / (ROOT_TWO_PI * of_gap.sqrt()),
                    hand_share: hand / of_gap,
                };
                sucks += 1.0;
                share *= beat.missed;
            }
        }
        series
    }

    /// How well the next gap of a run fits, so many gaps after it began: the logarithms of densities in
    /// milliseconds.
    fn next(&mut self, step: usize, gap_ms: f64) -> Phases {
        let step = &self.steps[step];
        let mut ln = [0.0; PHASES];
        let mut squared = [0.0; PHASES];
        let late_ms = self.late_ms;
        for phase in 0..PHASES {
            let away_ms = gap_ms - self.mean_ms[phase] + late_ms[phase];
            squared[phase] = away_ms * away_ms * step.precision[phase];
            ln[phase] = step.ln_most[phase] - 0.5 * squared[phase];
            self.late_ms[phase] = step.hand_share[phase] * away_ms;
        }
        for phase in 0..PHASES {
            if step.near[phase] <= squared[phase] {
                (ln[phase], self.late_ms[phase]) = self.unusual(phase, gap_ms + late_ms[phase]);
            }
        }
        ln
    }

    /// The same of a gap that may span sucks that were missed, or fit nothing, with how late the tap at
    /// its end then is.
    fn unusual(&self, phase: usize, gap_ms: f64) -> (f64, f64) {
        let mut all = ODD_GAP_SHARE / REST_MS_CEILING as f64;
        let mut most = all;
        let mut late_ms = 0.0;
        for of in &self.spanning[phase] {
            let away_ms = gap_ms - of.sucks * self.mean_ms[phase];
            let squared = away_ms * away_ms * of.precision;
            if squared < FAR_SQUARED {
                let density = of.most * (-0.5 * squared).exp();
                all += density;
                if most < density {
                    (most, late_ms) = (density, of.hand_share * away_ms);
                }
            }
        }
        (all.ln(), late_ms)
    }
}

/// The gaps of runs as every phase sees them, at some paces.
pub(super) struct AllSeries<const PACES: usize> {
    series: [Series; PACES],
    /// Where each gap stands for itself: what is known of each class of gaps.
    known: Option<Vec<Option<[Phases; PACES]>>>,
    /// How many gaps the run has had, as far as that matters.
    step: usize,
    power: f64,
    rest_ms: u64,
}

impl<const PACES: usize> AllSeries<PACES> {
    /// With the feed's own numbers; of runs of these paces, as logarithms.
    pub(super) fn new(own: &Own, paces_ln: &[f64; PACES], rest_ms: u64) -> Self {
        Self {
            series: paces_ln.map(|ln| {
                Series::new(std::array::from_fn(|phase| {
                    let gap_ms = own.gap_ms[phase] * ln.exp();
                    Beat {
                        gap_ms,
                        spread_ms: own.gap_spread[phase] * gap_ms,
                        hand_share: if own.gaps.hand { own.hand_share } else { 0.0 },
                        missed: own.missed,
                    }
                }))
            }),
            known: (!own.gaps.hand).then(|| vec![None; Fine::COUNT]),
            step: 0,
            power: own.gaps.power,
            rest_ms,
        }
    }

    /// The next suck of the feed: how well the gap within a run before it fits, as logarithms and as far
    /// as that evidence is taken; `None` if there is no such gap.
    pub(super) fn next(&mut self, suck: &Suck) -> Option<[Phases; PACES]> {
        let Some(gap_ms) = suck.before.within(self.rest_ms) else {
            // A run begins: nothing is known of its first tap.
            self.step = 0;
            for series in &mut self.series {
                series.late_ms = [0.0; PHASES];
            }
            return None;
        };
        let gap_ms = gap_ms as f64;
        if let Some(known) = &mut self.known {
            let class = Fine::of(gap_ms);
            return Some(*known[class].get_or_insert_with(|| {
                let each = self.series.each_mut();
                each.map(|it| it.next(0, Fine::middle_ms(class)).map(|it| self.power * it))
            }));
        }
        let mut all = [[0.0; PHASES]; PACES];
        for (ln, series) in all.iter_mut().zip(&mut self.series) {
            *ln = series.next(self.step, gap_ms).map(|it| self.power * it);
        }
        self.step = (self.step + 1).min(SETTLED - 1);
        Some(all)
    }
}
