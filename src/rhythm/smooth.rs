//! Looking back: forward and back over all taps, so that every suck is judged by what came before
//! and after it.
//!
//! 1. `suck`: the taps become sucks with the gaps before them.
//! 2. `learn`: the feed's own numbers, in one reading or several.
//! 3. With the numbers of each reading every suck is judged; the readings are weighed together, and
//!    each suck gets its most probable phase: that makes the fewest errors.

use super::evidence::{self, Spans};
use super::gap_class::Fine;
use super::judge_suck::Looking;
use super::label::{index, most, phase};
use super::learn::{self, Numbers, Reading};
use super::own::Own;
use super::parameter::{PHASES, SURE};
use super::pass;
use super::suck::{Suck, Sucks};
use super::summary::{Computed, Phase, PhaseRates, Summary};
use super::{boundary, doubt, rate, tile};
use crate::record::{At, BoundaryMoved, Tap};

/// What looking back over the sucks gives.
pub(super) struct Smoothed {
    /// The numbers of the best reading.
    pub(super) own: Own,
    /// The probability of each phase, for each suck.
    pub(super) phases: Vec<[f64; PHASES]>,
    /// What each gap within a run tells of the rate; nothing where there is no such gap.
    pub(super) spans: Vec<Spans>,
    /// The share of sucks whose phase is another on the most probable course of the whole feed.
    pub(super) off_course: f64,
}

impl Smoothed {
    /// How surely a suck is told to be of a phase, 0 to 1: see [`SURE`].
    pub(super) fn sure(&self, suck: usize, phase: usize) -> f64 {
        let mut shares = self.phases[suck].map(|it| it.powf(SURE));
        pass::normalise(&mut shares);
        shares[phase].min(1.0)
    }
}

/// Looks back over the sucks.
fn smooth(feed: &Sucks, numbers: &Numbers, rest_ms: u64) -> Smoothed {
    let (readings, blocks) = learn::readings(feed, numbers, rest_ms);
    let sucks = &feed.sucks;
    let own = readings.first().map_or_else(Own::start, |it| it.own);
    // Now, so that a long feed's blocks are not held beside all that follows.
    let course = blocks.course(&own);
    drop(blocks);
    let looking = Looking::over(feed, rest_ms);
    let mut phases = vec![[0.0; PHASES]; sucks.len()];
    for Reading { own, weight } in &readings {
        looking.judge(own, |at, of_reading| {
            for (sum, it) in phases[at].iter_mut().zip(of_reading) {
                *sum += weight * it;
            }
        });
    }
    // Weights add up to one but for rounding.
    for share in phases.iter_mut().flatten() {
        *share = share.min(1.0);
    }
    let off_course = off_course(&course, &phases);
    Smoothed {
        spans: spans(sucks, &own, &phases, rest_ms),
        own,
        phases,
        off_course,
    }
}

/// What each gap within a run tells of the rate. How such gaps fit is worked out once for a class of them.
fn spans(sucks: &[Suck], own: &Own, phases: &[[f64; PHASES]], rest_ms: u64) -> Vec<Spans> {
    let mut of_class: Vec<Option<[Spans; PHASES]>> = vec![None; Fine::COUNT];
    let of_suck = |(suck, phases): (&Suck, &[f64; PHASES])| {
        let mut spans = Spans::default();
        if let Some(gap_ms) = suck.before.within(rest_ms) {
            let class = Fine::of(gap_ms as f64);
            let of_phases = of_class[class].get_or_insert_with(|| {
                std::array::from_fn(|phase| evidence::gap(own, phase, Fine::middle_ms(class)).spans)
            });
            for (of_phase, share) in of_phases.iter().zip(phases) {
                spans.add(of_phase, *share);
            }
        }
        spans
    };
    sucks.iter().zip(phases).map(of_suck).collect()
}

fn off_course(course: &[u8], phases: &[[f64; PHASES]]) -> f64 {
    let off = course
        .iter()
        .zip(phases)
        .filter(|(on, it)| usize::from(**on) != most(it));
    off.count() as f64 / phases.len().max(1) as f64
}

/// Lets the specialist's boundaries win: her sucks are as she says, with certainty.
fn tell(
    sucks: &[Suck],
    labels: &mut [Phase],
    smoothed: &mut Smoothed,
    boundaries: &[BoundaryMoved],
) {
    let at: Vec<At> = sucks.iter().map(|it| it.at).collect();
    for (suck, decided) in boundary::apply(labels, &at, boundaries)
        .into_iter()
        .enumerate()
    {
        if decided {
            smoothed.phases[suck] = [0.0; PHASES];
            smoothed.phases[suck][index(labels[suck])] = 1.0;
        }
    }
}

/// Everything that is said of a feed.
pub(super) fn summary(
    taps: &[Tap],
    boundaries: &[BoundaryMoved],
    numbers: &Numbers,
    rest_ms: u64,
    unresolved: u32,
    out_of_order: u32,
) -> Summary {
    let sucks = Sucks::of(taps);
    let mut smoothed = smooth(&sucks, numbers, rest_ms);
    let mut labels: Vec<Phase> = smoothed.phases.iter().map(|it| phase(most(it))).collect();
    let computed = (!boundaries.is_empty()).then(|| {
        let computed = tile::of(taps, &sucks, &labels, &smoothed, rest_ms);
        tell(&sucks.sucks, &mut labels, &mut smoothed, boundaries);
        Computed {
            first_flow: computed.first_flow,
            phases: computed.phases,
        }
    });
    let tiles = tile::of(taps, &sucks, &labels, &smoothed, rest_ms);
    let totals = &tiles.totals_ms;
    let on_ms = tiles.watched_ms - totals.off + totals.unwatched;
    let unseen = totals.unwatched as f64 / on_ms.max(1) as f64;
    let rates = rate::of(&sucks.sucks, &smoothed, &labels, rest_ms, unseen);
    let mut summary = Summary {
        sucks: sucks.of_tap.len() as u32,
        swallows: taps.iter().filter(|tap| tap.what.is_swallow()).count() as u32,
        rates,
        computed,
        ..tiles
    };
    summary.doubts = doubt::of(&summary, &sucks, &smoothed, unresolved, out_of_order);
    summary
}

/// How the baby sucks over all of these taps, whatever the phases.
pub(super) fn way(taps: &[Tap], numbers: &Numbers, rest_ms: u64) -> PhaseRates {
    let sucks = Sucks::of(taps);
    rate::way(&sucks.sucks, &smooth(&sucks, numbers, rest_ms), rest_ms)
}
