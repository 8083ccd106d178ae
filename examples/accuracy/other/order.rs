//! How phases follow each other in a feed of the second simulator.

use super::chance::Chance;
use super::world::{Order, World};

/// An ejection: 45 s to 3.5 min (Gardner and others 2015, BMC Pregnancy Childbirth 15:156), and a
/// feed 5 to 37 minutes (Kent and others 2006, Pediatrics 117:e387, as reported from it).
const EJECTION_MS: (f64, f64) = (45_000.0, 210_000.0);
/// See [`EJECTION_MS`].
pub const FEED_MS: (f64, f64) = (300_000.0, 2_220_000.0);
/// A feed whose length is given beforehand. Common practice.
const GIVEN_MS: (f64, f64) = (540_000.0, 1_500_000.0);
/// The share of a feed by the clock at which flutter sets in.
const FLUTTER_FROM: (f64, f64) = (0.5, 0.9);
/// What an informed pass is told of that: from here on, and after so long on average.
pub const CLOCK_FLUTTER_MS: (f64, f64) = (
    GIVEN_MS.0 * FLUTTER_FROM.0,
    0.5 * (GIVEN_MS.0 + GIVEN_MS.1) * (FLUTTER_FROM.0 + FLUTTER_FROM.1) * 0.5
        - GIVEN_MS.0 * FLUTTER_FROM.0,
);

/// Where a phase of a chain without memory leads. Common practice.
pub mod chain {
    /// From the first quick sucks to flutter, and not to flow.
    pub const NONE: f64 = 0.1;
    /// From later quick sucks to flow, and not to flutter.
    pub const AGAIN: f64 = 0.65;
}

/// Phases one after another: index (quick, flow, flutter), from, to.
#[derive(Default)]
struct Phases(Vec<(usize, f64, f64)>);

impl Phases {
    fn end_ms(&self) -> f64 {
        self.0.last().map_or(0.0, |it| it.2)
    }

    fn add(&mut self, phase: usize, ms: f64) {
        let now = self.end_ms();
        self.0.push((phase, now, now + ms));
    }

    /// Ends where the feed ends.
    fn until(mut self, end_ms: f64) -> Self {
        self.0.retain(|it| it.1 < end_ms);
        if let Some(last) = self.0.last_mut() {
            last.2 = end_ms;
        }
        self
    }
}

/// The phases of one feed: index (quick, flow, flutter), from, to.
pub fn phases(world: &World, chance: &mut Chance) -> Vec<(usize, f64, f64)> {
    match world.order {
        Order::Milk => milk(world, chance).0,
        Order::Clock => clock(world, chance).0,
        Order::Chain | Order::Settles => chained(world, chance).0,
    }
}

/// The ejections, each after some quick sucks.
fn ejections(world: &World, chance: &mut Chance) -> Phases {
    let mut phases = Phases::default();
    for order in 0..chance.count(world.ejections) {
        let wait = if order == 0 {
            chance.gamma(world.first_ms, world.first_shape)
        } else {
            chance.gamma(world.between_ms, world.wait_shape)
        };
        phases.add(0, wait);
        let flow = chance.near(world.ejection_ms, world.ejection_spread);
        phases.add(1, flow.clamp(EJECTION_MS.0, EJECTION_MS.1));
    }
    phases
}

fn milk(world: &World, chance: &mut Chance) -> Phases {
    let mut phases = ejections(world, chance);
    // No chance is drawn where nobody tires: the feeds of the second simulator stay what they were.
    let at_once = world.tires != 0.0 && chance.share() < world.tires;
    if !at_once || phases.0.is_empty() {
        phases.add(0, chance.gamma(world.to_flutter_ms, world.wait_shape));
    }
    phases.add(2, chance.gamma(world.flutter_ms, world.wait_shape));
    let short = FEED_MS.0 - phases.end_ms();
    if let Some(last) = phases.0.last_mut()
        && 0.0 < short
    {
        last.2 += short;
    }
    phases.0.retain(|it| it.1 < FEED_MS.1);
    phases
}

fn clock(world: &World, chance: &mut Chance) -> Phases {
    let (least, most) = GIVEN_MS;
    let end_ms = least + (most - least) * chance.share();
    let (from, to) = FLUTTER_FROM;
    let flutter_ms = end_ms * (from + (to - from) * chance.share());
    let mut phases = ejections(world, chance);
    phases.add(0, most);
    let mut phases = phases.until(flutter_ms);
    phases.add(2, end_ms - flutter_ms);
    phases
}

fn chained(world: &World, chance: &mut Chance) -> Phases {
    let (least, most) = GIVEN_MS;
    let end_ms = least + (most - least) * chance.share();
    let mut phases = Phases::default();
    let (mut phase, mut first) = (0, true);
    while phases.end_ms() < end_ms {
        let mean_ms = match phase {
            0 if first => world.first_ms,
            0 => world.between_ms,
            1 => world.ejection_ms,
            _ => world.flutter_ms,
        };
        phases.add(phase, chance.gamma(mean_ms, 1.0));
        let draw = chance.share();
        let either = |share, yes, no| if draw < share { yes } else { no };
        phase = match phase {
            0 if first => either(chain::NONE, 2, 1),
            0 => either(chain::AGAIN, 1, 2),
            1 => either(world.tires, 2, 0),
            _ if world.order == Order::Settles => 2,
            _ => either(world.wakes, 1, 0),
        };
        first = false;
    }
    phases.until(end_ms)
}
