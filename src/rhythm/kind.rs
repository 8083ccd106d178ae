//! The ways of feeding that a feed's own numbers may start from: babies differ in kind as well as
//! in degree. A baby with little milk yet swallows rarely in every phase; one born early sucks in
//! short runs with long rests even while milk flows; one that dozes flutters, wakes and goes on.
//!
//! A kind is a place to start, nothing more: it is never told, and says nothing of the baby. Which
//! one fits is weighed with everything else when looking back. It does not know how.

use super::chain::Sleep;
use super::parameter::{GAP_MS, PHASES, REST_CHANCE, REST_MS, SWALLOW, SWALLOW_NOTICED};

/// What a kind's phases are like in the mean: quick, flow, flutter.
pub(super) struct Kind {
    /// Mean gap between sucks within a run, in milliseconds.
    pub(super) gap_ms: [f64; PHASES],
    /// Share of sucks with a swallow noticed.
    pub(super) swallow: [f64; PHASES],
    /// Chance that a rest follows a suck.
    pub(super) rest_chance: [f64; PHASES],
    /// Median rest, in milliseconds.
    pub(super) rest_ms: [f64; PHASES],
    /// When it flutters.
    pub(super) sleep: Sleep,
    /// How plausible it is beside the others before the feed has shown anything, as a logarithm.
    pub(super) plausible: f64,
}

/// The kind that most babies are nearest to.
pub(super) const USUAL: usize = 0;
/// The kind that falls asleep early.
pub(super) const ASLEEP_EARLY: usize = 7;

/// What the numbers of `parameter` say.
const MOST: Kind = Kind {
    gap_ms: GAP_MS,
    swallow: SWALLOW,
    rest_chance: REST_CHANCE,
    rest_ms: REST_MS,
    sleep: Sleep::AtTheEnd,
    plausible: 0.0,
};
/// The others are rarer, all of them alike: about a tenth of the usual kind each. Common practice.
const RARER: f64 = -2.4;

/// One that dozes is not so rare in the first days. Common practice.
const DOZES: f64 = -1.0;

/// Nor is one that falls asleep early. Common practice.
const EARLY: f64 = -0.4;

/// All kinds, the usual one first. The values are common practice in the direction of the sources.
pub(super) const KINDS: [Kind; 8] = [
    MOST,
    // Little milk in the first days (Casey and others 1986, AJDC 140:933): few swallows.
    Kind {
        swallow: swallows([12.0, 4.0, 15.0]),
        rest_chance: ends([9.0, 12.0, 5.0]),
        rest_ms: [6_000.0, 4_000.0, 8_500.0],
        plausible: RARER,
        ..MOST
    },
    // Drowsy: short runs, long rests (as flutter; Drewett and Woolridge 1979, from memory).
    Kind {
        rest_chance: ends([7.0, 12.0, 4.0]),
        rest_ms: [8_000.0, 6_000.0, 12_500.0],
        plausible: RARER,
        ..MOST
    },
    // Little in the mouth: flow is not so different from quick sucks. Common practice.
    Kind {
        swallow: swallows([6.7, 3.8, 9.5]),
        rest_chance: ends([9.0, 12.0, 5.0]),
        plausible: RARER,
        ..MOST
    },
    // Fast milk: near the low end of the published 1.3 sucks a swallow, and slower sucks with it
    // (Hartmann and others 2011).
    Kind {
        gap_ms: [60_000.0 / 107.0, 60_000.0 / 80.0, 60_000.0 / 113.0],
        swallow: swallows([6.7, 1.5, 9.5]),
        rest_chance: ends([9.0, 19.0, 5.0]),
        plausible: RARER,
        ..MOST
    },
    // Born early: 2 to 4 sucks a swallow at the breast (as quoted in Matern Health Neonatol
    // Perinatol 2019, 40748-019-0113-9), runs of about 4 s (Hack and others 1985).
    Kind {
        swallow: swallows([6.7, 3.0, 9.5]),
        rest_chance: ends([6.0, 7.0, 4.0]),
        rest_ms: [8_000.0, 8_000.0, 12_500.0],
        plausible: RARER,
        ..MOST
    },
    // Dozes and wakes again, by itself or woken. Common practice.
    Kind {
        sleep: Sleep::ComesAndGoes,
        plausible: DOZES,
        ..MOST
    },
    // Falls asleep early and goes on fluttering. Common practice.
    Kind {
        sleep: Sleep::Early,
        plausible: EARLY,
        ..MOST
    },
];

const fn swallows(sucks_per_swallow: [f64; PHASES]) -> [f64; PHASES] {
    let [quick, flow, flutter] = sucks_per_swallow;
    [
        SWALLOW_NOTICED / quick,
        SWALLOW_NOTICED / flow,
        SWALLOW_NOTICED / flutter,
    ]
}

const fn ends(run_sucks: [f64; PHASES]) -> [f64; PHASES] {
    let [quick, flow, flutter] = run_sucks;
    [1.0 / quick, 1.0 / flow, 1.0 / flutter]
}
