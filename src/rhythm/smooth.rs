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
use super::live::{SWALLOW_LATE_MS, index, most, phase};
use super::own::{Own, Sums};
use super::parameter::{PHASES, REST_MS_CEILING};
use super::summary::{Computed, Phase, Summary};
use super::watch::{Before, Seen, Watch};
use super::{boundary, doubt, rate, tile};
use crate::record::{At, BoundaryMoved, Tap};

/// Width of a class of gaps for which the fit is worked out once, in milliseconds.
const CLASS_MS: u64 = 10;
const CLASSES: usize = (REST_MS_CEILING / CLASS_MS) as usize + 1;

/// One jaw movement as the smoothing sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Suck {
    pub(super) at: At,
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
                        at: tap.at,
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

/// What depends on a gap within a run alone: how it fits each phase, worked out once a round, and
/// the chance to leave each stage within it, worked out once.
struct Gaps {
    fits: Vec<[GapFit; PHASES]>,
    leaving: Vec<Stages>,
    rest_ms: u64,
}

impl Gaps {
    fn new(rest_ms: u64) -> Self {
        let classes = ((rest_ms / CLASS_MS) as usize + 1).min(CLASSES);
        Self {
            fits: vec![[GapFit::default(); PHASES]; classes],
            leaving: (0..classes)
                .map(|it| chain::leaving(middle_ms(it)))
                .collect(),
            rest_ms,
        }
    }

    fn fit(&mut self, own: &Own) {
        for (class, fits) in self.fits.iter_mut().enumerate() {
            *fits = std::array::from_fn(|phase| evidence::gap(own, phase, middle_ms(class)));
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
    pub(super) own: Own,
    /// The probability of each phase, for each suck.
    pub(super) phases: Vec<[f64; PHASES]>,
    /// Sucks that each gap within a run spans, expected; zero where there is no such gap.
    pub(super) spans: Vec<f64>,
}

/// One pass forward and back: the phases of every suck, and the logarithm of how well the numbers
/// fit all of them.
fn pass(
    sucks: &[Suck],
    own: &Own,
    gaps: &Gaps,
    forward: &mut Vec<Stages>,
) -> (Vec<[f64; PHASES]>, f64) {
    let no_rest = evidence::no_rest(own);
    let swallows = [0, 1, 2].map(|count| evidence::swallows(own, count));
    let swallow = |suck: &Suck| &swallows[usize::from(suck.swallows.min(2))];
    forward.clear();
    let mut stages = chain::START;
    let (mut fit, mut product) = (0.0, 1.0_f64);
    for suck in sucks {
        if let Some(class) = gaps.class(suck.before) {
            chain::weigh(&mut stages, &no_rest);
            stages = chain::step_forward(&stages, &gaps.leaving[class]);
            let (fits, swallow) = (&gaps.fits[class], swallow(suck));
            chain::weigh(
                &mut stages,
                &std::array::from_fn(|it| fits[it].fit * swallow[it]),
            );
        } else {
            match suck.before {
                Before::Nothing => {}
                Before::Gap(ms) => {
                    chain::weigh(&mut stages, &evidence::rest(own, ms as f64));
                    stages = chain::forward(&stages, ms as f64);
                }
                Before::Unseen(ms) => stages = chain::forward(&stages, ms as f64),
                Before::Off(ms) => {
                    stages = chain::on_again(&chain::forward(&stages, ms as f64));
                }
            }
            chain::weigh(&mut stages, swallow(suck));
        }
        product *= chain::normalise(&mut stages);
        if product < 1e-200 {
            fit += product.ln();
            product = 1.0;
        }
        forward.push(stages);
    }
    fit += product.ln();
    let mut phases = vec![[0.0; PHASES]; sucks.len()];
    let mut after: Stages = [1.0; chain::STAGES];
    for (index, suck) in sucks.iter().enumerate().rev() {
        let mut both = forward[index];
        for (stage, weight) in both.iter_mut().zip(after) {
            *stage *= weight;
        }
        phases[index] = chain::by_phase(&both);
        let sum: f64 = phases[index].iter().sum();
        if 0.0 < sum {
            phases[index] = phases[index].map(|it| it / sum);
        }
        if let Some(class) = gaps.class(suck.before) {
            let (fits, swallow) = (&gaps.fits[class], swallow(suck));
            chain::weigh(
                &mut after,
                &std::array::from_fn(|it| fits[it].fit * swallow[it]),
            );
            after = chain::step_backward(&after, &gaps.leaving[class]);
            chain::weigh(&mut after, &no_rest);
        } else {
            chain::weigh(&mut after, swallow(suck));
            match suck.before {
                Before::Nothing => {}
                Before::Gap(ms) => {
                    after = chain::backward(&after, ms as f64);
                    chain::weigh(&mut after, &evidence::rest(own, ms as f64));
                }
                Before::Unseen(ms) => after = chain::backward(&after, ms as f64),
                Before::Off(ms) => {
                    after = chain::backward(&chain::on_again_backward(&after), ms as f64);
                }
            }
        }
        chain::normalise(&mut after);
    }
    (phases, fit)
}

/// What the feed shows, with every suck shared out over the phases.
fn sums(sucks: &[Suck], phases: &[[f64; PHASES]], gaps: &Gaps) -> Sums {
    let mut sums = Sums::default();
    let mut before = [0.0; PHASES];
    for (suck, phases) in sucks.iter().zip(phases) {
        sums.add_suck(phases, 0 < suck.swallows);
        match (gaps.class(suck.before), suck.before) {
            (Some(class), Before::Gap(ms)) => {
                sums.add_gap(&before, phases, ms as f64, &gaps.fits[class]);
            }
            (None, Before::Gap(ms)) => sums.add_rest(&before, ms as f64),
            _ => {}
        }
        before = *phases;
    }
    sums
}

/// Looks back over the sucks, from several starting numbers of which the best fit goes on.
fn smooth(sucks: &[Suck], starts: &[Own], rest_ms: u64, rounds: usize) -> Smoothed {
    let mut forward = Vec::with_capacity(sucks.len());
    let mut gaps = Gaps::new(rest_ms);
    let mut own = starts.first().copied().unwrap_or_else(Own::start);
    let mut best = f64::NEG_INFINITY;
    for start in starts {
        let (mut tried, mut fit) = (*start, f64::NEG_INFINITY);
        for _ in 0..rounds {
            gaps.fit(&tried);
            let phases;
            (phases, fit) = pass(sucks, &tried, &gaps, &mut forward);
            tried = Own::of(&sums(sucks, &phases, &gaps));
        }
        if best < fit {
            (own, best) = (tried, fit);
        }
    }
    gaps.fit(&own);
    let (phases, _) = pass(sucks, &own, &gaps, &mut forward);
    let spans = sucks
        .iter()
        .zip(&phases)
        .map(|(suck, phases)| {
            gaps.class(suck.before).map_or(0.0, |class| {
                let fits = gaps.fits[class].iter();
                fits.zip(phases).map(|(fit, share)| share * fit.sucks).sum()
            })
        })
        .collect();
    Smoothed { own, phases, spans }
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
    starts: &[Own],
    rest_ms: u64,
    rounds: usize,
    unresolved: u32,
    out_of_order: u32,
) -> Summary {
    let sucks = Sucks::of(taps);
    let mut smoothed = smooth(&sucks.sucks, starts, rest_ms, rounds);
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
    let rates = rate::of(&sucks.sucks, &smoothed, &labels, rest_ms);
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
