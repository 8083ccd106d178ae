//! Finds the project's own files.

use std::fs;
use std::path::{Path, PathBuf};

/// The project's folder.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// All files below a folder of the project whose names end in one of these; sorted. No folder, no files.
pub fn files(folder: &str, ends: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    collect(&root().join(folder), ends, &mut found);
    found.sort();
    found
}

fn collect(folder: &Path, ends: &[&str], found: &mut Vec<PathBuf>) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for path in entries.map(|entry| entry.unwrap().path()) {
        if path.is_dir() {
            collect(&path, ends, found);
        } else if ends.iter().any(|end| path.to_string_lossy().ends_with(end)) {
            found.push(path);
        }
    }
}

/// A file's text.
pub fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A file's path inside the project, with `/` on every machine.
pub fn shown(path: &Path) -> String {
    let inside = path.strip_prefix(root()).unwrap_or(path);
    let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
    parts.join("/")
}

/// Fails with all faults, one a line.
pub fn none(faults: &[String]) {
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}
