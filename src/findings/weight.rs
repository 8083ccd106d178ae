//! Rules about weight.
//!
//! The ladder of a loss: above the ward's "watch" limit it is watched; above 10 % it needs a
//! clinical assessment today, which is what NICE NG75 asks for (in a published cohort of babies
//! born by caesarean more than a quarter reach it by 72 hours, so it is not by itself a reason to
//! call a doctor to the bed); a medical review now is for a loss below the -2.5 SDS line, above
//! 10 % in the second week (both: referral, van Dommelen et al. 2007), above the ward's "medical"
//! limit at any age, or above 10 % with another sign that something is wrong.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::{Age, Change, LineAgainst, OutputAgainst, SDS_LINE_DAYS, WeighedAt};
use crate::record::{Adjustment, Jaundice, PlanWhat, Sex};

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
        below_line,
    )
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
        second_week,
    )
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-medical",
        Level::MedicalReviewNow,
        "macdonald-2003",
        loss_medical,
    )
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-with-signs",
        Level::MedicalReviewNow,
        "nice-ng75",
        loss_with_signs,
    )
    .shows(LOSS)
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-not-back-21",
        Level::MedicalReviewNow,
        "nice-ng75",
        not_back_21,
    )
    .shows(&[("short", Unit::Gram), ("age", Unit::Day)])
    .plans(REVIEW)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-loss-over-ten",
        Level::ActToday,
        "nice-ng75",
        loss_over_ten,
    )
    .shows(LOSS)
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(MORE_MILK)
    .calls(CallWhom::BabyDoctor),
    Rule::new(
        "weight-not-back-14",
        Level::ActToday,
        "paul-2016",
        not_back_14,
    )
    .shows(&[("short", Unit::Gram), ("age", Unit::Day)])
    .plans(MORE_MILK)
    .calls(CallWhom::FeedingTeam),
    Rule::new("weight-falling", Level::ActToday, "nice-ng75", falling)
        .shows(&[("fall", Unit::Gram), ("hours", Unit::Hour)])
        .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
        .plans(MORE_MILK)
        .calls(CallWhom::FeedingTeam),
    Rule::new(
        "weight-below-second-centile",
        Level::ActToday,
        "nice-ng75",
        below_second_centile,
    )
    .shows(&[("z", Unit::HundredthsSd), ("age", Unit::Day)])
    .plans(&[PlanWhat::WeighAgain, PlanWhat::MedicalTeamTold])
    .calls(CallWhom::BabyDoctor),
    Rule::new("weight-asked", Level::ActToday, "common-practice", asked)
        .shows(&[("count", Unit::Count)])
        .plans(&[PlanWhat::WeighAgain]),
    Rule::new(
        "weight-loss-watch",
        Level::KeepWatching,
        "abm-3",
        loss_watch,
    )
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
        gain_slow,
    )
    .shows(GAIN)
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(&[
        PlanWhat::FeedOften,
        PlanWhat::BothBreasts,
        PlanWhat::WeighAgain,
    ]),
    Rule::new("weight-back", Level::GoingWell, "nice-ng75", back).shows(&[("age", Unit::Day)]),
    Rule::new(
        "weight-gaining",
        Level::GoingWell,
        "common-practice",
        gaining,
    )
    .shows(GAIN),
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
/// By now weight is expected to go up again, in hours: about day 5 (common practice).
const GROWING_FROM_H: i64 = 120;
/// A gain is judged from a first weight of this age on, in hours: before it the loss may not have
/// ended (NICE NG75: it usually stops by about day 3 to 4).
const GAIN_BASE_FROM_H: i64 = 96;
/// The last day for which the least gain is meant: about three months.
const GAIN_TO_DAY: i64 = 91;
/// The second centile of a nine-centile chart, in standard deviations.
const SECOND_CENTILE_SD: f64 = -2.0;
/// Days at which birth weight is expected to be back: most by two weeks (86 % and 76 % by way of
/// birth, Paul et al. 2016), most by three (NICE NG75, 2017).
const BACK_BY_DAYS: [i64; 2] = [14, 21];

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

/// Says that a weight gives no cause, unless it is too old or was taken in clothes.
fn unless_doubtful(scene: &Scene<'_>, weight: WeighedAt) -> Verdict {
    if weight.clothed {
        return lacks(Missing::UnclothedWeight);
    }
    let Some(age) = scene.age() else {
        return lacks(Missing::Birth);
    };
    let fresh_h = if age.days() < EARLY_DAYS {
        scene.limit(Limit::WeightFresh)
    } else {
        FRESH_LATER_H
    };
    if fresh_h < age.hours() - weight.age.hours() {
        return lacks(Missing::RecentWeight);
    }
    Verdict::NotHeld
}

/// The largest loss above a limit among the weights that pass, if any.
fn loss_above(scene: &Scene<'_>, limit: i64, passes: impl Fn(Age) -> bool) -> Option<Vec<i64>> {
    weights(scene)
        .filter(|(it, change)| passes(it.age) && change.lost_more_than_tenths(limit))
        .min_by_key(|(_, change)| change.grams)
        .map(|(it, change)| vec![change.loss_tenths_percent(), limit, it.age.hours()])
}

fn loss_over(scene: &Scene<'_>, limit: Limit) -> Verdict {
    settle(weight(scene).map(|(last, _)| {
        loss_above(scene, scene.limit(limit), |_| true)
            .map_or_else(|| unless_doubtful(scene, last), Verdict::Held)
    }))
}

fn loss_over_ten(scene: &Scene<'_>) -> Verdict {
    loss_over(scene, Limit::WeightLossAct)
}

fn loss_medical(scene: &Scene<'_>) -> Verdict {
    loss_over(scene, Limit::WeightLossMedical)
}

fn loss_watch(scene: &Scene<'_>) -> Verdict {
    if loss_above(scene, scene.limit(Limit::WeightLossAct), |_| true).is_some() {
        return Verdict::NotHeld;
    }
    loss_over(scene, Limit::WeightLossWatch)
}

fn second_week(scene: &Scene<'_>) -> Verdict {
    // Fixed by its source, not by the ward: more than 10 % on days 7 to 13.
    const LIMIT_TENTHS: i64 = 100;
    let in_week = |age: Age| 7 <= age.days() && age.days() < 14;
    if let Some(numbers) = loss_above(scene, LIMIT_TENTHS, in_week) {
        return Verdict::Held(numbers);
    }
    for_days(scene, in_week)
}

fn below_line(scene: &Scene<'_>) -> Verdict {
    let below = weights(scene)
        .filter_map(|(it, change)| Some((change, LineAgainst::of(change, it.age)?)))
        .find(|(_, line)| line.below);
    if let Some((change, line)) = below {
        let numbers = [change.loss_tenths_percent(), line.line_tenths, line.day];
        return held_if(true, &numbers);
    }
    for_days(scene, |age| SDS_LINE_DAYS.contains(&age.days()))
}

/// What a rule says that is for some days only and does not hold: not held if a weight of those
/// days tells so, lacking if none does, not for this baby outside the days.
fn for_days(scene: &Scene<'_>, covers: impl Fn(Age) -> bool) -> Verdict {
    if scene.age().is_some_and(|age| !covers(age)) {
        return Verdict::NotForThis;
    }
    settle(weight(scene).map(|(last, _)| {
        if covers(last.age) {
            unless_doubtful(scene, last)
        } else {
            lacks(Missing::RecentWeight)
        }
    }))
}

/// Another sign that something is wrong: `Some(true)` seen, `Some(false)` looked for and not seen.
fn other_signs(scene: &Scene<'_>) -> Vec<(Missing, Option<bool>)> {
    let day = scene.visit.last_day.clone().unwrap_or_default();
    let few_wet = scene
        .age()
        .and_then(|age| OutputAgainst::of(&day, age))
        .and_then(|it| it.wet_enough)
        .map(|enough| !enough);
    let temperature = day.temperature.map(|it| {
        let it = i64::from(it);
        it < scene.limit(Limit::TemperatureLow) || scene.limit(Limit::TemperatureHigh) < it
    });
    vec![
        (
            Missing::BabyDanger,
            day.baby_danger.map(|it| !it.is_empty()),
        ),
        (Missing::Sleepy, day.sleepy),
        (
            Missing::Jaundice,
            day.jaundice.map(|it| it != Jaundice::None),
        ),
        (Missing::Temperature, temperature),
        (Missing::Wet, few_wet),
        (
            Missing::Urates,
            scene
                .urates()
                .map(|it| it && scene.age().is_some_and(|age| 2 <= age.days())),
        ),
    ]
}

fn loss_with_signs(scene: &Scene<'_>) -> Verdict {
    match loss_over(scene, Limit::WeightLossAct) {
        Verdict::Held(numbers) => {
            let signs = other_signs(scene);
            if signs.iter().any(|(_, it)| *it == Some(true)) {
                return Verdict::Held(numbers);
            }
            let missing: Vec<Missing> = signs
                .into_iter()
                .filter_map(|(word, it)| it.is_none().then_some(word))
                .collect();
            if missing.is_empty() {
                Verdict::NotHeld
            } else {
                Verdict::Lacks(missing)
            }
        }
        other => other,
    }
}

fn not_back(scene: &Scene<'_>, by_day: i64, before_day: i64) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if age.days() < by_day {
            return Ok(Verdict::NotForThis);
        }
        let (last, _) = weight(scene)?;
        let below = weights(scene)
            .filter(|(it, change)| by_day <= it.age.days() && !change.is_at_birth_weight())
            .max_by_key(|(it, _)| it.age);
        Ok(match below {
            // The later rule speaks for it.
            Some((it, _)) if before_day <= it.age.days() => Verdict::NotHeld,
            Some((it, change)) => held_if(true, &[-change.grams, it.age.days()]),
            None if scene.growth.back_at.is_some() && !last.clothed => Verdict::NotHeld,
            None if last.age.days() < by_day => lacks(Missing::RecentWeight),
            None => unless_doubtful(scene, last),
        })
    })())
}

fn not_back_14(scene: &Scene<'_>) -> Verdict {
    not_back(scene, BACK_BY_DAYS[0], BACK_BY_DAYS[1])
}

fn not_back_21(scene: &Scene<'_>) -> Verdict {
    not_back(scene, BACK_BY_DAYS[1], i64::MAX)
}

fn back(scene: &Scene<'_>) -> Verdict {
    settle(weight(scene).map(|(last, change)| {
        match (scene.growth.back_at, unless_doubtful(scene, last)) {
            (Some(age), Verdict::NotHeld) => held_if(change.is_at_birth_weight(), &[age.days()]),
            (None, Verdict::NotHeld) => Verdict::NotHeld,
            (_, doubtful) => doubtful,
        }
    }))
}

/// The gain per day as numbers, its upper end, and whether it fell for sure.
struct Judged {
    per_day: i64,
    grams: i64,
    hours: i64,
    surely_down: bool,
    from: Age,
}

fn gain(scene: &Scene<'_>) -> Result<Judged, Verdict> {
    let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
    if age.hours() < GROWING_FROM_H || GAIN_TO_DAY < age.days() {
        return Err(Verdict::NotForThis);
    }
    let gain = scene
        .growth
        .gain
        .ok_or_else(|| lacks(Missing::SecondWeight))?;
    let at = |time| Age::of(scene.pair.birth, time).ok_or_else(|| lacks(Missing::Birth));
    let fresh_h = if age.days() < EARLY_DAYS {
        scene.limit(Limit::WeightFresh)
    } else {
        FRESH_LATER_H
    };
    let to = at(gain.to)?;
    if to.hours() < GROWING_FROM_H || fresh_h < age.hours() - to.hours() {
        return Err(lacks(Missing::RecentWeight));
    }
    Ok(Judged {
        per_day: gain.per_day,
        grams: gain.grams,
        hours: gain.hours,
        surely_down: gain.high < 0,
        from: at(gain.from)?,
    })
}

fn falling(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        if it.from.hours() < GAIN_BASE_FROM_H {
            return Err(lacks(Missing::SecondWeight));
        }
        Ok(held_if(it.surely_down, &[-it.grams, it.hours]))
    })())
}

fn gain_slow(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        if it.from.hours() < GAIN_BASE_FROM_H {
            return Err(lacks(Missing::SecondWeight));
        }
        let least = scene.limit(Limit::GainLeast);
        let slow = it.per_day < least && !it.surely_down;
        Ok(held_if(slow, &[it.per_day, least, it.hours]))
    })())
}

fn gaining(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let it = gain(scene)?;
        let least = scene.limit(Limit::GainLeast);
        Ok(held_if(least <= it.per_day, &[it.per_day, least, it.hours]))
    })())
}

fn below_second_centile(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if age.days() < EARLY_DAYS {
            return Ok(Verdict::NotForThis);
        }
        if scene.pair.sex == Sex::NotStated {
            return Err(lacks(Missing::Sex));
        }
        if scene
            .growth
            .cautions
            .contains(&crate::growth::Caution::Preterm)
        {
            return Err(lacks(Missing::EarlyReference));
        }
        let last = scene.growth.weight.ok_or_else(|| lacks(Missing::Weight))?;
        if last.age.days() < EARLY_DAYS {
            return Err(lacks(Missing::RecentWeight));
        }
        // Past the table's five years there is nothing to hold it against.
        let Some(z) = scene.growth.z else {
            return Ok(Verdict::NotForThis);
        };
        if z.exact() < SECOND_CENTILE_SD {
            return Ok(held_if(true, &[z.hundredths(), last.age.days()]));
        }
        Ok(unless_doubtful(scene, last))
    })())
}

fn asked(scene: &Scene<'_>) -> Verdict {
    let count = i64::try_from(scene.growth.questions.len()).unwrap_or(i64::MAX);
    held_if(0 < count, &[count])
}
