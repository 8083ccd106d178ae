//! Weights that are asked about, not dropped: slips of typing, of unit and of order.

use super::age::HOUR_MS;
use super::volume::TERM_FROM_DAYS;
use super::{Age, Checked, z};
use crate::record::{Grams, Pair, WallTime, Weighing, WeighingMoment, words};

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
        /// Far from the weight before it, within a few days.
        Jump = "jump",
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

/// Within so many hours a change is held against what a baby can do (common practice).
const JUMP_WITHIN_H: i64 = 72;
/// A gain beyond it within that time is asked about, in per cent (common practice: the highest
/// usual gains make about 5).
const JUMP_GAIN_PERCENT: i64 = 10;
/// A loss beyond it within that time is asked about, in per cent. The 97.5th centile of the largest
/// loss is 12.8 (Macdonald et al. 2003, Arch Dis Child Fetal Neonatal Ed 88:F472).
const JUMP_LOSS_PERCENT: i64 = 15;

/// A weight that the next one is held against.
#[derive(Clone, Copy)]
struct Reference {
    at: WallTime,
    grams: i64,
    clothed: bool,
}

/// All questions about the weights of a pair up to now, in the order of the weighings. A weight
/// that is asked about is not what the next one is held against, unless the next one agrees
/// with it, or somebody has said that it is right.
pub fn questions(
    pair: &Pair,
    weighings: &[(WallTime, Weighing)],
    checked: &Checked,
    now: WallTime,
) -> Vec<Questioned> {
    let mut asked = Vec::new();
    let mut ask =
        |at: WallTime, grams: i64, why: Question| asked.push(Questioned { at, grams, why });
    if let Some(weight) = pair.birth_weight
        && is_implausible(pair, 0, weight)
        && !checked.holds(pair.birth)
    {
        ask(pair.birth, weight.into(), Question::Implausible);
    }
    let mut before = pair.birth_weight.map(|weight| Reference {
        at: pair.birth,
        grams: weight.into(),
        clothed: false,
    });
    let mut doubted: Option<Reference> = None;
    let mut last: Option<(WallTime, Weighing)> = None;
    for (at, weighing) in weighings {
        let it = Reference {
            at: *at,
            grams: weighing.grams.into(),
            clothed: weighing.clothed,
        };
        let Some(age) = Age::of(pair.birth, *at) else {
            ask(*at, it.grams, Question::BeforeBirth);
            continue;
        };
        if now.since_ms(*at) < 0 {
            ask(*at, it.grams, Question::AfterNow);
            continue;
        }
        let young = age.days() <= POUNDS_TO_DAY;
        let is_right = checked.holds(*at);
        let why = before
            .and_then(|reference| slip(reference.grams, it.grams, young))
            .or_else(|| {
                is_implausible(pair, age.who_day(), weighing.grams).then_some(Question::Implausible)
            })
            .or_else(|| {
                let jumps = before.is_some_and(|reference| is_jump(reference, it));
                let agrees = doubted.is_some_and(|doubted| !is_jump(doubted, it));
                (jumps && !agrees).then_some(Question::Jump)
            })
            .filter(|_| !is_right);
        match why {
            Some(why) => {
                ask(*at, it.grams, why);
                doubted = Some(it);
            }
            None => {
                before = Some(it);
                doubted = None;
            }
        }
        if let Some((earlier_at, earlier)) = last
            && !is_right
            && weighing.taken.is_none()
            && earlier.moment == WeighingMoment::BeforeFeed
            && weighing.moment == WeighingMoment::AfterFeed
            && at.since_ms(earlier_at) <= FEED_MOST_H * HOUR_MS
            && it.grams + SWAPPED_FROM_G < i64::from(earlier.grams)
        {
            ask(*at, it.grams, Question::Swapped);
        }
        // One that was told later belongs to no feed and stands between none.
        if weighing.taken.is_none() {
            last = Some((*at, *weighing));
        }
    }
    asked
}

/// Whether the WHO's software would flag a weight. Babies born early lie far below the standard
/// and are not held against it.
fn is_implausible(pair: &Pair, who_day: i64, weight: Grams) -> bool {
    let early = pair
        .gestation
        .is_some_and(|gestation| gestation.days() < TERM_FROM_DAYS);
    !early && z(pair.sex, who_day, weight).is_some_and(super::Z::is_implausible)
}

/// Whether a weight is further from another than a baby gets in the time between; clothes differ
/// too much in weight to tell.
fn is_jump(reference: Reference, it: Reference) -> bool {
    let soon = it.at.since_ms(reference.at) <= JUMP_WITHIN_H * HOUR_MS;
    let change = (it.grams - reference.grams) * 100;
    let gained = JUMP_GAIN_PERCENT * reference.grams < change;
    let lost = change < -JUMP_LOSS_PERCENT * reference.grams;
    soon && it.clothed == reference.clothed && (gained || lost)
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
