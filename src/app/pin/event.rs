//! All that can happen on the lock's screen.

use crate::store::StoreError;
use crate::store::vault::{RescueCode, VaultError};

/// An event. Its `Debug` leaves out which digit it was.
pub enum Event {
    /// A PIN is to be set; whether there is one before it.
    Came(bool),
    /// A digit.
    Digit(u8),
    /// The last digit is taken back.
    Deleted,
    /// What was typed is complete.
    Done,
    /// What was typed did not open, or could not be set.
    Refused(VaultError),
    /// It opened, but what it opened cannot be used.
    Unusable(StoreError),
    /// The PIN is set; the code that is to be written down.
    Set(RescueCode),
    /// Back.
    BackWanted,
    /// The clock went on.
    Ticked,
}

impl std::fmt::Debug for Event {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Came(_) => "Came",
            Self::Digit(_) => "Digit",
            Self::Deleted => "Deleted",
            Self::Done => "Done",
            Self::Refused(_) => "Refused",
            Self::Unusable(_) => "Unusable",
            Self::Set(_) => "Set",
            Self::BackWanted => "BackWanted",
            Self::Ticked => "Ticked",
        })
    }
}
