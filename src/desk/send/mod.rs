//! Records to other systems: to a FHIR server, or to an HL7 listener over MLLP.
//!
//! The queue lies in the inbox, so a record is neither forgotten nor sent by two desks at once. A
//! record whose answer was lost is sent again; it carries the same identifiers, by which the far end
//! knows it (conditional creates and updates; the same message control ids). Only signed visits are
//! sent, the versions of a visit in their order. Times come in; nothing here waits.
//!
//! No answer's text is kept or shown: it may quote the record.

mod failed;
mod fhir;
mod mllp;
mod place;

use std::time::Duration;

pub use failed::{Failed, LiesWith, TRIES_MOST, WAIT_FIRST_MS, WAIT_MOST_MS, after};
pub use fhir::FhirSender;
pub use mllp::MllpSender;
pub use place::Place;

use super::{Desk, DeskError, facts};
use crate::desk::inbox::{Counts, Settled, Trouble};
use crate::record::WallTime;
use crate::report::Facts;
use crate::report::codes::Codes;

/// How long to wait for the other side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Patience {
    /// For a connection.
    pub connect: Duration,
    /// From the first byte to the last of the answer.
    pub answer: Duration,
}

impl Default for Patience {
    /// Longer than a busy interface engine takes; a choice of this project.
    fn default() -> Self {
        Self {
            connect: Duration::from_secs(10),
            answer: Duration::from_secs(40),
        }
    }
}

/// How long a record is held for the one that sends it: longer than two messages can take. After
/// that the sender is taken for dead. A choice of this project.
pub const HOLD_MS: i64 = 3 * 60_000;

/// A way to a place.
pub trait Sender {
    /// Sends one record; `Ok` only once the place said that it has it.
    ///
    /// # Errors
    /// [`Failed`].
    fn send(&mut self, facts: &Facts, codes: &Codes) -> Result<(), Failed>;
}

/// What a pass did, one record after the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tried {
    /// The record's number.
    pub record: i64,
    /// Which try it was.
    pub tries: u32,
    /// How it ended.
    pub how: Settled,
}

impl Desk {
    /// Queues what is new and tries everything that is due, each once. `told` hears of each try.
    ///
    /// # Errors
    /// As [`DeskError`]: the inbox, never the place.
    pub fn send(
        &self,
        place: &Place,
        sender: &mut dyn Sender,
        codes: &Codes,
        now: &dyn Fn() -> Result<WallTime, DeskError>,
        told: &mut dyn FnMut(Tried) -> Result<(), DeskError>,
    ) -> Result<Counts, DeskError> {
        let (place, inbox) = (place.name(), self.inbox());
        let began = now()?;
        inbox.queue(&place, began)?;
        // What comes due while this goes on is the next pass's: a pass ends.
        while let Some(claimed) = inbox.claim(&place, began, now()?, HOLD_MS)? {
            let result = match inbox.record(claimed.record) {
                Ok(record) => sender.send(&facts(&record).0, codes),
                // The inbox itself failed: nobody's record is to blame.
                Err(error @ (DeskError::ServerUnreachable | DeskError::Store(_))) => {
                    return Err(error);
                }
                Err(_) => Err(Failed::for_good(Trouble::Unreadable, None)),
            };
            let ended = now()?;
            let how = after(result, claimed.tries, ended);
            inbox.settle(&place, claimed, how, ended)?;
            told(Tried {
                record: claimed.record,
                tries: claimed.tries,
                how,
            })?;
        }
        inbox.counts(&place)
    }
}
