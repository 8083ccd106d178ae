//! Where a rehearsal writes: it replaces what an earlier one made, and nothing else.

use std::fs;
use std::path::{Path, PathBuf};

use feedside::rehearse::{Eye, MARK, RehearseError, Tablet, run, walk};

use super::tablet::CANVAS;
use crate::store::Folder;

/// Every file below a folder with its bytes.
fn files(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.extend(files(&path));
        } else {
            all.push((path.clone(), fs::read(&path).unwrap()));
        }
    }
    all.sort();
    all
}

fn put(file: &Path, text: &str) {
    fs::create_dir_all(file.parent().unwrap()).unwrap();
    fs::write(file, text).unwrap();
}

#[test]
fn what_no_rehearsal_made_is_refused_and_left_as_it_is() {
    for (name, there) in [
        ("a-desk", &["desk/desk.sqlite"][..]),
        ("receipt", &["receipt.txt"]),
        ("codes", &["codes/mine.png"]),
        ("visit", &["visit.json"]),
        ("timing", &["timing/store.sqlite"]),
        // The folder was a rehearsal's; then a desk of its own came into it.
        (
            "marked",
            &[
                MARK,
                "codes/made-by-rehearse.txt",
                "codes/note.png",
                "desk/desk.sqlite",
            ],
        ),
        ("deeper", &[MARK, "exports/2026/report.pdf"]),
    ] {
        let folder = Folder::new(&format!("rehearsal-{name}"));
        let out = folder.file("out");
        for file in there {
            put(&out.join(file), name);
        }
        let before = files(&out);
        let refused = run(&out, 1, true);
        assert!(
            matches!(refused, Err(RehearseError::NotARehearsal { .. })),
            "{name}"
        );
        assert_eq!(files(&out), before, "{name}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_in_a_rehearsals_folder_is_not_followed() {
    let folder = Folder::new("rehearsal-link");
    let (out, real) = (folder.file("out"), folder.file("real"));
    put(&out.join(MARK), "");
    put(&real.join(MARK), "");
    std::os::unix::fs::symlink(&real, out.join("desk")).unwrap();
    let refused = run(&out, 1, false);
    assert!(matches!(refused, Err(RehearseError::NotARehearsal { .. })));
    assert!(real.join(MARK).exists());
}

/// Looks at nothing.
struct Closed;

impl Eye for Closed {
    fn look(&mut self, _: &mut Tablet, _: &str) -> Result<(), RehearseError> {
        Ok(())
    }
}

#[test]
fn a_rehearsal_over_an_earlier_one_has_nothing_left_of_it_and_every_export() {
    CANVAS.with(|_| ());
    let folder = Folder::new("rehearsal-again");
    let out = folder.file("out");
    put(&out.join(MARK), "");
    put(&out.join("notes.txt"), "not the rehearsal's");
    for name in ["codes", "desk", "exports", "screens", "timing"] {
        put(&out.join(name).join(MARK), "");
    }
    // A code of a record that had more pieces, and a desk of another key.
    put(&out.join("codes/record-9-of-9.png"), "no picture");
    put(&out.join("desk/desk.sqlite"), "no desk");
    put(&out.join("screens/old.png"), "old");
    let walked = walk(&out, 5, &mut Closed).unwrap();
    assert!(!out.join("codes/record-9-of-9.png").exists());
    assert!(!out.join("screens/old.png").exists());
    assert!(out.join("notes.txt").exists());
    assert_eq!(walked.desk.inbox().heads().unwrap().len(), 1);
    for (file, begins) in [
        ("visit.fhir.json", "{"),
        ("visit.document.json", "{"),
        ("visit.hl7", "MSH|"),
        ("visit.csv", "section,"),
        ("visit.pdf", "%PDF-"),
        ("visit.txt", ""),
    ] {
        let bytes = fs::read(out.join("exports").join(file)).unwrap();
        assert!(
            bytes.starts_with(begins.as_bytes()) && 100 < bytes.len(),
            "{file}"
        );
    }
    assert!(walked.told.contains("as PDF"), "{}", walked.told);
}
