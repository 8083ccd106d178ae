//! Makes the records that the range coder learns before all others, from simulated visits:
//! `cargo run --release --no-default-features --example code_prior > prior.bin`. Their seeds are
//! others than those that sizes are measured on.
//!
//! `src/handover/squeeze/prior.bin` is part of the format. Once a program that writes it is given
//! out, it is never made again: another simulator or another rule would give other bytes, and old
//! records could no longer be read.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/visits.rs"]
mod visits;

use std::io::Write;

use feedside::handover::{Handed, cbor, squeeze, wire};
use feedside::practice::HandLevel;

const SENTENCES: &str = include_str!("../tests/data/handover/prior_sentences.txt");
/// Records without single taps, and before them those with.
const RECORDS: u64 = 60;
const WITH_TAPS: u64 = 8;
/// In each so many records one finding is of a rule that the list of rules does not know.
const NEWER_EACH: u64 = 6;

/// As a finding of a newer rule travels: in full, its id as text.
fn of_a_newer_rule(handed: &mut Handed) {
    if let Some(finding) = handed.findings.last_mut() {
        finding.rule += "-seen";
    }
}

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
        let mut handed = visits::visit(1_000_000 + number, &kind)
            .for_codes(taps)
            .unwrap();
        if number.is_multiple_of(NEWER_EACH) {
            of_a_newer_rule(&mut handed);
        }
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
