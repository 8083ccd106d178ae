//! Benches of the room `growth`.

#![allow(missing_docs, clippy::unwrap_used)]

use divan::{Bencher, black_box};
use feedside::growth::{of, pair_file, z};
use feedside::record::{Grams, Pair, Sex, WallTime, Weighing};

fn main() {
    divan::main();
}

const PAIR: &str = r#"{
  "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "male", "birth_weight": 3500,
            "way_of_birth": "vaginal" },
  "weighings": [
    { "at": "2026-03-02T12:00:00+00:00", "grams": 3360, "step": 5 },
    { "at": "2026-03-04T12:00:00+00:00", "grams": 3220, "step": 5 },
    { "at": "2026-03-06T12:00:00+00:00", "grams": 3300, "step": 5 }
  ]
}"#;

fn now() -> WallTime {
    WallTime::new(1_772_900_000_000, 0).unwrap()
}

fn read() -> (Pair, Vec<(WallTime, Weighing)>) {
    let file = pair_file::read(PAIR.as_bytes(), now()).unwrap();
    (file.pair, file.weighings)
}

#[divan::bench]
fn z_of_one_weight() -> i64 {
    let weight = Grams::new(3220).unwrap();
    z(black_box(Sex::Male), black_box(3), black_box(weight))
        .unwrap()
        .hundredths()
}

#[divan::bench]
fn all_figures_of_one_pair(bencher: Bencher<'_, '_>) {
    let (pair, weighings) = read();
    bencher.bench_local(|| of(black_box(&pair), black_box(&weighings), now()));
}

#[divan::bench]
fn reading_a_pair_file() -> usize {
    let file = pair_file::read(black_box(PAIR.as_bytes()), now()).unwrap();
    file.weighings.len()
}
