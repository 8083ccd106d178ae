//! Random visits from the tablet to the desk: `cargo run --release --no-default-features --example
//! round_trips [VISITS] [SEED]`.
//!
//! Each visit is packed as the tablet does it, without single taps or (one in eight) with them, its
//! codes are offered to a collector in a random order with some twice, and what the desk opens must
//! be what was packed. Ends at the first that is not. Prints how many came back and in how many codes.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/visits.rs"]
mod visits;

use feedside::handover::{
    Collector, DeskKeyPair, Fresh, Offered, TabletKey, TabletPublic, VersionCap, open, pack,
};
use rand::seq::SliceRandom;
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// One visit in so many goes with its taps.
const WITH_TAPS: u64 = 8;

fn main() {
    let mut arguments = std::env::args().skip(1).map(|it| it.parse::<u64>());
    let mut number = |usual| arguments.next().and_then(Result::ok).unwrap_or(usual);
    let (visits, first) = (number(10_000), number(1) << 32);
    let mut codes = 0;
    for seed in first..first + visits {
        let mut dice = ChaCha8Rng::seed_from_u64(seed);
        let tablet = TabletKey::from_random(dice.random());
        let desks = [DeskKeyPair::from_random(dice.random()).unwrap()];
        let mut fresh = [0; 64];
        dice.fill_bytes(&mut fresh);
        let fresh = Fresh::from_random(fresh);
        let kind = visits::Kind {
            note_chars: dice.random_range(0..400),
            minutes: dice.random_range(1..60),
            plan: dice.random_range(0..9),
            ..visits::ORDINARY
        };
        let sent = visits::visit(seed, &kind);
        let sent = sent.for_codes(seed % WITH_TAPS == 0).unwrap();
        let packed = pack(&sent, &tablet, &desks[0].public(), &fresh, VersionCap::V20).unwrap();
        codes += packed.pieces.len();

        let mut scans = packed.pieces.clone();
        scans.extend(packed.pieces.iter().take(2).cloned());
        scans.shuffle(&mut dice);
        let mut collector = Collector::new();
        let sealed = scans.iter().find_map(|scan| match collector.offer(scan) {
            Offered::Complete { sealed, .. } => Some(sealed),
            _ => None,
        });
        let public = tablet.public();
        let known = |_: &_| -> Option<TabletPublic> { Some(public) };
        let opened = open(&sealed.unwrap(), &desks, &known).unwrap();
        assert!(opened.handed == sent, "visit {seed} came back otherwise");
        assert!(
            opened.receipt == packed.receipt,
            "visit {seed}: the receipt"
        );
    }
    println!("{visits} visits came back as they were, in {codes} codes");
}
