//! All that the hand-over screen remembers besides the visit itself.

use crate::handover::{Code, Receipt};

/// Which code is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kind {
    /// The sealed record, without single taps.
    #[default]
    Record,
    /// The sealed record with every tap: more codes.
    WithTaps,
    /// The note, for anyone to read.
    Note,
}

impl Kind {
    /// All of them, in the order in which the screen offers them.
    pub const ALL: [Self; 3] = [Self::Record, Self::WithTaps, Self::Note];
}

/// The codes as they were made and read back.
#[derive(Debug, Clone)]
pub struct Shown {
    /// Whether every tap is in them.
    pub taps: bool,
    /// The record's codes.
    pub record: Vec<Code>,
    /// The text of each of them.
    pub pieces: Vec<String>,
    /// The note's code.
    pub note: Code,
    /// The receipt that the desk will show.
    pub receipt: Receipt,
    /// The transfer's number.
    pub transfer: u32,
}

/// What is told of the receipt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Told {
    /// Nothing yet.
    #[default]
    Nothing,
    /// The check figure does not fit: a slip.
    Slip,
    /// A receipt, but not of this record.
    Other,
}

/// The model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    /// The codes, once made.
    pub shown: Option<Shown>,
    /// Why they could not be made, in words.
    pub failed: Option<String>,
    /// Which code.
    pub kind: Kind,
    /// Which piece of the record.
    pub piece: usize,
    /// The receipt as typed so far.
    pub typed: String,
    /// What is told of it.
    pub told: Told,
}
