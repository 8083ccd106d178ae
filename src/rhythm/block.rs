//! A feed in blocks of a few sucks, for learning its numbers quickly: within a block the phase is
//! taken as one. Knows how blocks fit the phases and what they add up to; not how the feed's
//! numbers are drawn from that.

use super::chain::{self, STAGES, Sleep, Stages, Steps};
use super::evidence;
use super::gap_class::GapClass;
use super::own::{Own, Sums};
use super::parameter::{
    FLUTTER_FEED_MS_LEAST, FLUTTER_PARTS, GAP_SPREAD, PHASES, QUICK, RATE_WEIGHT_PACED,
};
use super::suck::{Suck, Sucks};
use super::watch::Before;
use crate::record::At;

/// As fine as a gap is told when a feed's numbers are learnt.
type Coarse = GapClass<20>;

/// The parts of a feed, from which on flutter sets in more readily.
pub(super) struct Parts {
    from: [At; FLUTTER_PARTS.len()],
    /// The part that a feed ended in, and how long after its last suck, in milliseconds.
    ended: Option<(usize, u64)>,
}

impl Parts {
    /// For a feed of these sucks.
    pub(super) fn of(Sucks { sucks, ended, .. }: &Sucks) -> Self {
        let first = sucks.first().map_or(At::START, |it| it.at);
        let all_ms = sucks
            .last()
            .map_or(0, |last| last.at.since_ms(first))
            .max(FLUTTER_FEED_MS_LEAST) as f64;
        let mut parts = Self {
            from: FLUTTER_PARTS.map(|share| first.plus_ms((all_ms * share) as u64)),
            ended: None,
        };
        if let (Some(end), Some(last)) = (ended, sucks.last()) {
            parts.ended = Some((parts.at(*end), end.since_ms(last.at)));
        }
        parts
    }

    /// How well it fits each stage that the feed ends where it does.
    pub(super) fn end(&self, sleep: Sleep) -> Stages {
        self.ended.map_or([1.0; STAGES], |(part, after_ms)| {
            chain::ends(part, sleep, after_ms)
        })
    }

    /// The part that a time lies in, from 0.
    pub(super) fn at(&self, at: At) -> usize {
        self.from.iter().filter(|from| **from < at).count()
    }
}

/// A few sucks in a row, all of one run.
pub(super) struct Block {
    /// What came before its first suck.
    pub(super) before: Before,
    /// Whether that was a gap within a run.
    pub(super) goes_on: bool,
    /// The indices of its sucks: from, to and not with it.
    sucks: (u32, u32),
    /// Sucks in it with no swallow, one, and more.
    pub(super) swallows: [f64; 3],
    /// The time from the block before.
    pub(super) steps: Steps,
    /// The part of the feed that it lies in.
    pub(super) part: usize,
}

impl Block {
    /// The indices of its sucks.
    pub(super) fn range(&self) -> std::ops::Range<usize> {
        self.sucks.0 as usize..self.sucks.1 as usize
    }

    /// The rest before it.
    pub(super) fn rest_ms(&self) -> Option<f64> {
        match self.before {
            Before::Gap(ms) if !self.goes_on => Some(ms as f64),
            _ => None,
        }
    }
}

/// A block as judged.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Judged {
    /// The probability of each phase.
    pub(super) phases: [f64; PHASES],
    /// The pace of its run, expected, as a logarithm.
    pub(super) pace_ln: f64,
}

/// A feed in blocks.
pub(super) struct Blocks<'a> {
    pub(super) sucks: &'a [Suck],
    pub(super) blocks: Vec<Block>,
    pub(super) parts: Parts,
    pub(super) rest_ms: u64,
}

impl<'a> Blocks<'a> {
    /// Blocks of at most so many sucks.
    pub(super) fn of(feed: &'a Sucks, rest_ms: u64, most: u32) -> Self {
        let parts = Parts::of(feed);
        let sucks = &feed.sucks;
        let mut blocks: Vec<Block> = Vec::new();
        let mut passed_ms = 0.0;
        for (index, suck) in sucks.iter().enumerate() {
            let goes_on = suck.before.within(rest_ms).is_some();
            let index = index as u32;
            let joins = goes_on
                && blocks
                    .last()
                    .is_some_and(|last| last.sucks.1 - last.sucks.0 < most);
            if !joins {
                passed_ms = 0.0;
                blocks.push(Block {
                    before: suck.before,
                    goes_on,
                    sucks: (index, index),
                    swallows: [0.0; 3],
                    steps: Steps::of(0.0),
                    part: parts.at(suck.at),
                });
            }
            passed_ms += suck.before.ms().unwrap_or(0) as f64;
            if let Some(block) = blocks.last_mut() {
                block.sucks.1 = index + 1;
                block.swallows[usize::from(suck.swallows.min(2))] += 1.0;
                block.steps = Steps::of(passed_ms);
            }
        }
        Self {
            sucks,
            blocks,
            parts,
            rest_ms,
        }
    }

    /// What the feed shows, with every block shared out over the phases as judged with these numbers.
    pub(super) fn sums(&self, own: &Own, judged: &[Judged]) -> Sums {
        let mut sums = Sums::default();
        let mut of_class = vec![[0.0; PHASES]; Coarse::COUNT];
        let mut before = [0.0; PHASES];
        let mut last_departure = None;
        for (block, Judged { phases, pace_ln }) in self.blocks.iter().zip(judged) {
            let range = block.range();
            sums.add_sucks(
                phases,
                range.len() as f64,
                block.swallows[1] + block.swallows[2],
            );
            if let Some(ms) = block.rest_ms() {
                sums.add_rest(&before, ms);
            }
            let within = range.len() as f64 - 1.0;
            for phase in 0..PHASES {
                let first = if block.goes_on { before[phase] } else { 0.0 };
                sums.followed[phase] += first + within * phases[phase];
            }
            let phase = super::label::most(phases);
            let pace = (-pace_ln).exp();
            for suck in &self.sucks[range] {
                let Some(ms) = suck.before.within(self.rest_ms) else {
                    last_departure = None;
                    continue;
                };
                let at_own_pace_ms = ms as f64 * pace;
                for (sum, share) in of_class[Coarse::of(at_own_pace_ms)].iter_mut().zip(phases) {
                    *sum += share;
                }
                let departure = at_own_pace_ms / own.gap_ms[phase] - 1.0;
                let is_one_suck = departure.abs() < ONE_SUCK_SPREADS * own.gap_spread[phase];
                if let (Some(last), true) = (last_departure, is_one_suck) {
                    sums.add_neighbours(last, departure);
                }
                last_departure = is_one_suck.then_some(departure);
            }
            before = *phases;
        }
        for (class, shares) in of_class.iter().enumerate() {
            if *shares != [0.0; PHASES] {
                let gap_ms = Coarse::middle_ms(class);
                let fits = std::array::from_fn(|phase| evidence::gap(own, phase, gap_ms));
                sums.add_gaps(shares, gap_ms, &fits);
            }
        }
        sums
    }

    /// How much of the rate's evidence stands on its own: single gaps' variance over that of sums
    /// of up to [`WANDER_GAPS`]. Below one, the rate wanders and gaps repeat each other.
    pub(super) fn rate_weight(&self, own: &Own, judged: &[Judged]) -> f64 {
        let start = WANDER_START * GAP_SPREAD * GAP_SPREAD;
        let (mut single, mut summed) = (start, start / WANDER_WEIGHT);
        let (mut sum, mut squares, mut count) = (0.0, 0.0, 0);
        let mut last = QUICK;
        for (block, Judged { phases, .. }) in self.blocks.iter().zip(judged) {
            let phase = super::label::most(phases);
            if !block.goes_on || phase != last || WANDER_GAPS <= count {
                if WANDER_GAPS_LEAST <= count {
                    summed += sum * sum;
                    single += squares;
                }
                (sum, squares, count) = (0.0, 0.0, 0);
            }
            last = phase;
            for suck in &self.sucks[block.range()] {
                if let Some(ms) = suck.before.within(self.rest_ms) {
                    let gaps = ms as f64 / own.gap_ms[phase];
                    let spans = gaps.round().max(1.0);
                    let departure = ((gaps - spans) / spans.sqrt()).clamp(-0.5, 0.5);
                    sum += departure;
                    squares += departure * departure;
                    count += 1;
                }
            }
        }
        (single / summed).clamp(WANDER_WEIGHT_LEAST, RATE_WEIGHT_PACED)
    }

    /// The share of sucks with a swallow in a window of so many either side of each block's middle.
    pub(super) fn swallowing(&self, half: usize) -> Vec<f64> {
        let swallows = self.sucks.iter().map(|it| f64::from(it.swallows.min(1)));
        self.around(half, swallows)
    }

    /// The same of sucks after a rest.
    pub(super) fn resting(&self, half: usize) -> Vec<f64> {
        let mut rests = vec![0.0; self.sucks.len()];
        for block in self.blocks.iter().filter(|it| it.rest_ms().is_some()) {
            rests[block.sucks.0 as usize] = 1.0;
        }
        self.around(half, rests.into_iter())
    }

    /// The mean of the sucks' values in a window of so many either side of each block's middle.
    fn around(&self, half: usize, values: impl Iterator<Item = f64>) -> Vec<f64> {
        let count = self.sucks.len();
        let mut sum = Vec::with_capacity(count + 1);
        sum.push(0.0);
        sum.extend(values.scan(0.0, |so_far, it| {
            *so_far += it;
            Some(*so_far)
        }));
        self.blocks
            .iter()
            .map(|block| {
                let middle = (block.sucks.0 + block.sucks.1) as usize / 2;
                let from = middle.saturating_sub(half);
                let to = (middle + half + 1).min(count);
                (sum[to] - sum[from]) / (to - from).max(1) as f64
            })
            .collect()
    }

    /// The first suck of each block.
    pub(super) fn firsts(&self) -> impl Iterator<Item = usize> {
        self.blocks.iter().map(|it| it.sucks.0 as usize)
    }
}

/// Over so many gaps of one run the rate is asked whether it wanders: about as many as it takes
/// to tell two phases apart. Common practice.
const WANDER_GAPS: u32 = 12;
/// With fewer gaps it is not asked.
const WANDER_GAPS_LEAST: u32 = 4;
/// What is taken before a feed has shown it: see [`super::parameter::RATE_WEIGHT`].
const WANDER_WEIGHT: f64 = super::parameter::RATE_WEIGHT;
/// How many gaps that is worth.
const WANDER_START: f64 = 100.0;
/// The least that is taken.
const WANDER_WEIGHT_LEAST: f64 = 0.25;
/// A gap within so many spreads of the mean is one of one suck.
const ONE_SUCK_SPREADS: f64 = 3.0;
