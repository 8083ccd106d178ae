//! The inbox: what is kept comes back, is never changed, and is there after a power cut.

use std::fs;

use feedside::desk::Desk;
use feedside::desk::inbox::{Inbox, Settled};
use feedside::record::Label;
use rusqlite::Connection;

use super::place::{bare, desk_of};
use super::{handed_of, now, packed, packed_as, set_up, tablet, take_all};
use crate::store::Folder;
use crate::support;

fn kept_in(folder: &Folder) -> std::path::PathBuf {
    let path = folder.file("data");
    let mut desk = Desk::open(&path).unwrap();
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    take_all(&mut desk, &packed(&public));
    path.join("desk.sqlite")
}

#[test]
fn a_record_comes_back_as_it_was_handed_over() {
    let (mut desk, public) = set_up();
    let packed = packed(&public);
    take_all(&mut desk, &packed);
    let record = desk.inbox().record(1).unwrap();
    assert_eq!(record.handed, handed_of(support::sample_visit()));
    assert_eq!(record.tablet, tablet().public().kid());
    assert_eq!(record.transfer, packed.transfer);
}

#[test]
fn the_tables_refuse_to_change_or_lose_a_record_or_a_key() {
    let folder = Folder::new("inbox-only");
    let path = folder.file("data");
    let mut desk = desk_of(&path);
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    take_all(&mut desk, &packed(&public));
    desk.inbox().queue("somewhere", now()).unwrap();
    let claimed = desk
        .inbox()
        .claim("somewhere", now(), now(), 1)
        .unwrap()
        .unwrap();
    desk.inbox()
        .settle("somewhere", claimed, Settled::Sent, now())
        .unwrap();
    for sql in [
        "UPDATE record SET receipt = '0000000000'",
        "DELETE FROM record",
        "UPDATE desk_key SET made_utc_ms = 0",
        "DELETE FROM desk_key",
        "UPDATE tablet SET public = kid",
        "DELETE FROM tablet",
        "INSERT INTO desk_key_retired SELECT public, 0, 0 FROM tablet",
        "DELETE FROM delivery",
        "UPDATE delivery SET state = 'waiting'",
    ] {
        assert!(bare(&path, sql).is_err(), "{sql}");
    }
    assert!(bare(&path, "SELECT 1 FROM record").is_ok());
}

#[test]
fn records_are_found_by_the_beginnings_of_what_stands_in_their_line() {
    let (mut desk, public) = set_up();
    let kept = take_all(&mut desk, &packed(&public));
    let shown_again = packed_as(&handed_of(support::sample_visit()), &public, 4);
    take_all(&mut desk, &shown_again);
    let found = |text: &str, most: u32| -> Vec<i64> {
        let heads = desk.inbox().search(text, most).unwrap();
        heads.iter().map(|head| head.number).collect()
    };
    assert_eq!(found("", 10), [2, 1], "the newest first");
    assert_eq!(found("", 1), [2]);
    for text in ["bay 2", "BED 4 t. w.", "KB", "2026-03-04", "  "] {
        assert_eq!(found(text, 10), [2, 1], "{text}");
    }
    assert_eq!(found(&kept.head.receipt, 10), [1]);
    let grouped = format!("{} {}", &kept.head.receipt[..3], &kept.head.receipt[3..6]);
    assert!(found(&grouped, 10).contains(&1));
    for text in ["ay", "bay kb2", "%", "_", "!", "bay' OR '1'='1", "ß"] {
        assert_eq!(found(text, 10), [0_i64; 0], "{text}");
    }
}

#[test]
fn an_inbox_of_the_first_version_opens_and_is_searched() {
    let folder = Folder::new("inbox-old");
    let file = folder.file("desk.sqlite");
    let old = Connection::open(&file).unwrap();
    old.execute_batch(include_str!("../../data/desk/v1.sql"))
        .unwrap();
    drop(old);
    let inbox = Inbox::open(&file).unwrap();
    let head = inbox.head(1).unwrap();
    assert_eq!(head.bed.as_str(), "Bay 2 · Bed 1");
    assert_eq!(inbox.search("BAY 2 hart 2026-03-02", 5).unwrap(), [head]);
    assert_eq!(inbox.queue("somewhere", now()).unwrap(), 1);
    drop(inbox);
    let fresh = folder.file("fresh.sqlite");
    drop(Inbox::open(&fresh).unwrap());
    let tables = |file: &std::path::Path| -> Vec<String> {
        let connection = Connection::open(file).unwrap();
        let mut statement = connection
            .prepare("SELECT name || coalesce(sql, '') FROM sqlite_schema ORDER BY name")
            .unwrap();
        let rows = statement.query_map([], |row| row.get(0)).unwrap();
        rows.map(Result::unwrap).collect()
    };
    assert_eq!(tables(&file), tables(&fresh));
}

#[test]
fn a_record_whose_receipt_was_shown_is_in_a_copy_of_the_disk() {
    let folder = Folder::new("inbox-copy");
    let path = folder.file("data");
    let mut desk = Desk::open(&path).unwrap();
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    let kept = take_all(&mut desk, &packed(&public));
    // The desk still runs: this is what a power cut leaves.
    for ending in ["", "-wal"] {
        fs::copy(
            path.join(format!("desk.sqlite{ending}")),
            folder.file(&format!("copy.sqlite{ending}")),
        )
        .unwrap();
    }
    let copy = Inbox::open(&folder.file("copy.sqlite")).unwrap();
    assert_eq!(copy.heads().unwrap(), [kept.head]);
}

#[test]
fn a_damaged_inbox_is_set_aside_and_kept() {
    let folder = Folder::new("inbox-damaged");
    let file = kept_in(&folder);
    let mut bytes = fs::read(&file).unwrap();
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..].fill(0x5A);
    fs::write(&file, &bytes).unwrap();
    assert!(Inbox::open(&file).is_err());
    let kept = file.with_file_name("desk.sqlite.damaged-1");
    assert_eq!(fs::read(kept).unwrap(), bytes);
    assert!(Inbox::open(&file).unwrap().heads().unwrap().is_empty());
}

#[test]
fn the_tablets_own_file_is_not_taken_for_an_inbox() {
    let folder = Folder::new("inbox-not-ours");
    let path = folder.file("desk.sqlite");
    drop(feedside::store::Store::open(&path).unwrap());
    assert!(matches!(
        Inbox::open(&path),
        Err(feedside::store::StoreError::NotOurs)
    ));
}

#[test]
fn an_enrolled_tablet_may_get_another_name() {
    let (desk, _) = set_up();
    let name = Label::new("Tablet by the window").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    let tablets = desk.inbox().tablets().unwrap();
    assert_eq!(tablets.len(), 1);
    assert_eq!(tablets[0].name, name);
}

#[test]
fn debug_shows_no_person() {
    let (mut desk, public) = set_up();
    let kept = take_all(&mut desk, &packed(&public));
    let shown = format!("{desk:?} {kept:?}");
    for secret in ["T. W.", "Bay 2", "Wrenfold"] {
        assert!(!shown.contains(secret), "{shown}");
    }
}

/// An inbox as version 1 of its schema kept it, with an invented record.
const V1: &str = include_str!("../../data/desk/v1.sql");

#[test]
fn an_inbox_of_version_1_is_taken_over_with_all_that_is_in_it() {
    let folder = Folder::new("inbox-v1");
    let file = folder.file("desk.sqlite");
    Connection::open(&file).unwrap().execute_batch(V1).unwrap();
    let inbox = Inbox::open(&file).unwrap();
    let heads = inbox.heads().unwrap();
    assert_eq!(heads.len(), 1);
    assert_eq!(heads[0].receipt, "4244026839");
    let keys = inbox.keys().unwrap();
    assert!(keys.len() == 1 && keys[0].retired.is_none());
    let tablets = inbox.tablets().unwrap();
    assert!(tablets.len() == 1 && tablets[0].struck.is_none());
    inbox.strike_off(&tablets[0].public.kid(), now()).unwrap();
    assert_eq!(inbox.tablets().unwrap()[0].struck, Some(now()));
    assert_eq!(inbox.heads().unwrap(), heads);
}
