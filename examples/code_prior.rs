//! Makes the records that the range coder learns before all others, from simulated visits:
//! `cargo run --no-default-features --example code_prior > prior.bin`.
//!
//! It was run once. `src/handover/squeeze/prior.bin` is part of the format since then and is never
//! made again: another simulator or another rule would give other bytes, and old records could no
//! longer be read.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/visits.rs"]
mod visits;

use std::io::Write;

use feedside::handover::{cbor, squeeze, wire};
use feedside::practice::HandLevel;

const SENTENCES: &str = include_str!("../tests/data/handover/prior_sentences.txt");
/// Records without single taps, and before them those with.
const RECORDS: u64 = 40;
const WITH_TAPS: u64 = 4;

fn main() {
    let lines: &'static [&'static str] = Vec::leak(SENTENCES.lines().collect());
    let record = |number: u64, taps: bool| {
        let place = number as usize;
        let kind = visits::Kind {
            note_chars: [0, 60, 120, 200][place % 4],
            minutes: [8, 12, 20, 25, 30][place % 5],
            plan: place % 7,
            words: lines,
            names: &[
                "T. Abara",
                "Ines Vogel",
                "K. O'Dell",
                "B. Nowak",
                "P. Castellan",
            ],
            hands: HandLevel::ALL,
        };
        let handed = visits::visit(1_000_000 + number, &kind)
            .for_codes(taps)
            .unwrap();
        let content = cbor::to_bytes(&wire::to_wire(&handed).unwrap()).unwrap();
        cbor::from_bytes(&content).unwrap()
    };
    let records: Vec<cbor::Item> = (0..WITH_TAPS)
        .map(|number| record(1_000 + number, true))
        .chain((0..RECORDS).map(|number| record(number, false)))
        .collect();
    let prior = squeeze::prior_of(&records).unwrap();
    std::io::stdout().write_all(&prior).unwrap();
}
