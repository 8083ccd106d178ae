//! The folder that a rehearsal writes into: nothing in it is replaced that no rehearsal made.
//!
//! A rehearsal marks the folder and each of its own within it. What bears the mark is emptied by the
//! next one; what does not is left alone, and the rehearsal refuses to begin.

use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use super::RehearseError;

/// The file that marks a folder as a rehearsal's.
pub const MARK: &str = "made-by-rehearse.txt";
/// What stands in it.
const MARK_TEXT: &str = "An invented visit, made by `feedside rehearse`. The next rehearsal into \
    this folder replaces it. Keep nothing of your own here.\n";
/// The folders that a rehearsal makes within its own.
const WITHIN: [&str; 5] = ["codes", "desk", "exports", "screens", "timing"];
/// The files that it writes beside them.
const BESIDE: [&str; 5] = [
    "receipt.txt",
    "taps.csv",
    "timings.json",
    "truth.json",
    "visit.json",
];

/// Makes the folder ready: new, or emptied of what an earlier rehearsal left. All is looked at
/// before anything is touched.
///
/// # Errors
/// [`RehearseError::NotARehearsal`] where something lies that no rehearsal made.
pub fn make_ready(out: &Path) -> Result<(), RehearseError> {
    has_room(out)?;
    let within = WITHIN.map(|name| out.join(name));
    for folder in &within {
        is_free(folder)?;
    }
    make(out)?;
    for folder in &within {
        if folder.exists() {
            fs::remove_dir_all(folder).map_err(|why| RehearseError::file(folder, why))?;
        }
        make(folder)?;
    }
    Ok(())
}

/// Whether a folder bears the mark, or has none of the files that would be written over. What else
/// lies there is not touched.
fn has_room(out: &Path) -> Result<(), RehearseError> {
    let is_taken = |name: &str| fs::symlink_metadata(out.join(name)).is_ok();
    if out.join(MARK).is_file() || !BESIDE.iter().any(|name| is_taken(name)) {
        Ok(())
    } else {
        Err(RehearseError::NotARehearsal {
            folder: out.to_owned(),
        })
    }
}

/// Makes a folder and marks it.
fn make(folder: &Path) -> Result<(), RehearseError> {
    let mark = folder.join(MARK);
    fs::create_dir_all(folder).map_err(|why| RehearseError::file(folder, why))?;
    fs::write(&mark, MARK_TEXT).map_err(|why| RehearseError::file(&mark, why))
}

/// Whether a folder is not there, empty, or marked.
fn is_free(folder: &Path) -> Result<(), RehearseError> {
    let mut inside = match fs::read_dir(folder) {
        Ok(inside) => inside,
        Err(why) if why.kind() == ErrorKind::NotFound => return Ok(()),
        Err(why) => return Err(RehearseError::file(folder, why)),
    };
    // A link would have something else emptied than what lies here.
    let is_link = fs::symlink_metadata(folder).is_ok_and(|it| it.file_type().is_symlink());
    if !is_link && (inside.next().is_none() || folder.join(MARK).is_file()) {
        Ok(())
    } else {
        Err(RehearseError::NotARehearsal {
            folder: folder.to_owned(),
        })
    }
}
