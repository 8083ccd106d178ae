//! Rules about weight.
//!
//! The ladder of a loss: above the ward's "watch" limit it is watched; above 10 % it needs a
//! clinical assessment today, which is what NICE NG75 asks for (in a published cohort of babies
//! born by caesarean more than a quarter reach it by 72 hours, so it is not by itself a reason to
//! call a doctor to the bed); a medical review now is for a loss below the -2.5 SDS line, above
//! 10 % in the second week (both: referral, van Dommelen et al. 2007), above the ward's "medical"
//! limit at any age, or above 10 % with another sign that something is wrong.

mod later;
mod loss;
mod test;

use super::rule::Verdict;
use super::scene::{Scene, lacks};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::{Age, Change, WeighedAt};
use crate::record::{Adjustment, PlanWhat, WallTime};

const LOSS: &[(&str, Unit)] = &[
    ("loss", Unit::TenthsPercent),
    ("limit", Unit::TenthsPercent),
    ("age", Unit::Hour),
];
const MORE_MILK: &[PlanWhat] = &[
    PlanWhat::FeedOften,
    PlanWhat::WatchNextFeed,
    PlanWhat::ExpressAfterFeeds,
    PlanWhat::GiveExpressedMilk,
    PlanWhat::WeighAgain,
];
const REVIEW: &[PlanWhat] = &[
    PlanWhat::MedicalTeamTold,
    PlanWhat::FeedOften,
    PlanWhat::ExpressAfterFeeds,
    PlanWhat::GiveExpressedMilk,
    PlanWhat::WeighAgain,
];

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new(
        "weight-below-line",
        Level::MedicalReviewNow,
        "van-dommelen-2007",
        loss::below_line,
    )
    .limits(&[Limit::WeightFresh])
    .shows(&[
        ("loss", Unit::TenthsPercent),
        ("line", Unit::TenthsPercent),
        ("day", Unit::Day),
    ])
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-second-week",
        Level::MedicalReviewNow,
        "van-dommelen-2007",
        loss::second_week,
    )
    .limits(&[Limit::WeightFresh])
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-medical",
        Level::MedicalReviewNow,
        "macdonald-2003",
        loss::loss_medical,
    )
    .limits(&[Limit::WeightLossMedical, Limit::WeightFresh])
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-with-signs",
        Level::MedicalReviewNow,
        "nice-ng75",
        loss::loss_with_signs,
    )
    .limits(&[
        Limit::WeightLossAct,
        Limit::WeightFresh,
        Limit::TemperatureHigh,
        Limit::TemperatureLow,
    ])
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-not-back-21",
        Level::MedicalReviewNow,
        "nice-ng75",
        later::not_back_21,
    )
    .shows(&[("short", Unit::Gram), ("age", Unit::Day)])
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-over-ten",
        Level::ActToday,
        "nice-ng75",
        loss::loss_over_ten,
    )
    .limits(&[Limit::WeightLossAct, Limit::WeightFresh])
    .shows(LOSS)
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(MORE_MILK)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-not-back-14",
        Level::ActToday,
        "paul-2016",
        later::not_back_14,
    )
    .shows(&[("short", Unit::Gram), ("age", Unit::Day)])
    .plans(MORE_MILK)
    .calls(CallWhom::FeedingTeam),
    Rule::new(
        "weight-falling",
        Level::ActToday,
        "nice-ng75",
        later::falling,
    )
    .limits(&[Limit::WeightFresh])
    .shows(&[("fall", Unit::Gram), ("hours", Unit::Hour)])
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(MORE_MILK)
    .calls(CallWhom::FeedingTeam),
    Rule::new(
        "weight-below-second-centile",
        Level::ActToday,
        "nice-ng75",
        later::below_second_centile,
    )
    .shows(&[("z", Unit::HundredthsSd), ("age", Unit::Day)])
    .plans(&[PlanWhat::WeighAgain, PlanWhat::MedicalTeamTold])
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-centile-fall",
        Level::ActToday,
        "nice-ng75",
        later::centile_fall,
    )
    .shows(&[
        ("fall", Unit::HundredthsSd),
        ("limit", Unit::HundredthsSd),
        ("age", Unit::Day),
    ])
    .plans(&[PlanWhat::WeighAgain, PlanWhat::WatchNextFeed])
    .calls(CallWhom::BabyDoctor)
    .changed("findings-2"),
    Rule::new(
        "weight-loss-born-early",
        Level::ActToday,
        "abm-10",
        loss::loss_born_early,
    )
    .limits(&[Limit::WeightFresh])
    .shows(LOSS)
    .tries(&[Adjustment::Wake, Adjustment::Compress])
    .plans(MORE_MILK)
    .calls(CallWhom::BabyDoctor)
    .changed("findings-2"),
    Rule::new(
        "weight-asked",
        Level::ActToday,
        "common-practice",
        test::asked,
    )
    .shows(&[("count", Unit::Count)])
    .plans(&[PlanWhat::WeighAgain])
    .changed("findings-2"),
    Rule::new(
        "weight-swapped",
        Level::ActToday,
        "savenije-2006",
        test::swapped,
    )
    .shows(&[("count", Unit::Count)])
    .plans(&[PlanWhat::WeighAgain])
    .changed("findings-2"),
    Rule::new(
        "weight-loss-watch",
        Level::KeepWatching,
        "abm-3",
        loss::loss_watch,
    )
    .limits(&[
        Limit::WeightLossWatch,
        Limit::WeightLossAct,
        Limit::WeightFresh,
    ])
    .shows(LOSS)
    .tries(&[Adjustment::Compress])
    .plans(&[
        PlanWhat::FeedOften,
        PlanWhat::WatchNextFeed,
        PlanWhat::WeighAgain,
    ]),
    Rule::new(
        "weight-gain-slow",
        Level::KeepWatching,
        "common-practice",
        later::gain_slow,
    )
    .limits(&[Limit::GainLeast, Limit::WeightFresh])
    .shows(GAIN)
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(&[
        PlanWhat::FeedOften,
        PlanWhat::BothBreasts,
        PlanWhat::WeighAgain,
    ]),
    Rule::new("weight-test-low", Level::KeepWatching, "abm-3", test::low)
        .shows(TESTED)
        .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
        .plans(&[
            PlanWhat::BothBreasts,
            PlanWhat::WatchNextFeed,
            PlanWhat::ExpressAfterFeeds,
            PlanWhat::CountNappies,
        ])
        .changed("findings-2"),
    Rule::new("weight-back", Level::GoingWell, "nice-ng75", later::back)
        .limits(&[Limit::WeightFresh])
        .shows(&[("age", Unit::Day)]),
    Rule::new(
        "weight-gaining",
        Level::GoingWell,
        "common-practice",
        later::gaining,
    )
    .limits(&[Limit::GainLeast, Limit::WeightFresh])
    .shows(GAIN),
    Rule::new(
        "weight-test-enough",
        Level::GoingWell,
        "abm-3",
        test::enough,
    )
    .shows(TESTED)
    .changed("findings-2"),
];

const TESTED: &[(&str, Unit)] = &[
    ("intake", Unit::Millilitre),
    ("end", Unit::Millilitre),
    ("least", Unit::Millilitre),
];

const GAIN: &[(&str, Unit)] = &[
    ("gain", Unit::Gram),
    ("least", Unit::Gram),
    ("hours", Unit::Hour),
];

/// The first two weeks, in days: a weight has to be fresh in them.
const EARLY_DAYS: i64 = 14;
/// After that a weight tells the present for so many hours: a month (weighing at most monthly to
/// six months, Royal College of Paediatrics and Child Health; from memory).
const FRESH_LATER_H: i64 = 31 * 24;

/// The weights that tell of a loss: the one that counts, and a later clothed one. A clothed weight
/// is too high, so a loss seen in it is at least as large.
fn weights(scene: &Scene<'_>) -> impl Iterator<Item = (WeighedAt, Change)> {
    [scene.growth.weight, scene.growth.clothed_since]
        .into_iter()
        .flatten()
        .filter_map(|it| it.change.map(|change| (it, change)))
}

/// The last weight that counts, with its change, or what is missing.
fn weight(scene: &Scene<'_>) -> Result<(WeighedAt, Change), Verdict> {
    if scene.age().is_none() {
        return Err(lacks(Missing::Birth));
    }
    let mut missing = Vec::new();
    if scene.growth.birth_weight.is_none() {
        missing.push(Missing::BirthWeight);
    }
    if scene.growth.weight.is_none() {
        missing.push(Missing::Weight);
    }
    scene
        .growth
        .weight
        .and_then(|it| it.change.map(|change| (it, change)))
        .ok_or(Verdict::Lacks(missing))
}

/// Says that a weight gives no cause, unless it is too old, was taken in clothes, or is itself
/// asked about.
fn unless_doubtful(scene: &Scene<'_>, weight: WeighedAt) -> Verdict {
    if is_asked_about(scene, weight.at) {
        return lacks(Missing::CheckedWeight);
    }
    if weight.clothed {
        return lacks(Missing::UnclothedWeight);
    }
    let Some(age) = scene.age() else {
        return lacks(Missing::Birth);
    };
    if fresh_hours(scene, age) < age.hours() - weight.age.hours() {
        return lacks(Missing::RecentWeight);
    }
    Verdict::NotHeld
}

/// For how many hours a weight tells the present at an age.
fn fresh_hours(scene: &Scene<'_>, age: Age) -> i64 {
    if age.days() < EARLY_DAYS {
        scene.limit(Limit::WeightFresh)
    } else {
        FRESH_LATER_H
    }
}

/// Whether the weight of a time is one to be checked: it can raise an alarm, not end one.
fn is_asked_about(scene: &Scene<'_>, at: WallTime) -> bool {
    scene.growth.questions.iter().any(|it| it.at == at)
}
