//! Several desks on one inbox: nothing is lost, nothing is doubled, each finds what the other kept.
//! Two programs on one file (SQLite), or two connections to one server (PostgreSQL).

use std::collections::HashSet;

use feedside::desk::{Desk, Said};
use feedside::handover::{DeskPublic, Packed};
use feedside::record::Label;

use super::place::{desk_of, schema_of, server};
use super::{handed_of, now, packed_as, tablet};
use crate::store::Folder;
use crate::support;

const RECORDS: u8 = 40;

fn begun(folder: &std::path::Path) -> DeskPublic {
    let mut desk = desk_of(folder);
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    public
}

fn offer(desk: &mut Desk, packed: &Packed) -> Option<(i64, bool)> {
    let said = packed
        .pieces
        .iter()
        .flat_map(|piece| desk.take(piece, now()))
        .last();
    match said {
        Some(Said::Kept(kept)) => Some((kept.head.number, kept.again)),
        _ => None,
    }
}

#[test]
fn four_desks_that_are_given_the_same_records_at_once_keep_each_once() {
    let folder = Folder::new("desk-several");
    let path = folder.file("data");
    let public = begun(&path);
    let handed = handed_of(support::sample_visit());
    let records: Vec<Packed> = (0..RECORDS)
        .map(|seed| packed_as(&handed, &public, seed))
        .collect();
    let answers: Vec<Vec<(i64, bool)>> = std::thread::scope(|scope| {
        let desks: Vec<_> = (0..4)
            .map(|first| {
                let (path, records) = (&path, &records);
                scope.spawn(move || {
                    let mut desk = desk_of(path);
                    (0..records.len())
                        .map(|at| (at + first * 7) % records.len())
                        .map(|at| {
                            // A lock that was held too long is told; the clerk scans again.
                            (0..50)
                                .find_map(|_| offer(&mut desk, &records[at]))
                                .unwrap()
                        })
                        .collect()
                })
            })
            .collect();
        desks.into_iter().map(|it| it.join().unwrap()).collect()
    });
    let news = answers.iter().flatten().filter(|(_, again)| !again).count();
    assert_eq!(news, usize::from(RECORDS), "each was new to one desk alone");
    let numbers: HashSet<i64> = answers
        .iter()
        .flatten()
        .map(|(number, _)| *number)
        .collect();
    assert_eq!(numbers.len(), usize::from(RECORDS));
    let heads = desk_of(&path).inbox().heads().unwrap();
    let kept: HashSet<i64> = heads.iter().map(|head| head.number).collect();
    assert_eq!((heads.len(), kept), (usize::from(RECORDS), numbers));
}

/// Both schemas: the same tables with the same columns in the same order.
#[test]
fn the_server_has_the_tables_and_columns_of_the_file() {
    let Some(server) = server() else {
        eprintln!("PostgreSQL: NOT RUN, no server is named");
        return;
    };
    let folder = Folder::new("desk-schemas");
    let path = folder.file("data");
    drop(desk_of(&path));
    let mut client =
        postgres::Client::connect(&schema_of(&server, &path), postgres::NoTls).unwrap();
    let on_server: Vec<(String, String)> = client
        .query(
            "SELECT table_name::text, column_name::text FROM information_schema.columns \
             WHERE table_schema = current_schema() AND table_name <> 'feedside_inbox' \
             ORDER BY table_name, ordinal_position",
            &[],
        )
        .unwrap()
        .iter()
        .map(|row| (row.get(0), row.get(1)))
        .collect();
    drop(Desk::open(&path).unwrap());
    let file = rusqlite::Connection::open(path.join("desk.sqlite")).unwrap();
    let mut statement = file
        .prepare(
            "SELECT m.name, c.name FROM sqlite_schema AS m, pragma_table_info(m.name) AS c \
             WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite%' ORDER BY m.name, c.cid",
        )
        .unwrap();
    let in_file: Vec<(String, String)> = statement
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .map(Result::unwrap)
        .collect();
    assert_eq!(on_server, in_file);
}
