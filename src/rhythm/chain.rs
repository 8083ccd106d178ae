//! How phases follow each other and how long they last: a hidden semi-Markov chain in time.
//!
//! A phase that lasts a typical while is a row of stages passed one after another (Erlang's
//! method), so that the chain itself stays Markov and a step costs the same however long the feed.
//!
//! ```text
//! start ─┬─ quick, quick ──────┐
//!        └─ quick (late flow) ─┤
//!            ┌─ flow, flow, flow ─┬─ quick between ─┬─ flow …
//!            │                    └─ flutter        └─ flutter
//!            └──────────── rarely from flutter
//! ```

use super::parameter::{
    BETWEEN_FLOWS_MS, FIRST_FLOW_MS, FLOW, FLOW_AGAIN, FLOW_MS, FLUTTER, FLUTTER_MS, LATE_FLOW_MS,
    LATE_FLOW_SHARE, PHASES, QUICK, STARTS_AGAIN,
};

/// How many stages there are.
pub(super) const STAGES: usize = 9;
/// A probability for each stage.
pub(super) type Stages = [f64; STAGES];

struct Stage {
    phase: usize,
    /// Mean time in it, in milliseconds.
    stay_ms: f64,
    /// Where it leads, with what chance.
    next: [(usize, f64); 2],
}

const fn stage(phase: usize, stay_ms: f64, next: [(usize, f64); 2]) -> Stage {
    Stage {
        phase,
        stay_ms,
        next,
    }
}

/// Where a flow begins.
const FLOWS: usize = 3;
/// Quick sucks between flows.
const BETWEEN: usize = 6;
/// Flutter.
const SLEEPY: usize = 8;
/// Chance that a feed goes from quick sucks to flutter with no flow at all. Common practice.
const NO_FLOW: f64 = 0.05;

const CHAIN: [Stage; STAGES] = [
    stage(QUICK, FIRST_FLOW_MS / 2.0, [(1, 1.0), (1, 0.0)]),
    stage(
        QUICK,
        FIRST_FLOW_MS / 2.0,
        [(FLOWS, 1.0 - NO_FLOW), (SLEEPY, NO_FLOW)],
    ),
    stage(QUICK, LATE_FLOW_MS, [(FLOWS, 0.5), (SLEEPY, 0.5)]),
    stage(FLOW, FLOW_MS / 3.0, [(4, 1.0), (4, 0.0)]),
    stage(FLOW, FLOW_MS / 3.0, [(5, 1.0), (5, 0.0)]),
    stage(
        FLOW,
        FLOW_MS / 3.0,
        [(BETWEEN, FLOW_AGAIN), (SLEEPY, 1.0 - FLOW_AGAIN)],
    ),
    stage(QUICK, BETWEEN_FLOWS_MS / 2.0, [(7, 1.0), (7, 0.0)]),
    stage(QUICK, BETWEEN_FLOWS_MS / 2.0, [(FLOWS, 0.8), (SLEEPY, 0.2)]),
    stage(FLUTTER, FLUTTER_MS, [(FLOWS, 0.7), (BETWEEN, 0.3)]),
];

/// Where a feed begins.
pub(super) const START: Stages = {
    let mut start = [0.0; STAGES];
    start[0] = 1.0 - LATE_FLOW_SHARE;
    start[2] = LATE_FLOW_SHARE;
    start
};

/// The longest step taken at once, in milliseconds.
const STEP_MS: f64 = 5_000.0;
/// The most steps; longer times are cut into so many.
const STEPS_MOST: f64 = 60.0;

/// Into how many steps of what length a time is cut.
fn steps(ms: f64) -> (u32, f64) {
    let steps = (ms / STEP_MS).ceil().clamp(1.0, STEPS_MOST);
    (steps as u32, ms / steps)
}

/// The chance to leave each stage within a step: `1 - exp(-x)` by its Padé approximant.
fn leaving(step_ms: f64) -> Stages {
    std::array::from_fn(|at| {
        let x = step_ms / CHAIN[at].stay_ms;
        (x / (1.0 + 0.5 * x)).min(1.0)
    })
}

/// Lets time pass, forward.
pub(super) fn forward(stages: &Stages, ms: f64) -> Stages {
    let (count, step_ms) = steps(ms);
    let leave = leaving(step_ms);
    let mut now = *stages;
    for _ in 0..count {
        let mut next = [0.0; STAGES];
        for at in 0..STAGES {
            let gone = now[at] * leave[at];
            next[at] += now[at] - gone;
            for (to, chance) in CHAIN[at].next {
                next[to] += gone * chance;
            }
        }
        now = next;
    }
    now
}

/// Lets time pass, backward: what each stage before makes of the weights after.
pub(super) fn backward(weights: &Stages, ms: f64) -> Stages {
    let (count, step_ms) = steps(ms);
    let leave = leaving(step_ms);
    let mut now = *weights;
    for _ in 0..count {
        now = std::array::from_fn(|at| {
            let [(one, chance), (other, rest)] = CHAIN[at].next;
            now[at] * (1.0 - leave[at]) + leave[at] * (chance * now[one] + rest * now[other])
        });
    }
    now
}

/// Where a stage goes when the baby was off and is put on again and starts with quick sucks.
const fn again(at: usize) -> usize {
    if FLOWS <= at { BETWEEN } else { at }
}

/// A baby that was off is put on again, forward.
pub(super) fn on_again(stages: &Stages) -> Stages {
    let mut next = stages.map(|it| it * (1.0 - STARTS_AGAIN));
    for (at, stage) in stages.iter().enumerate() {
        next[again(at)] += stage * STARTS_AGAIN;
    }
    next
}

/// A baby that was off is put on again, backward.
pub(super) fn on_again_backward(weights: &Stages) -> Stages {
    std::array::from_fn(|at| weights[at] * (1.0 - STARTS_AGAIN) + weights[again(at)] * STARTS_AGAIN)
}

/// Weighs each stage by its phase.
pub(super) fn weigh(stages: &mut Stages, phases: &[f64; PHASES]) {
    for (stage, it) in stages.iter_mut().zip(&CHAIN) {
        *stage *= phases[it.phase];
    }
}

/// Makes them add up to one. What has become too unlikely to tell starts again evenly.
pub(super) fn normalise(stages: &mut Stages) {
    let sum: f64 = stages.iter().sum();
    if 1e-280 < sum && sum.is_finite() {
        for stage in stages {
            *stage /= sum;
        }
    } else {
        *stages = [1.0 / STAGES as f64; STAGES];
    }
}

/// The probability of each phase.
pub(super) fn by_phase(stages: &Stages) -> [f64; PHASES] {
    let mut phases = [0.0; PHASES];
    for (stage, it) in stages.iter().zip(&CHAIN) {
        phases[it.phase] += stage;
    }
    phases
}
