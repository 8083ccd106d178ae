//! What the hand taps of the second simulator's babies.

use feedside::practice::{Hand, Truth};
use feedside::record::{At, Tap, TapWhat};

use super::at;
use super::chance::Chance;

/// Four hands over the whole of what is to be borne: jitter 30 to 60 ms, missed sucks 0 to 15 %,
/// missed swallows 5 to 20 %, doubled 0 to 1 % (common practice; no published figures of misses).
pub const HANDS: [(&str, Hand); 4] = [
    ("best", hand(30.0, 0.0, 0.05, 0.0)),
    ("good", hand(40.0, 0.05, 0.10, 0.003)),
    ("fair", hand(50.0, 0.10, 0.15, 0.007)),
    ("worst", hand(60.0, 0.15, 0.20, 0.010)),
];

const fn hand(jitter_ms: f64, missed_suck: f64, missed_swallow: f64, doubled: f64) -> Hand {
    Hand {
        jitter_ms,
        missed_suck,
        missed_swallow,
        doubled,
    }
}

/// Times that the hand is called away in a feed, and how long, in milliseconds. Common practice.
const AWAY: f64 = 0.5;
const AWAY_MS: f64 = 30_000.0;

/// What the hand taps.
pub fn taps(truth: &Truth, offs: &[(f64, f64)], hand: Hand, chance: &mut Chance) -> Vec<Tap> {
    let end = truth.phases.last().map_or(At::START, |it| it.to);
    let mut taps = vec![Tap::new(0, TapWhat::On)];
    let mut mark = |ms: f64, what| {
        if at(ms) < end {
            taps.push(Tap { at: at(ms), what });
        }
    };
    for (from, to) in offs {
        mark(*from, TapWhat::Off);
        mark(*to, TapWhat::On);
    }
    let mut away: Vec<(f64, f64)> = Vec::new();
    for _ in 0..chance.count(AWAY) {
        let from = end.as_ms() as f64 * chance.share();
        let to = from + chance.near(AWAY_MS, 0.5);
        let clear = |it: &(f64, f64)| to + 1_000.0 < it.0 || it.1 + 1_000.0 < from;
        if to < end.as_ms() as f64 && away.iter().chain(offs).all(clear) {
            mark(from, TapWhat::Unwatched);
            mark(to, TapWhat::Watched);
            away.push((from, to));
        }
    }
    for (suck, swallow) in &truth.sucks {
        let ms = suck.as_ms() as f64 + hand.jitter_ms * chance.long_tailed();
        let missed = chance.share() < hand.missed_suck;
        let heard = *swallow && hand.missed_swallow <= chance.share();
        let twice = chance.share() < hand.doubled;
        let again_ms = 60.0 + 70.0 * chance.share();
        let tapped = at(ms).min(end);
        let at_ms = tapped.as_ms() as f64;
        if missed || away.iter().any(|it| it.0 <= at_ms && at_ms < it.1) {
            continue;
        }
        let what = if heard {
            TapWhat::SuckSwallow
        } else {
            TapWhat::Suck
        };
        taps.push(Tap { at: tapped, what });
        if twice {
            let at = tapped.plus_ms(again_ms as u64).min(end);
            taps.push(Tap { at, what });
        }
    }
    taps[1..].sort_by_key(|it| it.at);
    taps.push(Tap {
        at: end,
        what: TapWhat::End,
    });
    taps
}
