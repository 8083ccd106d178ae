//! The store's errors: the kept data cannot be opened, read or added to.

use super::{Explained, record};
use crate::store::StoreError;
use crate::words::{Arg, Words};

/// A store's error in words. Of a path only the file's name is shown.
pub fn store(error: &StoreError, words: &Words) -> Explained {
    let (name, args): (_, Vec<(&str, Arg)>) = match error {
        StoreError::TooNew { found, known } => (
            "store-too-new",
            vec![("found", (*found).into()), ("known", (*known).into())],
        ),
        StoreError::Damaged {
            kept_as: Some(path),
        } => {
            let file = path.file_name().unwrap_or(path.as_os_str());
            let file = file.to_string_lossy().into_owned();
            ("store-damaged-kept", vec![("file", file.into())])
        }
        StoreError::Damaged { kept_as: None } => ("store-damaged", vec![]),
        StoreError::NotOurs => ("store-not-ours", vec![]),
        StoreError::Locked => ("store-locked", vec![]),
        StoreError::Full => ("store-full", vec![]),
        StoreError::NoAccess => ("store-no-access", vec![]),
        StoreError::Disk => ("store-disk", vec![]),
        StoreError::NotKept { .. } => ("store-not-kept", vec![]),
        StoreError::Refused => ("store-refused", vec![]),
        StoreError::Unreadable(error) => {
            let why = record(error, words).happened;
            ("store-unreadable", vec![("why", why.into())])
        }
        StoreError::Sql(_) => ("store-sql", vec![]),
    };
    Explained::of(name, &args, words)
}
