//! What can be wrong with a value that is offered to the record. Data only; the words come at the edge.

/// Why a value was refused.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RecordError {
    /// A number outside the range that the thing can have.
    #[error("{what} of {given} is outside {low} to {high}")]
    OutOfRange {
        /// What the number is of.
        what: &'static str,
        /// The number given.
        given: i64,
        /// The least that is taken.
        low: i64,
        /// The most that is taken.
        high: i64,
    },
    /// Text with nothing in it where something is needed.
    #[error("{what} is empty")]
    Empty {
        /// Which text.
        what: &'static str,
    },
    /// Text longer than its place holds.
    #[error("{what} has more than {most} characters")]
    TooLong {
        /// Which text.
        what: &'static str,
        /// The most characters it may have.
        most: usize,
    },
    /// Text with control characters in it.
    #[error("{what} has characters that cannot be printed")]
    NotPrintable {
        /// Which text.
        what: &'static str,
    },
    /// An entry whose number does not follow the one before.
    #[error("entry {given} does not follow entry {last}")]
    OutOfOrder {
        /// The number offered.
        given: u32,
        /// The last number in the journal.
        last: u32,
    },
    /// A correction that names an entry which is not there, or not before it.
    #[error("there is no earlier entry {0} to take back")]
    NothingToStrike(u32),
    /// The visit is signed: what was seen can only be changed by an amendment.
    #[error("the visit is signed")]
    AlreadySigned,
    /// A stored entry that cannot be read back.
    #[error("stored entry of kind {kind} cannot be read")]
    Unreadable {
        /// The kind as stored.
        kind: String,
    },
    /// A value that this version does not know where one is needed.
    #[error("{what} is not known")]
    NotKnown {
        /// What was to be read.
        what: &'static str,
    },
}

/// Checks that a number lies in its range.
pub(super) fn in_range(
    what: &'static str,
    given: i64,
    low: i64,
    high: i64,
) -> Result<(), RecordError> {
    if low <= given && given <= high {
        Ok(())
    } else {
        Err(RecordError::OutOfRange {
            what,
            given,
            low,
            high,
        })
    }
}
