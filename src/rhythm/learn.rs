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

use super::block::Blocks;
use super::chain::Sleep;
use super::first_reading::{CUTS, Cut, Dense};
use super::judge_block::Room;
use super::own::{Gaps, Own};
use super::parameter::{
    PACE_PLAUSIBLE, PACE_SPREADS, RATE_WEIGHT_FIRST, RATE_WEIGHT_PACED, READINGS_WEIGHT,
};
use super::suck::Sucks;

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
    /// How the evidence of gaps is taken.
    gaps: GapEffort,
    /// What happens to those.
    then: Then,
}

/// How the evidence of gaps is taken.
#[derive(Clone, Copy, PartialEq, Eq)]
enum GapEffort {
    /// Each gap for itself.
    Each,
    /// With those before it in its run.
    Series,
    /// So too, and runs may differ in pace.
    Paces,
}

impl GapEffort {
    /// Taken to such a power, where all runs have the same pace.
    const fn to(self, power: f64) -> Gaps {
        match self {
            Self::Each => Gaps::each(power),
            Self::Series | Self::Paces => Gaps::even(power),
        }
    }
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
        gaps: GapEffort::Series,
        then: Then::Rounds(1),
    },
    Effort {
        sucks: 1_800,
        block: 4,
        cuts: 6,
        first: 2,
        kept: 3,
        gaps: GapEffort::Paces,
        then: Then::Sleeps(3),
    },
    Effort {
        sucks: 3_000,
        block: 6,
        cuts: 4,
        first: 2,
        kept: 1,
        gaps: GapEffort::Series,
        then: Then::Sleeps(2),
    },
    Effort {
        sucks: usize::MAX,
        block: 16,
        cuts: 1,
        first: 1,
        kept: 1,
        gaps: GapEffort::Each,
        then: Then::Rounds(2),
    },
];

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

struct Learning<'a> {
    blocks: &'a Blocks<'a>,
    room: Room,
}

impl Learning<'_> {
    /// Judges every block with these numbers; gives how well they fit.
    fn judge(&mut self, own: &Own) -> f64 {
        self.blocks.judge(own, &mut self.room)
    }

    /// What the feed shows, as last judged with these numbers; and the logarithm of how plausible that is.
    fn shown(&self, own: &Own, gaps: Gaps) -> (Own, f64) {
        let sums = self.blocks.sums(own, &self.room.judged);
        let (mut shown, plausible) = Own::of(&sums, own.sleep);
        shown.gaps = gaps;
        (shown, plausible)
    }

    /// Takes numbers through so many rounds.
    fn rounds(&mut self, mut own: Own, rounds: usize, gaps: Gaps) -> Tried {
        own.gaps = gaps;
        let mut plausible = 0.0;
        let mut fit = self.judge(&own);
        for _ in 0..rounds {
            (own, plausible) = self.shown(&own, gaps);
            fit = self.judge(&own);
        }
        Tried {
            own,
            fit,
            plausible,
        }
    }

    /// What the feed shows with these numbers, read with flutter at each time: one round.
    fn each_sleep(&mut self, mut own: Own, gaps: Gaps) -> [Tried; Sleep::ALL.len()] {
        own.gaps = gaps;
        self.judge(&own);
        let (own, plausible) = self.shown(&own, gaps);
        Sleep::ALL.map(|sleep| {
            let mut own = own;
            own.sleep = sleep;
            Tried {
                own,
                fit: self.judge(&own),
                plausible,
            }
        })
    }

    /// How the evidence of gaps is to be taken: with paces of runs that spread as far as fits these
    /// numbers best, or, where paces are left out, as far as the rate does not wander.
    fn gaps(&mut self, own: &Own, effort: GapEffort) -> Gaps {
        if effort != GapEffort::Paces {
            self.judge(own);
            return effort.to(self.blocks.rate_weight(own, &self.room.judged));
        }
        let mut best = (f64::MIN, Gaps::even(RATE_WEIGHT_PACED));
        let mut plausible = 0.0;
        for pace_spread in PACE_SPREADS {
            let mut gaps = Gaps::even(RATE_WEIGHT_PACED);
            gaps.pace_spread = pace_spread;
            let mut own = *own;
            own.gaps = gaps;
            let score = self.judge(&own) + plausible;
            if best.0 < score {
                best = (score, gaps);
            }
            plausible -= PACE_PLAUSIBLE;
        }
        best.1
    }

    /// The numbers of a feed cut like this.
    fn cut(&self, cut: Cut, dense: &Dense, base: &Own) -> Own {
        let judged = cut.judged(self.blocks, dense);
        Own::of(&self.blocks.sums(base, &judged), cut.sleep()).0
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
pub(super) fn readings<'a>(
    feed: &'a Sucks,
    numbers: &Numbers,
    rest_ms: u64,
) -> (Vec<Reading>, Blocks<'a>) {
    let sucks = feed.sucks.len();
    let effort = EFFORTS
        .iter()
        .find(|it| sucks <= it.sucks)
        .unwrap_or(&EFFORTS[EFFORTS.len() - 1]);
    let blocks = Blocks::of(feed, rest_ms, effort.block);
    let readings = match numbers {
        Numbers::Given(own) => vec![Reading {
            own: *own,
            weight: 1.0,
        }],
        Numbers::Learnt(starts) => learnt(starts, &blocks, effort),
    };
    (readings, blocks)
}

fn learnt(starts: &[Own], blocks: &Blocks<'_>, effort: &Effort) -> Vec<Reading> {
    let base = starts.first().copied().unwrap_or_else(Own::start);
    let mut learning = Learning {
        blocks,
        room: Room::default(),
    };
    let mut gaps = effort.gaps.to(RATE_WEIGHT_FIRST);
    let mut tried = Vec::new();
    for start in starts {
        add(&mut tried, learning.rounds(*start, effort.first, gaps));
    }
    if SUCKS_LEAST < blocks.sucks.len() {
        let dense = Dense::of(blocks);
        for cut in CUTS.iter().take(effort.cuts) {
            let own = learning.cut(*cut, &dense, &base);
            add(&mut tried, learning.rounds(own, effort.first, gaps));
        }
    }
    best_first(&mut tried);
    tried.truncate(effort.kept);
    if let Some(Tried { own, .. }) = tried.first() {
        gaps = learning.gaps(own, effort.gaps);
    }
    let mut kept = Vec::new();
    for Tried { own, .. } in tried {
        match effort.then {
            Then::Rounds(rounds) => add(&mut kept, learning.rounds(own, rounds, gaps)),
            Then::Sleeps(_) => {
                for as_sleep in learning.each_sleep(own, gaps) {
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
