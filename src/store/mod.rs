//! What the tablet keeps: pairs, visits, the journal's entries, settings and keys, in SQLite.
//!
//! Uses `record` only. Knows no screen, no words and no computed number: what stands beside
//! the journal for the Ward list can be made again from it. The file is not encrypted
//! by this room; it is readable by its owner alone.
//!
//! Schema history: 1, the first; 2, what was worked out from journals is kept for the Ward list.

pub(crate) mod door;
mod entry;
mod error;
mod gist;
mod pair;
pub(crate) mod row;
mod setting;
mod visit;
mod ward;

use std::path::Path;

use rusqlite::Connection;

pub use error::StoreError;
pub use gist::VisitGist;
pub use visit::VisitHead;
pub use ward::WardRow;

/// The tablet's file: its mark (`Fdsd` in ASCII) and its schema, a script a version.
const HOUSE: door::House = door::House {
    application_id: i32::from_be_bytes(*b"Fdsd"),
    upgrades: &[
        include_str!("schema/0001.sql"),
        include_str!("schema/0002.sql"),
    ],
};

/// What the tablet keeps. One thread at a time.
pub struct Store {
    connection: Connection,
}

impl Store {
    /// Opens the file, makes it if it is not there, upgrades it if it is older.
    ///
    /// # Errors
    /// As [`StoreError`]. After `Damaged` with a place the old file is kept there, and opening
    /// again begins a new one.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::open(path, &HOUSE)?,
        })
    }

    /// A store that is gone when it is dropped; through the same door.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn in_memory() -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::in_memory(&HOUSE)?,
        })
    }
}

impl std::fmt::Debug for Store {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Store")
    }
}
