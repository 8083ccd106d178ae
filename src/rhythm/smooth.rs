//! Looking back: forward and back over all taps, so that every suck is judged by what came before
//! and after it.
//!
//! 1. `suck`: the taps become sucks with the gaps before them.
//! 2. `learn`: the feed's own numbers, in one reading or several.
//! 3. With the numbers of each reading every suck is judged; the readings are weighed together, and
//!    each suck gets its most probable phase: that makes the fewest errors.

use super::block::Parts;
use super::chain::{self, Chain, STAGES, Stages, Steps};
use super::evidence::{self, GapFit, Spans};
use super::learn::{self, Numbers, Reading};
use super::live::{index, most, phase};
use super::own::Own;
use super::parameter::{PHASES, REST_MS_CEILING, SURE};
use super::pass::{self, Hidden};
use super::suck::{Suck, Sucks};
use super::summary::{Computed, Phase, PhaseRates, Summary};
use super::watch::Before;
use super::{boundary, doubt, rate, tile};
use crate::record::{At, BoundaryMoved, Tap};

/// Width of a class of gaps for which the fit is worked out once, in milliseconds.
const CLASS_MS: u64 = 10;
const CLASSES: usize = (REST_MS_CEILING / CLASS_MS) as usize + 1;

/// What depends on a gap within a run alone: how it fits each phase, and the time it takes.
struct Gaps {
    /// Of the classes that gaps are of.
    fits: Vec<[GapFit; PHASES]>,
    /// How well these fit, not as logarithms.
    weights: Vec<[f64; PHASES]>,
    seen: Vec<bool>,
    steps: Vec<Steps>,
    rest_ms: u64,
}

impl Gaps {
    fn new(sucks: &[Suck], rest_ms: u64) -> Self {
        let classes = ((rest_ms / CLASS_MS) as usize + 1).min(CLASSES);
        let mut gaps = Self {
            fits: vec![[GapFit::default(); PHASES]; classes],
            weights: vec![[0.0; PHASES]; classes],
            seen: vec![false; classes],
            steps: (0..classes).map(|it| Steps::of(middle_ms(it))).collect(),
            rest_ms,
        };
        for suck in sucks {
            if let Some(class) = gaps.class(suck.before) {
                gaps.seen[class] = true;
            }
        }
        gaps
    }

    fn fit(&mut self, own: &Own) {
        let classes = self.fits.iter_mut().enumerate().zip(&self.seen);
        for ((class, fits), _) in classes.filter(|it| *it.1) {
            *fits = std::array::from_fn(|phase| evidence::gap(own, phase, middle_ms(class)));
            self.weights[class] = fits.map(|it| it.ln.exp());
        }
    }

    /// The class of a gap within a run; `None` for anything else.
    fn class(&self, before: Before) -> Option<usize> {
        match before {
            Before::Gap(ms) if ms <= self.rest_ms => {
                Some(((ms / CLASS_MS) as usize).min(self.fits.len() - 1))
            }
            _ => None,
        }
    }
}

/// The middle of a class of gaps.
fn middle_ms(class: usize) -> f64 {
    (class as u64 * CLASS_MS + CLASS_MS / 2) as f64
}

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

/// Sucks as a row of items with hidden stages, given the feed's numbers.
struct Judging<'a> {
    sucks: &'a [Suck],
    own: &'a Own,
    gaps: &'a Gaps,
    parts: &'a Parts,
    no_rest: [f64; PHASES],
    swallows: [Stages; 3],
}

impl Judging<'_> {
    /// The chain that leads to a suck.
    fn chain(&self, suck: &Suck) -> &'static Chain {
        Chain::of(self.parts.at(suck.at), self.own.sleep)
    }
}

impl Hidden<STAGES> for Judging<'_> {
    fn count(&self) -> usize {
        self.sucks.len()
    }

    fn start(&self) -> Stages {
        chain::START
    }

    fn forward(&self, to: usize, stages: &mut Stages) {
        let suck = &self.sucks[to];
        let chain = self.chain(suck);
        if let Some(class) = self.gaps.class(suck.before) {
            chain::weigh(stages, &self.no_rest);
            chain.forward(stages, &self.gaps.steps[class]);
            return;
        }
        let ms = suck.before.ms().unwrap_or(0) as f64;
        if let Before::Gap(_) = suck.before {
            chain::weigh(stages, &evidence::rest(self.own, ms));
        }
        chain.forward(stages, &Steps::of(ms));
        if let Before::Off(_) = suck.before {
            chain::on_again(stages);
        }
    }

    fn backward(&self, to: usize, weights: &mut Stages) {
        let suck = &self.sucks[to];
        let chain = self.chain(suck);
        if let Some(class) = self.gaps.class(suck.before) {
            chain.backward(weights, &self.gaps.steps[class]);
            chain::weigh(weights, &self.no_rest);
            return;
        }
        let ms = suck.before.ms().unwrap_or(0) as f64;
        if let Before::Off(_) = suck.before {
            chain::on_again_backward(weights);
        }
        chain.backward(weights, &Steps::of(ms));
        if let Before::Gap(_) = suck.before {
            chain::weigh(weights, &evidence::rest(self.own, ms));
        }
    }

    fn best(&self, to: usize, stages: &mut Stages) -> [usize; STAGES] {
        let suck = &self.sucks[to];
        let chain = self.chain(suck);
        let ms = suck.before.ms().unwrap_or(0) as f64;
        match suck.before {
            before if self.gaps.class(before).is_some() => chain::weigh(stages, &self.no_rest),
            Before::Gap(_) => chain::weigh(stages, &evidence::rest(self.own, ms)),
            _ => {}
        }
        chain.best(stages, &Steps::of(ms))
    }

    fn end(&self) -> Stages {
        self.parts.end(self.own.sleep)
    }

    fn fit(&self, at: usize) -> (Stages, f64) {
        let suck = &self.sucks[at];
        let mut stages = self.swallows[usize::from(suck.swallows.min(2))];
        if let Some(class) = self.gaps.class(suck.before) {
            chain::weigh(&mut stages, &self.gaps.weights[class]);
        }
        (stages, 0.0)
    }
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
    let mut gaps = Gaps::new(sucks, rest_ms);
    let parts = Parts::of(feed);
    let mut phases = vec![[0.0; PHASES]; sucks.len()];
    let mut room = Vec::with_capacity(sucks.len());
    // The best one last: its fits stay for what follows.
    for Reading { own, weight } in readings.iter().rev() {
        gaps.fit(own);
        let judging = Judging {
            sucks,
            own,
            gaps: &gaps,
            parts: &parts,
            no_rest: evidence::no_rest(own),
            swallows: [0, 1, 2].map(|count| evidence::swallows(own, count)),
        };
        pass::posterior(&judging, &mut room, |at, stages| {
            for (sum, it) in phases[at].iter_mut().zip(chain::by_phase(stages)) {
                *sum += weight * it;
            }
        });
    }
    // The most of what is held for a feed.
    drop(room);
    // Weights add up to one but for rounding.
    for share in phases.iter_mut().flatten() {
        *share = share.min(1.0);
    }
    let spans = sucks
        .iter()
        .zip(&phases)
        .map(|(suck, phases)| {
            let fits = gaps.class(suck.before).map(|class| &gaps.fits[class]);
            let mut spans = Spans::default();
            for (fit, share) in fits.into_iter().flatten().zip(phases) {
                spans.add(&fit.spans, *share);
            }
            spans
        })
        .collect();
    let off_course = off_course(&course, &phases);
    Smoothed {
        own,
        phases,
        spans,
        off_course,
    }
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
