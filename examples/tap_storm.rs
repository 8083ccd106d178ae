//! Throws any taps at the rhythm and looks whether what must hold of every result holds.
//!
//! `cargo run --release --no-default-features --example tap_storm [INPUTS] [SEED]`; the same seed
//! gives the same inputs. Ends with an error that names the input's seed.

use feedside::record::{At, BoundaryMoved, SuckPhase, Tap, TapWhat};
use feedside::rhythm::{Phase, Rhythm, Summary};

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
fn taps(random: &mut Random) -> Vec<Tap> {
    let count = match random.below(64) {
        0 => 200,
        1..8 => 40,
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

/// What must hold of every result; else what does not.
fn wrong(taps: &[Tap], told: &Summary) -> Option<&'static str> {
    let sucks = taps.iter().filter(|it| it.what.is_suck()).count();
    let swallows = taps.iter().filter(|it| it.what.is_swallow()).count();
    let totals: u64 = Phase::ALL.iter().map(|it| told.totals_ms.of(*it)).sum();
    let phase_at = |at: At| {
        let next = told.phases.partition_point(|it| it.from <= at);
        told.phases
            .get(next.checked_sub(1)?)
            .filter(|it| at < it.to)
    };
    let rates = told.rates.iter();
    let mut rates = rates
        .flat_map(|it| [it.sucks_per_min, it.sucks_per_swallow])
        .flatten();
    let checks = [
        (told.sucks as usize == sucks, "sucks are lost"),
        (told.swallows as usize == swallows, "swallows are lost"),
        (
            told.phases.windows(2).all(|it| it[0].to == it[1].from),
            "phases do not tile",
        ),
        (
            told.phases
                .iter()
                .all(|it| it.from < it.to && (0.0..=1.0).contains(&it.probability)),
            "a phase is empty or improbable",
        ),
        (
            taps.iter()
                .filter(|it| it.what.is_suck())
                .all(|it| phase_at(it.at).is_some_and(|it| it.phase.is_sucking())),
            "a suck lies in no sucking phase",
        ),
        (
            told.watched_ms + told.totals_ms.unwatched == totals,
            "time is lost",
        ),
        (
            rates.all(|it| {
                0.0 < it.low && it.low <= it.value && it.value <= it.high && it.high.is_finite()
            }),
            "an interval is upside down",
        ),
        (
            told.runs.iter().map(|it| it.sucks as usize).sum::<usize>() == sucks,
            "a run lost sucks",
        ),
    ];
    checks.iter().find(|it| !it.0).map(|it| it.1)
}

fn main() -> Result<(), String> {
    let mut arguments = std::env::args().skip(1).map(|it| it.parse::<u64>());
    let inputs = arguments.next().and_then(Result::ok).unwrap_or(100_000);
    let seed = arguments.next().and_then(Result::ok).unwrap_or(1);
    for input in 0..inputs {
        let mut random = Random(seed.wrapping_add(input.wrapping_mul(0x2545_f491_4f6c_dd1d)));
        let taps = taps(&mut random);
        let mut rhythm = Rhythm::new();
        for tap in &taps {
            rhythm.push(*tap);
            rhythm.live(tap.at.plus_ms(random.below(5_000)));
        }
        if random.below(4) == 0 {
            let last_ms = taps.last().map_or(0, |it| it.at.as_ms());
            rhythm.note_boundary(boundary(&mut random, last_ms));
        }
        if let Some(wrong) = wrong(&taps, &rhythm.so_far()) {
            return Err(format!("input {input} of seed {seed}: {wrong}"));
        }
        if (input + 1) % 1_000_000 == 0 {
            println!("{} inputs", input + 1);
        }
    }
    println!("{inputs} inputs, nothing wrong");
    Ok(())
}
