//! How a try ended, and what follows from it.

use crate::desk::inbox::{Problem, Settled, Trouble};
use crate::record::WallTime;

/// A try that failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Failed {
    /// Why.
    pub problem: Problem,
    /// Whether the same would be refused again, so that a person has to look at it.
    pub for_good: bool,
}

impl Failed {
    /// A trouble that may pass.
    pub(super) const fn for_now(trouble: Trouble, given: Option<u16>) -> Self {
        Self {
            problem: Problem { trouble, given },
            for_good: false,
        }
    }

    /// A refusal that would come again.
    pub(super) const fn for_good(given: Option<u16>) -> Self {
        Self {
            problem: Problem {
                trouble: Trouble::Refused,
                given,
            },
            for_good: true,
        }
    }
}

/// The first wait after a failed try, in milliseconds; each later one is twice as long.
pub const WAIT_FIRST_MS: i64 = 30_000;
/// The longest wait, in milliseconds.
pub const WAIT_MOST_MS: i64 = 3_600_000;
/// How often a record is tried before a person has to look at it: about a day and a half. The
/// three numbers are choices of this project.
pub const TRIES_MOST: u32 = 40;

/// What becomes of a record after a try, the `tries`th.
pub fn after(result: Result<(), Failed>, tries: u32, now: WallTime) -> Settled {
    match result {
        Ok(()) => Settled::Sent,
        Err(failed) if failed.for_good || TRIES_MOST <= tries => Settled::Dead(failed.problem),
        Err(failed) => {
            let doublings = tries.saturating_sub(1).min(20);
            let wait_ms = (WAIT_FIRST_MS << doublings).min(WAIT_MOST_MS);
            Settled::Again(failed.problem, now.utc_ms().saturating_add(wait_ms))
        }
    }
}
