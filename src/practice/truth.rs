//! What was true of a simulated feed, and how it is written down.

use serde_json::{Value, json};

use crate::record::{At, words};

words!(
    /// What the simulated baby did. The same stored words as the analysis uses, held apart from it.
    TruthPhase {
        /// Quick sucks.
        Quick = "quick",
        /// Milk flowing.
        Flow = "flow",
        /// Flutter.
        Flutter = "flutter",
        /// Resting.
        Rest = "rest",
        /// Off the breast.
        Off = "off",
    }
);

/// A stretch of one phase: `from` included, `to` not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhaseTruth {
    /// Its start.
    pub from: At,
    /// Its end.
    pub to: At,
    /// What the baby did.
    pub phase: TruthPhase,
}

/// What the baby did, unseen by the hand.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Truth {
    /// Every jaw movement, and whether a swallow came with it; times rising.
    pub sucks: Vec<(At, bool)>,
    /// Phases from latch to end, without gap or overlap.
    pub phases: Vec<PhaseTruth>,
    /// The first suck of the first milk flow.
    pub first_flow: Option<At>,
}

impl Truth {
    /// What the baby did at a time; `None` outside the feed.
    pub fn phase_at(&self, at: At) -> Option<TruthPhase> {
        let next = self.phases.partition_point(|span| span.from <= at);
        let span = self.phases.get(next.checked_sub(1)?)?;
        (at < span.to).then_some(span.phase)
    }
}

/// The truth as one JSON object, with the same field names as the analysis prints.
pub fn truth_json(truth: &Truth) -> Value {
    json!({
        "first_flow_ms": truth.first_flow.map(At::as_ms),
        "sucks": truth.sucks.iter().map(|(at, swallow)| json!({
            "ms": at.as_ms(),
            "swallow": swallow,
        })).collect::<Vec<_>>(),
        "phases": truth.phases.iter().map(|span| json!({
            "from_ms": span.from.as_ms(),
            "to_ms": span.to.as_ms(),
            "phase": span.phase.as_word(),
        })).collect::<Vec<_>>(),
    })
}
