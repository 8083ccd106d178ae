//! How the blocks of a feed fit the phases, given the feed's numbers: each block judged by all of them,
//! and the one most probable course. Knows no numbers of its own and does not learn any.

use super::block::{Block, Blocks, Judged};
use super::chain::{self, Chain, STAGES, Sleep, Stages};
use super::evidence;
use super::own::Own;
use super::pace::{self, AnyPace, Even, Paced, Runs};
use super::parameter::{PHASES, QUICK};
use super::pass;
use super::series::AllSeries;
use super::watch::Before;

/// Room that is kept from one judging to the next.
#[derive(Default)]
pub(super) struct Room {
    stages: Vec<Stages>,
    paced: Vec<Paced>,
    /// What came of the last one, block by block.
    pub(super) judged: Vec<Judged>,
}

impl Blocks<'_> {
    /// Judges every block with these numbers; gives how well they fit, as a logarithm.
    pub(super) fn judge(&self, own: &Own, room: &mut Room) -> f64 {
        let Room {
            stages,
            paced,
            judged,
        } = room;
        judged.clear();
        judged.resize(self.blocks.len(), Judged::default());
        let spread = own.gaps.pace_spread;
        if spread == 0.0 {
            let judging = Judging::new(self, own, &[0.0]);
            return pass::posterior(&Even(&judging), stages, |at, stages| {
                judged[at].phases = chain::by_phase(stages);
            });
        }
        let paces_ln = pace::paces_ln(spread);
        let judging = Judging::new(self, own, &paces_ln);
        pass::posterior(&AnyPace(&judging), paced, |at, all| {
            let shares = pace::shares(all);
            judged[at] = Judged {
                phases: chain::by_phase(&pace::joined(all)),
                pace_ln: shares.iter().zip(paces_ln).map(|(a, ln)| a * ln).sum(),
            };
        })
    }

    /// The phase of each suck on the one most probable course of the whole feed.
    pub(super) fn course(&self, own: &Own) -> Vec<u8> {
        let spread = own.gaps.pace_spread;
        let course = if spread == 0.0 {
            pass::course(&Even(&Judging::new(self, own, &[0.0]))).0
        } else {
            let judging = Judging::new(self, own, &pace::paces_ln(spread));
            pass::course(&AnyPace(&judging)).0
        };
        let mut phases = vec![QUICK as u8; self.sucks.len()];
        for (block, stage) in self.blocks.iter().zip(course) {
            phases[block.range()].fill(chain::phase_of(stage % STAGES) as u8);
        }
        phases
    }
}

/// Blocks with hidden stages, given the feed's numbers, at some paces.
struct Judging<'a, const P: usize> {
    blocks: &'a [Block],
    sleep: Sleep,
    end: Stages,
    /// How well the rest before each block fits the phase before it.
    rests: Vec<Option<[f64; PHASES]>>,
    fits: Vec<([Stages; P], f64)>,
}

impl<'a, const P: usize> Judging<'a, P> {
    fn new(of: &'a Blocks<'_>, own: &Own, paces_ln: &[f64; P]) -> Self {
        let no_rest = evidence::no_rest(own).map(f64::ln);
        let swallows = [0, 1, 2].map(|count| evidence::swallows(own, count).map(f64::ln));
        let mut series = AllSeries::new(own, paces_ln, of.rest_ms);
        let fits = of.blocks.iter().map(|block| {
            let range = block.range();
            let within = range.len() - usize::from(!block.goes_on);
            let mut gaps_ln = [[0.0; PHASES]; P];
            for suck in &of.sucks[range] {
                if let Some(of_suck) = series.next(suck) {
                    for (sum, it) in gaps_ln.iter_mut().flatten().zip(of_suck.iter().flatten()) {
                        *sum += it;
                    }
                }
            }
            let mut ln = chain::by_stage(&no_rest.map(|it| it * within as f64));
            for (count, ln_of) in block.swallows.iter().zip(&swallows) {
                for (sum, it) in ln.iter_mut().zip(ln_of) {
                    *sum += count * it;
                }
            }
            let all = gaps_ln.map(|gaps_ln| {
                let mut all = chain::by_stage(&gaps_ln);
                for (sum, it) in all.iter_mut().zip(&ln) {
                    *sum += it;
                }
                all
            });
            let most = all.iter().flatten().copied().fold(f64::MIN, f64::max);
            let weights = all.map(|ln| chain::each_kind(&ln, |it| (it - most).exp()));
            (weights, most)
        });
        Self {
            blocks: &of.blocks,
            sleep: own.sleep,
            end: of.parts.end(own.sleep),
            rests: of
                .blocks
                .iter()
                .map(|it| it.rest_ms().map(|ms| evidence::rest(own, ms)))
                .collect(),
            fits: fits.collect(),
        }
    }

    /// The chain that leads to a block.
    fn chain(&self, block: &Block) -> &'static Chain {
        Chain::of(block.part, self.sleep)
    }
}

impl<const P: usize> Runs for Judging<'_, P> {
    fn count(&self) -> usize {
        self.blocks.len()
    }

    fn goes_on(&self, to: usize) -> bool {
        self.blocks[to].goes_on
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

    fn fit(&self, at: usize, pace: usize) -> Stages {
        self.fits[at].0[pace]
    }

    fn scale(&self, at: usize) -> f64 {
        self.fits[at].1
    }
}
