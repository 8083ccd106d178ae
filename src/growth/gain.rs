//! Gain per day between two weighings, with an honest spread.
//!
//! The spread holds what the scale rounds away and what handling adds on a ward; it holds nothing
//! for a feed or a full nappy between the weighings, so weighings just after a feed are left out.

use super::age::{DAY_MS, HOUR_MS};
use super::change::rounded_ratio;
use crate::record::{WallTime, Weighing, WeighingMoment};

/// The step taken where the scale's is not known, in grams: an ordinary ward scale (common
/// practice).
pub const STEP_ASSUMED_G: u16 = 5;

/// Half of the 95 % limits of a difference of two ward weighings, in grams.
///
/// Source: Savenije OEM, Brand PLP. Accuracy and precision of test weighing to assess milk intake
/// in newborn infants. Arch Dis Child Fetal Neonatal Ed 2006;91:F330-F332 (-12.4 to +15 ml).
pub(super) const HANDLING_HALF_G: f64 = 14.0;

/// The difference of two readings rounded to a step is spread as a triangle as wide as the step on
/// either side; 95 % of it lies within this share of the step: `1 - sqrt(0.05)`.
pub(super) const ROUNDING_SHARE: f64 = 0.776_393_202_250_021;

/// The least time between the two weighings, in hours.
const APART_LEAST_H: i64 = 24;
/// The time between them beyond which an earlier weighing is not used if a nearer one fits.
const APART_MOST_H: i64 = 72;

/// A gain per day; negative is a loss.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Gain {
    /// The earlier weighing's time.
    pub from: WallTime,
    /// The later one's.
    pub to: WallTime,
    /// Whole hours between them.
    pub hours: i64,
    /// Grams gained between them.
    pub grams: i64,
    /// Grams per day, rounded.
    pub per_day: i64,
    /// The lower end of its 95 % interval.
    pub low: i64,
    /// The upper end.
    pub high: i64,
}

/// The gain up to the last weighing: from the earliest one 24 to 72 hours before it, or failing
/// that from the latest one more than 72 hours before. Only weighings of the same kind (clothed
/// or not) are compared, and none just after a feed. `None` with no such two.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]
pub fn gain(weighings: &[(WallTime, Weighing)]) -> Option<Gain> {
    let usable = |it: &&(WallTime, Weighing)| it.1.moment != WeighingMoment::AfterFeed;
    let (to, last) = weighings
        .iter()
        .filter(usable)
        .max_by_key(|it| it.0.utc_ms())?;
    let earlier = || {
        weighings
            .iter()
            .filter(usable)
            .filter(|it| it.1.clothed == last.clothed)
            .map(|it| (to.since_ms(it.0), it))
            .filter(|(apart, _)| APART_LEAST_H * HOUR_MS <= *apart)
    };
    let (apart_ms, (from, first)) = earlier()
        .filter(|(apart, _)| *apart <= APART_MOST_H * HOUR_MS)
        .max_by_key(|(apart, _)| *apart)
        .or_else(|| earlier().min_by_key(|(apart, _)| *apart))?;
    let grams = i64::from(last.grams) - i64::from(first.grams);
    let step = |it: &Weighing| {
        it.step
            .map_or(STEP_ASSUMED_G, crate::record::ScaleStep::value)
    };
    let rounding = ROUNDING_SHARE * f64::from(step(first).max(step(last)));
    let half = libm::sqrt(rounding * rounding + HANDLING_HALF_G * HANDLING_HALF_G);
    let day_share = apart_ms as f64 / DAY_MS as f64;
    Some(Gain {
        from: *from,
        to: *to,
        hours: apart_ms / HOUR_MS,
        grams,
        per_day: rounded_ratio(grams * DAY_MS, apart_ms),
        low: libm::floor((grams as f64 - half) / day_share) as i64,
        high: libm::ceil((grams as f64 + half) / day_share) as i64,
    })
}
