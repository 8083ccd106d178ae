//! The pace of a run: in some babies the gaps of one run are all a little longer or shorter than those
//! of another, whatever the phase. Knows how stages and paces go together over runs; not what is seen.
//!
//! A pace is hidden, as a stage is: drawn anew where a run begins, kept while it lasts. Without it, the
//! gaps of a run repeat each other's evidence of the phase. Five paces stand for all (as Gauss and
//! Hermite's quadrature does, on an even grid).

use super::chain::{self, STAGES, Stages};
use super::pass::Hidden;

/// How many paces stand for all.
pub(super) const PACES: usize = 5;
/// Where they lie, in standard deviations, and their shares: a normal distribution at -2 to 2, stretched
/// so that its variance is one.
const PACE_AT: [f64; PACES] = [-2.080_2, -1.040_1, 0.0, 1.040_1, 2.080_2];
/// See [`PACE_AT`].
const SHARE: [f64; PACES] = [0.054_488_7, 0.244_201_3, 0.402_62, 0.244_201_3, 0.054_488_7];

/// A weight for each stage at each pace.
pub(super) type Paced = [f64; STAGES * PACES];

/// Logarithms of the paces of runs that spread so.
pub(super) fn paces_ln(spread: f64) -> [f64; PACES] {
    PACE_AT.map(|at| at * spread)
}

/// A feed's runs, whose gaps are seen at some paces.
pub(super) trait Runs {
    /// How many items there are.
    fn count(&self) -> usize;
    /// Whether an item goes on with the run of the one before it.
    fn goes_on(&self, to: usize) -> bool;
    /// See [`Hidden::forward`].
    fn forward(&self, to: usize, stages: &mut Stages);
    /// See [`Hidden::backward`].
    fn backward(&self, to: usize, weights: &mut Stages);
    /// See [`Hidden::best`].
    fn best(&self, to: usize, stages: &mut Stages) -> [usize; STAGES];
    /// See [`Hidden::end`].
    fn end(&self) -> Stages;
    /// How well an item fits each stage at a pace.
    fn fit(&self, at: usize, pace: usize) -> Stages;
    /// See [`Hidden::fit`].
    fn scale(&self, at: usize) -> f64;
}

/// Runs that all have the same pace.
pub(super) struct Even<'a, R>(pub(super) &'a R);

impl<R: Runs> Hidden<STAGES> for Even<'_, R> {
    fn count(&self) -> usize {
        self.0.count()
    }

    fn start(&self) -> Stages {
        chain::START
    }

    fn forward(&self, to: usize, stages: &mut Stages) {
        self.0.forward(to, stages);
    }

    fn backward(&self, to: usize, weights: &mut Stages) {
        self.0.backward(to, weights);
    }

    fn best(&self, to: usize, stages: &mut Stages) -> [usize; STAGES] {
        self.0.best(to, stages)
    }

    fn end(&self) -> Stages {
        self.0.end()
    }

    fn fit(&self, at: usize) -> (Stages, f64) {
        (self.0.fit(at, 0), self.0.scale(at))
    }
}

/// Runs of any pace.
pub(super) struct AnyPace<'a, R>(pub(super) &'a R);

impl<R: Runs> Hidden<{ STAGES * PACES }> for AnyPace<'_, R> {
    fn count(&self) -> usize {
        self.0.count()
    }

    fn start(&self) -> Paced {
        drawn(&chain::START)
    }

    fn forward(&self, to: usize, all: &mut Paced) {
        if self.0.goes_on(to) {
            for stages in at_each_pace(all) {
                self.0.forward(to, stages);
            }
        } else {
            let mut stages = joined(all);
            self.0.forward(to, &mut stages);
            *all = drawn(&stages);
        }
    }

    fn backward(&self, to: usize, all: &mut Paced) {
        if self.0.goes_on(to) {
            for weights in at_each_pace(all) {
                self.0.backward(to, weights);
            }
        } else {
            let mut weights = expected(all);
            self.0.backward(to, &mut weights);
            *all = alike(&weights);
        }
    }

    fn best(&self, to: usize, all: &mut Paced) -> [usize; STAGES * PACES] {
        let mut origin = [0; STAGES * PACES];
        if self.0.goes_on(to) {
            for (pace, stages) in at_each_pace(all).enumerate() {
                let from = self.0.best(to, stages);
                for (origin, stage) in origin[pace * STAGES..].iter_mut().zip(from) {
                    *origin = pace * STAGES + stage;
                }
            }
        } else {
            // The best pace that each stage comes with.
            let best: [usize; STAGES] = std::array::from_fn(|stage| {
                (stage..all.len()).step_by(STAGES).fold(stage, |best, it| {
                    if all[best] < all[it] { it } else { best }
                })
            });
            let mut stages = best.map(|it| all[it]);
            let from = self.0.best(to, &mut stages);
            *all = drawn(&stages);
            origin = std::array::from_fn(|it| best[from[it % STAGES]]);
        }
        origin
    }

    fn end(&self) -> Paced {
        alike(&self.0.end())
    }

    fn fit(&self, at: usize) -> (Paced, f64) {
        let mut all = [0.0; STAGES * PACES];
        for (pace, stages) in at_each_pace(&mut all).enumerate() {
            *stages = self.0.fit(at, pace);
        }
        (all, self.0.scale(at))
    }
}

/// The stages at each pace.
pub(super) fn at_each_pace(all: &mut Paced) -> impl Iterator<Item = &mut Stages> {
    let (chunks, _) = all.as_chunks_mut::<STAGES>();
    chunks.iter_mut()
}

/// The stages, whatever the pace.
pub(super) fn joined(all: &Paced) -> Stages {
    let mut stages = [0.0; STAGES];
    for at_pace in all.chunks(STAGES) {
        for (sum, it) in stages.iter_mut().zip(at_pace) {
            *sum += it;
        }
    }
    stages
}

/// The paces, whatever the stage: the share of each.
pub(super) fn shares(all: &Paced) -> [f64; PACES] {
    std::array::from_fn(|pace| all[pace * STAGES..][..STAGES].iter().sum())
}

/// A pace is drawn, forward.
fn drawn(stages: &Stages) -> Paced {
    std::array::from_fn(|it| SHARE[it / STAGES] * stages[it % STAGES])
}

/// The same backward: what the weights after it are worth before it is drawn.
fn expected(all: &Paced) -> Stages {
    let mut weights = [0.0; STAGES];
    for (at_pace, share) in all.chunks(STAGES).zip(SHARE) {
        for (sum, it) in weights.iter_mut().zip(at_pace) {
            *sum += share * it;
        }
    }
    weights
}

/// The same at every pace.
fn alike(stages: &Stages) -> Paced {
    std::array::from_fn(|it| stages[it % STAGES])
}
