//! The desk's own SQLite inbox: records as they came and as they were opened, the desk's keys, and
//! the tablets enrolled here.
//!
//! A record is kept in one transaction, once; it is never changed or deleted. The file is readable
//! by its owner alone and is not encrypted by this room.
//!
//! Schema history: 1, the first; 2, retired keys and tablets that were struck off.

mod keys;
mod records;

use std::path::Path;

use rusqlite::Connection;

pub use keys::{OwnKey, Tablet};
pub use records::{Kept, KeptRecord, RecordHead};

use crate::store::{StoreError, door};

/// The inbox's file: its mark (`Fddk` in ASCII) and its schema, a script a version.
const HOUSE: door::House = door::House {
    application_id: i32::from_be_bytes(*b"Fddk"),
    upgrades: &[
        include_str!("../schema/0001.sql"),
        include_str!("../schema/0002.sql"),
    ],
};

/// The inbox. One thread at a time; several programs may have it open.
pub struct Inbox {
    connection: Connection,
}

impl Inbox {
    /// Opens the file, makes it if it is not there, upgrades it if it is older.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::open(path, &HOUSE)?,
        })
    }

    /// An inbox that is gone when it is dropped.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn in_memory() -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::in_memory(&HOUSE)?,
        })
    }
}

impl std::fmt::Debug for Inbox {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Inbox")
    }
}
