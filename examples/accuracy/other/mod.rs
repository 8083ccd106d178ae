//! A second simulator, built otherwise than `practice`, so that the report does not flatter what
//! was made with one. It stands on the same published figures and on no line of the other's code.
//!
//! What differs: phases follow the milk and not the clock (flutter comes a while after the last
//! ejection, and the feed ends where it ends); counts of ejections are Poisson, runs negative
//! binomial, rests and waits gamma; the rate drifts with time and not from run to run; a swallow
//! comes by chance, and the fewer the longer an ejection lasts; hands jitter with long tails and
//! look away as often as it happens. Babies differ more, and come in no kinds.

mod baby;
mod chance;
mod hand;
mod order;
mod world;

use feedside::practice::{Hand, Simulated, Sucking};
use feedside::record::At;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use crate::told::{self, Feed, Told};
use chance::Chance;

pub use hand::HANDS;
use world::Order;
pub use world::{PLAIN, World};

fn at(ms: f64) -> At {
    At::ms(ms.round().max(0.0) as u64)
}

/// One feed of a world by a hand, and what an informed pass is told of it.
pub fn feed(world: &World, hand: Hand, seed: u64) -> Feed {
    let world = &world.of_kind(seed);
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed ^ 0x5eed_0002));
    let rate = chance.of_baby(world.sucks_per_min, world.rate_spread);
    let ratio = chance.of_baby(world.sucks_per_swallow, world.ratio_spread);
    let runs = chance.of_baby(world.run_sucks, world.run_spread);
    let rests = chance.of_baby(world.rest_ms, world.rest_spread);
    let own: [Sucking; 3] = std::array::from_fn(|it| Sucking {
        sucks_per_min: rate[it],
        sucks_per_swallow: ratio[it].max(1.3),
        run_sucks: runs[it].max(2.0),
        rest_ms: rests[it].max(3_000.0),
    });
    let (truth, offs) = baby::baby(world, &own, &mut chance);
    let taps = hand::taps(&truth, &offs, hand, &mut chance);
    Feed {
        simulated: Simulated { taps, truth },
        told: told(world, &own, hand),
    }
}

/// A gamma's spread as that of a logarithm, near enough.
fn of_logarithm(spread: f64) -> f64 {
    (1.0 + spread * spread).ln().sqrt()
}

fn told(world: &World, own: &[Sucking; 3], hand: Hand) -> Told {
    // Rests are a least time and a gamma; told by their median and the spread of quick sucks'.
    let spread = |it: &Sucking| {
        of_logarithm((1.0 - baby::REST_MS_LEAST / it.rest_ms) / world.rest_shape.sqrt())
    };
    let last = 1.0 / (1.0 + world.ejections);
    let plain = Told {
        own: own.map(|it| Sucking {
            rest_ms: it.rest_ms * (-0.5 * spread(&it).powi(2)).exp(),
            ..it
        }),
        hand,
        gap_spread: world.gap_spread,
        rate_spread: world.drift_spread,
        rest_spread: spread(&own[0]),
        first_ms: world.first_ms,
        flow_ms: world.ejection_ms * (0.5 * world.ejection_spread.powi(2)).exp(),
        between_ms: f64::midpoint(world.between_ms, world.to_flutter_ms),
        stages: [
            (world.first_shape.round() as usize).clamp(1, 5),
            (world.ejection_spread.powi(-2).round() as usize).clamp(1, 6),
            (world.wait_shape.round() as usize).clamp(1, 2),
        ],
        none: (-world.ejections).exp(),
        again: (1.0 - last) / (1.0 - last * world.tires),
        tires: last * world.tires,
        flutter_ms: (f64::INFINITY, 1.0),
        wakes: told::NEVER,
    };
    match world.order {
        Order::Milk => plain,
        Order::Clock => Told {
            again: 1.0,
            tires: 0.0,
            none: 0.0,
            flutter_ms: order::CLOCK_FLUTTER_MS,
            ..plain
        },
        Order::Chain | Order::Settles => Told {
            none: order::chain::NONE,
            again: order::chain::AGAIN,
            tires: world.tires,
            wakes: if world.order == Order::Settles {
                told::NEVER
            } else {
                (world.flutter_ms, world.wakes)
            },
            flow_ms: world.ejection_ms,
            between_ms: world.between_ms,
            stages: [1; 3],
            ..plain
        },
    }
}
