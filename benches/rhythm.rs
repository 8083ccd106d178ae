//! Benches of the room `rhythm`: one push, and looking back over a feed of 6,000 taps.

use divan::{Bencher, black_box};
use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{At, Tap};
use feedside::rhythm::Rhythm;

fn main() {
    divan::main();
}

/// The first 6,000 taps of a long simulated feed.
fn taps() -> Vec<Tap> {
    let mut taps = simulate(Baby::Established, HandLevel::Usual.hand(), 1, 180).taps;
    taps.truncate(6_000);
    taps
}

fn fed() -> Rhythm {
    let mut rhythm = Rhythm::new();
    for tap in taps() {
        rhythm.push(tap);
    }
    rhythm
}

/// 1,000 pushes in the middle of a feed: one push is a thousandth.
#[divan::bench]
fn push_1000(bencher: Bencher) {
    let taps = taps();
    let mut rhythm = Rhythm::new();
    for tap in &taps[..5_000] {
        rhythm.push(*tap);
    }
    bencher
        .with_inputs(|| rhythm.clone())
        .bench_local_values(|mut rhythm| {
            for tap in &taps[5_000..] {
                rhythm.push(black_box(*tap));
            }
            rhythm
        });
}

/// What the screen asks for on every frame.
#[divan::bench]
fn live(bencher: Bencher) {
    let rhythm = fed();
    let last = rhythm.taps().last().map_or(At::START, |tap| tap.at);
    bencher.bench_local(|| rhythm.live(black_box(last.plus_ms(700))));
}

/// Looking back over 6,000 taps.
#[divan::bench]
fn so_far_6000(bencher: Bencher) {
    let rhythm = fed();
    bencher.bench_local(|| black_box(&rhythm).so_far());
}
