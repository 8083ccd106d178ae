//! What the hand taps of what the baby does: late or early, not at all, or twice.

use rand::{Rng, RngExt};
use rand_distr::{Distribution, Normal};

use super::hand::Hand;
use super::truth::{Truth, TruthPhase};
use crate::record::{At, Tap, TapWhat};

/// The chance that the hand is called away once.
const LOOKS_AWAY: f64 = 0.35;
/// How long it is away, in milliseconds, shortest and longest.
const AWAY_MS: (u64, u64) = (15_000, 90_000);
/// A doubled tap comes so many milliseconds after the first, soonest and latest.
const DOUBLED_MS: (u64, u64) = (40, 130);
/// The share of noticed swallows that are tapped as a swallow alone, a little after their suck.
const SWALLOW_ALONE: f64 = 0.02;
/// So many milliseconds after it.
const SWALLOW_ALONE_MS: u64 = 220;

/// The taps of one feed, times rising.
pub(super) fn of<R: Rng>(truth: &Truth, hand: Hand, random: &mut R) -> Vec<Tap> {
    let mut taps = Vec::with_capacity(truth.sucks.len() + 8);
    let end = truth.phases.last().map_or(At::START, |last| last.to);
    taps.push(Tap {
        at: At::START,
        what: TapWhat::On,
    });
    for off in truth.phases.iter().filter(|it| it.phase == TruthPhase::Off) {
        taps.push(Tap {
            at: off.from,
            what: TapWhat::Off,
        });
        if off.to < end {
            taps.push(Tap {
                at: off.to,
                what: TapWhat::On,
            });
        }
    }
    let away = away(truth, end, random);
    if let Some((from, to)) = away {
        taps.push(Tap {
            at: from,
            what: TapWhat::Unwatched,
        });
        taps.push(Tap {
            at: to,
            what: TapWhat::Watched,
        });
    }
    for (at, swallow) in &truth.sucks {
        if away.is_some_and(|(from, to)| from <= *at && *at < to) {
            continue;
        }
        suck(&mut taps, *at, *swallow, hand, end, random);
    }
    taps.push(Tap {
        at: end,
        what: TapWhat::End,
    });
    // The end stays last, the latch first: sorting keeps the order of equal times.
    taps[1..].sort_by_key(|tap| (tap.at, tap.what == TapWhat::End));
    taps
}

/// When the hand is away, clear of the times when the baby is off.
fn away<R: Rng>(truth: &Truth, end: At, random: &mut R) -> Option<(At, At)> {
    let (shortest, longest) = AWAY_MS;
    let (chance, start, length) = (
        random.random::<f64>(),
        random.random::<f64>(),
        random.random_range(shortest..longest),
    );
    let from = At::ms((end.as_ms() as f64 * (0.1 + 0.7 * start)) as u64);
    let to = from.plus_ms(length);
    let clear = truth
        .phases
        .iter()
        .filter(|it| it.phase == TruthPhase::Off)
        .all(|off| to < off.from || off.to < from);
    (chance < LOOKS_AWAY && to < end && clear).then_some((from, to))
}

fn suck<R: Rng>(taps: &mut Vec<Tap>, at: At, swallow: bool, hand: Hand, end: At, random: &mut R) {
    // Every chance is drawn whether it is needed or not, so that two hands see the same baby.
    let missed = random.random::<f64>() < hand.missed_suck;
    let heard = swallow && hand.missed_swallow <= random.random::<f64>();
    let alone = random.random::<f64>() < SWALLOW_ALONE && 0.0 < hand.missed_swallow;
    let twice = random.random::<f64>() < hand.doubled;
    let again_ms = random.random_range(DOUBLED_MS.0..DOUBLED_MS.1);
    let shift = Normal::new(0.0, hand.jitter_ms).map_or(0.0, |it| it.sample(random));
    if missed {
        return;
    }
    let tapped = At::ms((at.as_ms() as f64 + shift).round().max(0.0) as u64).min(end);
    let what = if heard && !alone {
        TapWhat::SuckSwallow
    } else {
        TapWhat::Suck
    };
    taps.push(Tap { at: tapped, what });
    if heard && alone {
        taps.push(Tap {
            at: tapped.plus_ms(SWALLOW_ALONE_MS).min(end),
            what: TapWhat::Swallow,
        });
    }
    if twice {
        taps.push(Tap {
            at: tapped.plus_ms(again_ms).min(end),
            what,
        });
    }
}
