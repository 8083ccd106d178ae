//! `Cargo.toml`: every dependency has a line that says what it is for.

use super::source::{none, root, text};

/// Dependencies with no comment above them (a comment serves the lines that follow it directly).
fn unexplained(manifest: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let mut in_dependencies = false;
    let mut one_table = None;
    let mut explained = false;
    for line in manifest.lines().map(str::trim) {
        if let Some(header) = line.strip_prefix('[') {
            let header = header.trim_end_matches(']');
            let last = header.rsplit("dependencies").next().unwrap_or_default();
            in_dependencies = header.contains("dependencies") && last.is_empty();
            one_table = last.strip_prefix('.').map(str::to_owned);
            explained = false;
            continue;
        }
        if line.starts_with('#') {
            explained = true;
        } else if line.is_empty() {
            explained = false;
        }
        if let Some(name) = &one_table {
            if line.starts_with("version") && !explained {
                faults.push(name.clone());
            }
        } else if in_dependencies
            && !explained
            && let Some((name, _)) = line.split_once('=')
        {
            faults.push(name.trim().to_owned());
        }
    }
    faults
}

#[test]
fn every_dependency_says_what_it_is_for() {
    none(&unexplained(&text(&root().join("Cargo.toml"))));
}

#[test]
fn a_dependency_without_a_comment_is_found() {
    let manifest = "[dependencies]\n# for a\na = \"1\"\nb = \"1\"\n\nc = \"1\"\n\
        [dependencies.d]\nversion = \"1\"\n[dependencies.e]\n# for e\nversion = \"1\"\n\
        [target.'cfg(unix)'.dependencies]\nf = \"1\"\n[features]\ng = []\n";
    assert_eq!(unexplained(manifest), ["c", "d", "f"]);
}
