//! The babies that can be simulated, and every number that makes them. The only file of the room
//! with parameters of the trade; it draws nothing itself.

use crate::record::words;

words!(
    /// A kind of baby to practise with.
    Baby {
        /// Day one or two: little milk yet, few swallows, long rests.
        FirstDays = "first_days",
        /// Established feeding: the published means at the breast.
        Established = "established",
        /// Sleepy: short flow, early flutter, long rests.
        Sleepy = "sleepy",
        /// Shallow attachment: quick sucks for long, few swallows, comes off.
        Shallow = "shallow",
        /// Fast flow: milk at once, nearly a swallow with every suck.
        FastFlow = "fast_flow",
        /// Preterm: short runs, long rests.
        Preterm = "preterm",
    }
);

/// How a baby sucks in one phase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sucking {
    /// Sucks per minute within a run, mean over babies.
    pub sucks_per_min: f64,
    /// Sucks per swallow, mean over babies; at least 1.
    pub sucks_per_swallow: f64,
    /// Mean sucks per run.
    pub run_sucks: f64,
    /// Median rest between runs, in milliseconds.
    pub rest_ms: f64,
}

/// Everything that a kind of baby is drawn from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// Before the milk flows, and between ejections.
    pub quick: Sucking,
    /// While it flows.
    pub flow: Sucking,
    /// At the sleepy end.
    pub flutter: Sucking,
    /// Milk ejections in a feed of [`USUAL_FEED_MS`], mean.
    pub ejections: f64,
    /// Their spread, one standard deviation.
    pub ejections_sd: f64,
    /// Median time from latch to the first ejection, in milliseconds.
    pub first_ejection_ms: f64,
    /// Shortest and longest ejection, in milliseconds.
    pub ejection_ms: (f64, f64),
    /// When flutter sets in, as the earliest and latest share of the feed.
    pub flutter_from: (f64, f64),
    /// The chance that the baby comes off once and is put on again.
    pub comes_off: f64,
}

/// The usual length of a breastfeed, in milliseconds: 16 minutes (Kent and others 2006,
/// Pediatrics 117:e387, as reported from it).
pub const USUAL_FEED_MS: f64 = 16.0 * 60_000.0;
/// Spread of a baby's own suck rate about the mean, as one standard deviation of the logarithm.
/// "Babies differ by tens of per cent": common practice; the study gives no standard deviation.
pub const RATE_SPREAD: f64 = 0.12;
/// Spread of a baby's own sucks per swallow, as one standard deviation of the logarithm. The
/// ranges of Hartmann and others 2011 (1.3 to 8.7 about 2.5; 2.5 to 23 about 6.7) are near plus
/// and minus two of 0.45; a narrower value is taken for babies of one kind.
pub const RATIO_SPREAD: f64 = 0.30;
/// How far one phase of a baby departs from what its other phases say, as one standard deviation
/// of the logarithm. Common practice.
pub const PHASE_SPREAD: f64 = 0.06;
/// Spread of the gaps between sucks within a run about their mean, relative. "Intersuck variation
/// low" (Hack and others 1985, Early Hum Dev 11:133); the value is common practice.
pub const GAP_SPREAD: f64 = 0.11;
/// Slow wander of the rate from run to run, relative. Common practice.
pub const RUN_SPREAD: f64 = 0.05;
/// Spread of rests, as one standard deviation of the logarithm: "interburst variation high" (Hack
/// and others 1985); the value is common practice.
pub const REST_SPREAD: f64 = 0.5;
/// The shortest rest, in milliseconds: a pause is a gap of more than 2 s (from memory, the usual
/// definition in work on nutritive sucking).
pub const REST_MS_LEAST: f64 = 2_000.0;
/// How much longer rests are at the end of a feed than at its start, as a factor: late in a feed
/// runs shorten and rests lengthen (Drewett and Woolridge 1979, Early Hum Dev 3:315, from memory;
/// direction only, the size is common practice).
pub const REST_LENGTHENS: f64 = 1.5;
/// Spread of the time to the first ejection, as one standard deviation of the logarithm.
pub const FIRST_EJECTION_SPREAD: f64 = 0.45;
/// From latch to first suck, in milliseconds, shortest and longest. Common practice.
pub const LATCH_MS: (f64, f64) = (300.0, 3_000.0);
/// How long a baby that came off stays off, in milliseconds, shortest and longest. Common practice.
pub const OFF_MS: (f64, f64) = (15_000.0, 60_000.0);

/// At the breast before the milk flows: 107 sucks a minute, 6.7 a swallow (Hartmann, McClellan and
/// others 2011, FASEB J 25 suppl 589.1); about 10 sucks a run and rests of 3 to 9 s (Martens and
/// others 2020: 9.60 sucks a run, pacifier, 3 months).
const QUICK: Sucking = Sucking {
    sucks_per_min: 107.0,
    sucks_per_swallow: 6.7,
    run_sucks: 10.0,
    rest_ms: 4_500.0,
};
/// At the breast while milk flows: 90 sucks a minute, 2.5 a swallow (same study). Longer runs than
/// before the milk flows (Wolff 1968, Pediatrics 42:943, from memory; the length is common practice).
const FLOW: Sucking = Sucking {
    sucks_per_min: 90.0,
    sucks_per_swallow: 2.5,
    run_sucks: 20.0,
    rest_ms: 4_000.0,
};
/// At the sleepy end: runs shorten, rests lengthen, the rate rises (Drewett and Woolridge 1979;
/// Bowen-Jones 1982, Dev Med Child Neurol 24:626, both from memory, direction only).
const FLUTTER: Sucking = Sucking {
    sucks_per_min: 112.0,
    sucks_per_swallow: 9.0,
    run_sucks: 5.0,
    rest_ms: 8_000.0,
};

/// 2.5 ± 1.5 ejections a feed (Ramsay and others 2004, Pediatrics 113:361), each 45 s to 3.5 min
/// (Gardner and others 2015, BMC Pregnancy Childbirth 15:156), the first after about 56 s (Kent
/// and others 2003, J Hum Lact 19:179, from memory).
const ESTABLISHED: Profile = Profile {
    quick: QUICK,
    flow: FLOW,
    flutter: FLUTTER,
    ejections: 2.5,
    ejections_sd: 1.5,
    first_ejection_ms: 56_000.0,
    ejection_ms: (45_000.0, 210_000.0),
    flutter_from: (0.65, 0.9),
    comes_off: 0.15,
};

impl Baby {
    /// The numbers that this baby is drawn from. What departs from the published means of
    /// established feeding is common practice, in the direction that the trade describes.
    pub const fn profile(self) -> Profile {
        match self {
            Self::Established => ESTABLISHED,
            // Little milk on day one (Casey and others 1986, AJDC 140:933): few swallows.
            Self::FirstDays => Profile {
                quick: Sucking {
                    sucks_per_swallow: 12.0,
                    rest_ms: 6_000.0,
                    ..QUICK
                },
                flow: Sucking {
                    sucks_per_swallow: 4.0,
                    run_sucks: 12.0,
                    ..FLOW
                },
                flutter: Sucking {
                    sucks_per_swallow: 15.0,
                    ..FLUTTER
                },
                ejections: 1.6,
                ejections_sd: 1.0,
                first_ejection_ms: 90_000.0,
                flutter_from: (0.5, 0.85),
                ..ESTABLISHED
            },
            Self::Sleepy => Profile {
                quick: Sucking {
                    run_sucks: 7.0,
                    rest_ms: 8_000.0,
                    ..QUICK
                },
                flow: Sucking {
                    run_sucks: 12.0,
                    rest_ms: 6_000.0,
                    ..FLOW
                },
                flutter: Sucking {
                    run_sucks: 4.0,
                    rest_ms: 12_000.0,
                    ..FLUTTER
                },
                ejections: 1.6,
                ejections_sd: 0.8,
                flutter_from: (0.35, 0.6),
                ..ESTABLISHED
            },
            Self::Shallow => Profile {
                flow: Sucking {
                    sucks_per_swallow: 3.8,
                    run_sucks: 12.0,
                    ..FLOW
                },
                ejections: 1.2,
                ejections_sd: 0.9,
                first_ejection_ms: 110_000.0,
                ejection_ms: (45_000.0, 100_000.0),
                comes_off: 0.7,
                ..ESTABLISHED
            },
            // The lower end of the published range, 1.3 sucks a swallow, and the slower rate that
            // goes with faster milk (Hartmann and others 2011).
            Self::FastFlow => Profile {
                flow: Sucking {
                    sucks_per_min: 80.0,
                    sucks_per_swallow: 1.5,
                    ..FLOW
                },
                ejections: 3.0,
                first_ejection_ms: 25_000.0,
                comes_off: 0.5,
                ..ESTABLISHED
            },
            // 2 to 4 sucks a swallow at the breast (as quoted in Matern Health Neonatol Perinatol
            // 2019, 40748-019-0113-9); runs of about 4 s (Hack and others 1985).
            Self::Preterm => Profile {
                quick: Sucking {
                    run_sucks: 6.0,
                    rest_ms: 8_000.0,
                    ..QUICK
                },
                flow: Sucking {
                    sucks_per_swallow: 3.0,
                    run_sucks: 7.0,
                    rest_ms: 8_000.0,
                    ..FLOW
                },
                flutter: Sucking {
                    run_sucks: 4.0,
                    rest_ms: 12_000.0,
                    ..FLUTTER
                },
                ejections: 2.0,
                ejections_sd: 1.0,
                flutter_from: (0.5, 0.8),
                ..ESTABLISHED
            },
        }
    }
}
