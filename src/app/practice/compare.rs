//! What an observer caught, beside the truth and beside a second observer. The measures themselves
//! are those of `practice` and `rhythm`; here is only what is laid beside what.

use crate::practice::{HandSeen, Kappa, Truth, TruthPhase, counts, hand_seen, intraclass, kappa};
use crate::record::{At, Tap};
use crate::rhythm::{self, Phase, Summary};

/// Phases are compared once a second, in milliseconds.
const MOMENT_MS: usize = 1_000;

/// An observer against the truth.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// What the hand caught.
    pub hand: HandSeen,
    /// Agreement on the phases, second by second.
    pub phases: Option<Kappa>,
    /// When milk flowing truly began.
    pub first_flow: Option<At>,
    /// When it began by her taps.
    pub first_flow_tapped: Option<At>,
}

/// Two observers against each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Between {
    /// Agreement on the phases, second by second.
    pub phases: Option<Kappa>,
    /// Intraclass correlation of sucks in each half minute.
    pub sucks: Option<f64>,
    /// Intraclass correlation of swallows in each half minute.
    pub swallows: Option<f64>,
}

/// Lays an observer's taps beside the truth, up to `end`.
pub fn compare(truth: &Truth, taps: &[Tap], end: At) -> Compared {
    let summary = rhythm::of(taps);
    let pairs: Vec<_> = moments(end)
        .filter_map(|at| Some((same(truth.phase_at(at)?), summary.phase_at(at)?)))
        .collect();
    Compared {
        hand: hand_seen(truth, taps, end),
        phases: kappa(&pairs),
        first_flow: truth.first_flow.filter(|at| *at < end),
        first_flow_tapped: summary.first_flow,
    }
}

/// Lays two observers' taps of one feed beside each other, up to where the shorter ended.
pub fn compare_observers(first: &[Tap], second: &[Tap], end: At) -> Between {
    let (one, other) = (rhythm::of(first), rhythm::of(second));
    let pairs: Vec<_> = moments(end)
        .filter_map(|at| both(&one, &other, at))
        .collect();
    let agreed = |wanted: fn(&Tap) -> bool| {
        let times = |taps: &[Tap]| -> Vec<At> {
            taps.iter()
                .filter(|it| wanted(it))
                .map(|it| it.at)
                .collect()
        };
        let rows: Vec<_> = counts(&times(first), end)
            .into_iter()
            .zip(counts(&times(second), end))
            .map(|(one, other)| vec![f64::from(one), f64::from(other)])
            .collect();
        intraclass(&rows)
    };
    Between {
        phases: kappa(&pairs),
        sucks: agreed(|tap| tap.what.is_suck()),
        swallows: agreed(|tap| tap.what.is_swallow()),
    }
}

fn both(one: &Summary, other: &Summary, at: At) -> Option<(Phase, Phase)> {
    Some((one.phase_at(at)?, other.phase_at(at)?))
}

fn moments(end: At) -> impl Iterator<Item = At> {
    (0..end.as_ms()).step_by(MOMENT_MS).map(At::ms)
}

const fn same(phase: TruthPhase) -> Phase {
    match phase {
        TruthPhase::Quick => Phase::Quick,
        TruthPhase::Flow => Phase::Flow,
        TruthPhase::Flutter => Phase::Flutter,
        TruthPhase::Rest => Phase::Rest,
        TruthPhase::Off => Phase::Off,
    }
}
