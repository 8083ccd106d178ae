//! Rules about nappies, held against what is expected on the day in which most of the last 24
//! hours lay.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::{Age, ExpectedOutput, OutputAgainst, expected_over_last_day};
use crate::record::{PlanWhat, StoolColour};

const COUNTS: &[(&str, Unit)] = &[
    ("count", Unit::Count),
    ("least", Unit::Count),
    ("day", Unit::Count),
];

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new(
        "output-no-wet",
        Level::MedicalReviewNow,
        "uk-urgent",
        no_wet,
    )
    .limits(&[Limit::WetGapMedical])
    .shows(&[("hours", Unit::Hour), ("age", Unit::Hour)])
    .plans(&[
        PlanWhat::MedicalTeamTold,
        PlanWhat::FeedOften,
        PlanWhat::CountNappies,
    ])
    .calls(CallWhom::BabyDoctor)
    .changed("findings-3"),
    Rule::new(
        "output-no-meconium-long",
        Level::MedicalReviewNow,
        "common-practice",
        no_meconium_long,
    )
    .shows(&[("age", Unit::Hour)])
    .plans(&[PlanWhat::MedicalTeamTold, PlanWhat::CountNappies])
    .calls(CallWhom::BabyDoctor)
    .changed("findings-3"),
    Rule::new(
        "output-no-meconium",
        Level::ActToday,
        "common-practice",
        no_meconium,
    )
    .shows(&[("age", Unit::Hour)])
    .plans(&[
        PlanWhat::MedicalTeamTold,
        PlanWhat::FeedOften,
        PlanWhat::CountNappies,
    ])
    .calls(CallWhom::BabyDoctor)
    .changed("findings-3"),
    Rule::new("output-wet-gap", Level::ActToday, "uk-urgent", wet_gap)
        .limits(&[Limit::WetGapAct, Limit::WetGapMedical])
        .shows(&[("hours", Unit::Hour), ("limit", Unit::Hour)])
        .plans(&[PlanWhat::FeedOften, PlanWhat::CountNappies])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new("output-few-wet", Level::ActToday, "uk-checklist", few_wet)
        .shows(COUNTS)
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::WatchNextFeed,
            PlanWhat::CountNappies,
        ])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new("output-no-dirty", Level::ActToday, "uk-checklist", no_dirty)
        .changed("findings-3")
        .shows(&[("least", Unit::Count), ("day", Unit::Count)])
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::WatchNextFeed,
            PlanWhat::CountNappies,
        ])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "output-few-dirty",
        Level::ActToday,
        "uk-checklist",
        few_dirty,
    )
    .shows(COUNTS)
    .plans(&[
        PlanWhat::FeedOften,
        PlanWhat::WatchNextFeed,
        PlanWhat::CountNappies,
    ]),
    Rule::new("output-black-late", Level::ActToday, "abm-3", black_late)
        .shows(&[("day", Unit::Count)])
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::WatchNextFeed,
            PlanWhat::CountNappies,
        ])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new("output-urates", Level::ActToday, "uk-checklist", urates)
        .shows(&[("age", Unit::Hour)])
        .plans(&[PlanWhat::FeedOften, PlanWhat::CountNappies])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "output-colour-behind",
        Level::KeepWatching,
        "uk-checklist",
        colour_behind,
    )
    .shows(&[("day", Unit::Count)])
    .plans(&[PlanWhat::FeedOften, PlanWhat::CountNappies]),
    Rule::new(
        "output-as-expected",
        Level::GoingWell,
        "uk-checklist",
        as_expected,
    )
    .limits(&[Limit::WetGapAct, Limit::WetGapMedical])
    .shows(&[
        ("wet", Unit::Count),
        ("dirty", Unit::Count),
        ("day", Unit::Count),
    ])
    .changed("findings-2"),
];

/// From this age on twelve hours without a wet nappy are not usual, in hours: on days 1 and 2 one
/// wet nappy a day may be all (UK checklist).
const GAP_MEDICAL_FROM_H: i64 = 48;
/// From this age on eight hours are not usual: five or more a day are expected (UK checklist).
const GAP_ACT_FROM_H: i64 = 96;
/// A whole day without a wet nappy, in hours.
const DAY_H: i64 = 24;
/// Milliseconds in an hour.
const HOUR_MS: i64 = 3_600_000;
/// No stool since birth from this age on is acted on, in hours (lists of danger signs: none within
/// 24 hours).
const MECONIUM_BY_H: i64 = 24;
/// From this age on it is for the doctor, in hours: none by 48 hours may mean that the bowel is
/// blocked (from memory).
const MECONIUM_MEDICAL_H: i64 = 48;
/// Meconium on or after this day of life is late (ABM Protocol 3, 2017; from memory).
const BLACK_LATE_DAY: i64 = 5;
/// Urates may tint a nappy up to this age, in days.
const URATES_TO_DAYS: i64 = 2;

fn age(scene: &Scene<'_>) -> Result<Age, Verdict> {
    scene.age().ok_or_else(|| lacks(Missing::Birth))
}

/// The row that the last 24 hours are held against, and the day of life it was chosen for.
fn expected(scene: &Scene<'_>) -> Result<(&'static ExpectedOutput, i64), Verdict> {
    let age = age(scene)?;
    expected_over_last_day(age)
        .map(|row| (row, age.day_of_last_count()))
        .ok_or(Verdict::NotForThis)
}

/// Whether a stool was passed since birth: seen in the visit, told, or told by another answer.
fn passed_stool(scene: &Scene<'_>, age: Age) -> Result<bool, Verdict> {
    if scene.visit.nappies.iter().any(|(_, it)| it.stool.is_some()) {
        return Ok(true);
    }
    let told = scene.visit.last_day.as_ref();
    let dirty = told.and_then(|day| day.dirty);
    let any = told.is_some_and(|day| day.stool.is_some()) || dirty.is_some_and(|it| 0 < it);
    // Up to 24 hours of age the count of the last 24 is the count since birth.
    let none_yet = dirty == Some(0) && age.as_ms() <= DAY_H * HOUR_MS;
    match told.and_then(|day| day.meconium) {
        Some(passed) => Ok(passed),
        None if any => Ok(true),
        None if none_yet => Ok(false),
        None => Err(lacks(Missing::Meconium)),
    }
}

fn no_meconium(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if MECONIUM_MEDICAL_H <= age.hours() {
            return Ok(Verdict::NotForThis);
        }
        let passed = passed_stool(scene, age)?;
        if !passed && age.hours() < MECONIUM_BY_H {
            return Ok(lacks(Missing::WholeDay));
        }
        Ok(held_if(!passed, &[age.hours()]))
    })())
}

fn no_meconium_long(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if age.hours() < MECONIUM_MEDICAL_H {
            return Ok(Verdict::NotForThis);
        }
        Ok(held_if(!passed_stool(scene, age)?, &[age.hours()]))
    })())
}

fn no_wet(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        let seen_now = scene.visit.nappies.iter().any(|(_, it)| it.wet);
        let told = scene.visit.last_day.as_ref();
        let wet = told.and_then(|day| day.wet);
        let gap = told.and_then(|day| day.hours_since_wet).map(i64::from);
        if age.days() < 1 {
            // One is expected in the first 24 hours (UK checklist), which are not over.
            return Ok(match (wet, gap) {
                _ if seen_now => Verdict::NotHeld,
                (None, None) => Verdict::Lacks(vec![Missing::Wet, Missing::WetGap]),
                (Some(0), _) => lacks(Missing::WholeDay),
                (None, Some(gap)) if age.hours() <= gap => lacks(Missing::WholeDay),
                _ => Verdict::NotHeld,
            });
        }
        let limit = if age.hours() < GAP_MEDICAL_FROM_H {
            DAY_H
        } else {
            scene.limit(Limit::WetGapMedical)
        };
        let long = gap.is_some_and(|gap| limit <= gap);
        Ok(match (wet, gap) {
            _ if seen_now => Verdict::NotHeld,
            (Some(0), _) => held_if(true, &[gap.unwrap_or(DAY_H).max(DAY_H), age.hours()]),
            (_, Some(gap)) if long => held_if(true, &[gap, age.hours()]),
            (_, Some(_)) => Verdict::NotHeld,
            // One or more in the day, and nothing said of the last: on days 1 and 2 that is enough.
            (Some(_), None) if age.hours() < GAP_MEDICAL_FROM_H => Verdict::NotHeld,
            (Some(_), None) => lacks(Missing::WetGap),
            (None, None) => Verdict::Lacks(vec![Missing::Wet, Missing::WetGap]),
        })
    })())
}

fn wet_gap(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        if age(scene)?.hours() < GAP_ACT_FROM_H {
            return Ok(Verdict::NotForThis);
        }
        if scene.visit.nappies.iter().any(|(_, it)| it.wet) {
            return Ok(Verdict::NotHeld);
        }
        let gap = scene.told(|day| day.hours_since_wet, Missing::WetGap)?;
        let (gap, limit) = (i64::from(gap), scene.limit(Limit::WetGapAct));
        let grave = scene.limit(Limit::WetGapMedical) <= gap;
        Ok(held_if(limit <= gap && !grave, &[gap, limit]))
    })())
}

fn few_wet(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let (row, day) = expected(scene)?;
        let wet = scene.told(|day| day.wet, Missing::Wet)?;
        let few = 0 < wet && wet < row.wet;
        Ok(held_if(few, &[wet.into(), row.wet.into(), day]))
    })())
}

fn no_dirty(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let first_day = age(scene)?.days() < 1;
        let dirty = scene.told(|day| day.dirty, Missing::Dirty);
        if first_day {
            // One is expected in the first 24 hours (UK checklist), which are not over.
            return dirty.map(|dirty| match dirty {
                0 => lacks(Missing::WholeDay),
                _ => Verdict::NotHeld,
            });
        }
        let (row, day) = expected(scene)?;
        Ok(held_if(dirty? == 0, &[row.dirty.into(), day]))
    })())
}

fn few_dirty(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let (row, day) = expected(scene)?;
        let dirty = scene.told(|day| day.dirty, Missing::Dirty)?;
        let few = 0 < dirty && dirty < row.dirty;
        Ok(held_if(few, &[dirty.into(), row.dirty.into(), day]))
    })())
}

/// The latest stool's colour: seen in the visit, or told.
fn latest_colour(scene: &Scene<'_>) -> Result<StoolColour, Verdict> {
    let stools = scene.stools();
    stools
        .last()
        .copied()
        .ok_or_else(|| lacks(Missing::StoolColour))
}

fn black_late(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let (_, day) = expected(scene)?;
        let black = latest_colour(scene)? == StoolColour::Black;
        Ok(held_if(black && BLACK_LATE_DAY <= day, &[day]))
    })())
}

fn colour_behind(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let (row, day) = expected(scene)?;
        let colour = latest_colour(scene)?;
        let late = colour == StoolColour::Black && BLACK_LATE_DAY <= day;
        let behind = matches!(colour, StoolColour::Black | StoolColour::Green)
            && !row.colours.contains(&colour);
        Ok(held_if(behind && !late, &[day]))
    })())
}

fn urates(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if age.days() < URATES_TO_DAYS {
            return Ok(Verdict::NotForThis);
        }
        let seen = scene.urates().ok_or_else(|| lacks(Missing::Urates))?;
        Ok(held_if(seen, &[age.hours()]))
    })())
}

fn as_expected(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let (row, count_day) = expected(scene)?;
        let wet = scene.told(|day| day.wet, Missing::Wet)?;
        let dirty = scene.told(|day| day.dirty, Missing::Dirty)?;
        let colour = latest_colour(scene)?;
        let urates = scene.urates().ok_or_else(|| lacks(Missing::Urates))?;
        let told = scene.visit.last_day.as_ref();
        let counted = told
            .zip(scene.age())
            .and_then(|(day, age)| OutputAgainst::of(day, age))
            .is_some_and(|it| it.wet_enough == Some(true) && it.dirty_enough == Some(true));
        let long_ago = [no_wet(scene), wet_gap(scene)]
            .iter()
            .any(|it| matches!(it, Verdict::Held(_)));
        let well = !long_ago && counted && row.colours.contains(&colour) && (!urates || row.urates);
        Ok(held_if(well, &[wet.into(), dirty.into(), count_day]))
    })())
}
