//! The best that can be done: one pass forward and back over the taps that is told everything the
//! simulator drew this feed from: the baby's own rates and swallowing, its runs and rests, how
//! long phases last on average, and the hand's noise. It is not told what happened when.

use feedside::practice::{Baby, Hand, Profile, Simulated, Sucking, TruthPhase};
use feedside::record::{At, TapWhat};
use feedside::rhythm::{DOUBLED_MS, Hidden, Phase, posterior};

/// Stages of the quick sucks at the start, of a flow, between flows, and of flutter.
const STAGES: [usize; 4] = [5, 6, 1, 1];
const ALL: usize = STAGES[0] + STAGES[1] + STAGES[2] + STAGES[3];
type States = [f64; ALL];

/// The simulator's spreads: of a gap, of a run's rate, and of rests.
const GAP_SPREAD: f64 = 0.11;
const RUN_SPREAD: f64 = 0.05;
const REST_SPREAD: f64 = 0.5;
/// Rests lengthen by half through a feed: on average by a quarter.
const REST_LONGER: f64 = 1.25;
const REST_MS_LEAST: f64 = 1_800.0;

struct Suck {
    at: At,
    gap_ms: Option<f64>,
    broken_ms: f64,
    swallow: bool,
}

struct Informed<'a> {
    sucks: &'a [Suck],
    own: [Sucking; 3],
    hand: Hand,
    stay_ms: States,
    /// Flutter sets in from here on, on average after so long.
    flutter_ms: (f64, f64),
}

/// The phase of a stage, as an index into what the baby does.
const fn phase(state: usize) -> usize {
    if state < STAGES[0] {
        0
    } else if state < STAGES[0] + STAGES[1] {
        1
    } else if state < ALL - 1 {
        0
    } else {
        2
    }
}

/// Where a stage leads.
const fn next(state: usize) -> usize {
    match state {
        state if state + 1 == ALL => state,
        state if state + 2 == ALL => STAGES[0],
        state => state + 1,
    }
}

fn normal(away: f64, spread: f64) -> f64 {
    (-0.5 * (away / spread).powi(2)).exp() / (spread * 2.506_628)
}

impl Informed<'_> {
    /// How well a gap fits after a suck of each phase: within a run, or a rest.
    fn gap(&self, of: &Sucking, gap_ms: f64) -> f64 {
        let mean = 60_000.0 / of.sucks_per_min;
        let goes_on = 1.0 - 1.0 / of.run_sucks;
        let (mut fit, mut share) = (1e-9, 1.0 - self.hand.missed_suck);
        for count in 1..=6 {
            let spans = f64::from(count);
            let spread = (spans * (GAP_SPREAD * mean).powi(2)
                + (RUN_SPREAD * mean * spans).powi(2)
                + 2.0 * self.hand.jitter_ms.powi(2))
            .sqrt();
            fit += share * goes_on.powi(count) * normal(gap_ms - spans * mean, spread);
            share *= self.hand.missed_suck;
        }
        if REST_MS_LEAST <= gap_ms {
            let away = (gap_ms / (of.rest_ms * REST_LONGER)).ln();
            fit += normal(away, REST_SPREAD) / gap_ms / of.run_sucks;
        }
        fit * 1_000.0
    }

    fn gaps(&self, to: usize) -> States {
        match self.sucks[to].gap_ms {
            Some(ms) => std::array::from_fn(|at| self.gap(&self.own[phase(at)], ms)),
            None => [1.0; ALL],
        }
    }

    /// Steps of at most three seconds, and the chance that flutter sets in within one.
    fn steps(&self, to: usize) -> (usize, f64, f64) {
        let suck = &self.sucks[to];
        let ms = suck.gap_ms.unwrap_or(suck.broken_ms);
        let count = (ms / 3_000.0).ceil().clamp(1.0, 60.0);
        let step_ms = ms / count;
        let (from_ms, mean_ms) = self.flutter_ms;
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
        std::array::from_fn(|at| f64::from(u8::from(at == 0)))
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
                states[next(at)] += weight * gone;
                states[at] += weight * (1.0 - gone) * (1.0 - flutter);
                states[ALL - 1] += weight * (1.0 - gone) * flutter;
            }
        }
    }

    fn backward(&self, to: usize, weights: &mut States) {
        let (count, step_ms, flutter) = self.steps(to);
        for _ in 0..count {
            let after = *weights;
            *weights = std::array::from_fn(|at| {
                let gone = 1.0 - (-step_ms / self.stay_ms[at]).exp();
                gone * after[next(at)]
                    + (1.0 - gone) * ((1.0 - flutter) * after[at] + flutter * after[ALL - 1])
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
        let heard = self.own.map(|it| {
            let share = ((1.0 - self.hand.missed_swallow) / it.sucks_per_swallow).min(0.98);
            if self.sucks[at].swallow {
                share
            } else {
                1.0 - share
            }
        });
        (std::array::from_fn(|state| heard[phase(state)]), 0.0)
    }
}

fn sucks(feed: &Simulated) -> Vec<Suck> {
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
pub fn phases(baby: Baby, hand: Hand, feed: &Simulated, length_ms: f64) -> Vec<(At, Phase)> {
    let profile: Profile = baby.profile();
    let kinds = [TruthPhase::Quick, TruthPhase::Flow, TruthPhase::Flutter];
    let own = [profile.quick, profile.flow, profile.flutter];
    let own = std::array::from_fn(|at| {
        let way = feed.truth.ways.iter().find(|it| it.0 == kinds[at]);
        way.map_or(own[at], |(_, way)| Sucking {
            sucks_per_min: way.sucks_per_min,
            sucks_per_swallow: way.sucks_per_swallow,
            ..own[at]
        })
    });
    let (from, to) = profile.flutter_from;
    let flow_ms = f64::midpoint(profile.ejection_ms.0, profile.ejection_ms.1);
    let flutter_ms = length_ms * f64::midpoint(from, to);
    let count = (profile.ejections * length_ms / 960_000.0).max(1.0);
    let between_ms = (flutter_ms / count - flow_ms).max(20_000.0);
    let first_ms = profile.first_ejection_ms * 1.1;
    let stay_ms = std::array::from_fn(|at| match phase(at) {
        1 => flow_ms / STAGES[1] as f64,
        2 => 1e9,
        _ if at < STAGES[0] => first_ms / STAGES[0] as f64,
        _ => between_ms * 1.5,
    });
    let sucks = sucks(feed);
    let model = Informed {
        sucks: &sucks,
        own,
        hand,
        stay_ms,
        flutter_ms: (
            length_ms * from * 0.8,
            length_ms * (0.5 * (to - from) + 0.25),
        ),
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
