//! Learns a feed's own numbers from all of it.
//!
//! 1. Several readings of the feed are tried: the live numbers, a guess, and some that call sucks
//!    flow where swallows lie dense, and flutter from some share of the feed on or where rests do.
//! 2. Each goes through rounds of expectation and maximisation (Dempster, Laird and Rubin 1977,
//!    J R Stat Soc B 39:1): judge every block with the numbers, take the numbers anew.
//! 3. The best go on, with flutter at the end, early, or coming and going, and of those the best
//!    again. Those that fit nearly as well as the best are all kept, weighed by how well they do:
//!    where a feed can be read in two ways, neither is taken for certain.
//!
//! Longer feeds show more in one round, and take fewer.

use super::block::{Blocks, Room, Table};
use super::chain::Sleep;
use super::own::Own;
use super::parameter::{FLOW, FLUTTER, PHASES, QUICK, READINGS_WEIGHT};
use super::suck::{Suck, Sucks};

/// One reading of a feed: its numbers and its weight, weights adding up to one.
pub(super) struct Reading {
    pub(super) own: Own,
    pub(super) weight: f64,
}

/// Where the numbers come from.
pub(super) enum Numbers {
    /// Learnt from the feed, starting from these.
    Learnt(Vec<Own>),
    /// Given: what is looked back over is too short to teach any.
    Given(Own),
}

/// How much work a feed is given.
struct Effort {
    /// No more sucks than this.
    sucks: usize,
    /// Sucks in a block.
    block: u32,
    /// How many of [`CUTS`] are tried.
    cuts: usize,
    /// Rounds for every reading.
    first: usize,
    /// How many go on.
    kept: usize,
    /// What happens to those.
    then: Then,
}

/// How readings that were tried go on.
enum Then {
    /// For so many rounds more: there is nothing to learn of when the baby flutters, or so much that
    /// it does not matter where one begins.
    Rounds(usize),
    /// With every [`Sleep`], and so many of all stay.
    Sleeps(usize),
}

/// By length; the last for all that are longer. Measured: more gains little.
const EFFORTS: [Effort; 4] = [
    Effort {
        sucks: SUCKS_LEAST,
        block: 4,
        cuts: 0,
        first: 1,
        kept: 1,
        then: Then::Rounds(1),
    },
    Effort {
        sucks: 1_800,
        block: 4,
        cuts: 6,
        first: 2,
        kept: 3,
        then: Then::Sleeps(3),
    },
    Effort {
        sucks: 3_000,
        block: 6,
        cuts: 4,
        first: 2,
        kept: 1,
        then: Then::Sleeps(2),
    },
    Effort {
        sucks: usize::MAX,
        block: 16,
        cuts: 1,
        first: 1,
        kept: 1,
        then: Then::Rounds(2),
    },
];

/// Where a reading calls sucks flutter that are not flow.
#[derive(Clone, Copy)]
enum Cut {
    /// From this share of the feed's time on.
    From(f64),
    /// Where rests lie dense.
    ManyRests,
    /// From this share of the feed's time on, and all before it is flow, dense or not.
    FlowUpTo(f64),
}

/// Who flutters from before this share of the feed on fell asleep early.
const HALF: f64 = 0.5;

impl Cut {
    /// When such a feed is taken to flutter at first.
    const fn sleep(self) -> Sleep {
        match self {
            Self::From(from) if from < HALF => Sleep::Early,
            _ => Sleep::AtTheEnd,
        }
    }
}

/// What is tried, in this order.
const CUTS: [Cut; 6] = [
    Cut::From(0.65),
    Cut::From(2.0),
    Cut::From(0.25),
    Cut::From(0.45),
    Cut::ManyRests,
    Cut::FlowUpTo(0.65),
];
/// So many sucks either side are "around", for swallows and for rests.
const AROUND: (usize, usize) = (12, 25);
/// Few and many: these shares of the blocks have less.
const FEW_MANY: (f64, f64) = (0.1, 0.9);
/// A reading's own phase is taken for so probable, the others share the rest.
const TAKEN_FOR: f64 = 0.94;
/// With no more sucks there is nothing to cut.
const SUCKS_LEAST: usize = 29;
/// A reading whose fit is so much worse than the best, as a logarithm, is dropped.
const FAR_BELOW: f64 = 4.0;

/// A reading on its way.
struct Tried {
    own: Own,
    /// The logarithm of how well it fits the feed.
    fit: f64,
    /// The logarithm of how plausible its numbers are.
    plausible: f64,
}

impl Tried {
    fn score(&self) -> f64 {
        self.fit + self.plausible + self.own.sleep.plausible()
    }
}

/// Around which blocks swallows lie dense, and rests among those around which they do not.
struct Dense {
    swallows: Vec<bool>,
    rests: Vec<bool>,
}

impl Dense {
    fn of(blocks: &Blocks, sucks: &[Suck]) -> Self {
        let swallowing = blocks.swallowing(sucks, AROUND.0);
        let resting = blocks.resting(AROUND.1);
        let milk = halfway(swallowing.iter().copied());
        let swallows: Vec<bool> = swallowing.iter().map(|it| milk < *it).collect();
        let no_milk = resting.iter().zip(&swallows).filter(|it| !*it.1);
        let many = halfway(no_milk.map(|it| *it.0));
        Self {
            rests: resting.iter().map(|it| many < *it).collect(),
            swallows,
        }
    }
}

/// Halfway between where they are few and where they are many; above all if they are even.
fn halfway(values: impl Iterator<Item = f64>) -> f64 {
    let mut sorted: Vec<f64> = values.collect();
    sorted.sort_by(f64::total_cmp);
    let most = sorted.len().saturating_sub(1) as f64;
    let at = |share: f64| sorted.get((most * share) as usize).copied();
    match (at(FEW_MANY.0), at(FEW_MANY.1)) {
        (Some(few), Some(many)) if few < many => f64::midpoint(few, many),
        _ => f64::MAX,
    }
}

struct Learning<'a> {
    blocks: &'a Blocks,
    room: Room,
}

impl Learning<'_> {
    /// Judges every block with these numbers; gives how well they fit.
    fn judge(&mut self, own: &Own) -> (f64, Table) {
        let table = self.blocks.table(own);
        (self.blocks.judge(own, &table, &mut self.room), table)
    }

    /// Takes numbers through so many rounds.
    fn rounds(&mut self, mut own: Own, rounds: usize, rate_weight: f64) -> Tried {
        own.rate_weight = rate_weight;
        let mut plausible = 0.0;
        let (mut fit, mut table) = self.judge(&own);
        for _ in 0..rounds {
            let sums = self.blocks.sums(&self.room.phases, &table);
            (own, plausible) = Own::of(&sums, own.sleep);
            own.rate_weight = rate_weight;
            (fit, table) = self.judge(&own);
        }
        Tried {
            own,
            fit,
            plausible,
        }
    }

    /// What the feed shows with these numbers, read with flutter at each time: one round.
    fn each_sleep(&mut self, mut own: Own, rate_weight: f64) -> [Tried; Sleep::ALL.len()] {
        own.rate_weight = rate_weight;
        let (_, table) = self.judge(&own);
        let sums = self.blocks.sums(&self.room.phases, &table);
        let (mut own, plausible) = Own::of(&sums, own.sleep);
        own.rate_weight = rate_weight;
        let table = self.blocks.table(&own);
        Sleep::ALL.map(|sleep| {
            let mut own = own;
            own.sleep = sleep;
            Tried {
                own,
                fit: self.blocks.judge(&own, &table, &mut self.room),
                plausible,
            }
        })
    }

    /// The numbers of a feed cut like this.
    fn cut(&self, cut: Cut, sucks: &[Suck], dense: &Dense, base: &Own) -> Own {
        let (Some(first), Some(last)) = (sucks.first(), sucks.last()) else {
            return *base;
        };
        let all_ms = last.at.since_ms(first.at).max(1) as f64;
        let phases: Vec<[f64; PHASES]> = self
            .blocks
            .firsts()
            .zip(dense.swallows.iter().zip(&dense.rests))
            .map(|(index, (milk, many_rests))| {
                let share = sucks[index].at.since_ms(first.at) as f64 / all_ms;
                let phase = match cut {
                    Cut::FlowUpTo(to) if to < share => FLUTTER,
                    Cut::FlowUpTo(_) => FLOW,
                    _ if *milk => FLOW,
                    Cut::From(from) if from < share => FLUTTER,
                    Cut::ManyRests if *many_rests => FLUTTER,
                    Cut::From(_) | Cut::ManyRests => QUICK,
                };
                let mut shares = [(1.0 - TAKEN_FOR) / 2.0; PHASES];
                shares[phase] = TAKEN_FOR;
                shares
            })
            .collect();
        let sums = self.blocks.sums(&phases, &self.blocks.table(base));
        Own::of(&sums, cut.sleep()).0
    }
}

/// Adds what was tried, unless it reads the feed like one before.
fn add(all: &mut Vec<Tried>, tried: Tried) {
    let known = |it: &Tried| it.own.is_near(&tried.own) && (it.score() - tried.score()).abs() < 1.0;
    if !all.iter().any(known) {
        all.push(tried);
    }
}

fn best_first(all: &mut [Tried]) {
    all.sort_by(|a, b| b.score().total_cmp(&a.score()));
}

/// The plausible readings of a feed, the best first; never none.
pub(super) fn readings(feed: &Sucks, numbers: &Numbers, rest_ms: u64) -> (Vec<Reading>, Blocks) {
    let sucks = &feed.sucks;
    let effort = EFFORTS
        .iter()
        .find(|it| sucks.len() <= it.sucks)
        .unwrap_or(&EFFORTS[EFFORTS.len() - 1]);
    let blocks = Blocks::of(feed, rest_ms, effort.block);
    let readings = match numbers {
        Numbers::Given(own) => vec![Reading {
            own: *own,
            weight: 1.0,
        }],
        Numbers::Learnt(starts) => learnt(sucks, starts, &blocks, effort),
    };
    (readings, blocks)
}

fn learnt(sucks: &[Suck], starts: &[Own], blocks: &Blocks, effort: &Effort) -> Vec<Reading> {
    let base = starts.first().copied().unwrap_or_else(Own::start);
    let mut learning = Learning {
        blocks,
        room: Room::default(),
    };
    let mut rate_weight = base.rate_weight;
    let mut tried = Vec::new();
    for start in starts {
        add(
            &mut tried,
            learning.rounds(*start, effort.first, rate_weight),
        );
    }
    if SUCKS_LEAST < sucks.len() {
        let dense = Dense::of(blocks, sucks);
        for cut in CUTS.iter().take(effort.cuts) {
            let own = learning.cut(*cut, sucks, &dense, &base);
            add(&mut tried, learning.rounds(own, effort.first, rate_weight));
        }
    }
    best_first(&mut tried);
    tried.truncate(effort.kept);
    if let Some(Tried { own, .. }) = tried.first() {
        let (_, table) = learning.judge(own);
        rate_weight = blocks.rate_weight(own, &learning.room.phases, &table);
    }
    let mut kept = Vec::new();
    for Tried { own, .. } in tried {
        match effort.then {
            Then::Rounds(rounds) => add(&mut kept, learning.rounds(own, rounds, rate_weight)),
            Then::Sleeps(_) => {
                for as_sleep in learning.each_sleep(own, rate_weight) {
                    add(&mut kept, as_sleep);
                }
            }
        }
    }
    if let Then::Sleeps(most) = effort.then {
        best_first(&mut kept);
        kept.truncate(most);
    }
    // How plausible they are had its say in choosing them.
    kept.sort_by(|a, b| b.fit.total_cmp(&a.fit));
    let best = kept.first().map_or(0.0, |it| it.fit);
    kept.retain(|it| best - FAR_BELOW < it.fit);
    let weight = |fit: f64| ((fit - best) * READINGS_WEIGHT).exp();
    let all: f64 = kept.iter().map(|it| weight(it.fit)).sum();
    let mut readings: Vec<Reading> = kept
        .iter()
        .map(|it| Reading {
            own: it.own,
            weight: weight(it.fit) / all,
        })
        .collect();
    if readings.is_empty() {
        readings.push(Reading {
            own: base,
            weight: 1.0,
        });
    }
    readings
}
