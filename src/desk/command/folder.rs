//! Where the desk's data lie unless a folder is named.

use std::ffi::OsString;
use std::path::PathBuf;

const NAME: &str = "feedside-desk";

/// The folder that this kind of system keeps for a program's data: the local application data on
/// Windows, `Library/Application Support` on a Mac, else the XDG data folder
/// (XDG Base Directory Specification 0.8: `$XDG_DATA_HOME`, by default `~/.local/share`).
pub(super) fn default(variable: &dyn Fn(&str) -> Option<OsString>) -> Option<PathBuf> {
    let folder = |name: &str| {
        let value = variable(name).filter(|value| !value.is_empty());
        value.map(PathBuf::from).filter(|path| path.is_absolute())
    };
    let base = if cfg!(windows) {
        folder("LOCALAPPDATA")
    } else if cfg!(target_os = "macos") {
        folder("HOME").map(|home| home.join("Library/Application Support"))
    } else {
        folder("XDG_DATA_HOME").or_else(|| folder("HOME").map(|home| home.join(".local/share")))
    };
    base.map(|base| base.join(NAME))
}
