//! Benches of the room `rhythm`: one push, looking back over a feed of 6,000 taps, and the memory
//! of a feed of three hours.
//!
//! Beside the times stand "max alloc", the most memory held at once, and "alloc" and "grow", all
//! that was asked for, each as a number of pieces and as bytes.

use divan::counter::ItemsCount;
use divan::{AllocProfiler, Bencher, black_box};
use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{At, BoundaryMoved, SuckPhase, Tap};
use feedside::rhythm::Rhythm;

#[global_allocator]
static MEMORY: AllocProfiler = AllocProfiler::system();

fn main() {
    divan::main();
}

/// All taps of a simulated feed of three hours that misses none.
fn three_hours() -> Vec<Tap> {
    simulate(Baby::Established, HandLevel::Perfect.hand(), 1, 180).taps
}

/// The first 6,000 taps of a long simulated feed.
fn taps() -> Vec<Tap> {
    let mut taps = simulate(Baby::Established, HandLevel::Usual.hand(), 1, 180).taps;
    taps.truncate(6_000);
    taps
}

fn fed(taps: &[Tap]) -> Rhythm {
    let mut rhythm = Rhythm::new();
    for tap in taps {
        rhythm.push(*tap);
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
    let rhythm = fed(&taps());
    let last = rhythm.taps().last().map_or(At::START, |tap| tap.at);
    bencher.bench_local(|| rhythm.live(black_box(last.plus_ms(700))));
}

/// The last two minutes looked back over alone, as the strip does.
#[divan::bench]
fn recent_2_minutes(bencher: Bencher) {
    let rhythm = fed(&taps());
    let last_ms = rhythm.taps().last().map_or(0, |tap| tap.at.as_ms());
    let from = At::ms(last_ms - 120_000);
    bencher.bench_local(|| black_box(&rhythm).recent(from));
}

/// Looking back over so many taps: the most that are looked back over with the most readings, with
/// fewer, and a long feed.
#[divan::bench(args = [1_000, 1_800, 3_000, 6_000])]
fn so_far(bencher: Bencher, count: usize) {
    let rhythm = fed(&taps()[..count]);
    bencher.bench_local(|| black_box(&rhythm).so_far());
}

/// The memory of all pushes of a feed of three hours; that of one is a 10,000th.
#[divan::bench]
fn push_3_hours(bencher: Bencher) {
    let taps = three_hours();
    bencher
        .counter(ItemsCount::new(taps.len()))
        .bench_local(|| fed(black_box(&taps)));
}

/// The memory of looking back over a feed of three hours, beside that of the feed itself.
#[divan::bench]
fn so_far_3_hours(bencher: Bencher) {
    let rhythm = fed(&three_hours());
    bencher.bench_local(|| black_box(&rhythm).so_far());
}

/// The memory of both: a feed of three hours, pushed and looked back over, where the specialist
/// moved a boundary, so that what was computed is kept as well.
#[divan::bench]
fn push_and_so_far_3_hours(bencher: Bencher) {
    let taps = three_hours();
    let moved = BoundaryMoved {
        was: At::ms(600_000),
        now: At::ms(630_000),
        before: SuckPhase::Quick,
        after: SuckPhase::Flow,
    };
    bencher.bench_local(|| {
        let mut rhythm = fed(black_box(&taps));
        rhythm.note_boundary(moved);
        rhythm.so_far()
    });
}
