//! Weights that are asked about, not dropped: slips of typing, of unit and of order.

use super::age::HOUR_MS;
use super::{Age, z};
use crate::record::{Pair, WallTime, Weighing, WeighingMoment, words};

words!(
    /// Why a weight is asked about.
    Question {
        /// Beyond what the WHO's software takes as plausible.
        Implausible = "implausible",
        /// About ten times, or a tenth of, the weight before it.
        FactorOfTen = "factor_of_ten",
        /// As if pounds had been typed for kilograms, or the other way.
        Pounds = "pounds",
        /// Lighter after the feed than before it by more than handling explains.
        Swapped = "swapped",
        /// Taken before birth.
        BeforeBirth = "before_birth",
        /// Taken later than now.
        AfterNow = "after_now",
    }
);

/// A weight that is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Questioned {
    /// When it was taken; the birth instant for the birth weight.
    pub at: WallTime,
    /// Its grams.
    pub grams: i64,
    /// Why.
    pub why: Question,
}

/// How far a ratio may lie from ten and still look like a slip of one digit, in per cent of ten.
const TEN_REACH_PERCENT: i64 = 25;
/// Pounds in a kilogram, in thousandths (2.2046, international pound).
const POUNDS_THOUSANDTHS: i64 = 2205;
/// How far a ratio may lie from that, in per cent of it.
const POUNDS_REACH_PERCENT: i64 = 15;
/// The last day of age on which a weight cannot have grown so much by itself.
const POUNDS_TO_DAY: i64 = 60;
/// How much lighter after a feed is still handling, in grams: twice the ward's 95 % limits of a
/// difference (Savenije and Brand 2006, -12.4 to +15 ml).
const SWAPPED_FROM_G: i64 = 30;
/// The longest feed between two weighings that belong together, in hours.
const FEED_MOST_H: i64 = 3;

/// All questions about the weights of a pair up to now, in the order of the weighings.
pub fn questions(
    pair: &Pair,
    weighings: &[(WallTime, Weighing)],
    now: WallTime,
) -> Vec<Questioned> {
    let mut asked = Vec::new();
    let mut ask =
        |at: WallTime, grams: i64, why: Question| asked.push(Questioned { at, grams, why });
    let birth_g = pair.birth_weight.map(i64::from);
    if let Some(weight) = pair.birth_weight
        && z(pair.sex, 0, weight).is_some_and(super::Z::is_implausible)
    {
        ask(pair.birth, weight.into(), Question::Implausible);
    }
    let mut before: Option<i64> = birth_g;
    let mut last: Option<(WallTime, Weighing)> = None;
    for (at, weighing) in weighings {
        let grams = i64::from(weighing.grams);
        let age = Age::of(pair.birth, *at);
        if age.is_none() {
            ask(*at, grams, Question::BeforeBirth);
            continue;
        }
        if now.since_ms(*at) < 0 {
            ask(*at, grams, Question::AfterNow);
            continue;
        }
        let young = age.is_some_and(|age| age.days() <= POUNDS_TO_DAY);
        let slip = before.and_then(|reference| slip(reference, grams, young));
        if let Some(why) = slip {
            ask(*at, grams, why);
        } else {
            let implausible = age
                .and_then(|age| z(pair.sex, age.who_day(), weighing.grams))
                .is_some_and(super::Z::is_implausible);
            if implausible {
                ask(*at, grams, Question::Implausible);
            }
            before = Some(grams);
        }
        if let Some((earlier_at, earlier)) = last
            && earlier.moment == WeighingMoment::BeforeFeed
            && weighing.moment == WeighingMoment::AfterFeed
            && at.since_ms(earlier_at) <= FEED_MOST_H * HOUR_MS
            && grams + SWAPPED_FROM_G < i64::from(earlier.grams)
        {
            ask(*at, grams, Question::Swapped);
        }
        last = Some((*at, *weighing));
    }
    asked
}

/// Whether a weight looks like a slip against another; pounds only while the baby is young.
fn slip(reference: i64, grams: i64, young: bool) -> Option<Question> {
    let (less, more) = (reference.min(grams), reference.max(grams));
    let near = |ratio_thousandths: i64, reach_percent: i64| {
        let reach = ratio_thousandths * reach_percent / 100;
        less * (ratio_thousandths - reach) <= more * 1000
            && more * 1000 <= less * (ratio_thousandths + reach)
    };
    if near(10_000, TEN_REACH_PERCENT) {
        Some(Question::FactorOfTen)
    } else if young && near(POUNDS_THOUSANDTHS, POUNDS_REACH_PERCENT) {
        Some(Question::Pounds)
    } else {
        None
    }
}
