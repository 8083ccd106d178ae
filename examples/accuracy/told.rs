//! What an informed pass is told of a simulated feed: all that it was drawn from, and nothing of
//! what happened when.

use feedside::practice::{Baby, Hand, Simulated, Sucking, TruthPhase, simulate};

/// The minutes of a feed of `practice`.
pub const MINUTES: u32 = 20;

/// A baby that does not wake up again in a feed: so long in flutter, and no flow after it.
pub const NEVER: (f64, f64) = (1e9, 0.0);

/// A simulated feed with what the informed pass is told.
pub struct Feed {
    pub simulated: Simulated,
    pub told: Told,
}

/// What a feed was drawn from. Times in milliseconds, spreads relative.
pub struct Told {
    /// Quick, flow, flutter; rests by their median.
    pub own: [Sucking; 3],
    pub hand: Hand,
    /// By phase.
    pub gap_spread: [f64; 3],
    /// How far the rate wanders within a phase.
    pub rate_spread: f64,
    pub rest_spread: f64,
    /// Mean time to the first flow, of a flow, and between flows.
    pub first_ms: f64,
    pub flow_ms: f64,
    pub between_ms: f64,
    /// How many stages the time to the first flow, a flow and the time between flows have, of the
    /// same mean: one for a time without memory. At most 5, 6 and 2.
    pub stages: [usize; 3],
    /// The chance that the milk never flows.
    pub none: f64,
    /// The chance that quick sucks after a flow are followed by another and not by flutter.
    pub again: f64,
    /// The chance that flutter follows a flow at once.
    pub tires: f64,
    /// Flutter may set in from here on whatever was before, on average after so long.
    pub flutter_ms: (f64, f64),
    /// Mean time in flutter before the baby wakes up, and the chance that milk then flows.
    pub wakes: (f64, f64),
}

/// The spreads of `practice`: of a gap, of a run's rate, and of rests, which lengthen by half
/// through a feed, on average by a quarter.
const GAP_SPREAD: f64 = 0.11;
const RUN_SPREAD: f64 = 0.05;
const REST_SPREAD: f64 = 0.5;
const REST_LONGER: f64 = 1.25;

/// A feed of `practice`.
pub fn practice(baby: Baby, hand: Hand, seed: u64) -> Feed {
    let simulated = simulate(baby, hand, seed, MINUTES);
    let length_ms = f64::from(MINUTES) * 60_000.0;
    let profile = baby.profile();
    let kinds = [TruthPhase::Quick, TruthPhase::Flow, TruthPhase::Flutter];
    let own = [profile.quick, profile.flow, profile.flutter];
    let own = std::array::from_fn(|at| {
        let way = simulated.truth.ways.iter().find(|it| it.0 == kinds[at]);
        let own = Sucking {
            rest_ms: own[at].rest_ms * REST_LONGER,
            ..own[at]
        };
        way.map_or(own, |(_, way)| Sucking {
            sucks_per_min: way.sucks_per_min,
            sucks_per_swallow: way.sucks_per_swallow,
            ..own
        })
    });
    let (from, to) = profile.flutter_from;
    let flow_ms = f64::midpoint(profile.ejection_ms.0, profile.ejection_ms.1);
    let count = (profile.ejections * length_ms / 960_000.0).max(1.0);
    let between_ms = (length_ms * f64::midpoint(from, to) / count - flow_ms).max(20_000.0) * 1.5;
    Feed {
        told: Told {
            own,
            hand,
            gap_spread: [GAP_SPREAD; 3],
            rate_spread: RUN_SPREAD,
            rest_spread: REST_SPREAD,
            first_ms: profile.first_ejection_ms * 1.1,
            flow_ms,
            between_ms,
            stages: [5, 6, 1],
            none: 0.0,
            again: 1.0,
            tires: 0.0,
            flutter_ms: (
                length_ms * from * 0.8,
                length_ms * (0.5 * (to - from) + 0.25),
            ),
            wakes: NEVER,
        },
        simulated,
    }
}
