//! What the ward's list keeps of visits, so that it reads no journals: it must always say what it
//! would say without. Source of what is expected: the project's own design.

use std::path::Path;

use feedside::app::demo;
use feedside::app::keeper::{Ask, Told, WardLine, answer};
use feedside::findings::Policy;
use feedside::record::{LastDay, PairId, VisitId, What};
use feedside::store::Store;
use rusqlite::Connection;
use uuid::Uuid;

use crate::store::Folder;
use crate::support::{add, empty_visit, sample_began, sample_pair};

const OTHER: &str = "name = \"W\"\nversion = \"1\"\nauthor = \"L\"\ndate = \"2026-01-01\"\n";

fn ward(store: &mut Store, policy: &Policy) -> Vec<WardLine> {
    match answer(store, policy, Ask::Ward) {
        Told::Ward(lines) => lines,
        other => panic!("{other:?}"),
    }
}

fn said(lines: &[WardLine]) -> String {
    format!("{lines:?}")
}

/// The list as it would be told if nothing had been kept.
fn afresh(file: &Path, policy: &Policy) -> String {
    let bare = Connection::open(file).unwrap();
    bare.execute("DELETE FROM gist", []).unwrap();
    drop(bare);
    said(&ward(&mut Store::open(file).unwrap(), policy))
}

fn kept(file: &Path) -> i64 {
    let bare = Connection::open(file).unwrap();
    bare.query_row("SELECT count(*) FROM gist", [], |row| row.get(0))
        .unwrap()
}

fn filled(file: &Path) -> Store {
    let mut store = Store::open(file).unwrap();
    let pairs = demo::ward(sample_began());
    answer(&mut store, &Policy::built_in(), Ask::Fill(pairs));
    store
}

#[test]
fn what_is_kept_of_visits_says_what_their_journals_say() {
    let folder = Folder::new("ward-list-1");
    let file = folder.file("feedside.db");
    let mut store = filled(&file);
    let policy = Policy::built_in();
    let first = said(&ward(&mut store, &policy));
    assert!(0 < kept(&file));
    assert_eq!(said(&ward(&mut store, &policy)), first);
    assert_eq!(afresh(&file, &policy), first);
}

#[test]
fn a_new_entry_a_changed_pair_and_another_policy_are_seen_at_once() {
    let folder = Folder::new("ward-list-2");
    let file = folder.file("feedside.db");
    let mut store = filled(&file);
    let policy = Policy::built_in();
    let before = ward(&mut store, &policy);
    let line = &before[0];
    let pair = line.row.pair.clone();
    let began = sample_began().plus_ms(1);

    let mut visit = empty_visit();
    visit.id = VisitId::of(Uuid::from_u128(77));
    visit.pair = pair.id;
    visit.began = began;
    answer(&mut store, &policy, Ask::Begin(Box::new(visit.clone())));
    let opened = said(&ward(&mut store, &policy));
    assert_ne!(opened, said(&before));

    let day = LastDay {
        feeds: Some(1),
        ..LastDay::default()
    };
    add(&mut visit, 1_000, What::LastDay(day));
    let entry = visit.journal.entries().last().unwrap().clone();
    answer(&mut store, &policy, Ask::Append(visit.id, Box::new(entry)));
    let told = said(&ward(&mut store, &policy));
    assert_ne!(told, opened);
    assert_eq!(afresh(&file, &policy), told);

    let mut changed = pair;
    changed.birth = changed.birth.plus_ms(-6 * 3_600_000);
    answer(&mut store, &policy, Ask::SavePair(Box::new(changed)));
    let told = said(&ward(&mut store, &policy));
    assert_eq!(afresh(&file, &policy), told);

    let other = Policy::from_toml(OTHER).unwrap();
    let told = ward(&mut store, &other);
    let marks = told.iter().flat_map(|line| &line.marks);
    assert!(marks.clone().count() > 0);
    for mark in marks {
        assert!(mark.holds_under(&other));
    }
    assert_eq!(afresh(&file, &other), said(&told));
}

#[test]
fn a_kept_gist_that_cannot_be_read_is_made_again() {
    let folder = Folder::new("ward-list-3");
    let file = folder.file("feedside.db");
    let mut store = filled(&file);
    let policy = Policy::built_in();
    let first = said(&ward(&mut store, &policy));
    let bare = Connection::open(&file).unwrap();
    let rows = bare.execute("UPDATE gist SET body = '{\"later\":1}'", []);
    assert!(0 < rows.unwrap());
    drop(bare);
    assert_eq!(said(&ward(&mut store, &policy)), first);
}

#[test]
fn a_pair_without_a_visit_has_no_mark() {
    let mut store = Store::in_memory().unwrap();
    let mut pair = sample_pair();
    pair.id = PairId::of(Uuid::from_u128(5));
    store.save_pair(&pair).unwrap();
    let lines = ward(&mut store, &Policy::built_in());
    assert!(lines[0].marks.is_empty() && lines[0].weighings.is_empty());
}
