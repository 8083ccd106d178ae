//! Weights that are asked about and that somebody has said to be right.
//!
//! "It is right" is an acknowledgement in the journal under a name made of the weight's time, so that
//! it says who said so and when.

use std::collections::BTreeSet;

use crate::record::{Acknowledged, WallTime};

/// What the names of such acknowledgements begin with.
const PREFIX: &str = "weight-right-";

/// The name of the acknowledgement that the weight taken at a time is right; at the birth instant, the
/// birth weight.
pub fn right(at: WallTime) -> String {
    format!("{PREFIX}{}", at.utc_ms())
}

/// The weights that were said to be right, by when they were taken.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Checked(BTreeSet<i64>);

impl Checked {
    /// Those among acknowledgements.
    pub fn of<'a>(acknowledged: impl IntoIterator<Item = &'a Acknowledged>) -> Self {
        let named = acknowledged.into_iter();
        let times = named.filter_map(|it| it.rule.strip_prefix(PREFIX)?.parse().ok());
        Self(times.collect())
    }

    /// Those taken at these times, in milliseconds of UTC.
    pub fn at(times_ms: impl IntoIterator<Item = i64>) -> Self {
        Self(times_ms.into_iter().collect())
    }

    /// When they were taken, in milliseconds of UTC, in order.
    pub fn times_ms(&self) -> impl Iterator<Item = i64> + '_ {
        self.0.iter().copied()
    }

    /// Whether the weight of a time is one of them.
    pub fn holds(&self, at: WallTime) -> bool {
        self.0.contains(&at.utc_ms())
    }
}
