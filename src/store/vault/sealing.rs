//! A database that is not encrypted yet becomes one that is, with all that is in it.
//!
//! The new file is made beside the old one, read through and counted, and then takes its name in one
//! step: at any moment one of the two is whole under the name that counts. The old one's bytes are
//! overwritten after that; on flash storage the device may keep copies that no program reaches.

use std::fs::{self, File, OpenOptions};
use std::io::{Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::keys_file::sync_folder;
use super::{FileKey, VaultError};
use crate::store::StoreError;
use crate::store::door::{self, House};

/// How a database that is not encrypted begins. Source: sqlite.org/fileformat2.html 1.3.
const PLAIN_BEGINNING: &[u8; 16] = b"SQLite format 3\0";

/// Whether a file is there that is neither empty nor a plain database.
pub(super) fn is_sealed(path: &Path) -> Result<bool, VaultError> {
    match fs::metadata(path) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error.into()),
        Ok(about) => Ok(0 < about.len() && !is_plain(path)),
    }
}

fn is_plain(path: &Path) -> bool {
    let mut beginning = [0; 16];
    File::open(path)
        .and_then(|mut file| file.read_exact(&mut beginning))
        .is_ok_and(|()| beginning == *PLAIN_BEGINNING)
}

/// Encrypts the database if it is not encrypted yet. A damaged one is set aside, as at any opening.
pub(crate) fn seal_if_plain(path: &Path, house: &House, key: &FileKey) -> Result<(), StoreError> {
    if !is_plain(path) {
        return Ok(());
    }
    let plain = door::open(path, house, None)?;
    // No log is left beside it: all goes into the one file, and the new one has no log of the old.
    without_log(&plain)?;
    let new = beside(path);
    remove(&new)?;
    copy(&plain, &new, key)?;
    let kept = counts(&plain)?;
    drop(plain);
    let sealed = door::open(&new, house, Some(key))?;
    if counts(&sealed)? != kept {
        return Err(StoreError::Disk);
    }
    without_log(&sealed)?;
    drop(sealed);
    let old = OpenOptions::new().write(true).open(path);
    fs::rename(&new, path).map_err(|_| StoreError::NoAccess)?;
    if let Some(folder) = path.parent() {
        sync_folder(folder);
    }
    if let Ok(old) = old {
        overwrite(old);
    }
    Ok(())
}

/// Ends the log. Only who has the file alone can: another program that goes on writing to the old one
/// would write to a file that is gone.
fn without_log(connection: &Connection) -> Result<(), StoreError> {
    let mode: String =
        connection.query_row("PRAGMA journal_mode = DELETE", [], |row| row.get(0))?;
    if mode == "delete" {
        Ok(())
    } else {
        Err(StoreError::Locked)
    }
}

fn copy(plain: &Connection, new: &Path, key: &FileKey) -> Result<(), StoreError> {
    let name = new.to_str().ok_or(StoreError::NoAccess)?;
    plain.execute(
        "ATTACH DATABASE ?1 AS sealed KEY ?2",
        [name, key.as_pragma().as_str()],
    )?;
    plain.query_row("SELECT sqlcipher_export('sealed')", [], |_| Ok(()))?;
    for pragma in ["application_id", "user_version"] {
        let value: i64 = plain.pragma_query_value(None, pragma, |row| row.get(0))?;
        plain.pragma_update(Some("sealed"), pragma, value)?;
    }
    plain.execute("DETACH DATABASE sealed", [])?;
    Ok(())
}

/// How many rows each table has.
fn counts(connection: &Connection) -> Result<Vec<(String, i64)>, StoreError> {
    let mut tables =
        connection.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")?;
    let names: Vec<String> = tables
        .query_map([], |row| row.get(0))?
        .collect::<Result<_, _>>()?;
    names
        .into_iter()
        .map(|name| {
            let sql = format!("SELECT count(*) FROM \"{}\"", name.replace('"', "\"\""));
            let count = connection.query_row(&sql, [], |row| row.get(0))?;
            Ok((name, count))
        })
        .collect()
}

fn beside(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".sealing");
    PathBuf::from(name)
}

/// Removes what an interrupted try left: a copy, nothing more.
fn remove(path: &Path) -> Result<(), StoreError> {
    for ending in ["", "-wal", "-shm", "-journal"] {
        let mut name = path.as_os_str().to_owned();
        name.push(ending);
        match fs::remove_file(name) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
                return Err(StoreError::NoAccess);
            }
            _ => {}
        }
    }
    Ok(())
}

/// Overwrites a file that has no name any more. What fails here costs nothing that is kept.
fn overwrite(mut old: File) {
    let length = old.metadata().map_or(0, |about| about.len());
    let nothing = [0; 4096];
    if old.seek(SeekFrom::Start(0)).is_err() {
        return;
    }
    for _ in 0..length.div_ceil(4096) {
        if old.write_all(&nothing).is_err() {
            return;
        }
    }
    let _ = old.sync_all();
}
