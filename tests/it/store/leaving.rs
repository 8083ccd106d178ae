//! Pairs leave the tablet whole, after the receipts and the set number of days, and nothing else
//! ever does. Source: the project's own rule (a visit leaves the tablet only after its receipt and
//! the set number of days); that traces go, SQLite's own words on `secure_delete` and `VACUUM`
//! (sqlite.org/pragma.html#pragma_secure_delete, sqlite.org/lang_vacuum.html).

use std::fs;
use std::path::Path;

use feedside::record::{At, Pair, PairId, RecordError, Visit, VisitId, WallTime, What};
use feedside::store::{KeepDays, Store, StoreError};
use proptest::prelude::*;
use rusqlite::Connection;
use rusqlite::types::Value;
use uuid::Uuid;

use super::{Folder, label, pair, visit, wall};

const DAY_MS: i64 = 24 * 60 * 60 * 1_000;
/// Long after everything that the tests tell.
const MUCH_LATER_MS: i64 = 100 * 365 * DAY_MS;

/// How far a visit has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum State {
    Begun,
    Told,
    Signed,
    Receipted,
}

use State::{Begun, Receipted, Signed, Told};

/// A visit of one pair, as a test wants it.
#[derive(Debug, Clone)]
struct Made {
    state: State,
    /// Which earlier one of the same pair it amends.
    amends: Option<usize>,
    began_ms: i64,
    /// When what was seen, the signature and the receipt were told, as far as it has come.
    told_ms: [i64; 3],
}

impl Made {
    fn to(state: State) -> Self {
        Self {
            state,
            amends: None,
            began_ms: 0,
            told_ms: [0; 3],
        }
    }

    fn amending(self, amends: usize) -> Self {
        Self {
            amends: Some(amends),
            ..self
        }
    }

    fn told_all(self, at_ms: i64) -> Self {
        Self {
            told_ms: [at_ms; 3],
            ..self
        }
    }
}

fn id_of(of: u128, index: usize) -> VisitId {
    VisitId::of(Uuid::from_u128(
        0x2000 + of * 100 + u128::try_from(index).unwrap(),
    ))
}

fn keep(days: i64) -> KeepDays {
    KeepDays::new(days).unwrap()
}

fn signed() -> What {
    What::Signed {
        by: label("feeding lead"),
    }
}

fn receipt_taken() -> What {
    What::ReceiptTaken {
        receipt: "1234567890".to_owned(),
    }
}

fn tell(store: &Store, id: VisitId, at_ms: i64, what: What) {
    let journal = store.visit(id).unwrap().unwrap().journal;
    let entry = journal.next(At::START, wall(at_ms), what);
    store.append(id, &entry).unwrap();
}

/// Keeps a pair with its visits, each with a gist.
fn make(store: &Store, of: u128, made: &[Made]) {
    store.save_pair(&pair(of)).unwrap();
    for (index, made) in made.iter().enumerate() {
        let id = id_of(of, index);
        let visit = Visit {
            id,
            replaces: made.amends.map(|amends| id_of(of, amends)),
            ..visit(0, of, made.began_ms)
        };
        store.begin_visit(&visit).unwrap();
        let steps = [
            (Told, What::Suck),
            (Signed, signed()),
            (Receipted, receipt_taken()),
        ];
        for ((state, what), at_ms) in steps.into_iter().zip(made.told_ms) {
            if state <= made.state {
                tell(store, id, at_ms, what);
            }
        }
        store.keep_gists(&[(id, 0, "{}".to_owned())]).unwrap();
    }
}

/// Every row of some pairs as the file has it.
fn rows(path: &Path, pairs: &[u128]) -> Vec<(&'static str, Vec<Value>)> {
    let connection = Connection::open(path).unwrap();
    let mut rows = Vec::new();
    for of in pairs {
        for (table, which) in [
            ("pair", "id = ?1"),
            ("visit", "pair = ?1"),
            (
                "entry",
                "visit IN (SELECT number FROM visit WHERE pair = ?1)",
            ),
            (
                "gist",
                "visit IN (SELECT number FROM visit WHERE pair = ?1)",
            ),
        ] {
            let sql = format!("SELECT * FROM {table} WHERE {which}");
            let mut statement = connection.prepare(&sql).unwrap();
            let columns = statement.column_count();
            let mut found = statement.query([pair(*of).id.uuid().as_bytes()]).unwrap();
            while let Some(row) = found.next().unwrap() {
                let row = (0..columns)
                    .map(|column| row.get(column).unwrap())
                    .collect();
                rows.push((table, row));
            }
        }
    }
    rows
}

fn pairs_kept(store: &Store) -> Vec<PairId> {
    store.pairs().unwrap().iter().map(|pair| pair.id).collect()
}

#[test]
fn nothing_leaves_before_its_receipt_however_old() {
    for made in [
        vec![Made::to(Begun)],
        vec![Made::to(Told)],
        vec![Made::to(Signed)],
        vec![Made::to(Signed), Made::to(Signed).amending(0)],
        vec![Made::to(Signed), Made::to(Told).amending(0)],
        vec![Made::to(Receipted), Made::to(Signed).amending(0)],
        vec![Made::to(Receipted), Made::to(Begun).amending(0)],
        vec![Made::to(Receipted), Made::to(Signed)],
        vec![Made::to(Signed), Made::to(Receipted)],
    ] {
        let store = Store::in_memory().unwrap();
        make(&store, 1, &made);
        assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 0);
        let heads = store.visits_of(pair(1).id).unwrap();
        assert_eq!(heads.len(), made.len(), "{made:?}");
    }
}

#[test]
fn one_unsigned_visit_keeps_the_whole_pair_until_it_has_its_receipt_too() {
    for begun in 0..3 {
        let store = Store::in_memory().unwrap();
        let mut made = vec![Made::to(Receipted); 3];
        made[begun] = Made::to(Begun);
        make(&store, 1, &made);
        let now = wall(MUCH_LATER_MS);
        assert_eq!(store.let_leave(now, keep(1)).unwrap(), 0);
        assert_eq!(store.visits_of(pair(1).id).unwrap().len(), 3);

        tell(&store, id_of(1, begun), 0, signed());
        assert_eq!(store.let_leave(now, keep(1)).unwrap(), 0);
        tell(&store, id_of(1, begun), 0, receipt_taken());
        assert_eq!(store.let_leave(now, keep(1)).unwrap(), 1);
        assert_eq!(store.pair(pair(1).id).unwrap(), None);
    }
}

#[test]
fn a_pair_leaves_exactly_so_many_days_after_the_latest_entry_of_any_visit() {
    for days in [1, 2, 30, 365] {
        for latest in 0..3 {
            let store = Store::in_memory().unwrap();
            let mut made = vec![Made::to(Receipted); 3];
            made[latest] = Made::to(Receipted).told_all(5_000);
            make(&store, 1, &made);
            let due_ms = 5_000 + days * DAY_MS;
            let left = |now_ms| store.let_leave(wall(now_ms), keep(days)).unwrap();
            assert_eq!(left(due_ms - 1), 0, "{days} days less a millisecond");
            assert_eq!(left(due_ms), 1, "{days} days");
        }
    }
}

#[test]
fn where_the_clock_was_set_back_during_a_visit_its_latest_entry_counts_not_its_last() {
    let store = Store::in_memory().unwrap();
    let set_back = Made {
        told_ms: [DAY_MS, 0, 0],
        ..Made::to(Receipted)
    };
    make(&store, 1, &[set_back]);
    assert_eq!(store.let_leave(wall(2 * DAY_MS - 1), keep(1)).unwrap(), 0);
    assert_eq!(store.let_leave(wall(2 * DAY_MS), keep(1)).unwrap(), 1);
}

#[test]
fn a_clock_set_back_removes_nothing() {
    let store = Store::in_memory().unwrap();
    make(&store, 1, &[Made::to(Receipted)]);
    let earliest = WallTime::new(0, 0).unwrap();
    for now in [wall(-1), wall(0), wall(-MUCH_LATER_MS / 4), earliest] {
        assert_eq!(store.let_leave(now, keep(1)).unwrap(), 0);
    }
    assert_eq!(pairs_kept(&store), [pair(1).id]);
}

#[test]
fn a_chain_of_amendments_leaves_with_a_receipt_on_the_newest_alone() {
    for amendments in 1..6 {
        let mut made = vec![Made::to(Signed)];
        for amended in 0..amendments {
            made.push(Made::to(Signed).amending(amended));
        }
        for receipted in 0..=amendments {
            let store = Store::in_memory().unwrap();
            let mut made = made.clone();
            made[receipted].state = Receipted;
            make(&store, 1, &made);
            let left = store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap();
            assert_eq!(left, u32::from(receipted == amendments), "{made:?}");
        }
    }
}

#[test]
fn a_pair_without_visits_stays() {
    let store = Store::in_memory().unwrap();
    store.save_pair(&pair(1)).unwrap();
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 0);
    assert_eq!(store.pair(pair(1).id).unwrap(), Some(pair(1)));
}

#[test]
fn what_amends_a_visit_of_another_pair_keeps_that_pair() {
    let store = Store::in_memory().unwrap();
    make(&store, 1, &[Made::to(Signed)]);
    store.save_pair(&pair(2)).unwrap();
    let stray = Visit {
        replaces: Some(id_of(1, 0)),
        ..visit(1, 2, 0)
    };
    store.begin_visit(&stray).unwrap();
    tell(&store, stray.id, 0, signed());
    tell(&store, stray.id, 0, receipt_taken());
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 1);
    assert_eq!(pairs_kept(&store), [pair(1).id]);
}

#[test]
fn an_amendment_that_another_program_put_before_what_it_amends_keeps_that_pair() {
    let folder = Folder::new("before");
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    make(&store, 1, &[Made::to(Signed)]);
    make(&store, 2, &[Made::to(Receipted)]);
    let stray = visit(1, 1, 0).id;
    let sql = "INSERT INTO visit
        (number, id, pair, began_utc_ms, began_offset_min, specialist, replaces)
        SELECT -7, ?1, pair, began_utc_ms, began_offset_min, specialist, id
        FROM visit WHERE number = 1";
    let other = Connection::open(&path).unwrap();
    assert_eq!(other.execute(sql, [stray.uuid().as_bytes()]), Ok(1));
    tell(&store, stray, 0, signed());
    tell(&store, stray, 0, receipt_taken());
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 1);
    assert_eq!(pairs_kept(&store), [pair(1).id]);
}

#[test]
fn the_days_to_keep_are_1_to_365_and_30_unless_set() {
    for days in [1, 30, 365] {
        assert_eq!(i64::from(keep(days).days()), days);
    }
    for days in [i64::MIN, -1, 0, 366, 65_537, i64::MAX] {
        let refused = KeepDays::new(days);
        let Err(RecordError::OutOfRange {
            given, low, high, ..
        }) = refused
        else {
            panic!("{refused:?}");
        };
        assert_eq!((given, low, high), (days, 1, 365));
    }
    assert_eq!(KeepDays::default(), keep(30));
}

/// A file with pairs in every state: 1 to 3 leave, the others do not.
fn mixed(folder: &Folder) -> std::path::PathBuf {
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    make(&store, 4, &[Made::to(Signed)]);
    make(&store, 1, &[Made::to(Receipted)]);
    make(&store, 5, &[Made::to(Receipted), Made::to(Begun)]);
    let amended = [Made::to(Signed), Made::to(Receipted).amending(0)];
    make(&store, 2, &amended);
    make(&store, 6, &[]);
    make(&store, 7, &[Made::to(Receipted).told_all(MUCH_LATER_MS)]);
    make(&store, 3, &[Made::to(Receipted), Made::to(Receipted)]);
    store.set_setting("language", "de").unwrap();
    store.set_secret("tablet", &[3; 32]).unwrap();
    path
}

const LEAVE: [u128; 3] = [1, 2, 3];
const STAY: [u128; 4] = [4, 5, 6, 7];

#[test]
fn other_pairs_settings_and_keys_are_untouched() {
    let folder = Folder::new("untouched");
    let path = mixed(&folder);
    let before = rows(&path, &STAY);
    let store = Store::open(&path).unwrap();
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap(), 3);
    assert_eq!(rows(&path, &STAY), before);
    assert_eq!(rows(&path, &LEAVE), []);
    assert_eq!(store.setting("language").unwrap().as_deref(), Some("de"));
    assert_eq!(store.secret("tablet").unwrap(), Some(vec![3; 32]));
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap(), 0);
    drop(store);
    assert!(Store::open(&path).is_ok(), "it opens again");
}

#[test]
fn afterwards_list_and_gists_agree_and_a_visit_of_the_pair_begins_anew() {
    let folder = Folder::new("afterwards");
    let path = mixed(&folder);
    let store = Store::open(&path).unwrap();
    store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap();
    let ward = store.ward().unwrap();
    let mut listed: Vec<_> = ward.iter().map(|row| row.pair.id).collect();
    listed.sort();
    assert_eq!(listed, STAY.map(|of| pair(of).id));
    for gist in store.gists().unwrap() {
        let head = store.visits_of(gist.pair).unwrap();
        assert!(head.iter().any(|head| head.id == gist.visit));
    }

    // It takes the number in the file that a visit which left had, and nothing else of it.
    make(&store, 3, &[]);
    let new = visit(9, 3, MUCH_LATER_MS);
    store.begin_visit(&new).unwrap();
    assert_eq!(store.visit(new.id).unwrap(), Some(new.clone()));
    assert_eq!(store.open_visit().unwrap(), Some(new.id));
    let gists = store.gists().unwrap();
    let gist = gists.iter().find(|gist| gist.visit == new.id).unwrap();
    assert_eq!((gist.seq, &gist.body), (0, &None));
}

#[test]
fn what_fails_half_way_takes_nothing() {
    let folder = Folder::new("half-way");
    let path = mixed(&folder);
    let all: Vec<u128> = (1..=7).collect();
    let before = rows(&path, &all);
    let other = Connection::open(&path).unwrap();
    let stop = "CREATE TRIGGER stop BEFORE DELETE ON pair WHEN OLD.bed = 'Bay 2 bed 002'
        BEGIN SELECT RAISE(ABORT, 'stop'); END";
    other.execute_batch(stop).unwrap();
    let store = Store::open(&path).unwrap();
    assert!(matches!(
        store.let_leave(wall(MUCH_LATER_MS), keep(30)),
        Err(StoreError::Refused)
    ));
    assert_eq!(rows(&path, &all), before);
    other.execute_batch("DROP TRIGGER stop").unwrap();
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap(), 3);
}

#[test]
fn the_file_refuses_to_mark_or_lose_what_the_desk_may_not_have() {
    let folder = Folder::new("refuses");
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    make(&store, 1, &[Made::to(Signed)]); // visit 1
    make(&store, 2, &[Made::to(Begun)]); // 2
    let amended = [Made::to(Signed), Made::to(Receipted).amending(0)];
    make(&store, 3, &amended); // 3 and 4
    make(
        &store,
        4,
        &[Made::to(Receipted), Made::to(Told).amending(0)],
    ); // 5 and 6
    make(&store, 5, &[]);
    make(&store, 6, &[Made::to(Receipted)]); // 7
    // 8 has a receipt and is not signed; 9 has no entries and is amended by 10.
    make(&store, 7, &[Made::to(Told)]);
    tell(&store, id_of(7, 0), 0, receipt_taken());
    let amended = [Made::to(Begun), Made::to(Receipted).amending(0)];
    make(&store, 8, &amended);
    drop(store);
    let connection = Connection::open(&path).unwrap();
    let refused = |sql: &str| assert!(connection.execute(sql, []).is_err(), "{sql}");
    let done = |sql: &str| assert_eq!(connection.execute(sql, []), Ok(1), "{sql}");
    let pair_of = |of: u128| format!("id = x'{:032x}'", 0x1000 + of);

    // Whether the other program asks for foreign keys or not.
    for foreign_keys in [true, false] {
        connection
            .pragma_update(None, "foreign_keys", foreign_keys)
            .unwrap();
        for visit in 1..=10 {
            refused(&format!("DELETE FROM visit WHERE number = {visit}"));
        }
        for visit in [1, 3, 4, 5, 6, 7, 8, 10] {
            refused(&format!("DELETE FROM entry WHERE visit = {visit}"));
        }
        for of in 1..=8 {
            refused(&format!("DELETE FROM pair WHERE {}", pair_of(of)));
            refused(&format!("UPDATE pair SET leaves = 1 WHERE {}", pair_of(of)));
        }
        for sql in [
            // No receipt; not signed; the amendment not marked; an open amendment.
            "UPDATE visit SET leaves = 1 WHERE number = 1",
            "UPDATE visit SET leaves = 1 WHERE number = 2",
            "UPDATE visit SET leaves = 1 WHERE number = 3",
            "UPDATE visit SET leaves = 1 WHERE number = 5",
            "UPDATE visit SET leaves = 1 WHERE number = 6",
            "UPDATE visit SET leaves = 1",
            "UPDATE visit SET leaves = 2 WHERE number = 7",
            "UPDATE visit SET leaves = 1 WHERE number = 8",
            // A receipt that nobody took.
            "UPDATE visit SET receipt = 1 WHERE number = 1",
            "UPDATE visit SET signed = 1, receipt = 1, leaves = 1 WHERE number = 2",
            "UPDATE pair SET id = randomblob(16)",
            "INSERT INTO pair (id, bed, initials, birth_utc_ms, birth_offset_min, sex, babies,
                risk_notes, reasons, leaves)
                VALUES (randomblob(16), 'x', 'x', 0, 0, 'female', 1, '[]', '[]', 1)",
            "UPDATE OR REPLACE visit SET number = 1 WHERE number = 7",
            "REPLACE INTO visit SELECT * FROM visit WHERE number = 1",
            "REPLACE INTO visit (number, id, pair, began_utc_ms, began_offset_min, specialist)
                SELECT 1, randomblob(16), pair, 0, 0, 'x' FROM visit WHERE number = 1",
            "INSERT INTO visit (id, pair, began_utc_ms, began_offset_min, specialist, leaves)
                SELECT randomblob(16), pair, 0, 0, 'x', 1 FROM visit WHERE number = 1",
            "INSERT INTO visit (id, pair, began_utc_ms, began_offset_min, specialist, receipt)
                SELECT randomblob(16), pair, 0, 0, 'x', 1 FROM visit WHERE number = 1",
        ] {
            refused(sql);
        }
    }

    // What is marked stays as it is until its pair goes with it, and is not called back.
    done("UPDATE visit SET leaves = 1 WHERE number = 4");
    for sql in [
        "UPDATE visit SET leaves = 0 WHERE number = 4",
        "DELETE FROM entry WHERE visit = 4",
        "DELETE FROM visit WHERE number = 4",
        "INSERT INTO entry VALUES (4, 4, 0, 1772334000700, 60, 'shown_as_code', 'null')",
        "UPDATE entry SET kind = 'swallow' WHERE visit = 4",
    ] {
        refused(sql);
    }
    refused(&format!("UPDATE pair SET leaves = 1 WHERE {}", pair_of(3)));
    done("UPDATE visit SET leaves = 1 WHERE number = 3");
    refused("DELETE FROM entry WHERE visit = 4");
    done(&format!("UPDATE pair SET leaves = 1 WHERE {}", pair_of(3)));
    refused(&format!("UPDATE pair SET leaves = 0 WHERE {}", pair_of(3)));
    refused(
        "INSERT INTO visit (id, pair, began_utc_ms, began_offset_min, specialist)
            SELECT randomblob(16), pair, 0, 0, 'x' FROM visit WHERE number = 4",
    );
    for (first, then) in [("entry", "gist"), ("gist", "entry")] {
        let visit = if first == "entry" { 4 } else { 3 };
        for table in [first, then] {
            refused(&format!("DELETE FROM visit WHERE number = {visit}"));
            let all = format!("DELETE FROM {table} WHERE visit = {visit}");
            connection.execute(&all, []).unwrap();
        }
        refused(&format!("DELETE FROM pair WHERE {}", pair_of(3)));
        done(&format!("DELETE FROM visit WHERE number = {visit}"));
    }
    done(&format!("DELETE FROM pair WHERE {}", pair_of(3)));

    done("UPDATE visit SET leaves = 1 WHERE number = 10");
    done("UPDATE visit SET signed = 1 WHERE number = 9");
    done("UPDATE visit SET leaves = 1 WHERE number = 9");
    done("DELETE FROM gist WHERE visit = 9");
    refused("DELETE FROM visit WHERE number = 9");
}

#[test]
fn a_pair_that_was_marked_and_not_taken_out_leaves_like_any_other() {
    let folder = Folder::new("marked");
    let path = mixed(&folder);
    let connection = Connection::open(&path).unwrap();
    let mark = "UPDATE visit SET leaves = 1 WHERE number = 2";
    assert_eq!(connection.execute(mark, []), Ok(1));
    let store = Store::open(&path).unwrap();
    assert_eq!(store.let_leave(wall(DAY_MS - 1), keep(1)).unwrap(), 0);
    assert_eq!(store.let_leave(wall(DAY_MS), keep(1)).unwrap(), 3);
}

#[test]
fn a_visit_from_a_file_of_any_older_version_leaves_too() {
    let folder = Folder::new("older");
    for version in 1..=3 {
        let sql =
            Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/data/store/v{version}.sql"));
        let path = folder.file(&format!("v{version}.sqlite"));
        Connection::open(&path)
            .unwrap()
            .execute_batch(&fs::read_to_string(sql).unwrap())
            .unwrap();
        let store = Store::open(&path).unwrap();
        let id = visit(1, 1, 0).id;
        assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 0);
        tell(&store, id, 0, receipt_taken());
        assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(1)).unwrap(), 1);
        assert_eq!(store.visit(id).unwrap(), None);
        assert_eq!(store.secret("tablet").unwrap(), Some(vec![3; 4]));
    }
}

/// Which of these stand anywhere in the folder's files.
fn found<'a>(folder: &Folder, sought: &'a [Vec<u8>]) -> Vec<&'a [u8]> {
    let names = folder.names();
    let files = names
        .iter()
        .map(|name| fs::read(folder.file(name)).unwrap());
    let files: Vec<_> = files.collect();
    let stands = |it: &&Vec<u8>| {
        let mut files = files.iter();
        files.any(|file| file.windows(it.len()).any(|part| part == **it))
    };
    sought.iter().filter(stands).map(Vec::as_slice).collect()
}

/// The odd of 24 pairs leave; what is known of each stands for itself. Short and long notes come in
/// turn from visits side by side, so that pages are split again and again.
fn long_kept(path: &Path) -> (Vec<Vec<u8>>, Vec<Vec<u8>>) {
    let store = Store::open(path).unwrap();
    let id = |number: u128| {
        Uuid::from_u128(0x9E37_79B9_7F4A_7C15_F39C_C060_5CED_C835_u128.wrapping_mul(number))
    };
    let (mut leave, mut stay) = (Vec::new(), Vec::new());
    for number in 1..=24_u128 {
        let mark = format!("{number:02}-{number:02}");
        let pair = Pair {
            id: PairId::of(id(number)),
            bed: label(&format!("bed {mark}")),
            initials: label(&format!("initials {mark}")),
            ..pair(number)
        };
        store.save_pair(&pair).unwrap();
        let (visit, by) = (VisitId::of(id(100 + number)), label(&format!("by {mark}")));
        let visit = Visit::new(visit, pair.id, wall(0), by);
        store.begin_visit(&visit).unwrap();
        let known = if number % 2 == 1 {
            &mut leave
        } else {
            &mut stay
        };
        for text in ["bed", "initials", "by", "note", "gist"] {
            known.push(format!("{text} {mark}").into_bytes());
        }
        known.push(pair.id.uuid().as_bytes().to_vec());
        known.push(visit.id.uuid().as_bytes().to_vec());
    }
    // Thousands of entries, in one transaction.
    let connection = Connection::open(path).unwrap();
    connection
        .pragma_update(None, "secure_delete", true)
        .unwrap();
    connection.execute_batch("BEGIN").unwrap();
    let append = "INSERT INTO entry SELECT
        ?1, 1 + (SELECT count(*) FROM entry WHERE visit = ?1), 0, ?2, 60, 'note', ?3";
    let keep = "REPLACE INTO gist VALUES (?1, 0, ?2)";
    let mut drawn = 1_u32;
    for _ in 0..2_000 {
        drawn = (drawn * 75 + 74) % 65_537;
        let number = 1 + drawn % 24;
        let length = if (drawn / 100).is_multiple_of(4) {
            560
        } else {
            0
        };
        let mark = format!("{number:02}-{number:02} {}", "x".repeat(length));
        let note = format!("{{\"text\":\"note {mark}\"}}");
        connection
            .execute(append, (number, wall(0).utc_ms(), note))
            .unwrap();
        if (drawn / 100).is_multiple_of(10) {
            let gist = format!("\"gist {mark}\"");
            connection.execute(keep, (number, gist)).unwrap();
        }
    }
    connection.execute_batch("COMMIT").unwrap();
    for number in 1..=24_u128 {
        let visit = VisitId::of(id(100 + number));
        tell(&store, visit, 0, signed());
        if number % 2 == 1 {
            tell(&store, visit, 0, receipt_taken());
        }
    }
    (leave, stay)
}

#[test]
fn what_left_is_not_to_be_found_in_the_file_or_its_log() {
    let folder = Folder::new("traces");
    let path = folder.file("data.sqlite");
    let (leave, stay) = long_kept(&path);
    let store = Store::open(&path).unwrap();
    assert_eq!(found(&folder, &leave).len(), leave.len());
    assert_eq!(store.let_leave(wall(MUCH_LATER_MS), keep(30)).unwrap(), 12);
    for closed in [None, Some(store)] {
        drop(closed);
        assert_eq!(found(&folder, &leave), Vec::<&[u8]>::new());
        assert_eq!(found(&folder, &stay).len(), stay.len());
    }
}

#[test]
fn a_log_that_another_program_reads_is_told_of_and_cut_the_next_time() {
    let folder = Folder::new("held-log");
    let path = folder.file("data.sqlite");
    let (leave, _) = long_kept(&path);
    let store = Store::open(&path).unwrap();
    let reader = Connection::open(&path).unwrap();
    reader
        .execute_batch("BEGIN; SELECT count(*) FROM pair")
        .unwrap();
    let now = wall(MUCH_LATER_MS);
    assert!(matches!(
        store.let_leave(now, keep(30)),
        Err(StoreError::Locked)
    ));
    assert_eq!(store.pairs().unwrap().len(), 12, "they left nonetheless");
    assert_ne!(found(&folder, &leave), Vec::<&[u8]>::new());
    drop(reader);
    assert_eq!(store.let_leave(now, keep(30)).unwrap(), 0);
    assert_eq!(found(&folder, &leave), Vec::<&[u8]>::new());
}

#[test]
fn traces_that_a_killed_process_left_are_gone_after_the_next_time() {
    let folder = Folder::new("cut-short");
    let path = folder.file("data.sqlite");
    let (leave, _) = long_kept(&path);
    let store = Store::open(&path).unwrap();
    // As far as a process comes that is killed right after its commit.
    Connection::open(&path)
        .unwrap()
        .execute_batch(
            "PRAGMA secure_delete = 1;
            BEGIN;
            UPDATE visit SET leaves = 1 WHERE receipt = 1;
            UPDATE pair SET leaves = 1 WHERE id IN (SELECT pair FROM visit WHERE leaves = 1);
            DELETE FROM entry WHERE visit IN (SELECT number FROM visit WHERE leaves = 1);
            DELETE FROM gist WHERE visit IN (SELECT number FROM visit WHERE leaves = 1);
            DELETE FROM visit WHERE leaves = 1;
            DELETE FROM pair WHERE leaves = 1;
            INSERT INTO setting VALUES ('traces', 'left');
            COMMIT;
            PRAGMA wal_checkpoint(TRUNCATE)",
        )
        .unwrap();
    let traces = found(&folder, &leave);
    assert!(!traces.is_empty(), "else nothing need be written anew");
    let now = wall(MUCH_LATER_MS);
    assert_eq!(store.let_leave(now, keep(30)).unwrap(), 0);
    assert_eq!(found(&folder, &leave), Vec::<&[u8]>::new());
}

/// The rule once more, in plain words: whether a pair with these visits is gone when nothing may
/// have been told after `told_last_ms`.
fn leaves(made: &[Made], told_last_ms: i64) -> bool {
    let latest_ms = |made: &Made| match made.state {
        Begun => made.began_ms,
        Told => made.told_ms[0],
        Signed => made.told_ms[0].max(made.told_ms[1]),
        Receipted => made.told_ms.into_iter().max().unwrap(),
    };
    !made.is_empty()
        && (0..made.len()).all(|index| Signed <= made[index].state && is_at_the_desk(made, index))
        && made.iter().all(|made| latest_ms(made) <= told_last_ms)
}

/// Whether it, or what replaces it over any number of amendments, has a receipt.
fn is_at_the_desk(made: &[Made], index: usize) -> bool {
    let mut replacing = (0..made.len()).filter(|later| made[*later].amends == Some(index));
    made[index].state == Receipted || replacing.any(|later| is_at_the_desk(made, later))
}

/// Milliseconds around the time that decides, and far from it.
fn about_ms() -> impl Strategy<Value = i64> {
    prop_oneof![
        12 => -3 * DAY_MS..=0,
        2 => Just(0),
        1 => Just(1_i64),
        1 => 1..3 * DAY_MS,
    ]
}

prop_compose! {
    fn made_visit()(
        state in prop_oneof![1 => Just(Begun), 1 => Just(Told), 5 => Just(Signed), 8 => Just(Receipted)],
        amends in prop::option::weighted(0.6, any::<prop::sample::Index>()),
        began_ms in about_ms(),
        told_ms in [about_ms(), about_ms(), about_ms()],
    ) -> (Made, Option<prop::sample::Index>) {
        (Made { state, amends: None, began_ms, told_ms }, amends)
    }
}

/// A pair's visits, each amending any earlier one or none.
fn made_pair() -> impl Strategy<Value = Vec<Made>> {
    prop::collection::vec(made_visit(), 0..6).prop_map(|visits| {
        let amending = |(index, (made, amends)): (usize, (Made, Option<prop::sample::Index>))| {
            let amends = amends.filter(|_| 0 < index).map(|it| it.index(index));
            Made { amends, ..made }
        };
        visits.into_iter().enumerate().map(amending).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn of_any_pairs_exactly_those_leave_that_the_rule_names(
        pairs in prop::collection::vec(made_pair(), 0..6), days in 1_i64..=365,
    ) {
        let store = Store::in_memory().unwrap();
        for (of, made) in (1..).zip(&pairs) {
            make(&store, of, made);
        }
        let kept = |of: u128| -> (Option<Pair>, Vec<Option<Visit>>) {
            let heads = store.visits_of(pair(of).id).unwrap();
            let visits = heads.iter().map(|head| store.visit(head.id).unwrap());
            (store.pair(pair(of).id).unwrap(), visits.collect())
        };
        let before: Vec<_> = (1..).zip(&pairs).map(|(of, _)| kept(of)).collect();
        let gists = store.gists().unwrap();

        let left = store.let_leave(wall(days * DAY_MS), keep(days)).unwrap();

        let mut gone = Vec::new();
        for ((of, made), before) in (1..).zip(&pairs).zip(&before) {
            if leaves(made, 0) {
                gone.push(pair(of).id);
                prop_assert_eq!(kept(of), (None, vec![]));
            } else {
                prop_assert_eq!(&kept(of), before);
            }
            for index in 0..made.len() {
                let is_kept = store.visit(id_of(of, index)).unwrap().is_some();
                prop_assert!(is_kept || is_at_the_desk(made, index));
            }
        }
        prop_assert_eq!(usize::try_from(left).unwrap(), gone.len());
        let staying = gists.into_iter().filter(|gist| !gone.contains(&gist.pair));
        prop_assert_eq!(store.gists().unwrap(), staying.collect::<Vec<_>>());
    }
}
