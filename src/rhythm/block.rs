//! A feed in blocks of a few sucks, for learning its numbers quickly: within a block the phase is
//! taken as one. Knows how blocks fit the phases and what they add up to; not how the feed's
//! numbers are drawn from that.

use super::chain::{self, Chain, STAGES, Sleep, Stages, Steps};
use super::evidence::{self, GapFit};
use super::own::{Own, Sums};
use super::parameter::{FLUTTER_FEED_MS_LEAST, FLUTTER_PARTS, GAP_SPREAD, PHASES, QUICK};
use super::pass::{self, Hidden};
use super::suck::{Suck, Sucks};
use super::watch::Before;
use crate::record::At;

/// Width of a class of gaps, in milliseconds.
const CLASS_MS: u64 = 20;
/// What stands for "no gap within a run" among the classes.
const NO_CLASS: u16 = u16::MAX;

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
struct Block {
    /// What came before its first suck.
    before: Before,
    /// Whether that was a gap within a run.
    goes_on: bool,
    /// The indices of its sucks: from, to and not with it.
    sucks: (u32, u32),
    /// Sucks in it with no swallow, one, and more.
    swallows: [f64; 3],
    /// The time from the block before.
    steps: Steps,
    /// The part of the feed that it lies in.
    part: usize,
}

impl Block {
    fn range(&self) -> std::ops::Range<usize> {
        self.sucks.0 as usize..self.sucks.1 as usize
    }

    fn rest_ms(&self) -> Option<f64> {
        match self.before {
            Before::Gap(ms) if !self.goes_on => Some(ms as f64),
            _ => None,
        }
    }
}

/// A feed in blocks.
pub(super) struct Blocks {
    blocks: Vec<Block>,
    parts: Parts,
    /// The classes that gaps are of, rising.
    seen: Vec<u16>,
    /// For each suck, the place in `seen` of the class of the gap within a run before it.
    class: Vec<u16>,
}

/// How gaps fit the phases, class by class of those seen.
pub(super) struct Table {
    fits: Vec<[GapFit; PHASES]>,
}

/// The middle of a class.
fn middle_ms(class: u16) -> f64 {
    (u64::from(class) * CLASS_MS + CLASS_MS / 2) as f64
}

/// The classes that occur, rising, and of each suck the place of its class among them. Only these
/// are asked for how they fit: a few minutes know few lengths.
fn placed(mut class: Vec<u16>) -> (Vec<u16>, Vec<u16>) {
    let mut seen: Vec<u16> = class.iter().copied().filter(|it| *it != NO_CLASS).collect();
    seen.sort_unstable();
    seen.dedup();
    for it in &mut class {
        *it = seen
            .binary_search(it)
            .map_or(NO_CLASS, |place| place as u16);
    }
    (seen, class)
}

impl Blocks {
    /// Blocks of at most so many sucks.
    pub(super) fn of(feed: &Sucks, rest_ms: u64, most: u32) -> Self {
        let parts = Parts::of(feed);
        let sucks = &feed.sucks;
        let mut blocks: Vec<Block> = Vec::new();
        let mut class = Vec::with_capacity(sucks.len());
        let mut passed_ms = 0.0;
        for (index, suck) in sucks.iter().enumerate() {
            let within = match suck.before {
                Before::Gap(ms) if ms <= rest_ms => Some(ms / CLASS_MS),
                _ => None,
            };
            class.push(within.map_or(NO_CLASS, |it| it as u16));
            let index = index as u32;
            let joins = within.is_some()
                && blocks
                    .last()
                    .is_some_and(|last| last.sucks.1 - last.sucks.0 < most);
            if !joins {
                passed_ms = 0.0;
                blocks.push(Block {
                    before: suck.before,
                    goes_on: within.is_some(),
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
        let (seen, class) = placed(class);
        Self {
            blocks,
            parts,
            seen,
            class,
        }
    }

    /// How gaps fit with these numbers.
    pub(super) fn table(&self, own: &Own) -> Table {
        let fits: Vec<[GapFit; PHASES]> = self
            .seen
            .iter()
            .map(|class| std::array::from_fn(|phase| evidence::gap(own, phase, middle_ms(*class))))
            .collect();
        Table { fits }
    }

    /// Judges every block with these numbers; gives how well they fit, as a logarithm.
    pub(super) fn judge(&self, own: &Own, table: &Table, room: &mut Room) -> f64 {
        room.phases.clear();
        room.phases.resize(self.blocks.len(), [0.0; PHASES]);
        let judging = Judging::new(self, own, table);
        let phases = &mut room.phases;
        pass::posterior(&judging, &mut room.stages, |at, stages| {
            phases[at] = chain::by_phase(stages);
        })
    }

    /// The phase of each suck on the one most probable course of the whole feed.
    pub(super) fn course(&self, own: &Own) -> Vec<u8> {
        let table = self.table(own);
        let (course, _) = pass::course(&Judging::new(self, own, &table));
        let mut phases = vec![QUICK as u8; self.class.len()];
        for (block, stage) in self.blocks.iter().zip(course) {
            phases[block.range()].fill(chain::phase_of(stage) as u8);
        }
        phases
    }

    /// What the feed shows, with every block shared out over the phases.
    pub(super) fn sums(&self, phases: &[[f64; PHASES]], table: &Table) -> Sums {
        let mut sums = Sums::default();
        let mut of_class = vec![[0.0; PHASES]; self.seen.len()];
        let mut before = [0.0; PHASES];
        for (block, shares) in self.blocks.iter().zip(phases) {
            let range = block.range();
            sums.add_sucks(
                shares,
                range.len() as f64,
                block.swallows[1] + block.swallows[2],
            );
            if let Some(ms) = block.rest_ms() {
                sums.add_rest(&before, ms);
            }
            let within = range.len() as f64 - 1.0;
            for phase in 0..PHASES {
                let first = if block.goes_on { before[phase] } else { 0.0 };
                sums.followed[phase] += first + within * shares[phase];
            }
            for class in &self.class[range] {
                if let Some(sum) = of_class.get_mut(usize::from(*class)) {
                    for (sum, share) in sum.iter_mut().zip(shares) {
                        *sum += share;
                    }
                }
            }
            before = *shares;
        }
        for (class, (shares, fits)) in self.seen.iter().zip(of_class.iter().zip(&table.fits)) {
            sums.add_gaps(shares, middle_ms(*class), fits);
        }
        sums
    }

    /// How much of the rate's evidence stands on its own: single gaps' variance over that of sums
    /// of up to [`WANDER_GAPS`]. Below one, the rate wanders and gaps repeat each other; above,
    /// the hand's jitter evens itself out.
    pub(super) fn rate_weight(&self, own: &Own, phases: &[[f64; PHASES]], table: &Table) -> f64 {
        let start = WANDER_START * GAP_SPREAD * GAP_SPREAD;
        let (mut single, mut summed) = (start, start / WANDER_WEIGHT);
        let (mut sum, mut squares, mut count) = (0.0, 0.0, 0);
        let mut last = QUICK;
        for (block, shares) in self.blocks.iter().zip(phases) {
            let phase = super::live::most(shares);
            if !block.goes_on || phase != last || WANDER_GAPS <= count {
                if WANDER_GAPS_LEAST <= count {
                    summed += sum * sum;
                    single += squares;
                }
                (sum, squares, count) = (0.0, 0.0, 0);
            }
            last = phase;
            for class in &self.class[block.range()] {
                let class = usize::from(*class);
                if let Some(fits) = table.fits.get(class) {
                    let spans = fits[phase].sucks;
                    let gap_ms = middle_ms(self.seen[class]);
                    let departure = (gap_ms / own.gap_ms[phase] - spans) / spans.sqrt();
                    let departure: f64 = departure.clamp(-0.5, 0.5);
                    sum += departure;
                    squares += departure * departure;
                    count += 1;
                }
            }
        }
        (single / summed).clamp(WANDER_WEIGHT_LEAST, WANDER_WEIGHT_MOST)
    }

    /// The share of sucks with a swallow in a window of so many either side of each block's middle.
    pub(super) fn swallowing(&self, sucks: &[Suck], half: usize) -> Vec<f64> {
        self.around(half, sucks.iter().map(|it| f64::from(it.swallows.min(1))))
    }

    /// The same of sucks after a rest.
    pub(super) fn resting(&self, half: usize) -> Vec<f64> {
        let mut rests = vec![0.0; self.class.len()];
        for block in self.blocks.iter().filter(|it| it.rest_ms().is_some()) {
            rests[block.sucks.0 as usize] = 1.0;
        }
        self.around(half, rests.into_iter())
    }

    /// The mean of the sucks' values in a window of so many either side of each block's middle.
    fn around(&self, half: usize, values: impl Iterator<Item = f64>) -> Vec<f64> {
        let count = self.class.len();
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
/// The least and the most that are taken.
const WANDER_WEIGHT_LEAST: f64 = 0.25;
/// See [`WANDER_WEIGHT_LEAST`].
const WANDER_WEIGHT_MOST: f64 = 1.2;

/// Room that is kept from one judging to the next.
#[derive(Default)]
pub(super) struct Room {
    stages: Vec<Stages>,
    /// The probability of each phase, block by block.
    pub(super) phases: Vec<[f64; PHASES]>,
}

/// Blocks as a row of items with hidden stages, given the feed's numbers.
struct Judging<'a> {
    blocks: &'a [Block],
    sleep: Sleep,
    end: Stages,
    /// How well the rest before each block fits the phase before it.
    rests: Vec<Option<[f64; PHASES]>>,
    fits: Vec<(Stages, f64)>,
}

impl<'a> Judging<'a> {
    fn new(of: &'a Blocks, own: &Own, table: &Table) -> Self {
        let no_rest = evidence::no_rest(own).map(f64::ln);
        let swallows = [0, 1, 2].map(|count| evidence::swallows(own, count).map(f64::ln));
        let fits = of
            .blocks
            .iter()
            .map(|block| {
                let range = block.range();
                let within = range.len() - usize::from(!block.goes_on);
                let mut ln = no_rest.map(|it| it * within as f64);
                for class in &of.class[range] {
                    if let Some(fits) = table.fits.get(usize::from(*class)) {
                        for (sum, it) in ln.iter_mut().zip(fits) {
                            *sum += it.ln;
                        }
                    }
                }
                let mut ln = chain::by_stage(&ln);
                for (count, ln_of) in block.swallows.iter().zip(&swallows) {
                    for (sum, it) in ln.iter_mut().zip(ln_of) {
                        *sum += count * it;
                    }
                }
                let most = ln.iter().copied().fold(f64::MIN, f64::max);
                (chain::each_kind(&ln, |it| (it - most).exp()), most)
            })
            .collect();
        Self {
            blocks: &of.blocks,
            sleep: own.sleep,
            end: of.parts.end(own.sleep),
            rests: of
                .blocks
                .iter()
                .map(|it| it.rest_ms().map(|ms| evidence::rest(own, ms)))
                .collect(),
            fits,
        }
    }

    /// The chain that leads to a block.
    fn chain(&self, block: &Block) -> &'static Chain {
        Chain::of(block.part, self.sleep)
    }
}

impl Hidden<STAGES> for Judging<'_> {
    fn count(&self) -> usize {
        self.blocks.len()
    }

    fn start(&self) -> Stages {
        chain::START
    }

    fn forward(&self, to: usize, stages: &mut Stages) {
        let block = &self.blocks[to];
        if let Some(rest) = &self.rests[to] {
            chain::weigh(stages, rest);
        }
        self.chain(block).forward(stages, &block.steps);
        if matches!(block.before, Before::Off(_)) {
            chain::on_again(stages);
        }
    }

    fn backward(&self, to: usize, weights: &mut Stages) {
        let block = &self.blocks[to];
        if matches!(block.before, Before::Off(_)) {
            chain::on_again_backward(weights);
        }
        self.chain(block).backward(weights, &block.steps);
        if let Some(rest) = &self.rests[to] {
            chain::weigh(weights, rest);
        }
    }

    fn best(&self, to: usize, stages: &mut Stages) -> [usize; STAGES] {
        let block = &self.blocks[to];
        if let Some(rest) = &self.rests[to] {
            chain::weigh(stages, rest);
        }
        // Being put on again changes little; the course does without it.
        self.chain(block).best(stages, &block.steps)
    }

    fn end(&self) -> Stages {
        self.end
    }

    fn fit(&self, at: usize) -> (Stages, f64) {
        self.fits[at]
    }
}
