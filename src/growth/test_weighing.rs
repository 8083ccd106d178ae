//! Test weighing: intake of one feed from the weight before and after, with an honest interval.
//!
//! The baby is weighed in the same clothes and nappy on the same scale. Evaporation makes intake
//! read low by a few per cent (Institute of Medicine 1991, page 81); nothing is added for it.

use super::age::HOUR_MS;
use super::change::rounded_ratio;
use super::gain::{HANDLING_HALF_G, ROUNDING_SHARE, STEP_ASSUMED_G};
use crate::record::{ScaleStep, WallTime, Weighing, WeighingMoment};

/// The density of human milk in hundredths of a gram per millilitre: 1.03.
///
/// Source: Institute of Medicine. Nutrition During Lactation. Washington 1991, page 81.
pub const DENSITY_HUNDREDTHS: i64 = 103;

/// The longest time from the last weighing before a feed to the first after it, in hours
/// (common practice; longer, and breath and skin take too much).
const FEED_MOST_H: i64 = 3;

/// The intake of one feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TestWeighing {
    /// When it was weighed before.
    pub before: WallTime,
    /// When it was weighed after.
    pub after: WallTime,
    /// After less before, in grams (of the means, where weighed more than once).
    pub grams: i64,
    /// The intake in tenths of a millilitre; zero at the least.
    pub tenths_ml: i64,
    /// The lower end of its 95 % interval in millilitres; zero at the least.
    pub low_ml: i64,
    /// The upper end; zero at the least.
    pub high_ml: i64,
    /// Weighings before and after.
    pub repeats: (usize, usize),
    /// The interval reaches zero: the scale cannot tell this intake from none.
    pub below_resolution: bool,
}

/// Readings of one side of a feed, taken one after another.
struct Side<'a>(&'a [(WallTime, Weighing)]);

impl Side<'_> {
    fn grams(&self) -> impl Iterator<Item = i64> + '_ {
        self.0.iter().map(|it| i64::from(it.1.grams))
    }

    fn mean(&self) -> i64 {
        let count = i64::try_from(self.0.len()).unwrap_or(1).max(1);
        rounded_ratio(self.grams().sum(), count)
    }

    fn spread(&self) -> i64 {
        self.grams().max().unwrap_or(0) - self.grams().min().unwrap_or(0)
    }

    fn step(&self) -> u16 {
        let steps = self.0.iter().map(|it| it.1.step);
        steps
            .map(|step| step.map_or(STEP_ASSUMED_G, ScaleStep::value))
            .max()
            .unwrap_or(STEP_ASSUMED_G)
    }
}

/// Every test weighing in weighings sorted by time: a group just before a feed, followed within
/// three hours by a group just after, all clothed alike. A weight that was told later than it was
/// taken belongs to no feed that was watched, and stands between none.
pub fn test_weighings(weighings: &[(WallTime, Weighing)]) -> Vec<TestWeighing> {
    let as_taken = weighings.iter().filter(|it| it.1.taken.is_none());
    let as_taken: Vec<(WallTime, Weighing)> = as_taken.copied().collect();
    let groups: Vec<&[(WallTime, Weighing)]> = as_taken
        .chunk_by(|a, b| a.1.moment == b.1.moment && a.1.clothed == b.1.clothed)
        .collect();
    groups
        .windows(2)
        .filter_map(|two| of(two[0], two[1]))
        .collect()
}

#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]
fn of(before: &[(WallTime, Weighing)], after: &[(WallTime, Weighing)]) -> Option<TestWeighing> {
    let (last, first) = (before.last()?, after.first()?);
    let fits = last.1.moment == WeighingMoment::BeforeFeed
        && first.1.moment == WeighingMoment::AfterFeed
        && last.1.clothed == first.1.clothed
        && first.0.since_ms(last.0) <= FEED_MOST_H * HOUR_MS;
    if !fits {
        return None;
    }
    let (from, to) = (Side(before), Side(after));
    let grams = to.mean() - from.mean();
    let rounding = ROUNDING_SHARE * f64::from(from.step().max(to.step()));
    // Weighed twice on each side, the readings themselves tell what handling adds.
    let handling = if 1 < before.len() && 1 < after.len() {
        let (a, b) = (from.spread() as f64, to.spread() as f64);
        libm::sqrt(a * a + b * b)
    } else {
        HANDLING_HALF_G
    };
    let half_g = libm::sqrt(rounding * rounding + handling * handling);
    let ml = |g: f64| g * 100.0 / DENSITY_HUNDREDTHS as f64;
    let low = libm::floor(ml(grams as f64 - half_g)) as i64;
    let high = libm::ceil(ml(grams as f64 + half_g)) as i64;
    Some(TestWeighing {
        before: last.0,
        after: first.0,
        grams,
        tenths_ml: rounded_ratio(grams * 1000, DENSITY_HUNDREDTHS).max(0),
        low_ml: low.max(0),
        high_ml: high.max(0),
        repeats: (before.len(), after.len()),
        below_resolution: low <= 0,
    })
}
