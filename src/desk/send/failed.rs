//! How a try ended, and what follows from it.

use crate::desk::inbox::{Problem, Settled, Trouble};
use crate::record::WallTime;

/// With whom a failure lies, and so how long it is tried again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LiesWith {
    /// The place, whatever the record: it is away, busy, or lets nobody in. Tried until it is back,
    /// so that nobody has to pick up each record by hand after a long weekend.
    Place,
    /// It cannot be told from here. Tried [`TRIES_MOST`] times.
    Either,
    /// The record: it would be refused again, and a person has to look at it.
    Record,
}

/// A try that failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Failed {
    /// Why.
    pub problem: Problem,
    /// With whom it lies.
    pub lies_with: LiesWith,
}

impl Failed {
    /// A trouble of the place.
    pub(super) const fn for_now(trouble: Trouble, given: Option<u16>) -> Self {
        Self {
            problem: Problem { trouble, given },
            lies_with: LiesWith::Place,
        }
    }

    /// A trouble of the place or of the record.
    pub(super) const fn unclear(trouble: Trouble, given: Option<u16>) -> Self {
        Self {
            problem: Problem { trouble, given },
            lies_with: LiesWith::Either,
        }
    }

    /// A refusal that would come again.
    pub(super) const fn for_good(trouble: Trouble, given: Option<u16>) -> Self {
        Self {
            problem: Problem { trouble, given },
            lies_with: LiesWith::Record,
        }
    }
}

/// The first wait after a failed try, in milliseconds; each later one is twice as long.
pub const WAIT_FIRST_MS: i64 = 30_000;
/// The longest wait, in milliseconds.
pub const WAIT_MOST_MS: i64 = 3_600_000;
/// How often a record is tried that may be the cause, before a person has to look at it: about a
/// day and a half. The three numbers are choices of this project.
pub const TRIES_MOST: u32 = 40;

/// What becomes of a record after a try, the `tries`th. A try that was cut off counts as one, but
/// ends nothing by itself.
pub fn after(result: Result<(), Failed>, tries: u32, now: WallTime) -> Settled {
    let Err(failed) = result else {
        return Settled::Sent;
    };
    let is_over = match failed.lies_with {
        LiesWith::Place => false,
        LiesWith::Either => TRIES_MOST <= tries,
        LiesWith::Record => true,
    };
    if is_over {
        return Settled::Dead(failed.problem);
    }
    let doublings = tries.saturating_sub(1).min(20);
    let wait_ms = (WAIT_FIRST_MS << doublings).min(WAIT_MOST_MS);
    Settled::Again(failed.problem, now.utc_ms().saturating_add(wait_ms))
}
