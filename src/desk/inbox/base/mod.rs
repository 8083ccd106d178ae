//! The database of the inbox, SQLite or PostgreSQL: the same statements go in, the same values come
//! out. Knows nothing of what the tables are for.
//!
//! Statements are written for both: parameters `?1`, `?2`, whole numbers of 64 bits, no function
//! that only one of them has.

mod cells;
mod postgres;
mod sqlite;
mod tls;

use std::path::Path;

pub(super) use cells::{Cells, Value};
pub use postgres::Address;
pub(super) use postgres::Shared;

use super::DeskError;
use crate::store::{StoreError, door};

/// A database that is open.
pub(super) enum Base {
    /// A file of this computer.
    File(rusqlite::Connection),
    /// A server that several desks use.
    Server(Box<Shared>),
}

impl Base {
    pub fn open(path: &Path, house: &door::House) -> Result<Self, StoreError> {
        Ok(Self::File(door::open(path, house, None)?))
    }

    pub fn in_memory(house: &door::House) -> Result<Self, StoreError> {
        Ok(Self::File(door::in_memory(house)?))
    }

    /// Runs a statement; gives the number of rows that it changed.
    pub fn change(&self, sql: &str, values: &[Value]) -> Result<u64, DeskError> {
        match self {
            Self::File(connection) => Ok(sqlite::change(connection, sql, values)?),
            Self::Server(shared) => shared.change(sql, values),
        }
    }

    /// Runs a statement; gives its rows.
    pub fn rows(&self, sql: &str, values: &[Value]) -> Result<Vec<Cells>, DeskError> {
        match self {
            Self::File(connection) => Ok(sqlite::rows(connection, sql, values)?),
            Self::Server(shared) => shared.rows(sql, values),
        }
    }

    /// Runs a statement; gives its first row.
    pub fn row(&self, sql: &str, values: &[Value]) -> Result<Option<Cells>, DeskError> {
        Ok(self.rows(sql, values)?.into_iter().next())
    }

    /// Does several things or none of them; on the disk when this returns.
    pub fn at_once<T>(&self, work: impl FnOnce() -> Result<T, DeskError>) -> Result<T, DeskError> {
        match self {
            Self::File(connection) => {
                let transaction = door::begin(connection)?;
                let done = work()?;
                transaction.commit().map_err(StoreError::from)?;
                Ok(done)
            }
            Self::Server(shared) => shared.at_once(work),
        }
    }
}
