//! Damaged, foreign, newer and held files. Source: SQLite's own file format (the header's fields
//! at bytes 60 and 68, sqlite.org/fileformat2.html 1.3) and the project's rule that nothing is deleted.

use std::fs;

use feedside::record::What;
use feedside::store::{Store, StoreError};
use proptest::prelude::*;
use rusqlite::Connection;

use super::{Folder, begun, entry, pair, visit};

/// A closed file with one visit of some length; made once, since every commit waits for the disk.
fn whole(folder: &Folder) -> std::path::PathBuf {
    static BYTES: std::sync::OnceLock<Vec<u8>> = std::sync::OnceLock::new();
    let bytes = BYTES.get_or_init(|| {
        let folder = Folder::new("whole");
        let path = folder.file("data.sqlite");
        let store = Store::open(&path).unwrap();
        store.save_pair(&pair(1)).unwrap();
        let mut visit = visit(1, 1, 0);
        for seq in 1..=400 {
            visit.journal.push(entry(seq, What::SuckSwallow)).unwrap();
        }
        store.begin_visit(&visit).unwrap();
        drop(store);
        fs::read(path).unwrap()
    });
    let path = folder.file("data.sqlite");
    fs::write(&path, bytes).unwrap();
    path
}

#[test]
fn a_file_of_a_newer_version_is_refused_and_left_alone() {
    let folder = Folder::new("too-new");
    let path = whole(&folder);
    Connection::open(&path)
        .unwrap()
        .pragma_update(None, "user_version", 7)
        .unwrap();
    let before = fs::read(&path).unwrap();
    assert!(matches!(
        Store::open(&path),
        Err(StoreError::TooNew { found: 7, known: 3 })
    ));
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn another_programs_database_is_refused_and_left_alone() {
    let folder = Folder::new("not-ours");
    let path = folder.file("data.sqlite");
    Connection::open(&path)
        .unwrap()
        .execute_batch("CREATE TABLE shopping (what TEXT)")
        .unwrap();
    let before = fs::read(&path).unwrap();
    assert!(matches!(Store::open(&path), Err(StoreError::NotOurs)));
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn a_damaged_file_is_set_aside_named_and_kept_and_the_next_opening_begins_anew() {
    let folder = Folder::new("damaged");
    let path = whole(&folder);
    for round in 1..=2 {
        fs::write(
            &path,
            format!("this is no database, round {round}, but long enough"),
        )
        .unwrap();
        let before = fs::read(&path).unwrap();
        let kept_as = match Store::open(&path) {
            Err(StoreError::Damaged {
                kept_as: Some(kept_as),
            }) => kept_as,
            other => panic!("{other:?}"),
        };
        assert_eq!(fs::read(&kept_as).unwrap(), before);
        assert!(kept_as.ends_with(format!("data.sqlite.damaged-{round}")));
        let store = Store::open(&path).unwrap();
        assert!(store.pairs().unwrap().is_empty());
        drop(store);
    }
}

#[test]
fn a_page_overwritten_in_the_middle_is_found_at_opening() {
    let folder = Folder::new("page");
    let path = whole(&folder);
    let mut bytes = fs::read(&path).unwrap();
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..middle + 4096].fill(0xA5);
    fs::write(&path, &bytes).unwrap();
    match Store::open(&path) {
        Err(StoreError::Damaged {
            kept_as: Some(kept_as),
        }) => {
            assert_eq!(fs::read(kept_as).unwrap(), bytes);
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_log_whose_file_was_emptied_is_kept() {
    let folder = Folder::new("orphan");
    let path = folder.file("data.sqlite");
    fs::write(&path, b"").unwrap();
    fs::write(folder.file("data.sqlite-wal"), b"all that is left").unwrap();
    assert!(matches!(
        Store::open(&path),
        Err(StoreError::Damaged { kept_as: Some(_) })
    ));
    let log = fs::read(folder.file("data.sqlite.damaged-1-wal")).unwrap();
    assert_eq!(log, b"all that is left");
    assert!(Store::open(&path).is_ok());
}

#[test]
fn a_log_whose_file_is_gone_is_kept() {
    let folder = Folder::new("gone");
    fs::write(folder.file("data.sqlite-wal"), b"all that is left").unwrap();
    let path = folder.file("data.sqlite");
    assert!(Store::open(&path).unwrap().pairs().unwrap().is_empty());
    let log = fs::read(folder.file("data.sqlite.damaged-1-wal")).unwrap();
    assert_eq!(log, b"all that is left");
}

#[test]
fn a_held_file_is_told_from_a_damaged_one() {
    let folder = Folder::new("held");
    let path = whole(&folder);
    let other = Connection::open(&path).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    let store = Store::open(&path).unwrap();
    assert_eq!(store.pairs().unwrap().len(), 1, "reading goes on");
    assert!(matches!(store.save_pair(&pair(2)), Err(StoreError::Locked)));
    other.execute_batch("ROLLBACK").unwrap();
    store.save_pair(&pair(2)).unwrap();
}

#[test]
fn a_place_that_cannot_be_is_told() {
    let folder = Folder::new("nowhere");
    let path = folder.file("no-such-folder/data.sqlite");
    assert!(matches!(Store::open(&path), Err(StoreError::NoAccess)));
    assert!(matches!(
        Store::open(&folder.file(".")),
        Err(StoreError::NoAccess)
    ));
}

#[cfg(unix)]
#[test]
fn the_file_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt;
    let folder = Folder::new("owner");
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    begun(&store);
    for name in folder.names() {
        let mode = fs::metadata(folder.file(&name))
            .unwrap()
            .permissions()
            .mode();
        assert_eq!(mode & 0o077, 0, "{name}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_file_cut_anywhere_never_panics_and_is_never_lost(cut in 1_usize..100_000) {
        let folder = Folder::new("cut");
        let path = whole(&folder);
        let bytes = fs::read(&path).unwrap();
        let cut = cut % bytes.len();
        fs::write(&path, &bytes[..cut]).unwrap();
        match Store::open(&path) {
            Err(StoreError::Damaged { kept_as: Some(kept_as) }) => {
                prop_assert_eq!(fs::read(kept_as).unwrap(), &bytes[..cut]);
                prop_assert!(Store::open(&path).is_ok());
            }
            Ok(_) => prop_assert_eq!(cut, 0),
            other => prop_assert!(false, "{:?}", other),
        }
    }

    #[test]
    fn a_file_with_a_changed_byte_never_panics_and_is_never_lost(
        place in 0_usize..100_000, change in 1_u8..=255,
    ) {
        let folder = Folder::new("flip");
        let path = whole(&folder);
        let mut bytes = fs::read(&path).unwrap();
        let place = place % bytes.len();
        bytes[place] ^= change;
        fs::write(&path, &bytes).unwrap();
        match Store::open(&path) {
            Ok(store) => {
                for pair in store.pairs().unwrap_or_default() {
                    for head in store.visits_of(pair.id).unwrap_or_default() {
                        let _ = store.visit(head.id);
                    }
                }
                let _ = store.ward();
            }
            Err(_) => {
                let kept = folder.names().iter().any(|name| fs::read(folder.file(name)).unwrap() == bytes);
                prop_assert!(kept);
            }
        }
    }
}
