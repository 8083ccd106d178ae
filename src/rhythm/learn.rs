//! Learns a feed's own numbers from all of it.
//!
//! 1. Several readings of the feed are tried: the live numbers, a guess, and some that call sucks
//!    flow where swallows lie dense and flutter from some share of the feed on.
//! 2. Each goes through rounds of expectation and maximisation (Dempster, Laird and Rubin 1977,
//!    J R Stat Soc B 39:1): judge every block with the numbers, take the numbers anew.
//! 3. The best go on, as each kind of feeding; and of those the best again. Those that stay
//!    plausible are all kept, weighed by how well they fit: where a feed can be read in two ways,
//!    neither is taken for certain.
//!
//! Longer feeds show more in one round, and take fewer.

use super::block::{Blocks, Room, Table};
use super::kind::{ASLEEP_EARLY, KINDS, USUAL};
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
    /// How many of these go on when each was tried as every kind; not asked where there is nothing
    /// to learn, or so much that the kind no longer matters.
    of_kinds: Option<usize>,
    /// Rounds for those.
    more: usize,
}

/// By length; the last for all that are longer. Measured: more gains little.
const EFFORTS: [Effort; 4] = [
    Effort {
        sucks: SUCKS_LEAST,
        block: 4,
        cuts: 0,
        first: 1,
        kept: 1,
        of_kinds: None,
        more: 1,
    },
    Effort {
        sucks: 1_800,
        block: 4,
        cuts: 5,
        first: 2,
        kept: 3,
        of_kinds: Some(3),
        more: 3,
    },
    Effort {
        sucks: 3_000,
        block: 6,
        cuts: 4,
        first: 1,
        kept: 1,
        of_kinds: Some(2),
        more: 3,
    },
    Effort {
        sucks: usize::MAX,
        block: 16,
        cuts: 1,
        first: 1,
        kept: 1,
        of_kinds: None,
        more: 2,
    },
];

/// Where a reading calls sucks flutter that are not flow.
#[derive(Clone, Copy)]
enum Cut {
    /// From this share of the feed's time on.
    From(f64),
    /// In runs of no more sucks than this.
    ShortRuns(u32),
}

/// Who flutters from before this share of the feed on fell asleep early.
const HALF: f64 = 0.5;

impl Cut {
    /// The kind of feeding that such a feed is read as at first.
    const fn kind(self) -> usize {
        match self {
            Self::From(from) if from < HALF => ASLEEP_EARLY,
            _ => USUAL,
        }
    }
}

/// What is tried, in this order.
const CUTS: [Cut; 5] = [
    Cut::From(0.65),
    Cut::From(2.0),
    Cut::From(0.25),
    Cut::From(0.45),
    Cut::ShortRuns(6),
];
/// Swallows are dense where more of the sucks around carry one than halfway between where they
/// are few and where they are many.
const DENSE: f64 = 0.5;
/// So many sucks either side are "around".
const AROUND: usize = 12;
/// Few and many: these shares of the blocks have less.
const FEW_MANY: (f64, f64) = (0.1, 0.9);
/// A reading's own phase is taken for so probable, the others share the rest.
const TAKEN_FOR: f64 = 0.94;
/// With no more sucks there is nothing to cut.
const SUCKS_LEAST: usize = 29;
/// A reading whose fit is so much worse than the best, as a logarithm, is dropped.
const FAR_BELOW: f64 = 4.0;

/// A reading on its way: its numbers and the logarithm of how well they fit.
type Tried = (Own, f64);

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
            (own, plausible) = Own::of(&sums, own.kind);
            own.rate_weight = rate_weight;
            (fit, table) = self.judge(&own);
        }
        (own, fit + plausible)
    }

    /// What the feed shows with these numbers, read as each kind: one round, judged once for all.
    fn each_kind(&mut self, mut own: Own, rate_weight: f64) -> [Tried; KINDS.len()] {
        own.rate_weight = rate_weight;
        let (_, table) = self.judge(&own);
        let sums = self.blocks.sums(&self.room.phases, &table);
        std::array::from_fn(|kind| {
            let (mut own, plausible) = Own::of(&sums, kind);
            own.rate_weight = rate_weight;
            (own, self.judge(&own).0 + plausible)
        })
    }

    /// The numbers of a feed cut like this.
    fn cut(&self, cut: Cut, sucks: &[Suck], swallowing: &[f64], base: &Own) -> Own {
        let mut sorted = swallowing.to_vec();
        sorted.sort_by(f64::total_cmp);
        let at = |share: f64| sorted[((sorted.len() - 1) as f64 * share) as usize];
        let (few, many) = (at(FEW_MANY.0), at(FEW_MANY.1));
        let dense = few + DENSE * (many - few);
        let (Some(first), Some(last)) = (sucks.first(), sucks.last()) else {
            return *base;
        };
        let all_ms = last.at.since_ms(first.at).max(1) as f64;
        let lengths = self.blocks.run_sucks();
        let phases: Vec<[f64; PHASES]> = self
            .blocks
            .firsts()
            .zip(lengths)
            .zip(swallowing)
            .map(|((index, run_sucks), around)| {
                let share = sucks[index].at.since_ms(first.at) as f64 / all_ms;
                let flutter = match cut {
                    Cut::From(from) => from < share,
                    Cut::ShortRuns(most) => run_sucks <= most,
                };
                let phase = if dense < *around && few < many {
                    FLOW
                } else if flutter {
                    FLUTTER
                } else {
                    QUICK
                };
                let mut shares = [(1.0 - TAKEN_FOR) / 2.0; PHASES];
                shares[phase] = TAKEN_FOR;
                shares
            })
            .collect();
        let sums = self.blocks.sums(&phases, &self.blocks.table(base));
        Own::of(&sums, cut.kind()).0
    }
}

/// Adds what was tried, unless it reads the feed like one before.
fn add(all: &mut Vec<Tried>, tried: Tried) {
    let known = |it: &Tried| it.0.is_near(&tried.0) && (it.1 - tried.1).abs() < 1.0;
    if !all.iter().any(known) {
        all.push(tried);
    }
}

fn best_first(all: &mut [Tried]) {
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
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
        let swallowing = blocks.swallowing(sucks, AROUND);
        for cut in CUTS.iter().take(effort.cuts) {
            let own = learning.cut(*cut, sucks, &swallowing, &base);
            add(&mut tried, learning.rounds(own, effort.first, rate_weight));
        }
    }
    best_first(&mut tried);
    tried.truncate(effort.kept);
    if let Some((own, _)) = tried.first() {
        let (_, table) = learning.judge(own);
        rate_weight = blocks.rate_weight(own, &learning.room.phases, &table);
    }
    if let Some(of_kinds) = effort.of_kinds {
        for (own, _) in std::mem::take(&mut tried) {
            for as_kind in learning.each_kind(own, rate_weight) {
                add(&mut tried, as_kind);
            }
        }
        best_first(&mut tried);
        tried.truncate(of_kinds);
    }
    let mut kept = Vec::new();
    for (own, _) in tried {
        add(&mut kept, learning.rounds(own, effort.more, rate_weight));
    }
    best_first(&mut kept);
    let best = kept.first().map_or(0.0, |it| it.1);
    kept.retain(|it| best - FAR_BELOW < it.1);
    let weight = |fit: f64| ((fit - best) * READINGS_WEIGHT).exp();
    let all: f64 = kept.iter().map(|it| weight(it.1)).sum();
    let mut readings: Vec<Reading> = kept
        .iter()
        .map(|(own, fit)| Reading {
            own: *own,
            weight: weight(*fit) / all,
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
