//! The small files beside the database: the wrapped keys, the device's secret, the wrong tries.
//!
//! The first two are kept twice: without them the database cannot be read by anybody, so one
//! damaged block must not be the end of it; at its end each carries its own SHA-256, so that damage is
//! told from a wrong PIN. Each is written beside itself and then renamed, so that it is whole or as it
//! was. All are readable by their owner alone.

use std::fs::{self, File, OpenOptions};
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use zeroize::Zeroizing;

use super::slot::Slot;
use super::tries::Tries;
use super::{FileKey, VaultError};

const KEYS: &str = "feedside.keys";
const DEVICE: &str = "feedside.device";
const TRIES: &str = "feedside.tries";

/// How long a SHA-256 is.
const SUM_BYTES: usize = 32;

/// The version of the file of keys that this program writes and reads.
const VERSION: u32 = 1;

/// The file of keys.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct KeysFile {
    pub(super) version: u32,
    /// The salt at the beginning of the database.
    pub(super) salt: [u8; 16],
    /// Opened by the device alone; there until a PIN is set.
    pub(super) device: Option<Slot>,
    pub(super) pin: Option<Slot>,
    pub(super) rescue: Option<Slot>,
}

impl KeysFile {
    /// The keys of a folder in which no PIN was set yet.
    pub(super) const fn with_device(key: &FileKey, device: Slot) -> Self {
        Self {
            version: VERSION,
            salt: key.salt(),
            device: Some(device),
            pin: None,
            rescue: None,
        }
    }
}

/// A data folder.
#[derive(Clone)]
pub(super) struct Place(PathBuf);

impl Place {
    pub(super) fn of(folder: &Path) -> Self {
        Self(folder.to_owned())
    }

    pub(super) fn file(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    /// The keys; `None` where there are none.
    pub(super) fn keys(&self) -> Result<Option<KeysFile>, VaultError> {
        self.either(KEYS, |bytes| {
            serde_json::from_slice(bytes)
                .ok()
                .filter(|keys: &KeysFile| keys.version == VERSION)
        })
    }

    pub(super) fn write_keys(&self, keys: &KeysFile) -> Result<(), VaultError> {
        let bytes = serde_json::to_vec(keys).map_err(|_| VaultError::NoAccess)?;
        self.write_twice(KEYS, &bytes)
    }

    /// The device's secret; `None` where there is none.
    pub(super) fn device(&self) -> Result<Option<Zeroizing<[u8; 32]>>, VaultError> {
        self.either(DEVICE, |bytes| bytes.try_into().ok().map(Zeroizing::new))
    }

    pub(super) fn write_device(&self, secret: &[u8; 32]) -> Result<(), VaultError> {
        self.write_twice(DEVICE, secret)
    }

    /// The wrong tries; none where they cannot be read.
    pub(super) fn tries(&self) -> Tries {
        fs::read(self.file(TRIES))
            .ok()
            .and_then(|bytes| serde_json::from_slice(&bytes).ok())
            .unwrap_or_default()
    }

    /// Writes the wrong tries. Where there is no room for it they count until the program ends: a
    /// full disk must not lock anybody out.
    pub(super) fn write_tries(&self, tries: &Tries) {
        if let Ok(bytes) = serde_json::to_vec(tries) {
            let _ = self.write(TRIES, &bytes);
        }
    }

    /// What a file says, or else its copy; damaged only where neither can be read. The one that
    /// counts is then written over the other where they differ: a copy from before a PIN was set,
    /// left by a process that was killed in between, must not open the file one day.
    fn either<T>(
        &self,
        name: &str,
        read: impl Fn(&[u8]) -> Option<T>,
    ) -> Result<Option<T>, VaultError> {
        let (first, copy) = (self.read(name)?, self.read(&copy_of(name))?);
        for (whole, other, other_name) in [
            (&first, &copy, copy_of(name)),
            (&copy, &first, name.to_owned()),
        ] {
            let Some(whole) = whole else {
                continue;
            };
            if let Some(value) = checked(whole).and_then(&read) {
                if other.as_ref() != Some(whole) {
                    // A folder that cannot be written to is still read.
                    let _ = self.write(&other_name, whole);
                }
                return Ok(Some(value));
            }
        }
        if first.is_some() || copy.is_some() {
            Err(VaultError::KeysDamaged)
        } else {
            Ok(None)
        }
    }

    /// A file's bytes; `None` where it is not there.
    fn read(&self, name: &str) -> Result<Option<Zeroizing<Vec<u8>>>, VaultError> {
        match fs::read(self.file(name)) {
            Ok(bytes) => Ok(Some(Zeroizing::new(bytes))),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error.into()),
        }
    }

    fn write_twice(&self, name: &str, bytes: &[u8]) -> Result<(), VaultError> {
        let mut whole = Zeroizing::new(Vec::with_capacity(bytes.len() + SUM_BYTES));
        whole.extend_from_slice(bytes);
        whole.extend_from_slice(&Sha256::digest(bytes));
        self.write(name, &whole)?;
        self.write(&copy_of(name), &whole)
    }

    /// Writes a file whole or not at all; it is on the disk when this returns.
    fn write(&self, name: &str, bytes: &[u8]) -> Result<(), VaultError> {
        let new = self.file(&format!("{name}.new"));
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        {
            use std::os::unix::fs::OpenOptionsExt;
            options.mode(0o600);
        }
        let mut file = options.open(&new)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        fs::rename(new, self.file(name))?;
        sync_folder(&self.0);
        Ok(())
    }
}

/// What stands before the SHA-256 at the end, if that is its own.
fn checked(whole: &[u8]) -> Option<&[u8]> {
    let (bytes, sum) = whole.split_at_checked(whole.len().checked_sub(SUM_BYTES)?)?;
    (*sum == *Sha256::digest(bytes)).then_some(bytes)
}

fn copy_of(name: &str) -> String {
    format!("{name}.copy")
}

/// Has a renaming written to the disk, where the system can.
pub(super) fn sync_folder(folder: &Path) {
    if cfg!(unix)
        && let Ok(folder) = File::open(folder)
    {
        let _ = folder.sync_all();
    }
}
