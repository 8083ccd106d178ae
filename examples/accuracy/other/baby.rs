//! What the second simulator's babies do: runs of sucks, some with a swallow, and rests.

use feedside::practice::{PhaseTruth, Sucking, Truth, TruthPhase, Way};
use feedside::record::At;

use super::at;
use super::chance::Chance;
use super::order::{self, FEED_MS};
use super::world::World;

/// The shortest rest, in milliseconds (from memory: a pause is a gap of more than 2 s).
pub const REST_MS_LEAST: f64 = 2_000.0;
/// How often the baby comes off once, and how long it stays off, in milliseconds.
const COMES_OFF: f64 = 0.2;
const OFF_MS: f64 = 30_000.0;

const KINDS: [TruthPhase; 3] = [TruthPhase::Quick, TruthPhase::Flow, TruthPhase::Flutter];

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
pub fn baby(world: &World, own: &[Sucking; 3], chance: &mut Chance) -> (Truth, Vec<(f64, f64)>) {
    let milk = order::phases(world, chance);
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
        let rate = chance.gamma(mean, world.run_shape);
        let mut left = chance.count(rate.max(1e-9));
        loop {
            let (phase, passed) = phase_at(now);
            let sucking = &own[phase];
            let slackens = if phase == 1 {
                1.0 + (1.0 - world.slackens) * (1.0 - 2.0 * passed)
            } else {
                1.0
            };
            let swallow = chance.share() < slackens / sucking.sucks_per_swallow;
            truth.sucks.push((at(now), swallow));
            if phase == 1 {
                truth.first_flow.get_or_insert(at(now));
            }
            let gap = chance
                .near(60_000.0 / sucking.sucks_per_min, world.gap_spread[phase])
                .max(220.0)
                * (world.drift_spread * drift).exp();
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
            drifts(&mut drift, gap, world.drift_ms, chance);
        }
        let rest_ms = own[phase_at(now).0].rest_ms;
        let rest = REST_MS_LEAST + chance.gamma(rest_ms - REST_MS_LEAST, world.rest_shape);
        drifts(&mut drift, rest, world.drift_ms, chance);
        now = (now + rest).min(end_ms).max(now.round() + 1.0);
        lay(&mut truth, now, TruthPhase::Rest);
    }
    (truth, offs)
}

fn drifts(drift: &mut f64, ms: f64, drift_ms: f64, chance: &mut Chance) {
    let kept = (-ms / drift_ms).exp();
    *drift = *drift * kept + chance.normal() * (1.0 - kept * kept).sqrt();
}
