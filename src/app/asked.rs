//! Weights that are asked about, and which of them somebody has said to be right.
//!
//! "It is right" is an acknowledgement in the journal under a name made of the weight's time, so that
//! it says who said so and when. Knows no screen.

use crate::growth::Questioned;
use crate::record::{Acknowledged, WallTime};

/// The name of the acknowledgement that a weight taken at a time is right.
pub fn right(at: WallTime) -> String {
    format!("weight-right-{}", at.utc_ms())
}

/// The questions that nobody has answered.
pub fn unanswered(questions: &[Questioned], acknowledged: &[Acknowledged]) -> Vec<Questioned> {
    questions
        .iter()
        .filter(|it| {
            let right = right(it.at);
            !acknowledged.iter().any(|it| it.rule == right)
        })
        .copied()
        .collect()
}
