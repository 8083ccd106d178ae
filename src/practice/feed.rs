//! Draws what the baby does: when the milk flows, then run after run, suck after suck.
//!
//! 1. Ejections are placed in the feed; flutter takes its last part.
//! 2. Runs and rests follow each other; a run has the phase that its time falls in, and changes
//!    with it.
//! 3. In each run sucks follow at the baby's own rate, and swallows with some of them: in flow at
//!    fairly regular counts of sucks, else by chance.

use rand::{Rng, RngExt};
use rand_distr::{Distribution, LogNormal, Normal, Poisson};

use super::baby::{
    FIRST_EJECTION_SPREAD, GAP_SPREAD, LATCH_MS, OFF_MS, PHASE_SPREAD, Profile, RATE_SPREAD,
    RATIO_SPREAD, REST_LENGTHENS, REST_MS_LEAST, REST_SPREAD, RUN_SPREAD, Sucking, USUAL_FEED_MS,
};
use super::truth::{PhaseTruth, Truth, TruthPhase};
use crate::record::At;

/// The shortest gap between two sucks, in milliseconds: a jaw goes no faster.
const GAP_MS_LEAST: f64 = 200.0;
/// The least time between two ejections, in milliseconds.
const BETWEEN_EJECTIONS_MS: f64 = 15_000.0;

/// A value near `median`, always positive.
fn near<R: Rng>(median: f64, spread: f64, random: &mut R) -> f64 {
    LogNormal::new(0.0, spread).map_or(median, |it| median * it.sample(random))
}

/// A value between two.
fn between<R: Rng>((low, high): (f64, f64), random: &mut R) -> f64 {
    low + (high - low) * random.random::<f64>()
}

/// One baby's own way, drawn about its kind's.
struct Own {
    quick: Sucking,
    flow: Sucking,
    flutter: Sucking,
}

impl Own {
    fn of<R: Rng>(profile: &Profile, random: &mut R) -> Self {
        let rate = near(1.0, RATE_SPREAD, random);
        let ratio = near(1.0, RATIO_SPREAD, random);
        let mut vary = |it: &Sucking| Sucking {
            sucks_per_min: it.sucks_per_min * rate * near(1.0, PHASE_SPREAD, random),
            sucks_per_swallow: (it.sucks_per_swallow * ratio * near(1.0, PHASE_SPREAD, random))
                .max(1.0),
            ..*it
        };
        Self {
            quick: vary(&profile.quick),
            flow: vary(&profile.flow),
            flutter: vary(&profile.flutter),
        }
    }

    const fn of_phase(&self, phase: TruthPhase) -> &Sucking {
        match phase {
            TruthPhase::Flow => &self.flow,
            TruthPhase::Flutter => &self.flutter,
            TruthPhase::Quick | TruthPhase::Rest | TruthPhase::Off => &self.quick,
        }
    }
}

/// When milk flows and when flutter begins, in milliseconds from latch.
struct Milk {
    ejections: Vec<(f64, f64)>,
    flutter_ms: f64,
}

impl Milk {
    fn of<R: Rng>(profile: &Profile, length_ms: f64, random: &mut R) -> Self {
        let flutter_ms = length_ms * between(profile.flutter_from, random);
        let scale = (length_ms / USUAL_FEED_MS).max(1.0);
        let count = Normal::new(
            profile.ejections * scale,
            profile.ejections_sd * scale.sqrt(),
        )
        .map_or(profile.ejections, |it| it.sample(random))
        .round()
        .max(0.0);
        let mut ejections = Vec::new();
        let mut from = near(profile.first_ejection_ms, FIRST_EJECTION_SPREAD, random);
        let mut left = count;
        while 1.0 <= left && from < flutter_ms {
            let to = (from + between(profile.ejection_ms, random)).min(flutter_ms);
            ejections.push((from, to));
            left -= 1.0;
            // The rest of the ejections share what is left of the time before flutter.
            let spare = ((flutter_ms - to) / left.max(1.0)
                - f64::midpoint(profile.ejection_ms.0, profile.ejection_ms.1))
            .max(BETWEEN_EJECTIONS_MS);
            from = to + spare * between((0.5, 1.5), random);
        }
        Self {
            ejections,
            flutter_ms,
        }
    }

    fn phase(&self, at_ms: f64) -> TruthPhase {
        if self.flutter_ms <= at_ms {
            TruthPhase::Flutter
        } else if self
            .ejections
            .iter()
            .any(|(from, to)| *from <= at_ms && at_ms < *to)
        {
            TruthPhase::Flow
        } else {
            TruthPhase::Quick
        }
    }
}

/// How many sucks from one swallow to the next.
fn sucks_to_swallow<R: Rng>(phase: TruthPhase, ratio: f64, random: &mut R) -> u32 {
    let more = (ratio - 1.0).max(0.0);
    if more < 1e-6 {
        return 1;
    }
    let drawn = if phase == TruthPhase::Flow {
        Poisson::new(more).map_or(more, |it| it.sample(random))
    } else {
        // By chance: the count until a success of probability one over the ratio.
        (random.random::<f64>().max(1e-12).ln() / (1.0 - 1.0 / ratio).ln()).floor()
    };
    1 + drawn.min(1_000.0) as u32
}

/// A feed's truth.
pub(super) fn of<R: Rng>(profile: &Profile, length_ms: f64, random: &mut R) -> Truth {
    let own = Own::of(profile, random);
    let milk = Milk::of(profile, length_ms, random);
    let off = (random.random::<f64>() < profile.comes_off).then(|| {
        let from = length_ms * between((0.2, 0.7), random);
        (from, from + between(OFF_MS, random))
    });
    let mut truth = Truth::default();
    let mut now = between(LATCH_MS, random);
    push(&mut truth, 0.0, now, TruthPhase::Rest);
    let mut off = off;
    while now < length_ms {
        if let Some((from, to)) = off
            && from <= now
        {
            off = None;
            let back = (now + (to - from)).min(length_ms);
            push(&mut truth, now, back, TruthPhase::Off);
            let again = (back + between(LATCH_MS, random)).min(length_ms);
            push(&mut truth, back, again, TruthPhase::Rest);
            now = again;
            continue;
        }
        now = run(&mut truth, &own, &milk, now, length_ms, random);
        let sucking = own.of_phase(milk.phase(now));
        let longer = 1.0 + (REST_LENGTHENS - 1.0) * now / length_ms;
        let rest = near(sucking.rest_ms * longer, REST_SPREAD, random).max(REST_MS_LEAST);
        let until = (now + rest).min(length_ms).max(now);
        push(&mut truth, now, until, TruthPhase::Rest);
        now = until;
    }
    truth
}

/// One run from `from` on; gives the time just after its last suck.
fn run<R: Rng>(
    truth: &mut Truth,
    own: &Own,
    milk: &Milk,
    from: f64,
    length_ms: f64,
    random: &mut R,
) -> f64 {
    let wander = near(1.0, RUN_SPREAD, random);
    let mut at = from;
    let mut phase = milk.phase(at);
    let mut since = at;
    let mut to_swallow = sucks_to_swallow(phase, own.of_phase(phase).sucks_per_swallow, random);
    loop {
        let sucking = own.of_phase(phase);
        to_swallow -= 1;
        let swallow = to_swallow == 0;
        if swallow {
            to_swallow = sucks_to_swallow(phase, sucking.sucks_per_swallow, random);
        }
        truth.sucks.push((At::ms(at.round() as u64), swallow));
        if phase == TruthPhase::Flow && truth.first_flow.is_none() {
            truth.first_flow = Some(At::ms(at.round() as u64));
        }
        let gap = near(
            60_000.0 / sucking.sucks_per_min * wander,
            GAP_SPREAD,
            random,
        )
        .max(GAP_MS_LEAST);
        let ends = random.random::<f64>() < 1.0 / sucking.run_sucks;
        if ends || length_ms <= at + gap + 1.0 {
            let end = at.round() + 1.0;
            push(truth, since, end, phase);
            return end;
        }
        at += gap;
        let now = milk.phase(at);
        if now != phase {
            push(truth, since, at, phase);
            (phase, since) = (now, at);
            to_swallow = sucks_to_swallow(phase, own.of_phase(phase).sucks_per_swallow, random);
        }
    }
}

/// Adds a stretch, joining it to one of the same phase before it.
fn push(truth: &mut Truth, from: f64, to: f64, phase: TruthPhase) {
    let (from, to) = (At::ms(from.round() as u64), At::ms(to.round() as u64));
    if to <= from {
        return;
    }
    match truth.phases.last_mut() {
        Some(last) if last.phase == phase => last.to = to,
        _ => truth.phases.push(PhaseTruth { from, to, phase }),
    }
}
