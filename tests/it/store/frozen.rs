//! Every version that was ever released still opens, rows intact, and ends in the same schema as a
//! new file. The files in `tests/data/store` are never edited.

use std::fs;
use std::path::Path;

use feedside::record::{At, What};
use feedside::store::Store;
use rusqlite::Connection;

use super::{Folder, begun, pair, visit, wall};

const VERSIONS: u32 = 3;

fn schema(path: &Path) -> Vec<String> {
    let connection = Connection::open(path).unwrap();
    let mut statement = connection
        .prepare("SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema")
        .unwrap();
    let rows = statement
        .query_map([], |row| row.get::<_, String>(0))
        .unwrap();
    let words = |sql: String| sql.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut schema: Vec<String> = rows.map(|row| words(row.unwrap())).collect();
    schema.sort();
    schema
}

#[test]
fn every_released_version_opens_with_its_rows_and_the_newest_schema() {
    let folder = Folder::new("frozen");
    let fresh = folder.file("fresh.sqlite");
    begun(&Store::open(&fresh).unwrap());
    for version in 1..=VERSIONS {
        let sql =
            Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/data/store/v{version}.sql"));
        let path = folder.file(&format!("v{version}.sqlite"));
        let old = Connection::open(&path).unwrap();
        old.execute_batch(&fs::read_to_string(sql).unwrap())
            .unwrap();
        drop(old);

        let store = Store::open(&path).unwrap();
        assert_eq!(store.pair(pair(1).id).unwrap(), Some(pair(1)));
        let kept = store.visit(visit(1, 1, 0).id).unwrap().unwrap();
        assert_eq!(kept.began, wall(0));
        let kinds: Vec<_> = kept
            .journal
            .entries()
            .iter()
            .map(|it| it.what.clone())
            .collect();
        assert_eq!(kinds[0], What::SuckSwallow);
        assert_eq!(kinds[1], What::UnwatchedFrom { from: At::ms(900) });
        assert!(matches!(&kinds[2], What::Unknown { kind, .. } if kind == "latch_photographed"));
        assert!(matches!(kinds[3], What::NextLook { due } if due == wall(10_800_000)));
        assert!(kept.journal.is_signed());
        let row = store.ward().unwrap().remove(0);
        assert_eq!((row.next_look, row.waiting), (Some(wall(10_800_000)), 1));
        assert_eq!(store.setting("language").unwrap().as_deref(), Some("de"));
        assert_eq!(store.secret("tablet").unwrap(), Some(vec![3; 4]));
        let gist = store.gists().unwrap().remove(0);
        assert_eq!((gist.visit, gist.seq), (visit(1, 1, 0).id, 5));
        drop(store);
        assert_eq!(schema(&path), schema(&fresh), "version {version}");
    }
}
