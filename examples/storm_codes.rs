//! A storm over everything that reads what a scanner typed: `cargo run --release
//! --no-default-features --example storm_codes [MILLIONS] [SEED]`.
//!
//! Valid texts, pieces, sealed, signed and packed bytes, CBOR and squeezed bytes are changed by a
//! seeded hand (bits, bytes, digits, cuts, doublings, splices, huge lengths; checks put right
//! again so that the change gets past them) and given to the step that reads them. Ends at once at a
//! panic, after more than a second of the processor for one of them, or above 64 MB; prints how many runs each step
//! had, the slowest of them, and the peak of memory.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;

use std::time::{Duration, Instant};

use feedside::handover::{
    Collector, TabletPublic, VersionCap, cbor, coding, deflate, digits, open, pack, pieces, sign,
    squeeze, wire,
};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const SECOND: Duration = Duration::from_secs(1);
const MEMORY_MOST_KB: u64 = 64 * 1024;

/// Of a hundred runs, how many each step gets: the quick steps more.
const STEPS: [(&str, u32); 9] = [
    ("scanned text", 22),
    ("piece", 40),
    ("sealed", 4),
    ("signed", 4),
    ("deflated", 8),
    ("CBOR", 14),
    ("record", 4),
    ("squeezed, short", 3),
    ("squeezed", 1),
];

struct Samples {
    texts: Vec<String>,
    pieces: Vec<Vec<u8>>,
    sealed: Vec<Vec<u8>>,
    signed: Vec<Vec<u8>>,
    deflated: Vec<Vec<u8>>,
    contents: Vec<Vec<u8>>,
    squeezed: Vec<Vec<u8>>,
}

fn samples() -> Samples {
    let (tablet, desk) = (sample::tablet(), sample::desk());
    let mut all = Samples {
        texts: Vec::new(),
        pieces: Vec::new(),
        sealed: Vec::new(),
        signed: Vec::new(),
        deflated: Vec::new(),
        contents: Vec::new(),
        squeezed: Vec::new(),
    };
    for handed in [
        sample::smallest(),
        sample::ordinary(4, false).for_codes(false).unwrap(),
        sample::ordinary(5, true),
    ] {
        let packed = pack(
            &handed,
            &tablet,
            &desk.public(),
            &sample::fresh(3),
            VersionCap::V20,
        );
        let packed = packed.unwrap();
        let content = cbor::to_bytes(&wire::to_wire(&handed).unwrap()).unwrap();
        let item = cbor::from_bytes(&content).unwrap();
        let bytes = coding::pack(&handed).unwrap();
        all.signed
            .push(sign::sign(bytes, &tablet, &desk.public().kid()).unwrap());
        all.pieces.extend(
            pieces::cut(&packed.sealed, 7, 600)
                .unwrap()
                .iter()
                .map(pieces::Piece::to_bytes),
        );
        all.texts.extend(packed.pieces);
        all.sealed.push(packed.sealed);
        all.deflated.push(deflate::deflate(&content).unwrap());
        all.contents.push(content);
        all.squeezed.push(squeeze::squeeze(&item).unwrap());
    }
    all.texts.push(tablet.public().to_code_text());
    all
}

struct Hand(ChaCha8Rng);

impl Hand {
    fn below(&mut self, most: usize) -> usize {
        self.0.random_range(0..most.max(1))
    }

    fn of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        let at = self.below(all.len());
        &all[at]
    }

    /// One to four changes.
    fn change(&mut self, bytes: &mut Vec<u8>, digits: bool) {
        for _ in 0..=self.below(4) {
            let at = self.below(bytes.len());
            let to = at + self.below((bytes.len() - at).min(40));
            match self.below(8) {
                _ if bytes.is_empty() => bytes.push(self.0.next_u32() as u8),
                0 => bytes[at] ^= 1 << self.below(8),
                1 if digits => bytes[at] = b'0' + self.below(10) as u8,
                1 => bytes[at] = self.0.next_u32() as u8,
                2 => bytes.truncate(at),
                3 => drop(bytes.drain(at..to)),
                4 => {
                    let part = bytes[at..to].to_vec();
                    let into = self.below(bytes.len());
                    bytes.splice(into..into, part);
                }
                5 => bytes[at] = *self.of(&[0, 1, 0x1b, 0x3b, 0x5b, 0x7f, 0x80, 0x9b, 0xbb, 0xff]),
                6 => bytes.insert(at, self.0.next_u32() as u8),
                _ => {
                    let huge = [0x1b, 0, 0, 0, 0xff, 0xff, 0xff, 0xff, 0xff];
                    bytes.splice(at..(at + 9).min(bytes.len()), huge);
                }
            }
        }
    }
}

fn main() {
    let mut arguments = std::env::args().skip(1);
    let mut number = |usual| {
        arguments
            .next()
            .and_then(|it| it.parse().ok())
            .unwrap_or(usual)
    };
    let (millions, seed): (u64, u64) = (number(100), number(1));
    let samples = samples();
    let mut hand = Hand(ChaCha8Rng::seed_from_u64(seed));
    let (desks, tablet) = ([sample::desk()], sample::tablet().public());
    let known = |_: &_| -> Option<TabletPublic> { Some(tablet) };
    let mut collector = Collector::new();
    let mut runs = [0u64; STEPS.len()];
    let mut slowest = [Duration::ZERO; STEPS.len()];
    let mut taken = [0u64; STEPS.len()];
    let began = Instant::now();
    for run in 0..millions * 1_000_000 {
        let mut place = hand.below(100) as u32;
        let step = STEPS
            .iter()
            .position(|(_, share)| {
                let here = place < *share;
                place = place.wrapping_sub(*share);
                here
            })
            .unwrap_or(0);
        let mut bytes = match step {
            0 => hand.of(&samples.texts).clone().into_bytes(),
            1 => hand.of(&samples.pieces).clone(),
            2 => hand.of(&samples.sealed).clone(),
            3 => hand.of(&samples.signed).clone(),
            4 => hand.of(&samples.deflated).clone(),
            5 | 6 => hand.of(&samples.contents).clone(),
            7 => samples.squeezed[0][..samples.squeezed[0].len() / 4].to_vec(),
            _ => hand.of(&samples.squeezed).clone(),
        };
        hand.change(&mut bytes, step == 0);
        if step == 1 && 13 <= bytes.len() && run % 2 == 0 {
            let check = pieces::crc(&[&bytes[..9], &bytes[13..]]);
            bytes[9..13].copy_from_slice(&check.to_be_bytes());
        }
        let mut read = || {
            let started = Instant::now();
            let well = match step {
                0 => {
                    let text = String::from_utf8_lossy(&bytes);
                    collector.offer_all(&text).len() == 1
                }
                1 => {
                    let name = bytes.get(5).copied().unwrap_or(1);
                    if run % 64 == 0 {
                        collector.offer(&digits::wrap(name, &bytes));
                    }
                    pieces::Piece::of_bytes(&bytes, name).is_ok()
                }
                2 => open(&bytes, &desks, &known).is_ok(),
                3 => {
                    let kid = desks[0].public().kid();
                    sign::lengthen(&bytes).is_ok() & sign::verify(&bytes, &known, &kid).is_ok()
                }
                4 => deflate::inflate(&bytes).is_ok(),
                5 => cbor::from_bytes(&bytes).is_ok(),
                6 => cbor::from_bytes(&bytes).is_ok_and(|item| wire::of_wire(item).is_ok()),
                _ => coding::unpack(&[&[coding::SQUEEZED], bytes.as_slice()].concat()).is_ok(),
            };
            (well, started.elapsed())
        };
        let (well, mut took) = read();
        if SECOND < took {
            // On a busy machine another program may have had the second: the processor's own time.
            let before = on_processor();
            read();
            took = on_processor().saturating_sub(before);
        }
        let name = STEPS[step].0;
        assert!(took <= SECOND, "run {run}, {name}: {took:?} for {bytes:?}");
        if run % 1024 == 0 {
            let kb = peak_kb();
            assert!(
                kb <= MEMORY_MOST_KB,
                "{kb} kB, at run {run} or shortly before"
            );
        }
        slowest[step] = slowest[step].max(took);
        runs[step] += 1;
        taken[step] += u64::from(well);
        if (run + 1) % 5_000_000 == 0 {
            told(run + 1, began, &runs, &taken, &slowest);
        }
    }
    told(millions * 1_000_000, began, &runs, &taken, &slowest);
}

fn told(all: u64, began: Instant, runs: &[u64], taken: &[u64], slowest: &[Duration]) {
    println!(
        "{all} runs in {:.0} s, peak {} kB",
        began.elapsed().as_secs_f64(),
        peak_kb()
    );
    for (((name, _), runs), (taken, slowest)) in
        STEPS.iter().zip(runs).zip(taken.iter().zip(slowest))
    {
        println!(
            "  {name}: {runs} runs, {taken} taken, slowest {:.2} ms",
            slowest.as_secs_f64() * 1e3
        );
    }
}

/// How long this thread has had a processor.
fn on_processor() -> Duration {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").unwrap();
    Duration::from_nanos(told.split(' ').next().unwrap().parse().unwrap())
}

fn peak_kb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap();
    let line = status.lines().find(|line| line.starts_with("VmHWM"));
    let kb = line.and_then(|line| line.split_whitespace().nth(1));
    kb.unwrap().parse().unwrap()
}
