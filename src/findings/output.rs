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
    .calls(CallWhom::BabyDoctor),
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

fn no_wet(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if age.days() < 1 {
            return Ok(Verdict::NotForThis);
        }
        let seen_now = scene.visit.nappies.iter().any(|(_, it)| it.wet);
        let told = scene.visit.last_day.as_ref();
        let wet = told.and_then(|day| day.wet);
        let gap = told.and_then(|day| day.hours_since_wet).map(i64::from);
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
        let (row, day) = expected(scene)?;
        let dirty = scene.told(|day| day.dirty, Missing::Dirty)?;
        Ok(held_if(dirty == 0, &[row.dirty.into(), day]))
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
