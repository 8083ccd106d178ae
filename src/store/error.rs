//! What can go wrong with the kept data. Data only; the words come at the edge.

use std::path::PathBuf;

use rusqlite::ErrorCode;

use crate::record::RecordError;

/// Why the kept data could not be opened, read or added to.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// A newer version of the program wrote the file. It was left as it is.
    #[error("the file has version {found}, this program knows {known}")]
    TooNew {
        /// The file's version.
        found: u32,
        /// The newest version that this program knows.
        known: u32,
    },
    /// The file is damaged. Where it could be set aside, it was kept under another name and
    /// the next opening begins a new one; `None` where the damage showed while it was in use.
    #[error("the file is damaged")]
    Damaged {
        /// Where the damaged file was kept.
        kept_as: Option<PathBuf>,
    },
    /// The file is another program's. It was left as it is.
    #[error("the file belongs to another program")]
    NotOurs,
    /// Another program holds the file.
    #[error("the file is held by another program")]
    Locked,
    /// There is no room left.
    #[error("there is no room left on the disk")]
    Full,
    /// The place cannot be opened or written to.
    #[error("the place cannot be opened or written to")]
    NoAccess,
    /// The disk did not do as it was told.
    #[error("the disk failed")]
    Disk,
    /// No pair or visit of that id is kept.
    #[error("{what} is not kept here")]
    NotKept {
        /// What was looked for: `pair` or `visit`.
        what: &'static str,
    },
    /// It would change or contradict what is already kept; nothing was stored.
    #[error("it contradicts what is already kept")]
    Refused,
    /// What is kept cannot be read as this version understands it.
    #[error("a kept value cannot be read: {0}")]
    Unreadable(#[from] RecordError),
    /// Anything else that the database says.
    #[error("the database failed")]
    Sql(#[source] rusqlite::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
                Self::Damaged { kept_as: None }
            }
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Locked,
            Some(ErrorCode::DiskFull) => Self::Full,
            Some(ErrorCode::CannotOpen | ErrorCode::PermissionDenied | ErrorCode::ReadOnly) => {
                Self::NoAccess
            }
            Some(ErrorCode::SystemIoFailure) => Self::Disk,
            Some(ErrorCode::ConstraintViolation) => Self::Refused,
            _ => Self::Sql(error),
        }
    }
}
