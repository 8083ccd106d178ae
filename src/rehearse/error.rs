//! Why a rehearsal stopped.

use std::path::{Path, PathBuf};

use crate::desk::DeskError;
use crate::handover::HandoverError;
use crate::store::StoreError;
use crate::store::vault::VaultError;

/// Why a rehearsal stopped.
#[derive(Debug, thiserror::Error)]
pub enum RehearseError {
    /// A file could not be written or read.
    #[error("{} could not be written or read: {why}", file.display())]
    File {
        /// Which file.
        file: PathBuf,
        /// Why.
        why: String,
    },
    /// The folder holds what no rehearsal made.
    #[error(
        "{} holds things that no rehearsal made, and a rehearsal replaces what lies in its folder",
        folder.display()
    )]
    NotARehearsal {
        /// Which folder.
        folder: PathBuf,
    },
    /// The pixels could not be set up.
    #[error("the pictures could not be set up: {0}")]
    Picture(#[from] slint::PlatformError),
    /// The tablet's store refused.
    #[error("the tablet's store refused: {0}")]
    Store(#[from] StoreError),
    /// The tablet's lock refused.
    #[error("the tablet's lock refused: {0}")]
    Vault(#[from] VaultError),
    /// The desk refused.
    #[error("the desk refused: {0}")]
    Desk(#[from] DeskError),
    /// The codes could not be made.
    #[error("the codes could not be made: {0}")]
    Handover(#[from] HandoverError),
    /// A step did not come out as it has to.
    #[error("{0}")]
    Step(&'static str),
}

impl RehearseError {
    /// A file that could not be written or read.
    pub(super) fn file(file: &Path, why: impl std::fmt::Display) -> Self {
        Self::File {
            file: file.to_owned(),
            why: why.to_string(),
        }
    }
}
