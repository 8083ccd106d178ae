//! Entries are only ever added, whoever asks: the file itself refuses. Driven past the room,
//! through SQLite as another program would. Source: the project's own rule (the journal is the truth).

use feedside::record::What;
use feedside::store::{Store, StoreError};
use rusqlite::Connection;

use super::{Folder, begun, entry, label, visit};

fn signed_file(folder: &Folder) -> std::path::PathBuf {
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    let id = begun(&store);
    store.append(id, &entry(1, What::Suck)).unwrap();
    let signed = What::Signed {
        by: label("feeding lead"),
    };
    store.append(id, &entry(2, signed)).unwrap();
    path
}

#[test]
fn the_file_refuses_to_change_or_lose_what_was_seen() {
    let folder = Folder::new("append-only");
    let path = signed_file(&folder);
    let connection = Connection::open(path).unwrap();
    for sql in [
        "UPDATE entry SET kind = 'swallow' WHERE seq = 1",
        "DELETE FROM entry WHERE seq = 2",
        "DELETE FROM entry",
        "INSERT OR REPLACE INTO entry VALUES (1, 1, 700, 1772334000700, 60, 'swallow', 'null')",
        "INSERT INTO entry VALUES (1, 3, 700, 1772334000700, 60, 'suck', 'null')",
        "INSERT INTO entry VALUES (1, 4, 700, 1772334000700, 60, 'shown_as_code', 'null')",
        "DELETE FROM visit",
        "UPDATE visit SET specialist = 'someone else'",
        "UPDATE visit SET signed = 0",
        "DELETE FROM pair",
    ] {
        assert!(connection.execute(sql, []).is_err(), "{sql}");
    }
    let kinds: String = connection
        .query_row("SELECT group_concat(kind) FROM entry", [], |row| row.get(0))
        .unwrap();
    assert_eq!(kinds, "suck,signed");
}

#[test]
fn the_file_refuses_values_out_of_range() {
    let folder = Folder::new("out-of-range");
    let path = folder.file("data.sqlite");
    begun(&Store::open(&path).unwrap());
    let connection = Connection::open(path).unwrap();
    for values in [
        "(1, 1, -1, 1772334000700, 60, 'suck', 'null')",
        "(1, 1, 700, -1, 60, 'suck', 'null')",
        "(1, 1, 700, 1772334000700, 900, 'suck', 'null')",
        "(1, 1, 700, 1772334000700, 60, '', 'null')",
        "(1, 1, 700, 1772334000700, 60, 'suck', '{')",
        "(1, 0, 700, 1772334000700, 60, 'suck', 'null')",
        "(1, 1, 'soon', 1772334000700, 60, 'suck', 'null')",
        "(9, 1, 700, 1772334000700, 60, 'suck', 'null')",
    ] {
        let sql = format!("INSERT INTO entry VALUES {values}");
        connection
            .pragma_update(None, "foreign_keys", true)
            .unwrap();
        assert!(connection.execute(&sql, []).is_err(), "{values}");
    }
    let right = "INSERT INTO entry VALUES (1, 1, 700, 1772334000700, 60, 'suck', 'null')";
    assert_eq!(connection.execute(right, []), Ok(1));
}

#[test]
fn an_entry_out_of_turn_is_refused_and_nothing_is_stored() {
    let store = Store::in_memory().unwrap();
    let id = begun(&store);
    store.append(id, &entry(1, What::Suck)).unwrap();
    for wrong in [1, 3] {
        let entry = entry(wrong, What::Suck);
        assert!(matches!(store.append(id, &entry), Err(StoreError::Refused)));
    }
    assert_eq!(store.visit(id).unwrap().unwrap().journal.entries().len(), 1);
}

#[test]
fn a_visit_begun_twice_is_refused() {
    let store = Store::in_memory().unwrap();
    begun(&store);
    assert!(matches!(
        store.begin_visit(&visit(1, 1, 0)),
        Err(StoreError::Refused)
    ));
}

#[test]
fn a_signed_visit_takes_only_codes_and_receipts() {
    let store = Store::in_memory().unwrap();
    let id = begun(&store);
    store
        .append(id, &entry(1, What::Signed { by: label("x") }))
        .unwrap();
    assert!(matches!(
        store.append(id, &entry(2, What::Suck)),
        Err(StoreError::Refused)
    ));
    let shown = What::ShownAsCode {
        transfer: 1,
        pieces: 2,
    };
    store.append(id, &entry(2, shown)).unwrap();
}
