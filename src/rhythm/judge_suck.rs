//! How the sucks of a feed fit the phases, given the feed's numbers: each suck judged by all of them.
//! Knows no numbers of its own and does not learn any.

use super::block::Parts;
use super::chain::{self, Chain, STAGES, Stages, Steps};
use super::evidence;
use super::gap_class::Fine;
use super::own::Own;
use super::pace::{self, AnyPace, Even, Runs};
use super::parameter::PHASES;
use super::pass;
use super::series::AllSeries;
use super::suck::{Suck, Sucks};
use super::watch::Before;

/// The time that each class of gaps within a run takes.
struct Passing(Vec<Steps>);

impl Passing {
    fn new(rest_ms: u64) -> Self {
        let steps = (0..=Fine::of(rest_ms as f64)).map(|it| Steps::of(Fine::middle_ms(it)));
        Self(steps.collect())
    }

    fn of(&self, gap_ms: u64) -> &Steps {
        &self.0[Fine::of(gap_ms as f64)]
    }
}

/// Sucks with hidden stages, given the feed's numbers, at some paces.
struct Judging<'a, const P: usize> {
    sucks: &'a [Suck],
    own: &'a Own,
    passing: &'a Passing,
    parts: &'a Parts,
    rest_ms: u64,
    no_rest: [f64; PHASES],
    swallows: [Stages; 3],
    /// How well the gap within a run before each suck fits, up to a factor.
    gaps: Vec<[[f32; PHASES]; P]>,
}

impl<'a, const P: usize> Judging<'a, P> {
    fn new(of: &'a Looking<'a>, own: &'a Own, paces_ln: &[f64; P]) -> Self {
        let mut series = AllSeries::new(own, paces_ln, of.rest_ms);
        let gaps = of.sucks.iter().map(|suck| {
            let Some(ln) = series.next(suck) else {
                return [[1.0; PHASES]; P];
            };
            let most = ln.iter().flatten().copied().fold(f64::MIN, f64::max);
            ln.map(|phases| phases.map(|it| ((it - most) as f32).exp()))
        });
        Self {
            sucks: of.sucks,
            own,
            passing: &of.passing,
            parts: &of.parts,
            rest_ms: of.rest_ms,
            no_rest: evidence::no_rest(own),
            swallows: [0, 1, 2].map(|count| evidence::swallows(own, count)),
            gaps: gaps.collect(),
        }
    }

    /// The chain that leads to a suck.
    fn chain(&self, suck: &Suck) -> &'static Chain {
        Chain::of(self.parts.at(suck.at), self.own.sleep)
    }
}

impl<const P: usize> Runs for Judging<'_, P> {
    fn count(&self) -> usize {
        self.sucks.len()
    }

    fn goes_on(&self, to: usize) -> bool {
        self.sucks[to].before.within(self.rest_ms).is_some()
    }

    fn forward(&self, to: usize, stages: &mut Stages) {
        let suck = &self.sucks[to];
        let chain = self.chain(suck);
        if let Some(gap_ms) = suck.before.within(self.rest_ms) {
            chain::weigh(stages, &self.no_rest);
            chain.forward(stages, self.passing.of(gap_ms));
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
        if let Some(gap_ms) = suck.before.within(self.rest_ms) {
            chain.backward(weights, self.passing.of(gap_ms));
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
            before if before.within(self.rest_ms).is_some() => chain::weigh(stages, &self.no_rest),
            Before::Gap(_) => chain::weigh(stages, &evidence::rest(self.own, ms)),
            _ => {}
        }
        chain.best(stages, &Steps::of(ms))
    }

    fn end(&self) -> Stages {
        self.parts.end(self.own.sleep)
    }

    fn fit(&self, at: usize, pace: usize) -> Stages {
        let mut stages = self.swallows[usize::from(self.sucks[at].swallows.min(2))];
        chain::weigh(&mut stages, &self.gaps[at][pace].map(f64::from));
        stages
    }

    fn scale(&self, _: usize) -> f64 {
        0.0
    }
}

/// What is looked back over.
pub(super) struct Looking<'a> {
    sucks: &'a [Suck],
    parts: Parts,
    passing: Passing,
    rest_ms: u64,
}

impl<'a> Looking<'a> {
    /// All of a feed.
    pub(super) fn over(feed: &'a Sucks, rest_ms: u64) -> Self {
        Self {
            sucks: &feed.sucks,
            parts: Parts::of(feed),
            passing: Passing::new(rest_ms),
            rest_ms,
        }
    }

    /// Judges every suck with these numbers: tells `each` how probable the phases are.
    pub(super) fn judge(&self, own: &Own, mut each: impl FnMut(usize, &[f64; PHASES])) {
        let spread = own.gaps.pace_spread;
        if spread == 0.0 {
            let judging = Judging::new(self, own, &[0.0]);
            let mut room = Vec::with_capacity(self.sucks.len());
            pass::posterior(&Even(&judging), &mut room, |at, stages| {
                each(at, &chain::by_phase(stages));
            });
        } else {
            let judging = Judging::new(self, own, &pace::paces_ln(spread));
            let mut room = Vec::with_capacity(self.sucks.len());
            pass::posterior(&AnyPace(&judging), &mut room, |at, all| {
                each(at, &chain::by_phase(&pace::joined(all)));
            });
        }
    }
}
