//! A second simulator, built otherwise than `practice`, so that the report does not flatter what
//! was made with one. It stands on the same published figures and on no line of the other's code.
//!
//! What differs: phases follow the milk and not the clock (flutter comes a while after the last
//! ejection, and the feed ends where it ends); counts of ejections are Poisson, runs negative
//! binomial, rests and waits gamma; the rate drifts with time and not from run to run; a swallow
//! comes by chance, and the fewer the longer an ejection lasts; hands jitter with long tails and
//! look away as often as it happens. Babies differ more, and come in no kinds.

use feedside::practice::{Hand, PhaseTruth, Simulated, Sucking, Truth, TruthPhase, Way};
use feedside::record::{At, Tap, TapWhat};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, Exp1, Gamma, LogNormal, Poisson, StandardNormal};

use crate::told::{Feed, Told};

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

/// Sucks a minute, before the milk flows, while it flows, and at the sleepy end. Hartmann and
/// others 2011, FASEB J 25 suppl 589.1: 107 and 90; the last by direction only (Drewett and
/// Woolridge 1979, Early Hum Dev 3:315, from memory).
const SUCKS_PER_MIN: [f64; 3] = [107.0, 90.0, 112.0];
/// Sucks a swallow, likewise: 6.7 and 2.5; the last common practice.
const SUCKS_PER_SWALLOW: [f64; 3] = [6.7, 2.5, 8.5];
/// Mean sucks a run: 9.6 before the milk flows (Martens and others 2020); the others common
/// practice, in the direction of Drewett and Woolridge 1979.
const RUN_SUCKS: [f64; 3] = [9.6, 18.0, 5.0];
/// Mean rest, in milliseconds; 8.6 s at a pacifier (from Martens and others 2020), shorter at the
/// breast (common practice).
const REST_MS: [f64; 3] = [6_500.0, 5_500.0, 10_500.0];
/// The shortest rest, in milliseconds (from memory: a pause is a gap of more than 2 s).
const REST_MS_LEAST: f64 = 2_000.0;
/// How babies differ, as standard deviations of logarithms, in all phases alike and in each:
/// rate, sucks a swallow, and lengths of runs and rests. Common practice; sucks a swallow from the
/// ranges of Hartmann and others 2011.
const RATE_SPREAD: (f64, f64) = (0.14, 0.04);
const RATIO_SPREAD: (f64, f64) = (0.35, 0.12);
const RUN_SPREAD: (f64, f64) = (0.25, 0.15);
const REST_SPREAD: (f64, f64) = (0.2, 0.15);
/// The spread of gaps, relative ("low", Hack and others 1985, Early Hum Dev 11:133), and of the
/// slow drift of the rate, with the time it takes, in milliseconds. Common practice.
const GAP_SPREAD: f64 = 0.12;
const DRIFT_SPREAD: f64 = 0.05;
const DRIFT_MS: f64 = 45_000.0;
/// How even runs and rests are: shapes of their gamma distributions ("interburst variation
/// high", Hack and others 1985). Common practice.
const RUN_SHAPE: f64 = 1.8;
const REST_SHAPE: f64 = 1.6;
/// Ejections a feed: 2.5 ± 1.5 (Ramsay and others 2004, Pediatrics 113:361), as a Poisson count.
const EJECTIONS: f64 = 2.5;
/// Mean time to the first, in milliseconds (Kent and others 2003, J Hum Lact 19:179, from memory),
/// and its shape.
const FIRST_MS: f64 = 56_000.0;
const FIRST_SHAPE: f64 = 3.0;
/// An ejection: 45 s to 3.5 min (Gardner and others 2015, BMC Pregnancy Childbirth 15:156), here
/// about a median, in milliseconds.
const EJECTION_MS: (f64, f64) = (45_000.0, 210_000.0);
const EJECTION_MEDIAN_MS: f64 = 100_000.0;
const EJECTION_SPREAD: f64 = 0.45;
/// From one to the next, from the last to flutter, and flutter itself, in milliseconds, and their
/// shape. Common practice; feeds then take 16 minutes, and 5 to 37 (Kent and others 2006,
/// Pediatrics 117:e387, as reported from it).
const BETWEEN_MS: f64 = 130_000.0;
const TO_FLUTTER_MS: f64 = 180_000.0;
const FLUTTER_MS: f64 = 220_000.0;
const WAIT_SHAPE: f64 = 2.0;
const FEED_MS: (f64, f64) = (300_000.0, 2_220_000.0);
/// How much rarer swallows are at the end of an ejection than at its start. Common practice.
const SLACKENS: f64 = 0.7;
/// Times that the hand is called away in a feed, and how long, in milliseconds. Common practice.
const AWAY: f64 = 0.5;
const AWAY_MS: f64 = 30_000.0;
/// How often the baby comes off once, and how long it stays off, in milliseconds.
const COMES_OFF: f64 = 0.2;
const OFF_MS: f64 = 30_000.0;

struct Chance(ChaCha8Rng);

impl Chance {
    fn share(&mut self) -> f64 {
        self.0.random()
    }

    fn normal(&mut self) -> f64 {
        StandardNormal.sample(&mut self.0)
    }

    fn near(&mut self, median: f64, spread: f64) -> f64 {
        LogNormal::new(0.0, spread).map_or(median, |it| median * it.sample(&mut self.0))
    }

    fn gamma(&mut self, mean: f64, shape: f64) -> f64 {
        Gamma::new(shape, mean / shape).map_or(mean, |it| it.sample(&mut self.0))
    }

    fn count(&mut self, mean: f64) -> u32 {
        Poisson::new(mean).map_or(0, |it| it.sample(&mut self.0) as u32)
    }

    /// Numbers of one baby, by phase.
    fn of_baby(&mut self, means: [f64; 3], (alike, each): (f64, f64)) -> [f64; 3] {
        let baby = self.near(1.0, alike);
        means.map(|mean| mean * baby * self.near(1.0, each))
    }
}

const KINDS: [TruthPhase; 3] = [TruthPhase::Quick, TruthPhase::Flow, TruthPhase::Flutter];

/// The phases of the milk: index into [`KINDS`], from, to.
fn milk(chance: &mut Chance) -> Vec<(usize, f64, f64)> {
    let count = chance.count(EJECTIONS);
    let mut phases = Vec::new();
    let mut now = 0.0;
    let mut add = |phase: usize, ms: f64| {
        phases.push((phase, now, now + ms));
        now += ms;
    };
    for order in 0..count {
        let wait = if order == 0 {
            chance.gamma(FIRST_MS, FIRST_SHAPE)
        } else {
            chance.gamma(BETWEEN_MS, WAIT_SHAPE)
        };
        add(0, wait);
        let flow = chance.near(EJECTION_MEDIAN_MS, EJECTION_SPREAD);
        add(1, flow.clamp(EJECTION_MS.0, EJECTION_MS.1));
    }
    add(0, chance.gamma(TO_FLUTTER_MS, WAIT_SHAPE));
    add(2, chance.gamma(FLUTTER_MS, WAIT_SHAPE));
    let short = FEED_MS.0 - phases.last().map_or(0.0, |it| it.2);
    if let Some(last) = phases.last_mut()
        && 0.0 < short
    {
        last.2 += short;
    }
    phases.retain(|it| it.1 < FEED_MS.1);
    phases
}

fn at(ms: f64) -> At {
    At::ms(ms.round().max(0.0) as u64)
}

fn lay(truth: &mut Truth, to_ms: f64, phase: TruthPhase) {
    let from = truth.phases.last().map_or(At::START, |it| it.to);
    let to = at(to_ms);
    if to <= from {
        return;
    }
    match truth.phases.last_mut() {
        Some(last) if last.phase == phase => last.to = to,
        _ => truth.phases.push(PhaseTruth { from, to, phase }),
    }
}

/// What the baby does.
fn baby(own: &[Sucking; 3], chance: &mut Chance) -> (Truth, Vec<(f64, f64)>) {
    let milk = milk(chance);
    let end_ms = milk.last().map_or(FEED_MS.0, |it| it.2).min(FEED_MS.1);
    let phase_at = |ms: f64| {
        let found = milk.iter().find(|it| ms < it.2);
        found.map_or((2, 0.0), |it| (it.0, (ms - it.1) / (it.2 - it.1)))
    };
    let mut off = None;
    if chance.share() < COMES_OFF {
        let from = end_ms * (0.15 + 0.6 * chance.share());
        off = Some((from, from + chance.gamma(OFF_MS, 3.0)));
    }
    let mut truth = Truth {
        ways: (0..3)
            .map(|it| {
                let way = Way {
                    sucks_per_min: own[it].sucks_per_min,
                    sucks_per_swallow: own[it].sucks_per_swallow,
                };
                (KINDS[it], way)
            })
            .collect(),
        ..Truth::default()
    };
    let mut offs = Vec::new();
    let mut drift = chance.normal();
    let mut now = 500.0 + 2_000.0 * chance.share();
    lay(&mut truth, now, TruthPhase::Rest);
    while now < end_ms {
        if let Some((from, to)) = off.filter(|it| it.0 <= now) {
            off = None;
            let back = (now + to - from).min(end_ms);
            offs.push((now, back));
            lay(&mut truth, back, TruthPhase::Off);
            now = (back + 1_000.0).min(end_ms);
            lay(&mut truth, now, TruthPhase::Rest);
            continue;
        }
        let mean = own[phase_at(now).0].run_sucks - 1.0;
        let rate = chance.gamma(mean, RUN_SHAPE);
        let mut left = chance.count(rate.max(1e-9));
        loop {
            let (phase, passed) = phase_at(now);
            let sucking = &own[phase];
            let slackens = if phase == 1 {
                1.0 + (1.0 - SLACKENS) * (1.0 - 2.0 * passed)
            } else {
                1.0
            };
            let swallow = chance.share() < slackens / sucking.sucks_per_swallow;
            truth.sucks.push((at(now), swallow));
            if phase == 1 {
                truth.first_flow.get_or_insert(at(now));
            }
            let gap = chance
                .near(60_000.0 / sucking.sucks_per_min, GAP_SPREAD)
                .max(220.0)
                * (DRIFT_SPREAD * drift).exp();
            if left == 0 || end_ms <= now + gap + 1.0 {
                lay(&mut truth, now.round() + 1.0, KINDS[phase]);
                break;
            }
            left -= 1;
            now += gap;
            // A phase ends where the next one's first suck is.
            let (then, _) = phase_at(now);
            if then != phase {
                lay(&mut truth, now, KINDS[phase]);
            }
            drifts(&mut drift, gap, chance);
        }
        let rest_ms = own[phase_at(now).0].rest_ms;
        let rest = REST_MS_LEAST + chance.gamma(rest_ms - REST_MS_LEAST, REST_SHAPE);
        drifts(&mut drift, rest, chance);
        now = (now + rest).min(end_ms).max(now.round() + 1.0);
        lay(&mut truth, now, TruthPhase::Rest);
    }
    (truth, offs)
}

fn drifts(drift: &mut f64, ms: f64, chance: &mut Chance) {
    let kept = (-ms / DRIFT_MS).exp();
    *drift = *drift * kept + chance.normal() * (1.0 - kept * kept).sqrt();
}

/// What the hand taps.
fn taps(truth: &Truth, offs: &[(f64, f64)], hand: Hand, chance: &mut Chance) -> Vec<Tap> {
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
        // Long tails: a difference of two exponentials, of the same standard deviation.
        let tails: f64 = Exp1.sample(&mut chance.0);
        let other: f64 = Exp1.sample(&mut chance.0);
        let ms = suck.as_ms() as f64 + hand.jitter_ms * (tails - other) / 2.0_f64.sqrt();
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

/// One feed by a hand, and what an informed pass is told of it.
pub fn feed(hand: Hand, seed: u64) -> Feed {
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed ^ 0x5eed_0002));
    let rate = chance.of_baby(SUCKS_PER_MIN, RATE_SPREAD);
    let ratio = chance.of_baby(SUCKS_PER_SWALLOW, RATIO_SPREAD);
    let runs = chance.of_baby(RUN_SUCKS, RUN_SPREAD);
    let rests = chance.of_baby(REST_MS, REST_SPREAD);
    let own: [Sucking; 3] = std::array::from_fn(|it| Sucking {
        sucks_per_min: rate[it],
        sucks_per_swallow: ratio[it].max(1.3),
        run_sucks: runs[it].max(2.0),
        rest_ms: rests[it].max(3_000.0),
    });
    let (truth, offs) = baby(&own, &mut chance);
    let taps = taps(&truth, &offs, hand, &mut chance);
    // A gamma's spread as that of a logarithm, near enough, and its median beside its mean.
    let rest_spread = (1.0 + 1.0 / REST_SHAPE).ln().sqrt();
    let told = Told {
        own: own.map(|it| Sucking {
            rest_ms: it.rest_ms * 0.83,
            ..it
        }),
        hand,
        gap_spread: GAP_SPREAD,
        rate_spread: DRIFT_SPREAD,
        rest_spread,
        first_ms: FIRST_MS,
        flow_ms: 110_000.0,
        between_ms: f64::midpoint(BETWEEN_MS, TO_FLUTTER_MS),
        none: (-EJECTIONS).exp(),
        again: 1.0 - 1.0 / (1.0 + EJECTIONS),
        flutter_ms: (f64::INFINITY, 1.0),
    };
    Feed {
        simulated: Simulated { taps, truth },
        told,
    }
}
