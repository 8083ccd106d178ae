//! Where a feed's first readings come from: sucks are called flow where swallows lie dense, and flutter
//! from some share of the feed on or where rests do. Crude, to begin learning from; knows nothing of
//! how well that fits.

use super::block::{Blocks, Judged};
use super::chain::Sleep;
use super::parameter::{FLOW, FLUTTER, PHASES, QUICK};

/// Where a reading calls sucks flutter that are not flow.
#[derive(Clone, Copy)]
pub(super) enum Cut {
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
    pub(super) const fn sleep(self) -> Sleep {
        match self {
            Self::From(from) if from < HALF => Sleep::Early,
            _ => Sleep::AtTheEnd,
        }
    }

    /// The blocks of a feed cut like this, each nearly all of one phase.
    pub(super) fn judged(self, blocks: &Blocks<'_>, dense: &Dense) -> Vec<Judged> {
        let (Some(first), Some(last)) = (blocks.sucks.first(), blocks.sucks.last()) else {
            return vec![];
        };
        let all_ms = last.at.since_ms(first.at).max(1) as f64;
        let dense = dense.swallows.iter().zip(&dense.rests);
        let phases = blocks
            .firsts()
            .zip(dense)
            .map(|(index, (milk, many_rests))| {
                let share = blocks.sucks[index].at.since_ms(first.at) as f64 / all_ms;
                match self {
                    Self::FlowUpTo(to) if to < share => FLUTTER,
                    Self::FlowUpTo(_) => FLOW,
                    _ if *milk => FLOW,
                    Self::From(from) if from < share => FLUTTER,
                    Self::ManyRests if *many_rests => FLUTTER,
                    Self::From(_) | Self::ManyRests => QUICK,
                }
            });
        phases.map(taken_for).collect()
    }
}

/// A block that is nearly all of one phase.
fn taken_for(phase: usize) -> Judged {
    let mut phases = [(1.0 - TAKEN_FOR) / 2.0; PHASES];
    phases[phase] = TAKEN_FOR;
    Judged {
        phases,
        pace_ln: 0.0,
    }
}

/// What is tried, in this order.
pub(super) const CUTS: [Cut; 6] = [
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

/// Around which blocks swallows lie dense, and rests among those around which they do not.
pub(super) struct Dense {
    swallows: Vec<bool>,
    rests: Vec<bool>,
}

impl Dense {
    pub(super) fn of(blocks: &Blocks<'_>) -> Self {
        let swallowing = blocks.swallowing(AROUND.0);
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
