//! The values that the analysis gives, live and afterwards. No arithmetic of its own.

use serde::{Deserialize, Serialize};

use crate::record::{At, words};

words!(
    /// What the baby is doing, as a description for the specialist.
    Phase {
        /// Quick sucks, few swallows: before the milk flows.
        Quick = "quick",
        /// Milk flowing: slower, deeper, swallows with every few sucks.
        Flow = "flow",
        /// Flutter at the sleepy end.
        Flutter = "flutter",
        /// Resting between runs.
        Rest = "rest",
        /// Off the breast.
        Off = "off",
        /// Nobody looked.
        Unwatched = "unwatched",
    }
);

impl Phase {
    /// Whether sucks lie in it.
    pub const fn is_sucking(self) -> bool {
        matches!(self, Self::Quick | Self::Flow | Self::Flutter)
    }
}

words!(
    /// A reason to trust a number less.
    Doubt {
        /// Fewer swallows than an interval needs.
        FewSwallows = "few_swallows",
        /// Fewer sucks than a rate needs.
        FewSucks = "few_sucks",
        /// A large share of the feed was not watched.
        LongUnwatched = "long_unwatched",
        /// Taps faster than a hand or a jaw goes: doubled taps.
        TooFast = "too_fast",
        /// Taps whose times went back; they were put where they belong.
        OutOfOrder = "out_of_order",
        /// Touches that the screen could not resolve.
        UnresolvedTouches = "unresolved_touches",
        /// Long stretches with no tap at all: resting, or nobody tapped.
        LongSilence = "long_silence",
        /// The phases before and after are close to a coin's toss.
        PhasesUnsure = "phases_unsure",
    }
);

/// A 95 % interval.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Interval {
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
}

/// A value and its 95 % interval. What the interval is for:
/// - of a phase, the baby's way of sucking in it, of which the runs seen are a sample;
/// - of the whole feed, what the baby did from the first tap to the last while on the breast, the
///   time that nobody watched included.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Rate {
    /// The estimate.
    pub value: f64,
    /// Lower end of its 95 % interval.
    pub low: f64,
    /// Upper end of its 95 % interval.
    pub high: f64,
}

/// A stretch of one phase: `from` included, `to` not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhaseSpan {
    /// Its start.
    pub from: At,
    /// Its end.
    pub to: At,
    /// Which phase.
    pub phase: Phase,
    /// How probable, 0 to 1, the mean over the stretch.
    pub probability: f64,
}

/// Sucks without a long gap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Run {
    /// Its first suck.
    pub from: At,
    /// Just after its last suck.
    pub to: At,
    /// Jaw movements.
    pub sucks: u32,
    /// Swallows.
    pub swallows: u32,
}

/// Milliseconds in each phase; they add up to the time from the first tap to the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TotalsMs {
    /// Quick sucks.
    pub quick: u64,
    /// Milk flowing.
    pub flow: u64,
    /// Flutter.
    pub flutter: u64,
    /// Resting.
    pub rest: u64,
    /// Off the breast.
    pub off: u64,
    /// Unwatched.
    pub unwatched: u64,
}

impl TotalsMs {
    /// The total of one phase.
    pub const fn of(&self, phase: Phase) -> u64 {
        match phase {
            Phase::Quick => self.quick,
            Phase::Flow => self.flow,
            Phase::Flutter => self.flutter,
            Phase::Rest => self.rest,
            Phase::Off => self.off,
            Phase::Unwatched => self.unwatched,
        }
    }

    /// The total of one phase, to be changed.
    pub const fn of_mut(&mut self, phase: Phase) -> &mut u64 {
        match phase {
            Phase::Quick => &mut self.quick,
            Phase::Flow => &mut self.flow,
            Phase::Flutter => &mut self.flutter,
            Phase::Rest => &mut self.rest,
            Phase::Off => &mut self.off,
            Phase::Unwatched => &mut self.unwatched,
        }
    }
}

/// The rates of one sucking phase; `None` where there is too little to say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PhaseRates {
    /// Which phase; `None` for the whole feed.
    pub phase: Option<Phase>,
    /// Sucks per minute within runs.
    pub sucks_per_min: Option<Rate>,
    /// Sucks per swallow.
    pub sucks_per_swallow: Option<Rate>,
}

/// Statistics of the runs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RunStatistics {
    /// How many.
    pub count: u32,
    /// Median sucks per run.
    pub median_sucks: f64,
    /// Median length in milliseconds.
    pub median_ms: f64,
    /// Interquartile range of the length in milliseconds.
    pub spread_ms: f64,
}

/// Statistics of the rests.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RestStatistics {
    /// How many.
    pub count: u32,
    /// Median length in milliseconds.
    pub median_ms: f64,
    /// Interquartile range of the length in milliseconds.
    pub spread_ms: f64,
}

/// What was computed where the specialist's word won over it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Computed {
    /// When milk flowing first began.
    pub first_flow: Option<At>,
    /// Phases; they tile the time from the first tap to the last.
    pub phases: Vec<PhaseSpan>,
}

/// All that is said of one feed, with the doubts.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Summary {
    /// Time watched and on the breast or off it: all but the unwatched.
    pub watched_ms: u64,
    /// Jaw movements.
    pub sucks: u32,
    /// Swallows, with a suck or alone.
    pub swallows: u32,
    /// When milk flowing first began.
    pub first_flow: Option<At>,
    /// Phases; they tile the time from the first tap to the last.
    pub phases: Vec<PhaseSpan>,
    /// Where the specialist moved a boundary, the phases as they were computed; else none.
    pub computed: Option<Computed>,
    /// Runs in order.
    pub runs: Vec<Run>,
    /// Time in each phase.
    pub totals_ms: TotalsMs,
    /// Rates of quick, flow and flutter where they occur, and of the whole feed.
    pub rates: Vec<PhaseRates>,
    /// Flow episodes: how many separate stretches of milk flowing.
    pub flow_episodes: u32,
    /// Share of watched time on the breast spent sucking, 0 to 1.
    pub share_sucking: Option<f64>,
    /// The runs' statistics.
    pub run_statistics: RunStatistics,
    /// The rests' statistics.
    pub rest_statistics: RestStatistics,
    /// Reasons to trust it less, in the order of [`Doubt::ALL`].
    pub doubts: Vec<Doubt>,
}

impl Summary {
    /// The phase at a time; `None` before the first tap and from the last on.
    pub fn phase_at(&self, at: At) -> Option<Phase> {
        self.span_at(at).map(|it| it.phase)
    }

    /// The same with where it begins and ends, and how probable it is.
    pub fn span_at(&self, at: At) -> Option<&PhaseSpan> {
        let next = self.phases.partition_point(|span| span.from <= at);
        self.phases
            .get(next.checked_sub(1)?)
            .filter(|it| at < it.to)
    }
}

/// What the bedside screen shows while the feed runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Live {
    /// The phase now.
    pub phase: Phase,
    /// Since when.
    pub since: At,
    /// How probable, 0 to 1.
    pub probability: f64,
    /// Sucks per minute over the last run or so; `None` with too few.
    pub sucks_per_min: Option<f64>,
    /// Sucks per swallow over the last minute or so; `None` with too few.
    pub sucks_per_swallow: Option<f64>,
    /// Sucks in the run now, or in the last one while resting.
    pub run_sucks: u32,
    /// Milliseconds of the rest now; zero while sucking.
    pub rest_ms: u64,
    /// Sucks so far.
    pub sucks: u32,
    /// Swallows so far.
    pub swallows: u32,
}
