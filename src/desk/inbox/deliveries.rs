//! What is to be sent where: a line for each record and place, from "waiting" to "sent", or to the
//! list of what a person has to look at.
//!
//! Knows when a line may be tried and who holds it; not how anything is sent, nor what a record
//! says. Times come in.

use super::Inbox;
use super::base::{Cells, Value};
use crate::desk::DeskError;
use crate::record::{WallTime, words};
use crate::store::StoreError;

words! {
    /// Where a delivery stands.
    State {
        /// It is to be sent.
        Waiting = "waiting",
        /// The place has it.
        Sent = "sent",
        /// It is tried no more until a person says so.
        Dead = "dead",
        /// A later record that stands for it is at the place.
        Replaced = "replaced",
    }
}

words! {
    /// Why a try failed.
    Trouble {
        /// The place could not be reached, or the connection broke.
        Unreachable = "unreachable",
        /// No answer came in time.
        Silent = "silent",
        /// The answer was not one of the protocol.
        Garbage = "garbage",
        /// The place is busy or out of order for now.
        Busy = "busy",
        /// The place's certificate is not trusted here.
        NotTrusted = "not_trusted",
        /// The place does not let this desk in.
        NotLetIn = "not_let_in",
        /// The place refused what was sent.
        Refused = "refused",
        /// The record cannot be read here.
        Unreadable = "unreadable",
    }
}

/// Why a try failed, and the number that the other side gave with it (as an HTTP status).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Problem {
    /// Why.
    pub trouble: Trouble,
    /// The other side's number.
    pub given: Option<u16>,
}

/// A record that this program alone may send now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Claimed {
    /// Its number.
    pub record: i64,
    /// Which try this is, from 1.
    pub tries: u32,
}

/// How a try ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Settled {
    /// The place has it.
    Sent,
    /// To be tried again at a time, in UTC milliseconds.
    Again(Problem, i64),
    /// A person has to look at it.
    Dead(Problem),
}

/// Whether a record may go to a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Turn {
    Now,
    NotYet,
    /// A later version is there.
    Never,
}

/// A delivery that is not done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Delivery {
    /// Where to.
    pub place: String,
    /// The record's number.
    pub record: i64,
    /// Where it stands: waiting or dead.
    pub state: State,
    /// How often it was tried.
    pub tries: u32,
    /// Not before this time, in UTC milliseconds.
    pub due_utc_ms: i64,
    /// Why the last try failed.
    pub problem: Option<Problem>,
}

/// How many deliveries to a place stand where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    /// To be sent.
    pub waiting: u64,
    /// When the first of them is due, in UTC milliseconds.
    pub due_utc_ms: Option<i64>,
    /// At the place.
    pub sent: u64,
    /// A person has to look at them.
    pub dead: u64,
}

impl Inbox {
    /// Puts every signed record that is not on the place's list on it. Gives how many were new.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn queue(&self, place: &str, now: WallTime) -> Result<u64, DeskError> {
        let values = [place.into(), now.utc_ms().into()];
        self.base.change(include_str!("deliver_add.sql"), &values)
    }

    /// Takes the next record that was due at a time, for so many milliseconds from now: a sender
    /// that has not settled it by then is given up for dead, and another may take it.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn claim(
        &self,
        place: &str,
        due: WallTime,
        now: WallTime,
        hold_ms: i64,
    ) -> Result<Option<Claimed>, DeskError> {
        let (due_ms, now_ms) = (due.utc_ms(), now.utc_ms());
        let mut behind = 0;
        loop {
            let values = [place.into(), due_ms.into(), behind.into()];
            let next = self.base.row(include_str!("deliver_next.sql"), &values)?;
            let next = next.map(|mut row| Ok::<_, DeskError>((row.whole()?, row.whole()?)));
            let Some((record, tries)) = next.transpose()? else {
                return Ok(None);
            };
            behind = record;
            let turn = self.turn(place, record, tries)?;
            if turn == Turn::NotYet {
                continue;
            }
            let until_ms = now_ms.saturating_add(hold_ms);
            let values = [
                place.into(),
                record.into(),
                due_ms.into(),
                until_ms.into(),
                now_ms.into(),
            ];
            let taken = self.base.row(include_str!("deliver_claim.sql"), &values)?;
            // Nothing: another program was quicker.
            let Some(tries) = taken.map(|mut row| row.whole()).transpose()? else {
                continue;
            };
            let claimed = Claimed { record, tries };
            // Another program may have begun with a later version meanwhile.
            match self.turn(place, record, tries)? {
                Turn::Now => return Ok(Some(claimed)),
                Turn::NotYet => {
                    self.write(place, claimed, State::Waiting, due_ms, None, now_ms)?;
                }
                Turn::Never => {
                    self.write(place, claimed, State::Replaced, now_ms, None, now_ms)?;
                }
            }
        }
    }

    /// Writes down how a try ended. Does nothing if another sender took it over meanwhile.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn settle(
        &self,
        place: &str,
        claimed: Claimed,
        how: Settled,
        now: WallTime,
    ) -> Result<(), DeskError> {
        let now_ms = now.utc_ms();
        let (state, due_ms, problem) = match how {
            Settled::Sent => (State::Sent, now_ms, None),
            Settled::Again(problem, due_ms) => (State::Waiting, due_ms, Some(problem)),
            Settled::Dead(problem) => (State::Dead, now_ms, Some(problem)),
        };
        self.write(place, claimed, state, due_ms, problem, now_ms)
    }

    /// All deliveries that wait or that a person has to look at, by place and record.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn deliveries(&self) -> Result<Vec<Delivery>, DeskError> {
        let rows = self.base.rows(include_str!("deliveries.sql"), &[])?;
        rows.into_iter().map(read).collect()
    }

    /// How many deliveries to a place stand where.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn counts(&self, place: &str) -> Result<Counts, DeskError> {
        let values = [place.into()];
        let row = self.base.row(include_str!("deliver_counts.sql"), &values)?;
        let mut row = row.ok_or(StoreError::Refused)?;
        Ok(Counts {
            waiting: row.whole()?,
            due_utc_ms: row.whole_or_none()?,
            sent: row.whole()?,
            dead: row.whole()?,
        })
    }

    /// Lets a record that was given up be tried again, at every place that gave it up. Gives at
    /// how many.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn try_again(&self, record: i64, now: WallTime) -> Result<u64, DeskError> {
        let values = [record.into(), now.utc_ms().into()];
        self.base.change(include_str!("deliver_again.sql"), &values)
    }

    /// Whether it is a record's turn: a place gets the versions of a visit in the order in which
    /// they were made, whatever the order in which they arrived, and never an older one behind a
    /// later one that it has or may have.
    fn turn(&self, place: &str, record: i64, tries: u32) -> Result<Turn, DeskError> {
        let (before, behind) = self.around(record)?;
        let mut turn = Turn::Now;
        for later in behind {
            match self.state(place, later.number)? {
                Some((State::Sent, _)) => return Ok(Turn::Never),
                // It was tried: the place may have it, and only lost its answer.
                Some((State::Waiting, 1..)) => turn = Turn::NotYet,
                _ => {}
            }
        }
        if tries == 0 {
            for earlier in before {
                if let Some((State::Waiting, _)) = self.state(place, earlier.number)? {
                    turn = Turn::NotYet;
                }
            }
        }
        Ok(turn)
    }

    /// Where a record stands at a place, and how often it was tried.
    fn state(&self, place: &str, record: i64) -> Result<Option<(State, u32)>, DeskError> {
        let values = [place.into(), record.into()];
        let row = self.base.row(include_str!("deliver_state.sql"), &values)?;
        let state = row.map(|mut row| {
            let state = State::from_word(&row.text()?).ok_or(StoreError::Refused)?;
            Ok((state, row.whole()?))
        });
        state.transpose()
    }

    fn write(
        &self,
        place: &str,
        claimed: Claimed,
        state: State,
        due_ms: i64,
        problem: Option<Problem>,
        now_ms: i64,
    ) -> Result<(), DeskError> {
        let values = [
            place.into(),
            claimed.record.into(),
            claimed.tries.into(),
            state.as_word().into(),
            due_ms.into(),
            problem.map_or(Value::Null, |it| it.trouble.as_word().into()),
            problem.and_then(|it| it.given).map(i64::from).into(),
            now_ms.into(),
        ];
        self.base
            .change(include_str!("deliver_settle.sql"), &values)?;
        Ok(())
    }
}

fn read(mut row: Cells) -> Result<Delivery, DeskError> {
    let (place, record) = (row.text()?, row.whole()?);
    let state = State::from_word(&row.text()?).ok_or(StoreError::Refused)?;
    let (tries, due_utc_ms) = (row.whole()?, row.whole()?);
    let trouble = row
        .text_or_none()?
        .and_then(|word| Trouble::from_word(&word));
    let given = row.whole_or_none()?;
    Ok(Delivery {
        place,
        record,
        state,
        tries,
        due_utc_ms,
        problem: trouble.map(|trouble| Problem { trouble, given }),
    })
}
