//! How phases follow each other and how long they last: a hidden semi-Markov chain in time.
//!
//! A phase that lasts a typical while is a row of stages passed one after another (Erlang's
//! method), so that the chain itself stays Markov and a step costs the same however long the feed.
//! Flutter is the sleepy end: looking back, it sets in more readily in the later part of a feed.
//! A baby may also fall asleep early and flutter for most of a feed, or doze: flutter at any time and
//! mostly wake up again. Other chains, same stages.
//!
//! ```text
//! start ─┬─ quick, quick ──────┐
//!        └─ quick (late flow) ─┤
//!            ┌─ flow, flow, flow ─┬─ quick, quick ──┬─ flow …
//!            │                    ├─ quick for long ┴─ flutter
//!            │                    └─ flutter
//!            └──────────── seldom from flutter
//! ```

use super::parameter::{
    BETWEEN_FLOWS_MS, DOZES_DROWSY_SHARE, DOZES_ENDS_ODDS, DOZES_FLUTTER_ODDS, DOZES_PLAUSIBLE,
    DROWSY_MS, DROWSY_SHARE, EARLY_FLUTTER_ODDS, EARLY_PLAUSIBLE, ENDS_AWAKE_ODDS, FIRST_FLOW_MS,
    FLOW, FLOW_AGAIN, FLOW_MS, FLOW_STAGES, FLOWS_AT_ONCE, FLUTTER, FLUTTER_MS, FLUTTER_ODDS,
    LATE_FLOW_MS, LATE_FLOW_SHARE, LONG_BETWEEN_MS, LONG_BETWEEN_SHARE, NO_FLOW, PHASES, QUICK,
    QUICK_AFTER_FLOW, ROUSED_TO_FLOW, STARTS_AGAIN, WAKES_TO_FLOW,
};

/// How many stages there are.
pub(super) const STAGES: usize = 11;
/// A probability for each stage.
pub(super) type Stages = [f64; STAGES];

/// To how many others a stage leads at most.
const LEADS: usize = 4;

/// Where a flow begins.
const FLOWS: usize = 3;
/// Quick sucks between flows that follow soon.
const BETWEEN: usize = 6;
/// Quick sucks for long after a flow.
const LONG: usize = 8;
/// Flutter to the end.
const SLEEPY: usize = 9;
/// Flutter for a while.
const DROWSY: usize = 10;

/// The phase of each stage.
const PHASE: [usize; STAGES] = [
    QUICK, QUICK, QUICK, FLOW, FLOW, FLOW, QUICK, QUICK, QUICK, FLUTTER, FLUTTER,
];

/// Mean time in each stage, in milliseconds.
const STAY_MS: Stages = [
    FIRST_FLOW_MS / 2.0,
    FIRST_FLOW_MS / 2.0,
    LATE_FLOW_MS,
    FLOW_MS / FLOW_STAGES as f64,
    FLOW_MS / FLOW_STAGES as f64,
    FLOW_MS / FLOW_STAGES as f64,
    BETWEEN_FLOWS_MS / 2.0,
    BETWEEN_FLOWS_MS / 2.0,
    LONG_BETWEEN_MS,
    FLUTTER_MS,
    DROWSY_MS,
];

/// When flutter comes in a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sleep {
    /// At its end, seldom before.
    AtTheEnd,
    /// To its end, but it may begin at any time.
    Early,
    /// At any time, mostly for a while.
    ComesAndGoes,
}

impl Sleep {
    pub(super) const ALL: [Self; 3] = [Self::AtTheEnd, Self::Early, Self::ComesAndGoes];

    /// How plausible it is before the feed has shown anything, as a logarithm.
    pub(super) const fn plausible(self) -> f64 {
        match self {
            Self::AtTheEnd => 0.0,
            Self::Early => EARLY_PLAUSIBLE,
            Self::ComesAndGoes => DOZES_PLAUSIBLE,
        }
    }
}

type Leads = [(usize, f64); LEADS];
const NONE: (usize, f64) = (0, 0.0);

/// One chain: where each stage leads, with what chance.
pub(super) struct Chain {
    next: [Leads; STAGES],
}

/// A chance of flutter with its odds taken so many times.
const fn readily(chance: f64, odds: f64) -> f64 {
    let odds = chance / (1.0 - chance) * odds;
    odds / (1.0 + odds)
}

/// What leads to flutter with this chance, that share of it a drowsy while, and else as told.
const fn or_flutter(chance: f64, drowsy: f64, first: (usize, f64), second: (usize, f64)) -> Leads {
    [
        (first.0, first.1 * (1.0 - chance)),
        (second.0, second.1 * (1.0 - chance)),
        (SLEEPY, chance * (1.0 - drowsy)),
        (DROWSY, chance * drowsy),
    ]
}

impl Chain {
    const fn new(odds: f64, drowsy: f64) -> Self {
        let after_quick = or_flutter(readily(1.0 - FLOW_AGAIN, odds), drowsy, (FLOWS, 1.0), NONE);
        Self {
            next: [
                only(1),
                or_flutter(readily(NO_FLOW, odds), drowsy, (FLOWS, 1.0), NONE),
                after_quick,
                only(4),
                only(5),
                or_flutter(
                    readily(1.0 - QUICK_AFTER_FLOW, odds),
                    drowsy,
                    (BETWEEN, 1.0 - LONG_BETWEEN_SHARE),
                    (LONG, LONG_BETWEEN_SHARE),
                ),
                only(7),
                after_quick,
                after_quick,
                either(WAKES_TO_FLOW),
                either(ROUSED_TO_FLOW),
            ],
        }
    }

    /// The chain of a part of the feed, see [`super::parameter::FLUTTER_ODDS`]; a baby that
    /// falls asleep early or dozes does so in all parts alike.
    pub(super) fn of(part: usize, sleep: Sleep) -> &'static Self {
        match sleep {
            Sleep::AtTheEnd => &CHAINS[part.min(CHAINS.len() - 1)],
            Sleep::Early => &EARLY,
            Sleep::ComesAndGoes => &DOZES,
        }
    }
}

/// To flow with this chance, else to quick sucks.
const fn either(flow: f64) -> Leads {
    [(FLOWS, flow), (BETWEEN, 1.0 - flow), NONE, NONE]
}

const fn only(at: usize) -> Leads {
    [(at, 1.0), NONE, NONE, NONE]
}

static CHAINS: [Chain; FLUTTER_ODDS.len()] = [
    Chain::new(FLUTTER_ODDS[0], DROWSY_SHARE),
    Chain::new(FLUTTER_ODDS[1], DROWSY_SHARE),
    Chain::new(FLUTTER_ODDS[2], DROWSY_SHARE),
];

static EARLY: Chain = Chain::new(EARLY_FLUTTER_ODDS, DROWSY_SHARE);

static DOZES: Chain = Chain::new(DOZES_FLUTTER_ODDS, DOZES_DROWSY_SHARE);

/// Where a feed begins.
pub(super) const START: Stages = {
    let mut start = [0.0; STAGES];
    start[0] = (1.0 - FLOWS_AT_ONCE) * (1.0 - LATE_FLOW_SHARE);
    start[2] = (1.0 - FLOWS_AT_ONCE) * LATE_FLOW_SHARE;
    start[FLOWS] = FLOWS_AT_ONCE;
    start
};

/// The longest step taken at once, in milliseconds.
const STEP_MS: f64 = 5_000.0;
/// The most steps; longer times are cut into so many.
const STEPS_MOST: f64 = 60.0;

/// A time cut into steps, with the chance to leave each stage within one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Steps {
    count: u32,
    leave: Stages,
}

impl Steps {
    /// The steps of so many milliseconds. The chance is `1 - exp(-x)` by its Padé approximant.
    pub(super) fn of(ms: f64) -> Self {
        let count = (ms / STEP_MS).ceil().clamp(1.0, STEPS_MOST);
        let step_ms = ms / count;
        let leave = std::array::from_fn(|at| {
            let x = step_ms / STAY_MS[at];
            (x / (1.0 + 0.5 * x)).min(1.0)
        });
        Self {
            count: count as u32,
            leave,
        }
    }
}

impl Chain {
    /// Lets time pass, forward.
    pub(super) fn forward(&self, stages: &mut Stages, steps: &Steps) {
        for _ in 0..steps.count {
            let before = *stages;
            for at in 0..STAGES {
                let gone = before[at] * steps.leave[at];
                stages[at] -= gone;
                for (to, chance) in self.next[at] {
                    if 0.0 < chance {
                        stages[to] += gone * chance;
                    }
                }
            }
        }
    }

    /// Lets time pass, backward: what each stage before makes of the weights after.
    pub(super) fn backward(&self, weights: &mut Stages, steps: &Steps) {
        for _ in 0..steps.count {
            let after = *weights;
            for at in 0..STAGES {
                let mut led = 0.0;
                for (to, chance) in self.next[at] {
                    if 0.0 < chance {
                        led += chance * after[to];
                    }
                }
                weights[at] += steps.leave[at] * (led - after[at]);
            }
        }
    }

    /// Lets time pass along the one best way into each stage: its weight and where it comes from.
    pub(super) fn best(&self, stages: &mut Stages, steps: &Steps) -> [usize; STAGES] {
        let mut origin = std::array::from_fn(|at| at);
        for _ in 0..steps.count {
            let (before, came) = (*stages, origin);
            for at in 0..STAGES {
                stages[at] = before[at] * (1.0 - steps.leave[at]);
            }
            for at in 0..STAGES {
                for (to, chance) in self.next[at] {
                    let way = before[at] * steps.leave[at] * chance;
                    if stages[to] < way {
                        (stages[to], origin[to]) = (way, came[at]);
                    }
                }
            }
        }
        origin
    }
}

/// Where a stage goes when the baby was off and is put on again and starts with quick sucks.
const fn again(at: usize) -> usize {
    if FLOWS <= at { BETWEEN } else { at }
}

/// A baby that was off is put on again, forward.
pub(super) fn on_again(stages: &mut Stages) {
    let before = *stages;
    *stages = before.map(|it| it * (1.0 - STARTS_AGAIN));
    for (at, stage) in before.iter().enumerate() {
        stages[again(at)] += stage * STARTS_AGAIN;
    }
}

/// A baby that was off is put on again, backward.
pub(super) fn on_again_backward(weights: &mut Stages) {
    let after = *weights;
    *weights = std::array::from_fn(|at| {
        after[at] * (1.0 - STARTS_AGAIN) + after[again(at)] * STARTS_AGAIN
    });
}

/// How well the end of a feed in this part of it fits each stage, so long after the last suck.
pub(super) fn ends(part: usize, sleep: Sleep, after_ms: u64) -> Stages {
    let (in_flutter, awake) = match sleep {
        Sleep::AtTheEnd | Sleep::Early => (1.0, ENDS_AWAKE_ODDS),
        Sleep::ComesAndGoes => DOZES_ENDS_ODDS,
    };
    let mut weights = PHASE.map(|it| if it == FLUTTER { in_flutter } else { awake });
    Chain::of(part, sleep).backward(&mut weights, &Steps::of(after_ms as f64));
    weights
}

/// The phase of a stage.
pub(super) const fn phase_of(stage: usize) -> usize {
    PHASE[stage]
}

/// The phases' weights, for each stage.
pub(super) fn by_stage(phases: &[f64; PHASES]) -> Stages {
    std::array::from_fn(|at| phases[PHASE[at]])
}

/// For each stage, the first one that is like it in all that is seen of them: those of its phase, but
/// that a flow ebbs.
const LIKE: [usize; STAGES] = [0, 0, 0, 3, 4, 5, 0, 0, 0, SLEEPY, SLEEPY];

/// What `of` makes of each stage, where those that are alike have the same: asked once for these.
pub(super) fn each_kind(stages: &Stages, of: impl Fn(f64) -> f64) -> Stages {
    let mut made = [0.0; STAGES];
    for at in 0..STAGES {
        made[at] = if LIKE[at] == at {
            of(stages[at])
        } else {
            made[LIKE[at]]
        };
    }
    made
}

/// The stages of a flow, from its beginning to its end.
pub(super) fn of_flow(stages: &mut Stages) -> &mut [f64] {
    &mut stages[FLOWS..FLOWS + FLOW_STAGES]
}

/// Weighs each stage by its phase.
pub(super) fn weigh(stages: &mut Stages, phases: &[f64; PHASES]) {
    for (stage, phase) in stages.iter_mut().zip(PHASE) {
        *stage *= phases[phase];
    }
}

/// The probability of each phase.
pub(super) fn by_phase(stages: &Stages) -> [f64; PHASES] {
    let mut phases = [0.0; PHASES];
    for (stage, phase) in stages.iter().zip(PHASE) {
        phases[phase] += stage;
    }
    phases
}
