//! Looking back: forward and back over all taps, so that every suck is judged by what came before
//! and after it.
//!
//! 1. The taps become sucks with the gaps before them; doubled taps join the suck they double, and
//!    swallows alone the suck before them.
//! 2. A few rounds of expectation and maximisation: judge every suck with the feed's own numbers,
//!    then take the numbers anew from what was judged (Dempster, Laird and Rubin 1977, J R Stat
//!    Soc B 39:1, held by the published means as in `own`).
//! 3. Each suck gets its most probable phase.

use super::chain::{self, Stages};
use super::evidence::{self, GapFit};
use super::live::{SWALLOW_LATE_MS, most, phase};
use super::own::{Own, Sums};
use super::parameter::{PHASES, REST_MS_CEILING};
use super::summary::{Phase, Summary};
use super::watch::{Before, Seen, Watch};
use super::{doubt, rate, tile};
use crate::record::Tap;

/// How often the feed's own numbers are taken anew.
const ROUNDS: usize = 3;
/// Width of a class of gaps for which the fit is worked out once, in milliseconds.
const CLASS_MS: u64 = 10;
const CLASSES: usize = (REST_MS_CEILING / CLASS_MS) as usize + 1;

/// One jaw movement as the smoothing sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Suck {
    pub(super) before: Before,
    /// Swallows with it or just after it.
    pub(super) swallows: u8,
}

/// The sucks of a feed, and which of them each tapped suck is.
pub(super) struct Sucks {
    pub(super) sucks: Vec<Suck>,
    /// For each tapped suck, doubled ones too, the index of its suck.
    pub(super) of_tap: Vec<u32>,
}

impl Sucks {
    fn of(taps: &[Tap]) -> Self {
        let mut watch = Watch::default();
        let mut sucks: Vec<Suck> = Vec::with_capacity(taps.len());
        let mut of_tap = Vec::with_capacity(taps.len());
        for tap in taps {
            match watch.see(*tap) {
                Seen::Suck { before, swallow } => {
                    sucks.push(Suck {
                        before,
                        swallows: u8::from(swallow),
                    });
                    of_tap.push(sucks.len() as u32 - 1);
                }
                Seen::Doubled { swallow } => {
                    if let Some(last) = sucks.last_mut() {
                        last.swallows = last.swallows.max(u8::from(swallow));
                    }
                    of_tap.push((sucks.len() as u32).saturating_sub(1));
                }
                Seen::Swallow { after_ms } => {
                    if after_ms.is_some_and(|ms| ms <= SWALLOW_LATE_MS)
                        && let Some(last) = sucks.last_mut()
                    {
                        last.swallows = last.swallows.saturating_add(1);
                    }
                }
                Seen::Changed | Seen::Unchanged => {}
            }
        }
        Self { sucks, of_tap }
    }
}

/// How every gap fits each phase, worked out once a round.
struct Fits(Vec<[GapFit; PHASES]>);

impl Fits {
    fn of(own: &Own, rest_ms: u64) -> Self {
        let classes = ((rest_ms / CLASS_MS) as usize + 1).min(CLASSES);
        Self(
            (0..classes)
                .map(|class| {
                    let middle_ms = (class as u64 * CLASS_MS + CLASS_MS / 2) as f64;
                    std::array::from_fn(|phase| evidence::gap(own, phase, middle_ms))
                })
                .collect(),
        )
    }

    fn at(&self, gap_ms: u64) -> &[GapFit; PHASES] {
        &self.0[((gap_ms / CLASS_MS) as usize).min(self.0.len() - 1)]
    }
}

/// What looking back over the sucks gives.
pub(super) struct Smoothed {
    pub(super) own: Own,
    /// The probability of each phase, for each suck.
    pub(super) phases: Vec<[f64; PHASES]>,
    /// Sucks that each gap within a run spans, expected; zero where there is no such gap.
    pub(super) spans: Vec<f64>,
}

/// What a suck's gap says of the phase before it and after it.
fn weights(
    suck: &Suck,
    own: &Own,
    fits: &Fits,
    no_rest: &[f64; PHASES],
    rest_ms: u64,
) -> ([f64; PHASES], [f64; PHASES]) {
    match suck.before {
        Before::Gap(ms) if ms <= rest_ms => (*no_rest, fits.at(ms).map(|it| it.fit)),
        Before::Gap(ms) => (evidence::rest(own, ms as f64), [1.0; PHASES]),
        Before::Nothing | Before::Unseen(_) | Before::Off(_) => ([1.0; PHASES], [1.0; PHASES]),
    }
}

/// One pass forward and back.
fn pass(
    sucks: &[Suck],
    own: &Own,
    fits: &Fits,
    rest_ms: u64,
    forward: &mut Vec<Stages>,
) -> Vec<[f64; PHASES]> {
    let no_rest = evidence::no_rest(own);
    let swallow_fits = [0, 1, 2].map(|count| evidence::swallows(own, count));
    let swallow_fit = |suck: &Suck| &swallow_fits[usize::from(suck.swallows.min(2))];
    forward.clear();
    let mut stages = chain::START;
    for suck in sucks {
        if let Some(ms) = suck.before.ms() {
            let (leaving, arriving) = weights(suck, own, fits, &no_rest, rest_ms);
            chain::weigh(&mut stages, &leaving);
            stages = chain::forward(&stages, ms as f64);
            if matches!(suck.before, Before::Off(_)) {
                stages = chain::on_again(&stages);
            }
            chain::weigh(&mut stages, &arriving);
        }
        chain::weigh(&mut stages, swallow_fit(suck));
        chain::normalise(&mut stages);
        forward.push(stages);
    }
    let mut phases = vec![[0.0; PHASES]; sucks.len()];
    let mut after: Stages = [1.0; chain::STAGES];
    for (index, suck) in sucks.iter().enumerate().rev() {
        let mut both = forward[index];
        for (stage, weight) in both.iter_mut().zip(after) {
            *stage *= weight;
        }
        chain::normalise(&mut both);
        phases[index] = chain::by_phase(&both);
        if let Some(ms) = suck.before.ms() {
            let (leaving, arriving) = weights(suck, own, fits, &no_rest, rest_ms);
            chain::weigh(&mut after, swallow_fit(suck));
            chain::weigh(&mut after, &arriving);
            if matches!(suck.before, Before::Off(_)) {
                after = chain::on_again_backward(&after);
            }
            after = chain::backward(&after, ms as f64);
            chain::weigh(&mut after, &leaving);
            chain::normalise(&mut after);
        }
    }
    phases
}

/// What the feed shows, with every suck shared out over the phases.
fn sums(sucks: &[Suck], phases: &[[f64; PHASES]], fits: &Fits, rest_ms: u64) -> Sums {
    let mut sums = Sums::default();
    let mut before = [0.0; PHASES];
    for (suck, phases) in sucks.iter().zip(phases) {
        sums.add_suck(phases, 0 < suck.swallows);
        match suck.before {
            Before::Gap(ms) if ms <= rest_ms => {
                sums.add_gap(&before, phases, ms as f64, fits.at(ms));
            }
            Before::Gap(ms) => sums.add_rest(&before, ms as f64),
            Before::Nothing | Before::Unseen(_) | Before::Off(_) => {}
        }
        before = *phases;
    }
    sums
}

/// Looks back over the sucks, starting from the numbers that the live pass came to.
fn smooth(sucks: &[Suck], mut own: Own, rest_ms: u64) -> Smoothed {
    let mut forward = Vec::with_capacity(sucks.len());
    for _ in 0..ROUNDS {
        let fits = Fits::of(&own, rest_ms);
        let phases = pass(sucks, &own, &fits, rest_ms, &mut forward);
        own = Own::of(&sums(sucks, &phases, &fits, rest_ms));
    }
    let fits = Fits::of(&own, rest_ms);
    let phases = pass(sucks, &own, &fits, rest_ms, &mut forward);
    let spans = sucks
        .iter()
        .zip(&phases)
        .map(|(suck, phases)| match suck.before {
            Before::Gap(ms) if ms <= rest_ms => fits
                .at(ms)
                .iter()
                .zip(phases)
                .map(|(fit, share)| share * fit.sucks)
                .sum(),
            _ => 0.0,
        })
        .collect();
    Smoothed { own, phases, spans }
}

/// Everything that is said of a feed.
pub(super) fn summary(
    taps: &[Tap],
    own: Own,
    rest_ms: u64,
    unresolved: u32,
    out_of_order: u32,
) -> Summary {
    let sucks = Sucks::of(taps);
    let smoothed = smooth(&sucks.sucks, own, rest_ms);
    let labels: Vec<Phase> = smoothed.phases.iter().map(|it| phase(most(it))).collect();
    let tiles = tile::of(taps, &sucks, &labels, &smoothed, rest_ms);
    let rates = rate::of(&sucks.sucks, &smoothed, &labels, rest_ms);
    let mut summary = Summary {
        sucks: sucks.of_tap.len() as u32,
        swallows: taps.iter().filter(|tap| tap.what.is_swallow()).count() as u32,
        rates,
        ..tiles
    };
    summary.doubts = doubt::of(&summary, &sucks, &smoothed, unresolved, out_of_order);
    summary
}
