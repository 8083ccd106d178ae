//! The desk's inbox: records as they came and as they were opened, the desk's keys, the tablets
//! enrolled here, and what is to be sent where.
//!
//! A SQLite file of this desk, or a PostgreSQL server that several desks share; the same tables,
//! the same statements. A record is kept in one transaction, once; it is never changed or deleted.
//! The file is readable by its owner alone; neither is encrypted by this room.
//!
//! Schema history: 1, the first; 2, retired keys and tablets that were struck off; 3, words to
//! search by, and deliveries; 4, which version of its visit a record holds.

mod base;
mod deliveries;
mod keys;
mod records;
mod search;
mod versions;

use std::path::Path;

pub use base::Address;
use base::Base;
pub use deliveries::{Claimed, Counts, Delivery, Problem, Settled, State, Trouble};
pub use keys::{OwnKey, Tablet};
pub use records::{Kept, KeptRecord, RecordHead};

use super::DeskError;
use crate::store::{StoreError, door};

/// The inbox's file: its mark (`Fddk` in ASCII) and its schema, a script a version.
const HOUSE: door::House = door::House {
    application_id: i32::from_be_bytes(*b"Fddk"),
    upgrades: &[
        include_str!("../schema/0001.sql"),
        include_str!("../schema/0002.sql"),
        include_str!("../schema/0003.sql"),
        include_str!("../schema/0004.sql"),
    ],
};

/// The same schema on a server, version by version.
const ON_A_SERVER: &[&str] = &[
    include_str!("../schema/postgres/0001.sql"),
    include_str!("../schema/postgres/0002.sql"),
    include_str!("../schema/postgres/0003.sql"),
    include_str!("../schema/postgres/0004.sql"),
];

/// The inbox. One thread at a time; several programs may have it open.
pub struct Inbox {
    base: Base,
}

impl Inbox {
    /// Opens the file, makes it if it is not there, upgrades it if it is older.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        let inbox = Self {
            base: Base::open(path, &HOUSE)?,
        };
        inbox.find_versions().map_err(|error| match error {
            DeskError::Store(error) => error,
            _ => StoreError::Refused,
        })?;
        Ok(inbox)
    }

    /// Opens the inbox on a server, makes its tables if the schema is empty, upgrades older ones.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn on_server(address: Address) -> Result<Self, DeskError> {
        let inbox = Self {
            base: Base::Server(Box::new(base::Shared::open(address, ON_A_SERVER)?)),
        };
        inbox.find_versions()?;
        Ok(inbox)
    }

    /// An inbox that is gone when it is dropped.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn in_memory() -> Result<Self, StoreError> {
        Ok(Self {
            base: Base::in_memory(&HOUSE)?,
        })
    }
}

impl std::fmt::Debug for Inbox {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Inbox")
    }
}
