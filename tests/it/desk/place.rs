//! Where the inbox of a test lies: in memory or a file, or on a PostgreSQL server, so that the same
//! tests run against both. The server is named by `FEEDSIDE_TEST_POSTGRES` (an address as
//! `--inbox` takes it, of an empty database that the tests may fill); `.ci/run` starts one.

use std::path::Path;
use std::sync::atomic::{AtomicU32, Ordering};

use feedside::desk::Desk;
use feedside::desk::inbox::Address;

/// The server's address, if one is named.
pub(crate) fn server() -> Option<String> {
    std::env::var("FEEDSIDE_TEST_POSTGRES").ok()
}

/// The address of a schema of its own on the server, made if it is not there.
pub(crate) fn schema(server: &str, name: &str) -> String {
    let mut client = postgres::Client::connect(server, postgres::NoTls).unwrap();
    client
        .batch_execute(&format!("CREATE SCHEMA IF NOT EXISTS {name}"))
        .unwrap();
    let sign = if server.contains('?') { '&' } else { '?' };
    format!("{server}{sign}options=-csearch_path%3D{name}")
}

/// The address of the schema that stands for a data folder.
pub(crate) fn schema_of(server: &str, folder: &Path) -> String {
    let sum = crc32fast::hash(folder.as_os_str().as_encoded_bytes());
    schema(server, &format!("of_{}_{sum:08x}", std::process::id()))
}

/// An empty desk.
pub(crate) fn new_desk() -> Desk {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    match server() {
        None => Desk::in_memory().unwrap(),
        Some(server) => {
            let next = NEXT.fetch_add(1, Ordering::Relaxed);
            let url = schema(&server, &format!("new_{}_{next}", std::process::id()));
            Desk::on_server(Address::new(&url, None).unwrap()).unwrap()
        }
    }
}

/// The desk of a data folder; opened twice, it is the same inbox.
pub(crate) fn desk_of(folder: &Path) -> Desk {
    match server() {
        None => Desk::open(folder).unwrap(),
        Some(server) => {
            let url = schema_of(&server, folder);
            Desk::on_server(Address::new(&url, None).unwrap()).unwrap()
        }
    }
}

/// A statement on the bare tables of a data folder, past the program.
pub(crate) fn bare(folder: &Path, sql: &str) -> Result<(), String> {
    match server() {
        None => rusqlite::Connection::open(folder.join("desk.sqlite"))
            .unwrap()
            .execute_batch(sql)
            .map_err(|error| error.to_string()),
        Some(server) => {
            let url = schema_of(&server, folder);
            postgres::Client::connect(&url, postgres::NoTls)
                .unwrap()
                .batch_execute(sql)
                .map_err(|error| error.to_string())
        }
    }
}

#[test]
fn it_is_said_when_no_server_was_tried() {
    if server().is_none() {
        eprintln!(
            "PostgreSQL: NOT RUN. Name a server in FEEDSIDE_TEST_POSTGRES and run `desk::` again."
        );
    }
}
