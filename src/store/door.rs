//! The one door to a database file: pragmas, ownership, damage, upgrades. Both the tablet's data and
//! the desk's inbox come in through here.
//!
//! Knows nothing of what the tables are for.

use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::StoreError;
use super::vault::FileKey;

/// Whose file it is, and the steps from an empty file to the newest version.
pub(crate) struct House {
    /// Written into the file's header, so that another program's file is never taken for ours.
    pub application_id: i32,
    /// One script a version; the first makes version 1.
    pub upgrades: &'static [&'static str],
}

impl House {
    /// The newest version.
    fn known(&self) -> u32 {
        u32::try_from(self.upgrades.len()).unwrap_or(u32::MAX)
    }
}

/// How long to wait for another program that holds the file: a short write takes far less.
const BUSY_WAIT: Duration = Duration::from_millis(2_000);

/// Files up to this size are read through for damage at each opening, which takes a fraction of a
/// second. Damage in larger ones shows when the damaged page is read. A choice of this project.
const READ_THROUGH_BYTES_MOST: u64 = 32 * 1024 * 1024;

/// Opens the file, makes or upgrades its tables, and sets a damaged one aside. With a key the file is
/// encrypted under it; a file under another key cannot be told from a damaged one.
///
/// # Errors
/// As [`StoreError`]; after `Damaged` with a place, the next opening begins a new file.
pub(crate) fn open(
    path: &Path,
    house: &House,
    key: Option<&FileKey>,
) -> Result<Connection, StoreError> {
    if is_missing(path)? {
        make_private(path)?;
    } else if has_orphaned_log(path) {
        return Err(set_aside(path));
    }
    match try_open(path, house, key) {
        Err(StoreError::Damaged { .. }) => Err(set_aside(path)),
        other => other,
    }
}

/// A database in memory, through the same steps.
pub(crate) fn in_memory(house: &House) -> Result<Connection, StoreError> {
    let mut connection = Connection::open_in_memory()?;
    prepare(&connection)?;
    upgrade(&mut connection, house)?;
    Ok(connection)
}

/// Begins a transaction that takes the write lock at once, so that it cannot fail half-way for a
/// lock that another program took in between.
pub(crate) fn begin(connection: &Connection) -> Result<Transaction<'_>, StoreError> {
    Ok(Transaction::new_unchecked(
        connection,
        TransactionBehavior::Immediate,
    )?)
}

fn try_open(path: &Path, house: &House, key: Option<&FileKey>) -> Result<Connection, StoreError> {
    let mut connection = Connection::open(path)?;
    if let Some(key) = key {
        // What it would say of a damaged page is told as an error, not on the terminal.
        connection.pragma_update(None, "cipher_log_level", "NONE")?;
        // Before anything else is asked of the file.
        connection.pragma_update(None, "key", key.as_pragma().as_str())?;
    }
    connection.busy_timeout(BUSY_WAIT)?;
    // Whose file it is comes before anything is written to it.
    check_owner(&connection, house)?;
    prepare(&connection)?;
    check_damage(&connection, path)?;
    upgrade(&mut connection, house)?;
    Ok(connection)
}

/// Sets what a connection must have each time.
fn prepare(connection: &Connection) -> Result<(), StoreError> {
    // A write-ahead log: a commit is one append, and a killed process leaves a file that opens.
    connection.pragma_update(None, "journal_mode", "WAL")?;
    // The log is on the disk before a commit returns: an entry shown as safe outlives a dead battery.
    connection.pragma_update(None, "synchronous", "FULL")?;
    // Off by default: an entry without its visit must be impossible.
    connection.pragma_update(None, "foreign_keys", true)?;
    // No temporary files: Android has no place for them, and they would hold people's data.
    connection.pragma_update(None, "temp_store", "MEMORY")?;
    // What is taken out is overwritten, not only unlinked.
    connection.pragma_update(None, "secure_delete", true)?;
    // A file from elsewhere cannot make its schema call functions.
    connection.pragma_update(None, "trusted_schema", false)?;
    // Damaged pages are noticed when read, before their contents are believed.
    connection.pragma_update(None, "cell_size_check", true)?;
    // The log is cut back to this after a checkpoint, so that one long visit does not hold the room.
    connection.pragma_update(None, "journal_size_limit", 4 * 1024 * 1024)?;
    Ok(())
}

fn number(connection: &Connection, pragma: &str) -> Result<i64, StoreError> {
    Ok(connection.pragma_query_value(None, pragma, |row| row.get(0))?)
}

fn check_owner(connection: &Connection, house: &House) -> Result<(), StoreError> {
    let owner = number(connection, "application_id")?;
    let found = number(connection, "user_version")?;
    if owner == i64::from(house.application_id) {
        return match u32::try_from(found) {
            // The mark and the version are written together: one without the other is damage.
            Ok(0) => Err(StoreError::Damaged { kept_as: None }),
            Ok(found) if found <= house.known() => Ok(()),
            found => Err(StoreError::TooNew {
                found: found.unwrap_or(u32::MAX),
                known: house.known(),
            }),
        };
    }
    let tables: i64 =
        connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
    if owner == 0 && found == 0 && tables == 0 {
        Ok(())
    } else {
        Err(StoreError::NotOurs)
    }
}

fn check_damage(connection: &Connection, path: &Path) -> Result<(), StoreError> {
    let bytes = std::fs::metadata(path).map_or(0, |file| file.len());
    if READ_THROUGH_BYTES_MOST < bytes {
        return Ok(());
    }
    let word: String = connection.query_row("PRAGMA quick_check(1)", [], |row| row.get(0))?;
    if word == "ok" {
        Ok(())
    } else {
        Err(StoreError::Damaged { kept_as: None })
    }
}

/// Runs the missing steps in one transaction, the version last.
fn upgrade(connection: &mut Connection, house: &House) -> Result<(), StoreError> {
    let known = house.known();
    if number(connection, "user_version")? == i64::from(known) {
        return Ok(());
    }
    let transaction = begin(connection)?;
    // Read again under the lock: another program may have upgraded in between.
    let found = number(&transaction, "user_version")?;
    let done = usize::try_from(found).unwrap_or(usize::MAX);
    for script in house.upgrades.iter().skip(done) {
        transaction.execute_batch(script)?;
    }
    transaction.pragma_update(None, "application_id", house.application_id)?;
    transaction.pragma_update(None, "user_version", known)?;
    transaction.commit()?;
    Ok(())
}

fn is_missing(path: &Path) -> Result<bool, StoreError> {
    path.try_exists()
        .map(|there| !there)
        .map_err(|_| StoreError::NoAccess)
}

/// An empty file beside a log that is not: SQLite would throw the log away.
fn has_orphaned_log(path: &Path) -> bool {
    let length = |path: &Path| std::fs::metadata(path).map_or(0, |file| file.len());
    length(path) == 0 && 0 < length(&beside(path, "-wal"))
}

/// Makes the empty file readable by its owner alone; SQLite gives the log the same rights.
fn make_private(path: &Path) -> Result<(), StoreError> {
    let mut options = std::fs::OpenOptions::new();
    options.write(true).create(true).truncate(false);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    // A log left beside a file that is gone belongs to nobody; it is kept, not read.
    if beside(path, "-wal").exists() {
        set_aside(path);
    }
    options
        .open(path)
        .map(drop)
        .map_err(|error| match error.kind() {
            std::io::ErrorKind::StorageFull => StoreError::Full,
            _ => StoreError::NoAccess,
        })
}

fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

/// Renames the file and its log to the first free name. Nothing is deleted.
fn set_aside(path: &Path) -> StoreError {
    let is_free = |kept: &Path| !kept.exists() && !beside(kept, "-wal").exists();
    let Some(kept) = (1..10_000)
        .map(|number| beside(path, &format!(".damaged-{number}")))
        .find(|kept| is_free(kept))
    else {
        return StoreError::NoAccess;
    };
    // The log first: if the second renaming fails, the orphaned file is still found damaged or
    // whole, and the log is kept either way.
    for ending in ["-wal", ""] {
        let from = beside(path, ending);
        if from.exists() && std::fs::rename(from, beside(&kept, ending)).is_err() {
            return StoreError::NoAccess;
        }
    }
    // The shared index of the log holds nothing of its own and must not meet another log.
    let _ = std::fs::remove_file(beside(path, "-shm"));
    StoreError::Damaged {
        kept_as: Some(kept),
    }
}
