//! The specialist's own boundaries: her word wins over what is computed.
//!
//! She moves a change between two sucking phases. Of the changes of just these phases told so far
//! the one nearest to where she took it is meant, if there is one within [`NEAR_MS`]; a rule that
//! computes it elsewhere tomorrow does not undo her word. Every suck between there and where she
//! puts it takes the phase of its side. Moves are taken in their order. Knows nothing of how
//! phases are computed.

use super::summary::Phase;
use crate::record::{At, BoundaryMoved, SuckPhase};

/// So near to where it was taken a boundary must be to be the one meant, in milliseconds. Common
/// practice: shorter than the shortest flow, 45 s (Gardner and others 2015, BMC Pregnancy
/// Childbirth 15:156).
const NEAR_MS: u64 = 30_000;

/// The phase that the specialist's word stands for.
pub(super) const fn phase(told: SuckPhase) -> Phase {
    match told {
        SuckPhase::Quick => Phase::Quick,
        SuckPhase::Flow => Phase::Flow,
        SuckPhase::Flutter => Phase::Flutter,
    }
}

/// Puts the moves over the phases of sucks at these times; gives which sucks they decided.
pub(super) fn apply(labels: &mut [Phase], at: &[At], moves: &[BoundaryMoved]) -> Vec<bool> {
    let mut decided = vec![false; labels.len()];
    for it in moves {
        let (before, after) = (phase(it.before), phase(it.after));
        let was = labels
            .windows(2)
            .zip(at.iter().skip(1))
            .filter(|(pair, _)| **pair == [before, after])
            .map(|(_, at)| *at)
            .min_by_key(|at| at.as_ms().abs_diff(it.was.as_ms()))
            .filter(|at| at.as_ms().abs_diff(it.was.as_ms()) <= NEAR_MS)
            .unwrap_or(it.was);
        let (from, to) = (was.min(it.was).min(it.now), was.max(it.was).max(it.now));
        let first = at.partition_point(|at| *at < from);
        let end = at.partition_point(|at| *at < to);
        for index in first..end {
            labels[index] = if at[index] < it.now { before } else { after };
            decided[index] = true;
        }
    }
    decided
}
