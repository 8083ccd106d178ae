//! Throws any taps at the rhythm and looks whether what must hold of every result holds:
//! `cargo run --release --no-default-features --example tap_storm [INPUTS] [SEED] [FIRST]`.
//!
//! The same seed gives the same inputs. Ends at once at a panic, at a result that cannot be, after
//! more than a second of the processor for one input, or above 64 MB; the number of the input is
//! said, and given as FIRST makes it again. Prints the slowest and the peak of memory. Linux only.

#![allow(missing_docs, clippy::unwrap_used)]

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::{Duration, Instant};

use feedside::record::{At, BoundaryMoved, SuckPhase, Tap, TapWhat};
use feedside::rhythm::{Live, Phase, PhaseSpan, Rate, Rhythm, Summary, json, way};

const SECOND: Duration = Duration::from_secs(1);
const MEMORY_MOST_KB: u64 = 64 * 1024;

/// SplitMix64 (Steele, Lea and Flood 2014, OOPSLA): small, and good enough to vary inputs.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut it = self.0;
        it = (it ^ (it >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        it = (it ^ (it >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        it ^ (it >> 31)
    }

    fn below(&mut self, most: u64) -> u64 {
        self.next() % most.max(1)
    }
}

/// A few taps of any kind, mostly sucks, with gaps from none to hours; now and then out of order.
/// Seldom as many as in a long feed.
fn taps(random: &mut Random) -> Vec<Tap> {
    let count = match random.below(8_192) {
        0 => 5_000,
        1..128 => 200,
        128..1_024 => 40,
        _ => 10,
    };
    let mut at = random.below(100_000);
    (0..random.below(count))
        .map(|_| {
            let gap = match random.below(16) {
                0 => random.below(5),
                1 => random.below(200),
                2 => random.below(10_000_000),
                3 | 4 => random.below(12_000),
                _ => 300 + random.below(700),
            };
            at = if random.below(200) == 0 {
                at.saturating_sub(gap)
            } else {
                at + gap
            };
            let what = match random.below(8) {
                0 => TapWhat::ALL[random.below(TapWhat::ALL.len() as u64) as usize],
                1 | 2 => TapWhat::SuckSwallow,
                _ => TapWhat::Suck,
            };
            Tap::new(at, what)
        })
        .collect()
}

fn boundary(random: &mut Random, last_ms: u64) -> BoundaryMoved {
    let mut phase = || SuckPhase::ALL[random.below(3) as usize];
    let (before, after) = (phase(), phase());
    BoundaryMoved {
        was: At::ms(random.below(last_ms + 1)),
        now: At::ms(random.below(last_ms + 1)),
        before,
        after,
    }
}

fn right(rate: &Rate) -> bool {
    0.0 < rate.low && rate.low <= rate.value && rate.value <= rate.high && rate.high.is_finite()
}

fn tile(phases: &[PhaseSpan]) -> bool {
    phases.windows(2).all(|it| it[0].to == it[1].from)
        && phases
            .iter()
            .all(|it| it.from < it.to && (0.0..=1.0).contains(&it.probability))
}

/// What must hold of what is shown, where nothing is later than this; else what does not.
fn wrong_live(live: &Live, latest: At) -> Option<&'static str> {
    let rates = [live.sucks_per_min, live.sucks_per_swallow];
    let checks = [
        (
            (0.0..=1.0).contains(&live.probability),
            "what is shown is improbable",
        ),
        (
            live.since <= latest.plus_ms(1),
            "what is shown is yet to come",
        ),
        (
            live.rest_ms == 0 || live.phase == Phase::Rest,
            "a rest is shown that is none",
        ),
        (
            rates
                .into_iter()
                .flatten()
                .all(|it| 0.0 < it && it.is_finite()),
            "a rate is shown that is none",
        ),
    ];
    checks.iter().find(|it| !it.0).map(|it| it.1)
}

/// What must hold of every result; else what does not.
fn wrong(taps: &[Tap], told: &Summary) -> Option<&'static str> {
    let sucks = taps.iter().filter(|it| it.what.is_suck()).count();
    let swallows = taps.iter().filter(|it| it.what.is_swallow()).count();
    let totals: u64 = Phase::ALL.iter().map(|it| told.totals_ms.of(*it)).sum();
    let mut rates = told
        .rates
        .iter()
        .flat_map(|it| [it.sucks_per_min, it.sucks_per_swallow])
        .flatten();
    let (runs, rests) = (&told.run_statistics, &told.rest_statistics);
    let statistics = [
        runs.median_sucks,
        runs.median_ms,
        runs.spread_ms,
        rests.median_ms,
        rests.spread_ms,
    ];
    let checks = [
        (told.sucks as usize == sucks, "sucks are lost"),
        (told.swallows as usize == swallows, "swallows are lost"),
        (
            tile(&told.phases),
            "phases do not tile, or one is improbable",
        ),
        (
            told.computed.iter().all(|it| tile(&it.phases)),
            "computed phases do not tile, or one is improbable",
        ),
        (
            taps.iter()
                .filter(|it| it.what.is_suck())
                .all(|it| told.span_at(it.at).is_some_and(|it| it.phase.is_sucking())),
            "a suck lies in no sucking phase",
        ),
        (
            told.watched_ms + told.totals_ms.unwatched == totals,
            "time is lost",
        ),
        (rates.all(|it| right(&it)), "an interval is upside down"),
        (
            told.share_sucking
                .is_none_or(|it| (0.0..=1.0).contains(&it)),
            "the share of sucking is none",
        ),
        (
            statistics.iter().all(|it| 0.0 <= *it && it.is_finite()),
            "a statistic is none",
        ),
        (
            told.runs.iter().map(|it| it.sucks as usize).sum::<usize>() == sucks,
            "a run lost sucks",
        ),
    ];
    checks.iter().find(|it| !it.0).map(|it| it.1)
}

/// Everything that is asked of one input; what does not hold.
fn broken(number: u64, seed: u64) -> (usize, Option<&'static str>) {
    let mut random = Random(seed.wrapping_add(number.wrapping_mul(0x2545_f491_4f6c_dd1d)));
    let taps = taps(&mut random);
    let mut rhythm = Rhythm::new();
    for tap in &taps {
        rhythm.push(*tap);
        let now = tap.at.plus_ms(random.below(5_000));
        let latest = rhythm.taps().last().map_or(now, |it| now.max(it.at));
        if let Some(wrong) = wrong_live(&rhythm.live(now), latest) {
            return (taps.len(), Some(wrong));
        }
    }
    let last_ms = taps.last().map_or(0, |it| it.at.as_ms());
    if random.below(4) == 0 {
        rhythm.note_boundary(boundary(&mut random, last_ms));
    }
    let told = rhythm.so_far();
    let mut wrong = wrong(&taps, &told);
    if random.below(8) == 0 {
        let from = At::ms(random.below(last_ms + 1));
        let way = way(&taps);
        let mut rates = [way.sucks_per_min, way.sucks_per_swallow]
            .into_iter()
            .flatten();
        let checks = [
            (tile(&rhythm.recent(from)), "a stretch does not tile"),
            (rates.all(|it| right(&it)), "a way is upside down"),
            (json(&told).is_object(), "the result does not print"),
        ];
        wrong = wrong.or(checks.iter().find(|it| !it.0).map(|it| it.1));
    }
    (taps.len(), wrong)
}

/// What this thread has taken of the processor.
fn processor_time() -> Duration {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap();
    let nanoseconds = told.split_whitespace().next().unwrap();
    Duration::from_nanos(nanoseconds.parse().unwrap())
}

fn peak_kb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let line = status.lines().find(|line| line.starts_with("VmHWM"));
    let kb = line.and_then(|line| line.split_whitespace().nth(1));
    kb.unwrap().parse().unwrap()
}

fn main() -> Result<(), String> {
    let mut arguments = std::env::args().skip(1).map(|it| it.parse::<u64>());
    let mut number = |usual| arguments.next().and_then(Result::ok).unwrap_or(usual);
    let (inputs, seed, first) = (number(100_000), number(1), number(0));
    let (mut slowest, mut longest, mut all_taps) = ((Duration::ZERO, 0), 0, 0);
    let began = Instant::now();
    for number in first..first + inputs {
        let stop = |why: &str| Err(format!("input {number} of seed {seed}: {why}"));
        let started = Instant::now();
        let result = catch_unwind(AssertUnwindSafe(|| broken(number, seed)));
        let mut took = started.elapsed();
        let Ok((taps, broken_by)) = result else {
            return stop("a panic");
        };
        if let Some(broken_by) = broken_by {
            return stop(broken_by);
        }
        // Done again, and only what it took of the processor counts: the machine may be busy.
        if slowest.0 < took {
            let before = processor_time();
            broken(number, seed);
            took = took.min(processor_time() - before);
        }
        slowest = slowest.max((took, number));
        longest = longest.max(taps);
        all_taps += taps;
        if SECOND < took {
            return stop(&format!("{took:?}"));
        }
        if number % 1024 == 0 && MEMORY_MOST_KB < peak_kb() {
            return stop(&format!(
                "{} kB, at this input or shortly before",
                peak_kb()
            ));
        }
        if (number + 1 - first) % 500_000 == 0 {
            println!(
                "{} inputs, slowest {:.1} ms, peak {} kB",
                number + 1 - first,
                slowest.0.as_secs_f64() * 1e3,
                peak_kb()
            );
        }
    }
    println!(
        "{inputs} inputs of seed {seed} in {:.0} s, {all_taps} taps, up to {longest} in one: nothing wrong",
        began.elapsed().as_secs_f64()
    );
    let (took, number) = slowest;
    let (taps, _) = broken(number, seed);
    println!(
        "slowest {:.1} ms, input {number} of {taps} taps; peak {} kB",
        took.as_secs_f64() * 1e3,
        peak_kb()
    );
    Ok(())
}
