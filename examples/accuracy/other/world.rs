//! Worlds that feeds of the second simulator come from: every number of it, as it stands and as
//! others who read the same papers might have set it. What is published stays near what is
//! published; what is common practice may be anywhere that the trade would believe.
//!
//! Draws no feed itself.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, LogNormal};

/// How babies differ: a standard deviation of logarithms in all phases alike, and in each.
pub type Spread = (f64, f64);

/// How phases follow each other.
#[derive(Clone, Copy, PartialEq)]
pub enum Order {
    /// With the milk: quick sucks before and between ejections, flutter a while after the last.
    Milk,
    /// With the clock: as with the milk, but flutter sets in at some share of a feed of a length
    /// given beforehand, whatever the milk does.
    Clock,
    /// A chain without memory: phases last by chance, and flutter comes and goes.
    Chain,
    /// The same, but whoever has come to flutter stays in it: often early, and for most of a feed.
    Settles,
}

impl Order {
    pub const fn as_word(self) -> &'static str {
        match self {
            Self::Milk => "the milk",
            Self::Clock => "the clock",
            Self::Chain => "by chance",
            Self::Settles => "by chance, to flutter",
        }
    }
}

/// All that feeds are drawn from. By phase: quick, flow, flutter. Times in milliseconds.
#[derive(Clone, Copy)]
pub struct World {
    /// Its number; none like it has the same kinds.
    pub number: u64,
    pub order: Order,
    pub sucks_per_min: [f64; 3],
    pub sucks_per_swallow: [f64; 3],
    /// Means.
    pub run_sucks: [f64; 3],
    /// Means.
    pub rest_ms: [f64; 3],
    pub rate_spread: Spread,
    pub ratio_spread: Spread,
    pub run_spread: Spread,
    pub rest_spread: Spread,
    /// Spread of gaps, relative.
    pub gap_spread: [f64; 3],
    /// Spread of the slow drift of the rate, relative, and the time it takes.
    pub drift_spread: f64,
    pub drift_ms: f64,
    /// How even runs and rests are: shapes of their gamma distributions.
    pub run_shape: f64,
    pub rest_shape: f64,
    /// Ejections a feed, mean of a Poisson count.
    pub ejections: f64,
    /// Time to the first, mean and shape.
    pub first_ms: f64,
    pub first_shape: f64,
    /// An ejection, median and spread of its logarithm.
    pub ejection_ms: f64,
    pub ejection_spread: f64,
    /// From one to the next, from the last to flutter, flutter itself, and their shape.
    pub between_ms: f64,
    pub to_flutter_ms: f64,
    pub flutter_ms: f64,
    pub wait_shape: f64,
    /// How often flutter follows at once: the last ejection, or any flow of a chain.
    pub tires: f64,
    /// How often flow follows when a baby wakes up from flutter, and not quick sucks.
    pub wakes: f64,
    /// How much rarer swallows are at the end of an ejection than at its start.
    pub slackens: f64,
    /// How much a kind of baby departs, as spreads of logarithms; none where there are no kinds.
    pub kinds: f64,
}

/// The second simulator as it stands.
///
/// Sucks a minute, before the milk flows, while it flows, and at the sleepy end: Hartmann and
/// others 2011, FASEB J 25 suppl 589.1: 107 and 90; the last by direction only (Drewett and
/// Woolridge 1979, Early Hum Dev 3:315, from memory). Sucks a swallow likewise: 6.7 and 2.5; the
/// last common practice. Mean sucks a run: 9.6 before the milk flows (Martens and others 2020);
/// the others common practice, in the direction of Drewett and Woolridge 1979. Mean rest: 8.6 s at a
/// pacifier (from Martens and others 2020), shorter at the breast (common practice).
///
/// Spreads: common practice; sucks a swallow from the ranges of Hartmann and others 2011. Gaps
/// vary little and rests much ("low", "high": Hack and others 1985, Early Hum Dev 11:133).
///
/// Ejections a feed: 2.5 ± 1.5 (Ramsay and others 2004, Pediatrics 113:361). Time to the first:
/// Kent and others 2003, J Hum Lact 19:179, from memory. An ejection: 45 s to 3.5 min (Gardner and
/// others 2015, BMC Pregnancy Childbirth 15:156), here about a median. The times between and after
/// are common practice; feeds then take 16 minutes, and 5 to 37 (Kent and others 2006, Pediatrics
/// 117:e387, as reported from it).
pub const PLAIN: World = World {
    number: 0,
    order: Order::Milk,
    sucks_per_min: [107.0, 90.0, 112.0],
    sucks_per_swallow: [6.7, 2.5, 8.5],
    run_sucks: [9.6, 18.0, 5.0],
    rest_ms: [6_500.0, 5_500.0, 10_500.0],
    rate_spread: (0.14, 0.04),
    ratio_spread: (0.35, 0.12),
    run_spread: (0.25, 0.15),
    rest_spread: (0.2, 0.15),
    gap_spread: [0.12; 3],
    drift_spread: 0.05,
    drift_ms: 45_000.0,
    run_shape: 1.8,
    rest_shape: 1.6,
    ejections: 2.5,
    first_ms: 56_000.0,
    first_shape: 3.0,
    ejection_ms: 100_000.0,
    ejection_spread: 0.45,
    between_ms: 130_000.0,
    to_flutter_ms: 180_000.0,
    flutter_ms: 220_000.0,
    wait_shape: 2.0,
    tires: 0.0,
    wakes: 0.0,
    slackens: 0.7,
    kinds: 0.0,
};

/// How far a published mean is off in a world, relative: it was rounded, and read from an abstract.
const PUBLISHED: f64 = 0.03;

/// How many kinds of baby there are in a world that has kinds.
const KINDS: u64 = 6;

struct Draw(ChaCha8Rng);

impl Draw {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        (low.ln() + (high / low).ln() * self.0.random::<f64>()).exp()
    }

    fn departs(&mut self, spread: f64) -> f64 {
        LogNormal::new(0.0, spread).map_or(1.0, |it| it.sample(&mut self.0))
    }

    fn near(&mut self, published: f64) -> f64 {
        self.between(published * (1.0 - PUBLISHED), published * (1.0 + PUBLISHED))
    }
}

impl World {
    /// One of the worlds; orders of phases in turn.
    pub fn drawn(number: u64) -> Self {
        let mut draw = Draw(ChaCha8Rng::seed_from_u64(number ^ 0x5eed_0003));
        let order =
            [Order::Milk, Order::Clock, Order::Chain, Order::Settles][(number % 4) as usize];
        let without_memory = matches!(order, Order::Chain | Order::Settles);
        let shape = |shape| if without_memory { 1.0 } else { shape };
        let kinds = number / 4 % 2 == 1;
        let ratio_spread = if kinds { 0.28 } else { 0.5 };
        let gap_spread = draw.between(0.08, 0.16);
        Self {
            number,
            order,
            sucks_per_min: [
                draw.near(107.0),
                draw.near(90.0),
                draw.between(107.0, 135.0),
            ],
            sucks_per_swallow: [draw.near(6.7), draw.near(2.5), draw.between(7.5, 16.0)],
            run_sucks: [
                draw.between(7.0, 13.0),
                draw.between(12.0, 32.0),
                draw.between(3.5, 7.0),
            ],
            rest_ms: [
                draw.between(4_500.0, 9_000.0),
                draw.between(3_000.0, 7_500.0),
                draw.between(6_500.0, 14_000.0),
            ],
            rate_spread: (draw.between(0.08, 0.18), draw.between(0.03, 0.1)),
            ratio_spread: (draw.between(0.08, ratio_spread), draw.between(0.05, 0.4)),
            run_spread: (draw.between(0.05, 0.3), draw.between(0.03, 0.3)),
            rest_spread: (draw.between(0.05, 0.3), draw.between(0.03, 0.3)),
            gap_spread: [
                gap_spread * draw.between(0.9, 1.3),
                gap_spread,
                gap_spread * draw.between(1.0, 1.8),
            ],
            drift_spread: draw.between(0.015, 0.07),
            drift_ms: draw.between(10_000.0, 90_000.0),
            run_shape: draw.between(1.0, 4.0),
            rest_shape: draw.between(1.3, 5.0),
            ejections: draw.between(2.2, 2.8),
            first_ms: draw.between(45_000.0, 80_000.0),
            first_shape: shape(draw.between(1.0, 6.0)),
            ejection_ms: draw.between(85_000.0, 125_000.0),
            ejection_spread: draw.between(0.25, 0.5),
            between_ms: draw.between(75_000.0, 220_000.0),
            to_flutter_ms: draw.between(75_000.0, 300_000.0),
            flutter_ms: draw.between(120_000.0, 350_000.0),
            wait_shape: shape(draw.between(1.0, 4.0)),
            tires: draw.between(0.05, 0.8),
            wakes: draw.between(0.2, 0.9),
            slackens: draw.between(0.5, 1.0),
            kinds: if kinds { draw.between(0.15, 0.4) } else { 0.0 },
        }
    }

    /// The world as the babies of one kind see it: kinds come in turn, six of them.
    pub fn of_kind(&self, seed: u64) -> Self {
        let kind = seed % KINDS;
        if self.kinds == 0.0 || kind == 0 {
            return *self;
        }
        let mut draw = Draw(ChaCha8Rng::seed_from_u64(self.number * KINDS + kind));
        let mut departs = |means: [f64; 3], share: f64| {
            let spread = self.kinds * share;
            let alike = draw.departs(spread);
            means.map(|it| it * alike * draw.departs(0.5 * spread))
        };
        Self {
            sucks_per_min: departs(self.sucks_per_min, 0.15),
            sucks_per_swallow: departs(self.sucks_per_swallow, 1.0),
            run_sucks: departs(self.run_sucks, 1.0),
            rest_ms: departs(self.rest_ms, 1.0),
            ..*self
        }
    }
}
