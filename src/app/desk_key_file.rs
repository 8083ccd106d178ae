//! A desk's key that lies as a file in the data folder: it is offered in the settings, and kept only
//! when its six words were compared.
//!
//! The file is the one that `feedside-desk keys show --out` writes: lines that begin with `#` are for
//! people, the rest is the key as it would be typed.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::Path;

use crate::fault;
use crate::handover::{DeskPublic, HandoverError};
use crate::words::Words;

/// The file that is looked for in the data folder at each start.
pub const FILE: &str = "desk-key.txt";
/// The most bytes that are read of it: far more than a key with some lines for people.
const FILE_BYTES_MOST: u64 = 16 * 1024;

/// Why no key could be taken from the file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NotAKey {
    /// It cannot be read as text.
    #[error("the file cannot be read as text")]
    Unreadable,
    /// What it holds is no key.
    #[error(transparent)]
    Wrong(#[from] HandoverError),
}

/// What lies in the data folder.
pub type Offered = Result<DeskPublic, NotAKey>;

/// The key in the data folder's file, if there is a file.
pub fn in_folder(data: &Path) -> Option<Offered> {
    let mut file = match File::open(data.join(FILE)) {
        Ok(file) => file.take(FILE_BYTES_MOST),
        Err(error) if error.kind() == ErrorKind::NotFound => return None,
        Err(_) => return Some(Err(NotAKey::Unreadable)),
    };
    let mut text = String::new();
    if file.read_to_string(&mut text).is_err() {
        return Some(Err(NotAKey::Unreadable));
    }
    Some(key_in(&text))
}

/// The key in a file's text.
fn key_in(text: &str) -> Offered {
    // A mark of byte order, as some editors write it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let typed: Vec<&str> = text
        .lines()
        .filter(|line| !line.trim_start().starts_with('#'))
        .collect();
    Ok(DeskPublic::from_typed(&typed.join("\n"))?)
}

/// Whether an offer is to be looked at: it is not the key that is kept already.
pub fn is_new(offered: &Offered, kept: &str) -> bool {
    match offered {
        Ok(key) => key.to_typed() != kept,
        Err(_) => true,
    }
}

/// What the settings say of an offer.
pub fn told(offered: &Offered, words: &Words) -> String {
    let file = ("file", FILE.into());
    match offered {
        Ok(key) => {
            let six = ("words", key.fingerprint().join(" ").into());
            words.say_with("settings-desk-file", &[file, six])
        }
        Err(error) => {
            let why = match error {
                NotAKey::Unreadable => words.say("settings-policy-unreadable"),
                NotAKey::Wrong(error) => fault::handover(error, words).to_string(),
            };
            words.say_with("settings-desk-file-wrong", &[file, ("why", why.into())])
        }
    }
}
