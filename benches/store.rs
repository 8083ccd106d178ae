//! Benches of the room `store`: one tap until it is durable, the Ward list of 500 pairs, and one try
//! of a PIN.

use std::path::PathBuf;
use std::sync::atomic::{AtomicU32, Ordering};

use feedside::record::{At, Entry, Label, Pair, PairId, Sex, Visit, VisitId, WallTime, What};
use feedside::store::Store;
use feedside::store::vault::{Cost, Pin, Typed, Vault};
use uuid::Uuid;

fn main() {
    divan::main();
}

fn wall(ms: i64) -> WallTime {
    WallTime::new(1_772_334_000_000 + ms, 0).expect("a time of this century")
}

fn pair(number: u128) -> Pair {
    let label = |text: &str| Label::new(text).expect("a short label");
    Pair {
        id: PairId::of(Uuid::from_u128(number)),
        mother_id: None,
        bed: label(&format!("{number}")),
        initials: label("Q. Z."),
        mother_number: None,
        baby_number: None,
        birth: wall(0),
        sex: Sex::NotStated,
        gestation: None,
        birth_weight: None,
        way_of_birth: None,
        babies: 1,
        risk_notes: vec![],
        reasons: vec![],
        language: None,
    }
}

fn visit(number: u128, pair: PairId) -> Visit {
    let specialist = Label::new("feeding lead").expect("a short label");
    Visit::new(
        VisitId::of(Uuid::from_u128(number)),
        pair,
        wall(0),
        specialist,
    )
}

fn entry(seq: u32, what: What) -> Entry {
    let ms = u64::from(seq) * 600;
    Entry {
        seq,
        at: At::ms(ms),
        wall: wall(i64::from(seq) * 600),
        what,
        newer: None,
    }
}

fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir()
        .join(format!("feedside-bench-{}", std::process::id()))
        .join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).expect("a folder for the bench");
    folder
}

/// A store on a real disk, encrypted as on the tablet.
fn store(name: &str) -> Store {
    let vault = Vault::of(&folder(name), Cost::LEAST).expect("a vault");
    let key = vault.key_without_pin().expect("no damage").expect("no PIN");
    Store::open_locked(vault, &key).expect("a store")
}

/// What a PIN costs, and so each guess of it.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn one_try_of_a_pin(bencher: divan::Bencher) {
    let mut vault = Vault::of(&folder("pin"), Cost::USUAL).expect("a vault");
    let pin = Pin::new("402715").expect("a PIN");
    vault.set_pin(None, &pin, wall(0)).expect("no PIN yet");
    let typed = Typed::read("402715").expect("a PIN");
    bencher.bench_local(|| vault.key(&typed, wall(0)).expect("the PIN"));
}

/// One tap on a real disk, from the call to its return.
#[divan::bench(sample_count = 1_000, sample_size = 1)]
fn one_tap_durable(bencher: divan::Bencher) {
    let store = store("tap");
    let pair = pair(1);
    store.save_pair(&pair).expect("a pair");
    let visit = visit(1, pair.id);
    store.begin_visit(&visit).expect("a visit");
    let seq = AtomicU32::new(1);
    bencher
        .with_inputs(|| entry(seq.fetch_add(1, Ordering::Relaxed), What::SuckSwallow))
        .bench_local_refs(|entry| store.append(visit.id, entry).expect("a tap"));
}

/// The list of 500 pairs, each with four visits of 50 entries.
#[divan::bench]
fn ward_of_500_pairs(bencher: divan::Bencher) {
    let store = store("ward");
    for number in 1..=500 {
        let pair = pair(number);
        store.save_pair(&pair).expect("a pair");
        for round in 0..4 {
            let mut visit = visit(number * 10 + round, pair.id);
            for seq in 1..=49 {
                visit.journal.push(entry(seq, What::Suck)).expect("a tap");
            }
            let due = What::NextLook {
                due: wall(i64::try_from(number).unwrap_or(0) * 60_000),
            };
            visit.journal.push(entry(50, due)).expect("the next look");
            store.begin_visit(&visit).expect("a visit");
        }
    }
    bencher.bench_local(|| store.ward().expect("the ward"));
}
