//! The best that can be done: one pass forward and back over the taps that is told everything the
//! simulator drew this feed from: the baby's own rates and swallowing, its runs and rests, how
//! long phases last on average, and the hand's noise. It is not told what happened when.

use feedside::practice::Simulated;
use feedside::record::{At, TapWhat};
use feedside::rhythm::{DOUBLED_MS, Hidden, Phase, posterior};

use crate::told::{Feed, Told};

/// Stages, at most: of the quick sucks at the start, of a flow, between flows, and of flutter. Where
/// fewer are told, the first ones are passed over.
const STAGES: [usize; 4] = [5, 6, 2, 1];
const ALL: usize = STAGES[0] + STAGES[1] + STAGES[2] + STAGES[3];
type States = [f64; ALL];

/// A gap shorter than this is no rest, in milliseconds.
const REST_MS_LEAST: f64 = 1_800.0;

/// A suck as tapped; a doubled one is one.
pub struct Suck {
    pub at: At,
    /// The gap before it within what was watched.
    pub gap_ms: Option<f64>,
    /// The time since the suck before it, watched or not.
    broken_ms: f64,
    /// Whether a swallow was tapped with it.
    pub swallow: bool,
}

struct Informed<'a> {
    sucks: &'a [Suck],
    told: &'a Told,
    stay_ms: States,
}

/// Where flow, the time between and flutter begin.
const FLOW: usize = STAGES[0];
const BETWEEN: usize = FLOW + STAGES[1];
const FLUTTER: usize = BETWEEN + STAGES[2];

/// The phase of a stage, as an index into what the baby does.
const fn phase(state: usize) -> usize {
    match state {
        FLOW..BETWEEN => 1,
        FLUTTER => 2,
        _ => 0,
    }
}

fn normal(away: f64, spread: f64) -> f64 {
    (-0.5 * (away / spread).powi(2)).exp() / (spread * 2.506_628)
}

impl Informed<'_> {
    /// How well a gap fits after a suck of each phase: within a run, or a rest.
    fn gap(&self, phase: usize, gap_ms: f64) -> f64 {
        let of = &self.told.own[phase];
        let mean = 60_000.0 / of.sucks_per_min;
        let goes_on = 1.0 - 1.0 / of.run_sucks;
        let (mut fit, mut share) = (1e-9, 1.0 - self.told.hand.missed_suck);
        for count in 1..=6 {
            let spans = f64::from(count);
            let spread = (spans * (self.told.gap_spread[phase] * mean).powi(2)
                + (self.told.rate_spread * mean * spans).powi(2)
                + 2.0 * self.told.hand.jitter_ms.powi(2))
            .sqrt();
            fit += share * goes_on.powi(count) * normal(gap_ms - spans * mean, spread);
            share *= self.told.hand.missed_suck;
        }
        if REST_MS_LEAST <= gap_ms {
            let away = (gap_ms / of.rest_ms).ln();
            fit += normal(away, self.told.rest_spread) / gap_ms / of.run_sucks;
        }
        fit * 1_000.0
    }

    fn gaps(&self, to: usize) -> States {
        match self.sucks[to].gap_ms {
            Some(ms) => std::array::from_fn(|at| self.gap(phase(at), ms)),
            None => [1.0; ALL],
        }
    }

    /// Where a stage leads: there, or with some chance somewhere else.
    fn leads(&self, state: usize) -> (usize, usize, f64) {
        let [_, flow, between] = self.told.stages;
        let flow = BETWEEN - flow;
        let between = FLUTTER - between;
        match state + 1 {
            FLOW => (flow, FLUTTER, self.told.none),
            BETWEEN => (between, FLUTTER, self.told.tires),
            FLUTTER => (flow, FLUTTER, 1.0 - self.told.again),
            ALL => (between, flow, self.told.wakes.1),
            next => (next, FLUTTER, 0.0),
        }
    }

    /// Steps of at most three seconds, and the chance that flutter sets in within one.
    fn steps(&self, to: usize) -> (usize, f64, f64) {
        let suck = &self.sucks[to];
        let ms = suck.gap_ms.unwrap_or(suck.broken_ms);
        let count = (ms / 3_000.0).ceil().clamp(1.0, 60.0);
        let step_ms = ms / count;
        let (from_ms, mean_ms) = self.told.flutter_ms;
        let flutter = if from_ms < suck.at.as_ms() as f64 {
            1.0 - (-step_ms / mean_ms).exp()
        } else {
            0.0
        };
        (count as usize, step_ms, flutter)
    }
}

impl Hidden<ALL> for Informed<'_> {
    fn count(&self) -> usize {
        self.sucks.len()
    }

    fn start(&self) -> States {
        let first = FLOW - self.told.stages[0];
        std::array::from_fn(|at| f64::from(u8::from(at == first)))
    }

    fn forward(&self, to: usize, states: &mut States) {
        for (state, fit) in states.iter_mut().zip(self.gaps(to)) {
            *state *= fit;
        }
        let (count, step_ms, flutter) = self.steps(to);
        for _ in 0..count {
            let before = *states;
            *states = [0.0; ALL];
            for (at, weight) in before.iter().enumerate() {
                let gone = 1.0 - (-step_ms / self.stay_ms[at]).exp();
                let (next, other, chance) = self.leads(at);
                states[next] += weight * gone * (1.0 - chance);
                states[other] += weight * gone * chance;
                states[at] += weight * (1.0 - gone) * (1.0 - flutter);
                states[FLUTTER] += weight * (1.0 - gone) * flutter;
            }
        }
    }

    fn backward(&self, to: usize, weights: &mut States) {
        let (count, step_ms, flutter) = self.steps(to);
        for _ in 0..count {
            let after = *weights;
            *weights = std::array::from_fn(|at| {
                let gone = 1.0 - (-step_ms / self.stay_ms[at]).exp();
                let (next, other, chance) = self.leads(at);
                gone * ((1.0 - chance) * after[next] + chance * after[other])
                    + (1.0 - gone) * ((1.0 - flutter) * after[at] + flutter * after[FLUTTER])
            });
        }
        for (weight, fit) in weights.iter_mut().zip(self.gaps(to)) {
            *weight *= fit;
        }
    }

    fn best(&self, _: usize, _: &mut States) -> [usize; ALL] {
        std::array::from_fn(|at| at)
    }

    fn fit(&self, at: usize) -> (States, f64) {
        let heard = self.told.own.map(|it| {
            let share = ((1.0 - self.told.hand.missed_swallow) / it.sucks_per_swallow).min(0.98);
            if self.sucks[at].swallow {
                share
            } else {
                1.0 - share
            }
        });
        (std::array::from_fn(|state| heard[phase(state)]), 0.0)
    }
}

/// The sucks of a feed as tapped.
pub fn sucks(feed: &Simulated) -> Vec<Suck> {
    let mut sucks: Vec<Suck> = Vec::new();
    let mut broken = false;
    for tap in &feed.taps {
        if !tap.what.is_suck() {
            broken |= !matches!(tap.what, TapWhat::Swallow | TapWhat::End);
            continue;
        }
        let since_ms = sucks.last().map(|last| tap.at.since_ms(last.at));
        match (since_ms, sucks.last_mut()) {
            (Some(ms), Some(last)) if ms < DOUBLED_MS => last.swallow |= tap.what.is_swallow(),
            _ => {
                sucks.push(Suck {
                    at: tap.at,
                    gap_ms: since_ms.filter(|_| !broken).map(|ms| ms as f64),
                    broken_ms: since_ms.unwrap_or(0) as f64,
                    swallow: tap.what.is_swallow(),
                });
                broken = false;
            }
        }
    }
    sucks
}

/// The times of sucks, doubled ones once, each with its most probable phase.
pub fn phases(feed: &Feed) -> Vec<(At, Phase)> {
    let told = &feed.told;
    let [first, flow, between] = told.stages.map(|it| it as f64);
    let stay_ms = std::array::from_fn(|at| match at {
        0..FLOW => told.first_ms / first,
        FLOW..BETWEEN => told.flow_ms / flow,
        BETWEEN..FLUTTER => told.between_ms / between,
        _ => told.wakes.0,
    });
    let sucks = sucks(&feed.simulated);
    let model = Informed {
        sucks: &sucks,
        told,
        stay_ms,
    };
    let mut phases: Vec<(At, Phase)> = sucks.iter().map(|it| (it.at, Phase::Quick)).collect();
    posterior(&model, &mut Vec::new(), |at, states| {
        let mut shares = [0.0; 3];
        for (state, share) in states.iter().enumerate() {
            shares[phase(state)] += share;
        }
        let best = (0..3).fold(
            0,
            |best, it| if shares[best] < shares[it] { it } else { best },
        );
        phases[at].1 = [Phase::Quick, Phase::Flow, Phase::Flutter][best];
    });
    phases
}
