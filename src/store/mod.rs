//! What the tablet keeps: pairs, visits, the journal's entries, settings and keys, in SQLite.
//!
//! Uses `record` only. Knows no screen, no words and no computed number: what stands beside
//! the journal for the Ward list can be made again from it. On the tablet the file is encrypted under
//! a key that `vault` keeps, and readable by its owner alone.
//!
//! Schema history: 1, the first; 2, what was worked out from journals is kept for the Ward list;
//! 3, a pair may leave once the desk has all of it.

pub(crate) mod door;
mod entry;
mod error;
mod gist;
mod leaving;
mod pair;
pub(crate) mod row;
mod setting;
pub mod vault;
mod visit;
mod ward;

use std::path::Path;

use rusqlite::Connection;

use crate::record::WallTime;
use vault::{FileKey, Pin, RescueCode, Typed, Vault, VaultError};

pub use error::StoreError;
pub use gist::VisitGist;
pub use leaving::KeepDays;
pub use visit::VisitHead;
pub use ward::WardRow;

/// The tablet's file: its mark (`Fdsd` in ASCII) and its schema, a script a version.
const HOUSE: door::House = door::House {
    application_id: i32::from_be_bytes(*b"Fdsd"),
    upgrades: &[
        include_str!("schema/0001.sql"),
        include_str!("schema/0002.sql"),
        include_str!("schema/0003.sql"),
    ],
};

/// What the tablet keeps. One thread at a time.
pub struct Store {
    connection: Connection,
    /// The keys of the file; none where it is not encrypted.
    vault: Option<Vault>,
}

impl Store {
    /// Opens the encrypted file of a folder, makes it if it is not there, upgrades it if it is
    /// older, and encrypts it if an earlier version left it plain.
    ///
    /// # Errors
    /// As [`StoreError`]. After `Damaged` with a place the old file is kept there, and opening
    /// again begins a new one under the same key.
    pub fn open_locked(vault: Vault, key: &FileKey) -> Result<Self, StoreError> {
        let path = vault.database();
        vault::seal_if_plain(&path, &HOUSE, key)?;
        Ok(Self {
            connection: door::open(&path, &HOUSE, Some(key))?,
            vault: Some(vault),
        })
    }

    /// Opens a file that is not encrypted, through the same door: for files of earlier versions.
    ///
    /// # Errors
    /// As [`Self::open_locked`].
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::open(path, &HOUSE, None)?,
            vault: None,
        })
    }

    /// A store that is gone when it is dropped; through the same door.
    ///
    /// # Errors
    /// As [`StoreError`].
    pub fn in_memory() -> Result<Self, StoreError> {
        Ok(Self {
            connection: door::in_memory(&HOUSE)?,
            vault: None,
        })
    }

    /// Sets or changes the PIN; gives the new rescue code, to be written down.
    ///
    /// # Errors
    /// As [`Vault::set_pin`]; `KeysGone` where the file is not encrypted.
    pub fn set_pin(
        &mut self,
        current: Option<&Typed>,
        pin: &Pin,
        now: WallTime,
    ) -> Result<RescueCode, VaultError> {
        self.vault
            .as_mut()
            .ok_or(VaultError::KeysGone)?
            .set_pin(current, pin, now)
    }
}

impl std::fmt::Debug for Store {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Store")
    }
}
