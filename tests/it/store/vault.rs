//! The lock of the tablet's file. Sources: the project's own rules (nothing is lost, nobody reads it
//! without the PIN or the rescue code); that a plain file begins with its name,
//! sqlite.org/fileformat2.html 1.3. That the algorithms are those of their standards is held from
//! outside, by `tests/outside/open_locked.py`.

use std::fs;
use std::path::Path;

use feedside::record::{WallTime, What};
use feedside::store::vault::{Cost, FileKey, Pin, PinFault, Typed, Vault, VaultError, WAITS_MS};
use feedside::store::{KeepDays, Store, StoreError};
use proptest::prelude::*;
use sha2::{Digest as _, Sha256};

use super::{Folder, begun, entry, label, pair, visit, wall};

const PIN: &str = "402715";
const OTHER: &str = "402716";
const PLAIN_BEGINNING: &[u8] = b"SQLite format 3\0";

fn vault(folder: &Folder) -> Vault {
    Vault::of(&folder.file("."), Cost::LEAST).unwrap()
}

fn typed(digits: &str) -> Typed {
    Typed::read(digits).unwrap()
}

fn digits(shown: &str) -> String {
    shown.split_whitespace().collect()
}

fn without_pin(folder: &Folder) -> Store {
    let vault = vault(folder);
    let key = vault.key_without_pin().unwrap().unwrap();
    Store::open_locked(vault, &key).unwrap()
}

fn with(folder: &Folder, digits: &str, now: WallTime) -> Result<Store, VaultError> {
    let mut vault = vault(folder);
    let key = vault.key(&typed(digits), now)?;
    Ok(Store::open_locked(vault, &key).unwrap())
}

/// A folder with one visit and the PIN; gives the rescue code.
fn locked(folder: &Folder) -> String {
    let mut store = without_pin(folder);
    begun(&store);
    let rescue = store.set_pin(None, &Pin::new(PIN).unwrap(), wall(0));
    digits(&rescue.unwrap().shown())
}

fn has_the_visit(store: &Store) -> bool {
    store.visit(visit(1, 1, 0).id).unwrap().is_some()
}

/// All bytes that lie in the folder.
fn all_bytes(folder: &Folder) -> Vec<u8> {
    let names = folder.names();
    names
        .iter()
        .flat_map(|name| fs::read(folder.file(name)).unwrap())
        .collect()
}

fn holds(bytes: &[u8], text: &[u8]) -> bool {
    bytes.windows(text.len()).any(|window| window == text)
}

#[test]
fn nothing_of_a_pair_can_be_read_in_the_folder_with_a_pin_or_without() {
    let folder = Folder::new("vault-unreadable");
    let store = without_pin(&folder);
    begun(&store);
    let bed = pair(1).bed;
    for held in [true, false] {
        let bytes = all_bytes(&folder);
        assert!(4096 < bytes.len());
        for text in [PLAIN_BEGINNING, b"CREATE TABLE", bed.as_str().as_bytes()] {
            assert!(!holds(&bytes, text), "{held} {text:?}");
        }
        if !held {
            break;
        }
    }
    drop(store);
    // The same search finds it where the file is plain.
    let plain = Folder::new("vault-readable");
    begun(&Store::open(&plain.file("data.sqlite")).unwrap());
    for text in [PLAIN_BEGINNING, b"CREATE TABLE", bed.as_str().as_bytes()] {
        assert!(holds(&all_bytes(&plain), text), "{text:?}");
    }
}

#[test]
fn without_a_pin_the_folder_opens_by_itself_and_with_one_it_does_not() {
    let folder = Folder::new("vault-pin");
    assert!(!vault(&folder).has_pin());
    locked(&folder);
    let vault = vault(&folder);
    assert!(vault.has_pin());
    assert!(vault.key_without_pin().unwrap().is_none());
    assert!(has_the_visit(&with(&folder, PIN, wall(0)).unwrap()));
    assert!(matches!(
        with(&folder, OTHER, wall(0)),
        Err(VaultError::Wrong { wait_ms: 0 })
    ));
}

#[test]
fn the_rescue_code_opens_and_each_new_pin_has_a_new_one() {
    let folder = Folder::new("vault-rescue");
    let first = locked(&folder);
    assert_eq!(first.len(), 30);
    let mut store = with(&folder, &first, wall(0)).unwrap();
    assert!(has_the_visit(&store));
    let other = Pin::new(OTHER).unwrap();
    let second = store
        .set_pin(Some(&typed(&first)), &other, wall(0))
        .unwrap();
    drop(store);
    for (digits, opens) in [
        (PIN, false),
        (&*first, false),
        (OTHER, true),
        (&*digits(&second.shown()), true),
    ] {
        assert_eq!(with(&folder, digits, wall(0)).is_ok(), opens, "{digits}");
    }
}

#[test]
fn a_pin_is_changed_only_by_who_knows_the_one_before_or_the_rescue_code() {
    let folder = Folder::new("vault-change");
    locked(&folder);
    let mut store = with(&folder, PIN, wall(0)).unwrap();
    let other = Pin::new(OTHER).unwrap();
    for current in [None, Some(typed(OTHER)), Some(typed(&"7".repeat(30)))] {
        let set = store.set_pin(current.as_ref(), &other, wall(0));
        assert!(matches!(set, Err(VaultError::Wrong { .. })), "{current:?}");
    }
    assert!(with(&folder, PIN, wall(0)).is_ok());
    assert!(store.set_pin(Some(&typed(PIN)), &other, wall(0)).is_ok());
    assert!(with(&folder, OTHER, wall(0)).is_ok());
}

#[test]
fn wrong_tries_make_the_wait_grow_and_ending_the_program_does_not_shorten_it() {
    let folder = Folder::new("vault-waits");
    locked(&folder);
    let mut now_ms = 0;
    for tries in 1..WAITS_MS.len() + 2 {
        let wait_ms = WAITS_MS[tries.min(WAITS_MS.len() - 1)];
        let told = with(&folder, OTHER, wall(now_ms)).unwrap_err();
        assert_eq!(told, VaultError::Wrong { wait_ms }, "try {tries}");
        if 0 < wait_ms {
            let wait = i64::try_from(wait_ms).unwrap();
            // A millisecond too early even the right PIN is not tried, nor counted.
            let early = with(&folder, PIN, wall(now_ms + wait - 1)).unwrap_err();
            assert_eq!(early, VaultError::Wait { wait_ms: 1 });
            now_ms += wait;
        }
    }
    assert!(with(&folder, PIN, wall(now_ms)).is_ok());
    // And then all is forgotten.
    let told = with(&folder, OTHER, wall(now_ms)).unwrap_err();
    assert_eq!(told, VaultError::Wrong { wait_ms: 0 });
}

#[test]
fn a_clock_set_back_begins_the_wait_anew_and_no_more() {
    let folder = Folder::new("vault-clock");
    locked(&folder);
    for _ in 0..5 {
        let _ = with(&folder, OTHER, wall(0));
    }
    let mut vault = vault(&folder);
    let back_ms = -1_000_000_000;
    assert_eq!(vault.wait_ms(wall(back_ms)), WAITS_MS[5]);
    assert_eq!(vault.wait_ms(wall(back_ms + 30_000)), 0);
}

#[test]
fn easily_guessed_pins_are_refused() {
    for (digits, expected) in [
        ("402715", Ok(())),
        ("000001", Err(PinFault::Easy)),
        ("121212", Err(PinFault::Easy)),
        ("123456", Err(PinFault::Easy)),
        ("567890", Err(PinFault::Easy)),
        ("987654", Err(PinFault::Easy)),
        ("321098", Err(PinFault::Easy)),
        ("123457", Ok(())),
        ("40271", Err(PinFault::Length)),
        ("402715402715", Ok(())),
        ("4027154027154", Err(PinFault::Length)),
        ("40271a", Err(PinFault::Length)),
        ("٤٠٢٧١٥", Err(PinFault::Length)),
        ("", Err(PinFault::Length)),
    ] {
        assert_eq!(Pin::new(digits).map(|_| ()), expected, "{digits}");
    }
}

#[test]
fn a_secret_never_shows_in_debug() {
    let folder = Folder::new("vault-debug");
    let rescue = typed(&locked(&folder));
    let told = format!("{:?} {:?} {:?}", Pin::new(PIN), typed(PIN), rescue);
    assert!(told.chars().all(|it| !it.is_ascii_digit()), "{told}");
}

#[test]
fn a_plain_file_of_an_earlier_version_becomes_an_encrypted_one_with_all_that_was_in_it() {
    let sql = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/store/v1.sql");
    let folder = Folder::new("vault-plain");
    let path = folder.file("feedside.db");
    let old = rusqlite::Connection::open(&path).unwrap();
    old.execute_batch(&fs::read_to_string(sql).unwrap())
        .unwrap();
    drop(old);
    // What an interrupted try left does not disturb.
    fs::write(folder.file("feedside.db.sealing"), b"half a copy").unwrap();
    let before = {
        let copy = folder.file("copy.sqlite");
        fs::copy(&path, &copy).unwrap();
        everything(&Store::open(&copy).unwrap())
    };
    for name in folder.names() {
        if name.starts_with("copy") {
            fs::remove_file(folder.file(&name)).unwrap();
        }
    }
    assert_eq!(everything(&without_pin(&folder)), before);
    assert!(!holds(&all_bytes(&folder), PLAIN_BEGINNING));
    assert!(!folder.names().iter().any(|name| name.contains("sealing")));
    // And again, now that it is encrypted.
    assert_eq!(everything(&without_pin(&folder)), before);
}

#[test]
fn the_bytes_of_the_plain_file_are_overwritten() {
    let (folder, aside) = (Folder::new("vault-over"), Folder::new("vault-over-aside"));
    let path = folder.file("feedside.db");
    begun(&Store::open(&path).unwrap());
    // A second name for the same bytes.
    fs::hard_link(&path, aside.file("same")).unwrap();
    let length = fs::metadata(&path).unwrap().len();
    assert!(holds(&all_bytes(&aside), pair(1).bed.as_str().as_bytes()));
    drop(without_pin(&folder));
    let left = all_bytes(&aside);
    assert_eq!(u64::try_from(left.len()).unwrap(), length);
    assert!(left.iter().all(|byte| *byte == 0));
}

#[test]
fn a_plain_file_that_another_program_has_open_is_not_encrypted_under_it() {
    let folder = Folder::new("vault-plain-held");
    let path = folder.file("feedside.db");
    let other = Store::open(&path).unwrap();
    begun(&other);
    let open = || {
        let vault = vault(&folder);
        let key = vault.key_without_pin().unwrap().unwrap();
        Store::open_locked(vault, &key)
    };
    assert!(matches!(open(), Err(StoreError::Locked)));
    assert!(holds(&fs::read(&path).unwrap(), PLAIN_BEGINNING));
    other.save_pair(&pair(2)).unwrap();
    drop(other);
    assert_eq!(open().unwrap().pairs().unwrap().len(), 2);
}

/// All that the store tells.
fn everything(store: &Store) -> String {
    let pairs = store.pairs().unwrap();
    let visits: Vec<_> = pairs
        .iter()
        .flat_map(|pair| store.visits_of(pair.id).unwrap())
        .map(|head| store.visit(head.id).unwrap())
        .collect();
    let language = store.setting("language").unwrap();
    let secret = store.secret("tablet").unwrap();
    format!("{pairs:?} {visits:?} {language:?} {secret:?}")
}

#[test]
fn a_damaged_plain_file_is_set_aside_and_not_encrypted() {
    let folder = Folder::new("vault-plain-damaged");
    let path = folder.file("feedside.db");
    let mut bytes = PLAIN_BEGINNING.to_vec();
    bytes.resize(9_000, 0xA5);
    fs::write(&path, &bytes).unwrap();
    let vault = vault(&folder);
    let key = vault.key_without_pin().unwrap().unwrap();
    match Store::open_locked(vault, &key) {
        Err(StoreError::Damaged {
            kept_as: Some(kept_as),
        }) => assert_eq!(fs::read(kept_as).unwrap(), bytes),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_database_whose_keys_are_gone_is_refused_and_nothing_is_made() {
    let folder = Folder::new("vault-gone");
    locked(&folder);
    for name in ["feedside.keys", "feedside.keys.copy"] {
        fs::remove_file(folder.file(name)).unwrap();
    }
    let before = (folder.names(), all_bytes(&folder));
    let gone = Vault::of(&folder.file("."), Cost::LEAST).unwrap_err();
    assert_eq!(gone, VaultError::KeysGone);
    assert_eq!((folder.names(), all_bytes(&folder)), before);
}

#[test]
fn one_damaged_or_lost_file_of_keys_does_no_harm_and_both_are_told_and_left() {
    for (name, copy) in [
        ("feedside.keys", "feedside.keys.copy"),
        ("feedside.device", "feedside.device.copy"),
    ] {
        for damaged in [name, copy] {
            for lost in [true, false] {
                let folder = Folder::new("vault-one");
                locked(&folder);
                if lost {
                    fs::remove_file(folder.file(damaged)).unwrap();
                } else {
                    fs::write(folder.file(damaged), b"{").unwrap();
                }
                assert!(with(&folder, PIN, wall(0)).is_ok(), "{damaged} {lost}");
            }
        }
        let folder = Folder::new("vault-both");
        locked(&folder);
        fs::write(folder.file(name), b"{").unwrap();
        fs::write(folder.file(copy), b"").unwrap();
        let before = (folder.names(), all_bytes(&folder));
        let damaged = Vault::of(&folder.file("."), Cost::LEAST).unwrap_err();
        assert_eq!(damaged, VaultError::KeysDamaged, "{name}");
        assert_eq!((folder.names(), all_bytes(&folder)), before);
    }
}

#[test]
fn a_copy_that_differs_is_put_right_by_the_one_that_counts() {
    for damaged in ["feedside.keys", "feedside.keys.copy", "feedside.device"] {
        let folder = Folder::new("vault-heals");
        locked(&folder);
        let before = fs::read(folder.file(damaged)).unwrap();
        fs::write(folder.file(damaged), b"{").unwrap();
        drop(vault(&folder));
        assert_eq!(fs::read(folder.file(damaged)).unwrap(), before, "{damaged}");
    }
    // The copy from before the PIN was set would open the file without it.
    let folder = Folder::new("vault-stale");
    drop(without_pin(&folder));
    let stale = fs::read(folder.file("feedside.keys.copy")).unwrap();
    locked(&folder);
    fs::write(folder.file("feedside.keys.copy"), stale).unwrap();
    drop(vault(&folder));
    fs::write(folder.file("feedside.keys"), b"{").unwrap();
    assert!(vault(&folder).has_pin());
    assert!(with(&folder, PIN, wall(0)).is_ok());
}

#[test]
fn a_first_start_that_was_killed_at_any_step_is_followed_by_one_that_works() {
    let whole = Folder::new("vault-whole-start");
    drop(without_pin(&whole));
    let written = [
        "feedside.device",
        "feedside.device.copy",
        "feedside.keys",
        "feedside.keys.copy",
    ];
    for done in 0..=written.len() {
        let folder = Folder::new("vault-killed-start");
        for name in &written[..done] {
            fs::copy(whole.file(name), folder.file(name)).unwrap();
        }
        if let Some(next) = written.get(done) {
            fs::write(folder.file(&format!("{next}.new")), b"half").unwrap();
        }
        locked(&folder);
        let store = with(&folder, PIN, wall(0)).unwrap();
        assert!(has_the_visit(&store), "after {done} files");
    }
}

#[test]
fn on_another_device_only_the_rescue_code_opens_and_then_a_pin_can_be_set() {
    let folder = Folder::new("vault-device");
    let rescue = locked(&folder);
    for name in ["feedside.device", "feedside.device.copy"] {
        fs::remove_file(folder.file(name)).unwrap();
    }
    let told = with(&folder, PIN, wall(0)).unwrap_err();
    assert_eq!(told, VaultError::DeviceGone);
    let mut store = with(&folder, &rescue, wall(0)).unwrap();
    assert!(has_the_visit(&store));
    let other = Pin::new(OTHER).unwrap();
    store
        .set_pin(Some(&typed(&rescue)), &other, wall(0))
        .unwrap();
    assert!(has_the_visit(&with(&folder, OTHER, wall(0)).unwrap()));
}

#[test]
fn the_pin_of_one_folder_opens_no_other() {
    let (one, other) = (Folder::new("vault-a"), Folder::new("vault-b"));
    locked(&one);
    locked(&other);
    // The keys of the other folder with this one's secret of the device.
    for name in ["feedside.keys", "feedside.keys.copy"] {
        fs::copy(other.file(name), one.file(name)).unwrap();
    }
    assert!(matches!(
        with(&one, PIN, wall(0)),
        Err(VaultError::Wrong { .. })
    ));
}

#[test]
fn keys_that_ask_for_more_than_a_tablet_can_bear_are_not_believed() {
    let folder = Folder::new("vault-cost");
    locked(&folder);
    for name in ["feedside.keys", "feedside.keys.copy"] {
        let bytes = fs::read(folder.file(name)).unwrap();
        let text = String::from_utf8(bytes[..bytes.len() - 32].to_vec()).unwrap();
        let more = text.replace("\"memory_kib\":8,", "\"memory_kib\":4000000000,");
        assert_ne!(text, more);
        let whole = [more.as_bytes(), &Sha256::digest(&more)].concat();
        fs::write(folder.file(name), whole).unwrap();
    }
    let told = with(&folder, PIN, wall(0)).unwrap_err();
    assert_eq!(told, VaultError::KeysDamaged);
}

#[cfg(unix)]
#[test]
fn every_file_of_the_folder_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt;
    let folder = Folder::new("vault-owner");
    locked(&folder);
    let _open = with(&folder, PIN, wall(0)).unwrap();
    let _ = with(&folder, OTHER, wall(0));
    assert!(8 <= folder.names().len(), "{:?}", folder.names());
    for name in folder.names() {
        let mode = fs::metadata(folder.file(&name))
            .unwrap()
            .permissions()
            .mode();
        assert_eq!(mode & 0o077, 0, "{name}");
    }
}

#[test]
fn what_leaves_an_encrypted_file_leaves_it_whole_and_encrypted() {
    let folder = Folder::new("vault-leaving");
    locked(&folder);
    let store = with(&folder, PIN, wall(0)).unwrap();
    let id = visit(1, 1, 0).id;
    let signed = What::Signed {
        by: label("feeding lead"),
    };
    store.append(id, &entry(1, signed)).unwrap();
    let receipt = "1234567890".to_owned();
    let receipt = What::ReceiptTaken { receipt };
    store.append(id, &entry(2, receipt)).unwrap();
    store.save_pair(&pair(2)).unwrap();
    let later = wall(40 * 24 * 3_600_000);
    assert_eq!(store.let_leave(later, KeepDays::default()).unwrap(), 1);
    drop(store);
    let store = with(&folder, PIN, wall(0)).unwrap();
    assert_eq!(store.pairs().unwrap(), [pair(2)]);
    assert!(!holds(&all_bytes(&folder), PLAIN_BEGINNING));
}

/// An encrypted folder, made once and copied.
fn whole(folder: &Folder) -> Vec<u8> {
    static FILES: std::sync::OnceLock<Vec<(String, Vec<u8>)>> = std::sync::OnceLock::new();
    let files = FILES.get_or_init(|| {
        let folder = Folder::new("vault-whole");
        let store = without_pin(&folder);
        begun(&store);
        drop(store);
        let names = folder.names();
        names
            .into_iter()
            .map(|name| (name.clone(), fs::read(folder.file(&name)).unwrap()))
            .collect()
    });
    for (name, bytes) in files {
        fs::write(folder.file(name), bytes).unwrap();
    }
    fs::read(folder.file("feedside.db")).unwrap()
}

fn opened(folder: &Folder) -> Result<(Vault, FileKey), VaultError> {
    let vault = Vault::of(&folder.file("."), Cost::LEAST)?;
    let key = vault.key_without_pin()?.ok_or(VaultError::KeysDamaged)?;
    Ok((vault, key))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_changed_byte_of_the_database_is_found_and_the_file_kept(
        place in 0_usize..1_000_000, change in 1_u8..=255,
    ) {
        let folder = Folder::new("vault-flip");
        let mut bytes = whole(&folder);
        let place = place % bytes.len();
        bytes[place] ^= change;
        fs::write(folder.file("feedside.db"), &bytes).unwrap();
        let (vault, key) = opened(&folder).unwrap();
        match Store::open_locked(vault, &key) {
            // The salt is given, not read, so that its 16 bytes do not matter.
            Ok(store) => {
                prop_assert!(place < 16, "a change at {} was not found", place);
                prop_assert!(has_the_visit(&store));
            }
            Err(StoreError::Damaged { kept_as: Some(kept_as) }) => {
                prop_assert_eq!(fs::read(kept_as).unwrap(), bytes);
                let (vault, key) = opened(&folder).unwrap();
                prop_assert!(Store::open_locked(vault, &key).is_ok());
            }
            Err(other) => prop_assert!(false, "{:?}", other),
        }
    }

    #[test]
    fn a_changed_byte_of_the_keys_is_found_and_the_copy_serves(
        place in 0_usize..10_000, change in 1_u8..=255,
    ) {
        let folder = Folder::new("vault-keys-flip");
        whole(&folder);
        for name in ["feedside.keys", "feedside.device"] {
            let mut bytes = fs::read(folder.file(name)).unwrap();
            let place = place % bytes.len();
            bytes[place] ^= change;
            fs::write(folder.file(name), &bytes).unwrap();
            let (vault, key) = opened(&folder).unwrap();
            prop_assert!(has_the_visit(&Store::open_locked(vault, &key).unwrap()));
            fs::write(folder.file(name), &bytes).unwrap();
            fs::write(folder.file(&format!("{name}.copy")), &bytes).unwrap();
            prop_assert_eq!(opened(&folder).unwrap_err(), VaultError::KeysDamaged);
            whole(&folder);
        }
    }
}
