//! A process killed, or a power cut, at any moment loses at most the entry being written. Source:
//! SQLite's promise for a write-ahead log with `synchronous=FULL` (sqlite.org/pragma.html#pragma_synchronous),
//! checked here on copies of the file and on a child process that is really killed.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use feedside::record::What;
use feedside::store::Store;
use proptest::prelude::*;

use super::{Folder, begun, entry, visit};

fn copy(from: &Path, to: &Path) {
    for ending in ["", "-wal"] {
        let name = |path: &Path| format!("{}{ending}", path.display());
        fs::copy(name(from), name(to)).unwrap();
    }
}

fn entries(path: &Path) -> usize {
    let store = Store::open(path).unwrap();
    let id = store.open_visit().unwrap().unwrap();
    store.visit(id).unwrap().unwrap().journal.entries().len()
}

#[test]
fn a_copy_taken_between_two_taps_has_every_tap_so_far() {
    let folder = Folder::new("copy");
    let path = folder.file("data.sqlite");
    let store = Store::open(&path).unwrap();
    let id = begun(&store);
    for seq in 1..=60 {
        store.append(id, &entry(seq, What::Suck)).unwrap();
        if seq % 7 == 0 {
            let copied = folder.file(&format!("copy-{seq}.sqlite"));
            copy(&path, &copied);
            assert_eq!(entries(&copied), usize::try_from(seq).unwrap());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 30, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_log_cut_anywhere_gives_the_taps_before_the_cut(cut in 0.0_f64..1.0) {
        let folder = Folder::new("log-cut");
        let path = folder.file("data.sqlite");
        let store = Store::open(&path).unwrap();
        let id = begun(&store);
        let log = folder.file("data.sqlite-wal");
        let before = fs::metadata(&log).unwrap().len();
        let mut ends = Vec::new();
        for seq in 1..=20 {
            store.append(id, &entry(seq, What::Suck)).unwrap();
            ends.push(fs::metadata(&log).unwrap().len());
        }
        let copied = folder.file("copy.sqlite");
        copy(&path, &copied);
        let whole = ends[ends.len() - 1];
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss)]
        let length = before + ((whole - before) as f64 * cut) as u64;
        fs::OpenOptions::new()
            .write(true)
            .open(folder.file("copy.sqlite-wal"))
            .unwrap()
            .set_len(length)
            .unwrap();
        let written = ends.iter().filter(|end| **end <= length).count();
        prop_assert_eq!(entries(&copied), written);
    }
}

const CHILD: &str = "FEEDSIDE_TEST_TAPS_INTO";

/// Not a test of its own: the process that the next test kills.
#[test]
fn child_that_taps_until_it_is_killed() {
    let Ok(path) = std::env::var(CHILD) else {
        return;
    };
    let store = Store::open(Path::new(&path)).unwrap();
    let id = visit(1, 1, 0).id;
    for seq in store.visit(id).unwrap().unwrap().journal.next_seq()..=100_000 {
        store.append(id, &entry(seq, What::SuckSwallow)).unwrap();
        println!("safe {seq}");
    }
}

#[test]
fn every_tap_told_as_safe_is_there_after_the_process_is_killed() {
    let folder = Folder::new("killed");
    let path = folder.file("data.sqlite");
    begun(&Store::open(&path).unwrap());
    for round in 1_usize..=8 {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "--nocapture"])
            .arg("store::killed::child_that_taps_until_it_is_killed")
            .env(CHILD, &path)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let mut safe = 0;
        let mut seen = 0;
        while seen < round * 17 {
            let line = lines.next().unwrap().unwrap();
            // The test harness may write its own words before the first.
            if let Some((_, number)) = line.split_once("safe ") {
                safe = number.parse().unwrap();
                seen += 1;
            }
        }
        child.kill().unwrap();
        child.wait().unwrap();
        // What it told between the last line read here and its end counts too.
        for line in lines.map_while(Result::ok) {
            if let Some(number) = line.strip_prefix("safe ")
                && let Ok(number) = number.parse()
            {
                safe = number;
            }
        }
        let kept = entries(&path);
        assert!(
            safe <= kept && kept <= safe + 1,
            "round {round}: told {safe}, kept {kept}"
        );
    }
}
