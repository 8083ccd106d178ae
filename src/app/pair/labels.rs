//! Where the labels of the weight chart stand, so that none covers a mark, a line or another label.
//! Only layout: places and sizes are shares of the drawing.

use super::chart::{Place, WeightChart};

/// How much room a thing takes, as shares of the drawing's width and height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Of the width.
    pub wide: f32,
    /// Of the height.
    pub high: f32,
}

/// The room of a weight's mark and of a median's mark, the larger of the two, on the narrowest
/// drawing.
pub const MARK: Size = Size {
    wide: 0.034,
    high: 0.08,
};
/// The room of a label of usual size on the narrowest drawing.
pub const LABEL: Size = Size {
    wide: 0.145,
    high: 0.115,
};
/// How many steps of half a label's height a label may stand off its mark: further away it could be
/// taken for another's.
const STEPS_MOST: u8 = 2;

/// What a thing covers.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Covered {
    left: f32,
    top: f32,
    right: f32,
    bottom: f32,
}

impl Covered {
    fn about(middle: Place, size: Size) -> Self {
        Self {
            left: middle.x - size.wide / 2.0,
            top: middle.y - size.high / 2.0,
            right: middle.x + size.wide / 2.0,
            bottom: middle.y + size.high / 2.0,
        }
    }

    fn is_within(&self) -> bool {
        0.0 <= self.left && self.right <= 1.0 && 0.0 <= self.top && self.bottom <= 1.0
    }

    fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether a straight line from one place to another comes into it: what is left of the line
    /// after each of the four edges has cut it.
    fn is_crossed(&self, from: Place, to: Place) -> bool {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let edges = [
            (-dx, from.x - self.left),
            (dx, self.right - from.x),
            (-dy, from.y - self.top),
            (dy, self.bottom - from.y),
        ];
        let (mut enters, mut leaves) = (0.0_f32, 1.0_f32);
        for (speed, room) in edges {
            if speed == 0.0 {
                if room <= 0.0 {
                    return false;
                }
            } else if speed < 0.0 {
                enters = enters.max(room / speed);
            } else {
                leaves = leaves.min(room / speed);
            }
        }
        enters < leaves
    }
}

/// The middle of each weight's label; `None` where nothing is free about it. The latest weight
/// chooses first.
pub fn labels(chart: &WeightChart, track: &[Place], label: Size, mark: Size) -> Vec<Option<Place>> {
    let weights = chart.weights.iter().map(|it| it.place);
    let marks: Vec<Covered> = weights
        .chain(chart.medians.iter().copied())
        .map(|place| Covered::about(place, mark))
        .collect();
    let lines: Vec<(Place, Place)> = [track, &chart.line]
        .iter()
        .flat_map(|line| line.windows(2).map(|ends| (ends[0], ends[1])))
        .collect();
    let mut taken: Vec<Covered> = Vec::new();
    let mut middles: Vec<Option<Place>> = Vec::new();
    for weight in chart.weights.iter().rev() {
        let free = offers(weight.place, label, mark).find(|middle| {
            let it = Covered::about(*middle, label);
            it.is_within()
                && !marks.iter().chain(&taken).any(|other| it.meets(other))
                && !lines.iter().any(|(from, to)| it.is_crossed(*from, *to))
        });
        taken.extend(free.map(|middle| Covered::about(middle, label)));
        middles.push(free);
    }
    middles.reverse();
    middles
}

/// Where a label may stand about its mark, the best first: close by before further off, above
/// before below, and straight over it before beside it.
fn offers(weight: Place, label: Size, mark: Size) -> impl Iterator<Item = Place> {
    let aside = (label.wide + mark.wide) / 2.0;
    let over = (label.high + mark.high) / 2.0;
    (0..=STEPS_MOST).flat_map(move |step| {
        let over = over + f32::from(step) * label.high / 2.0;
        let beside = (step == 0).then_some([(aside, 0.0), (-aside, 0.0)]);
        [-1.0, 1.0]
            .into_iter()
            .flat_map(move |way: f32| {
                [0.0, 0.5, -0.5, 1.0, -1.0].map(|share| (share * aside, way * over))
            })
            .chain(beside.into_iter().flatten())
            .map(move |(x, y)| Place {
                x: weight.x + x,
                y: weight.y + y,
            })
    })
}
