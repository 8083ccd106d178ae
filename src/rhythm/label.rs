//! The sucking phases as indices, and back. Knows nothing of how probable they are.

use super::parameter::{FLOW, FLUTTER, PHASES, QUICK};
use super::summary::Phase;

/// The phase of an index.
pub(super) const fn phase(index: usize) -> Phase {
    match index {
        FLOW => Phase::Flow,
        FLUTTER => Phase::Flutter,
        _ => Phase::Quick,
    }
}

/// The index of a sucking phase; any other counts as quick.
pub(super) const fn index(phase: Phase) -> usize {
    match phase {
        Phase::Flow => FLOW,
        Phase::Flutter => FLUTTER,
        _ => QUICK,
    }
}

/// The most probable phase.
pub(super) fn most(phases: &[f64; PHASES]) -> usize {
    let mut best = QUICK;
    for phase in FLOW..PHASES {
        if phases[best] < phases[phase] {
            best = phase;
        }
    }
    best
}
