//! All figures of one pair at one instant, with what was missing for those that are absent.

use super::age::HOUR_MS;
use super::volume::TERM_FROM_DAYS;
use super::{
    Age, Centile, Change, Checked, ExpectedOutput, Gain, LineAgainst, MedianLoss, Questioned,
    TestWeighing, VolumeRange, Z, centile, expected_on_day, gain, median_loss, questions,
    test_weighings, usual_feed_volume, z,
};
use crate::record::{Grams, Pair, Sex, WallTime, Weighing, WeighingMoment, words};

words!(
    /// What was missing for a figure.
    MissingForGrowth {
        /// The birth instant lies after the time asked for.
        Birth = "birth",
        /// The birth weight.
        BirthWeight = "birth_weight",
        /// Any weight after birth.
        Weight = "weight",
        /// A weight without clothes.
        UnclothedWeight = "unclothed_weight",
        /// The baby's sex.
        Sex = "sex",
        /// The way of birth.
        WayOfBirth = "way_of_birth",
        /// A second weight at least 24 hours apart.
        SecondWeight = "second_weight",
    }
);

words!(
    /// What has to be said beside the figures.
    Caution {
        /// The birth standard of UK charts differs from the WHO's before two weeks.
        UkEarlyDays = "uk_early_days",
        /// Born before 37 weeks: the WHO standard is for babies born at term.
        Preterm = "preterm",
        /// The last weight was taken in clothes.
        Clothed = "clothed",
        /// The last weight was taken just after a feed.
        AfterFeed = "after_feed",
        /// A weight is to be asked about.
        Asked = "asked",
    }
);

/// The first day on which UK charts use the WHO standard (UK-WHO growth charts, Royal College of
/// Paediatrics and Child Health 2009; from memory).
const UK_FROM_DAY: i64 = 14;
/// A weighing before a feed stands in for the one after it within so many hours.
const SAME_FEED_H: i64 = 3;
/// The first weighing that can show the birth weight regained, in hours of age: earlier, it may
/// not have been lost yet.
const BACK_FROM_H: i64 = 24;

/// A weight with the age at which it was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WeighedAt {
    /// When.
    pub at: WallTime,
    /// At which age.
    pub age: Age,
    /// The weight as the scale showed it.
    pub grams: Grams,
    /// Whether the baby was clothed.
    pub clothed: bool,
    /// Against the birth weight, if that is known.
    pub change: Option<Change>,
}

/// The figures of one pair.
#[derive(Debug, Clone, PartialEq)]
pub struct Growth {
    /// At which instant.
    pub at: WallTime,
    /// The age then; `None` before birth.
    pub age: Option<Age>,
    /// The birth weight.
    pub birth_weight: Option<Grams>,
    /// The last weight that counts: without clothes, and before rather than after a feed. The last
    /// clothed one if there is no other.
    pub weight: Option<WeighedAt>,
    /// A clothed weight later than that one.
    pub clothed_since: Option<WeighedAt>,
    /// The weight against the -2.5 SDS line at its age.
    pub line: Option<LineAgainst>,
    /// The published median loss nearest to its age, by way of birth.
    pub median_loss: Option<MedianLoss>,
    /// The WHO z of the weight at its age.
    pub z: Option<Z>,
    /// The WHO centile.
    pub centile: Option<Centile>,
    /// The age at the first weighing at or above birth weight after the first day.
    pub back_at: Option<Age>,
    /// Gain per day up to the last weighing.
    pub gain: Option<Gain>,
    /// Test weighings.
    pub test_weighings: Vec<TestWeighing>,
    /// Expected output on the day of life now.
    pub expected: Option<&'static ExpectedOutput>,
    /// The usual volume of one feed at the age now.
    pub usual_feed: Option<VolumeRange>,
    /// Weights to be asked about.
    pub questions: Vec<Questioned>,
    /// What has to be said beside the figures.
    pub cautions: Vec<Caution>,
    /// What was missing.
    pub missing: Vec<MissingForGrowth>,
}

/// Computes all figures of a pair at an instant. Weighings before birth or after the instant are
/// asked about and otherwise left out; their order does not matter.
pub fn of(pair: &Pair, weighings: &[(WallTime, Weighing)], at: WallTime) -> Growth {
    of_checked(pair, weighings, &Checked::default(), at)
}

/// As [`of`], where some weights were said to be right: those are not asked about, and others are held
/// against them.
pub fn of_checked(
    pair: &Pair,
    weighings: &[(WallTime, Weighing)],
    checked: &Checked,
    at: WallTime,
) -> Growth {
    let mut sorted: Vec<(WallTime, Weighing)> = weighings.to_vec();
    sorted.sort_by_key(|it| it.0.utc_ms());
    let questions = questions(pair, &sorted, checked, at);
    sorted.retain(|it| 0 <= it.0.since_ms(pair.birth) && 0 <= at.since_ms(it.0));
    let age = Age::of(pair.birth, at);
    let weighed = |it: &(WallTime, Weighing)| {
        Some(WeighedAt {
            at: it.0,
            age: Age::of(pair.birth, it.0)?,
            grams: it.1.grams,
            clothed: it.1.clothed,
            change: pair.birth_weight.map(|birth| Change::of(birth, it.1.grams)),
        })
    };
    let counting = last_that_counts(&sorted);
    let weight = counting.and_then(weighed);
    let clothed_since = weight.and_then(|weight| {
        let later = |it: &&(WallTime, Weighing)| it.1.clothed && 0 < it.0.since_ms(weight.at);
        sorted.iter().rfind(later).and_then(weighed)
    });
    // One that has to be checked shows nothing to be regained.
    let is_asked = |it: &WeighedAt| {
        let grams = i64::from(it.grams);
        questions
            .iter()
            .any(|of| of.at == it.at && of.grams == grams)
    };
    let z = weight.and_then(|it| z(pair.sex, it.age.who_day(), it.grams));
    let preterm = pair
        .gestation
        .is_some_and(|gestation| gestation.days() < TERM_FROM_DAYS);
    let mut growth = Growth {
        at,
        age,
        birth_weight: pair.birth_weight,
        weight,
        clothed_since,
        line: weight.and_then(|it| LineAgainst::of(it.change?, it.age)),
        median_loss: weight.and_then(|it| median_loss(pair.way_of_birth?, it.age)),
        z,
        centile: z.map(centile),
        back_at: sorted.iter().filter_map(weighed).find_map(|it| {
            let back = !it.clothed
                && !is_asked(&it)
                && BACK_FROM_H <= it.age.hours()
                && it.change.is_some_and(Change::is_at_birth_weight);
            back.then_some(it.age)
        }),
        gain: gain(&sorted),
        test_weighings: test_weighings(&sorted),
        expected: age.and_then(|age| expected_on_day(age.day_of_life())),
        usual_feed: age.and_then(|age| usual_feed_volume(age, pair.gestation)),
        questions,
        cautions: Vec::new(),
        missing: Vec::new(),
    };
    let after_feed = counting.is_some_and(|it| it.1.moment == WeighingMoment::AfterFeed);
    growth.cautions = cautions(&growth, preterm, after_feed);
    growth.missing = missing(&growth, pair);
    growth
}

/// The last weighing without clothes; the one before the same feed if it was taken after a feed;
/// the last clothed one if there is no other.
fn last_that_counts(sorted: &[(WallTime, Weighing)]) -> Option<&(WallTime, Weighing)> {
    let bare = || sorted.iter().rev().filter(|it| !it.1.clothed);
    let Some(last) = bare().next() else {
        return sorted.last();
    };
    if last.1.moment != WeighingMoment::AfterFeed || last.1.taken.is_some() {
        return Some(last);
    }
    let is_before = |it: &Weighing| it.taken.is_none() && it.moment == WeighingMoment::BeforeFeed;
    let before = bare().find(|it| is_before(&it.1));
    before
        .filter(|it| last.0.since_ms(it.0) <= SAME_FEED_H * HOUR_MS)
        .or(Some(last))
}

fn cautions(growth: &Growth, preterm: bool, after_feed: bool) -> Vec<Caution> {
    let early = growth.z.is_some() && growth.weight.is_some_and(|it| it.age.days() < UK_FROM_DAY);
    let clothed = growth.clothed_since.is_some() || growth.weight.is_some_and(|it| it.clothed);
    [
        (Caution::UkEarlyDays, early),
        (Caution::Preterm, preterm),
        (Caution::Clothed, clothed),
        (Caution::AfterFeed, after_feed),
        (Caution::Asked, !growth.questions.is_empty()),
    ]
    .into_iter()
    .filter_map(|(caution, holds)| holds.then_some(caution))
    .collect()
}

fn missing(growth: &Growth, pair: &Pair) -> Vec<MissingForGrowth> {
    let clothed = growth.weight.is_some_and(|it| it.clothed);
    [
        (MissingForGrowth::Birth, growth.age.is_none()),
        (MissingForGrowth::BirthWeight, pair.birth_weight.is_none()),
        (MissingForGrowth::Weight, growth.weight.is_none()),
        (MissingForGrowth::UnclothedWeight, clothed),
        (MissingForGrowth::Sex, pair.sex == Sex::NotStated),
        (MissingForGrowth::WayOfBirth, pair.way_of_birth.is_none()),
        (MissingForGrowth::SecondWeight, growth.gain.is_none()),
    ]
    .into_iter()
    .filter_map(|(what, lacks)| lacks.then_some(what))
    .collect()
}
