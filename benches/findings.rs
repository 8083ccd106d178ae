//! Benches of the room `findings`.

#![allow(missing_docs, clippy::unwrap_used)]

use divan::{Bencher, black_box};
use feedside::findings::{POLICY_BUILT_IN, Policy, judge};
use feedside::growth::{of, pair_file};
use feedside::record::{Folded, WallTime};

fn main() {
    divan::main();
}

const PAIR: &str = r#"{
  "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "female", "birth_weight": 3500 },
  "weighings": [
    { "at": "2026-03-02T12:00:00+00:00", "grams": 3360, "step": 5 },
    { "at": "2026-03-04T12:00:00+00:00", "grams": 3120, "step": 5 }
  ],
  "last_day": { "feeds": 6, "wet": 2, "dirty": 2, "stool": "green", "sleepy": true,
                "baby_danger": [], "mother_danger": ["headache"] }
}"#;

#[divan::bench]
fn judging_one_visit(bencher: Bencher<'_, '_>) {
    let now = WallTime::new(1_772_650_000_000, 0).unwrap();
    let file = pair_file::read(PAIR.as_bytes(), now).unwrap();
    let visit = Folded {
        last_day: file.last_day.clone(),
        ..Folded::default()
    };
    let growth = of(&file.pair, &file.weighings, now);
    let policy = Policy::built_in();
    bencher.bench_local(|| judge(&file.pair, black_box(&visit), &[], &growth, &policy, now));
}

#[divan::bench]
fn reading_a_policy() -> String {
    Policy::from_toml(black_box(POLICY_BUILT_IN)).unwrap().name
}
