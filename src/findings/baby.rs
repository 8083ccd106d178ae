//! Rules about the baby's danger signs, yellow skin and temperature.
//!
//! Lists of danger signs disagree on temperature: the more careful one is used and named
//! (above 37.5 or below 35.5 degrees: Young Infants Clinical Signs Study Group, Lancet
//! 2008;371:135-142); 38 degrees and more under three months is NICE NG143 (2019).

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::Age;
use crate::record::{
    Adjustment, BabyDanger, Coded, Gestation, Jaundice, LastDay, PlanWhat, Sign, StoolColour,
};

const fn now(id: &'static str, source: &'static str, judge: fn(&Scene<'_>) -> Verdict) -> Rule {
    Rule::new(id, Level::MedicalReviewNow, source, judge)
        .plans(&[PlanWhat::MedicalTeamTold])
        .calls(CallWhom::BabyDoctor)
}

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    now(
        "baby-hard-to-wake",
        "nice-ng143",
        danger::<{ BabyDanger::HardToWake as usize }>,
    ),
    now(
        "baby-floppy",
        "nice-ng143",
        danger::<{ BabyDanger::Floppy as usize }>,
    ),
    now(
        "baby-fit",
        "yicss-2008",
        danger::<{ BabyDanger::Fit as usize }>,
    ),
    now(
        "baby-breathing",
        "yicss-2008",
        danger::<{ BabyDanger::Breathing as usize }>,
    ),
    now(
        "baby-colour",
        "nice-ng143",
        danger::<{ BabyDanger::Colour as usize }>,
    ),
    now(
        "baby-green-vomit",
        "nice-ng143",
        danger::<{ BabyDanger::GreenVomit as usize }>,
    ),
    now(
        "baby-bulging-fontanelle",
        "nice-ng143",
        danger::<{ BabyDanger::BulgingFontanelle as usize }>,
    ),
    now(
        "baby-rash",
        "nice-ng143",
        danger::<{ BabyDanger::Rash as usize }>,
    ),
    now(
        "baby-cord",
        "who-newborn",
        danger::<{ BabyDanger::Cord as usize }>,
    ),
    now(
        "baby-not-feeding",
        "yicss-2008",
        danger::<{ BabyDanger::NotFeeding as usize }>,
    ),
    now(
        "baby-distension",
        "who-newborn",
        danger::<{ BabyDanger::Distension as usize }>,
    ),
    now("baby-danger-other", "newer-list", danger_other),
    now("baby-jaundice-first-day", "nice-cg98", jaundice_first_day),
    now("baby-jaundice-extensive", "who-newborn", jaundice_extensive),
    now(
        "baby-sleepy-yellow-few-feeds",
        "common-practice",
        sleepy_yellow_few_feeds,
    )
    .limits(&[Limit::FeedsLeast])
    .shows(&[("feeds", Unit::Count), ("least", Unit::Count)]),
    now("baby-temperature-fever", "nice-ng143", temperature_fever)
        .shows(&[("temperature", Unit::TenthsCelsius)]),
    now("baby-temperature-high", "yicss-2008", temperature_high)
        .limits(&[Limit::TemperatureHigh])
        .shows(&[
            ("temperature", Unit::TenthsCelsius),
            ("limit", Unit::TenthsCelsius),
        ]),
    now("baby-temperature-low", "yicss-2008", temperature_low)
        .limits(&[Limit::TemperatureLow])
        .shows(&[
            ("temperature", Unit::TenthsCelsius),
            ("limit", Unit::TenthsCelsius),
        ])
        .tries(&[Adjustment::Wake]),
    now(
        "baby-stool-pale",
        "nice-cg98",
        stool::<{ StoolColour::Pale as usize }>,
    ),
    now(
        "baby-stool-bloody",
        "common-practice",
        stool::<{ StoolColour::Bloody as usize }>,
    ),
    now("baby-urine-dark-yellow", "nice-cg98", urine_dark_yellow).changed("findings-3"),
    Rule::new("baby-urine-dark", Level::ActToday, "nice-cg98", urine_dark)
        .plans(&[PlanWhat::MedicalTeamTold, PlanWhat::CountNappies])
        .calls(CallWhom::BabyDoctor)
        .changed("findings-3"),
    Rule::new("baby-jaundice", Level::ActToday, "nice-cg98", jaundice)
        .shows(&[("age", Unit::Day)])
        .plans(&[PlanWhat::FeedOften, PlanWhat::MedicalTeamTold])
        .calls(CallWhom::BabyDoctor)
        .changed("findings-2"),
    Rule::new(
        "baby-jaundice-prolonged",
        Level::ActToday,
        "nice-cg98",
        jaundice_prolonged,
    )
    .shows(&[("age", Unit::Day), ("limit", Unit::Day)])
    .plans(&[PlanWhat::MedicalTeamTold])
    .calls(CallWhom::BabyDoctor)
    .changed("findings-2"),
    Rule::new(
        "baby-temperature-cool",
        Level::ActToday,
        "who-thermal",
        temperature_cool,
    )
    .limits(&[Limit::TemperatureLow])
    .shows(&[("temperature", Unit::TenthsCelsius)])
    .tries(&[Adjustment::Wake])
    .plans(&[PlanWhat::SkinToSkin])
    .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "baby-clicking",
        Level::KeepWatching,
        "common-practice",
        clicking,
    )
    .tries(&[
        Adjustment::AttachAgain,
        Adjustment::ChinFirst,
        Adjustment::CloserIn,
    ])
    .plans(&[PlanWhat::WorkOnAttachment, PlanWhat::WatchNextFeed])
    .changed("findings-3"),
];

/// Fever in a baby under three months, in tenths of a degree (NICE NG143, 2019; from memory).
const FEVER_TENTHS: i64 = 380;
/// Below it a baby is cool, in tenths of a degree (WHO, Thermal protection of the newborn, 1997:
/// normal is 36.5 to 37.5; from memory).
const COOL_TENTHS: i64 = 365;

fn dangers<'a>(scene: &'a Scene<'_>) -> Result<&'a [Coded<BabyDanger>], Verdict> {
    let told = scene.visit.last_day.as_ref();
    told.and_then(|day| day.baby_danger.as_deref())
        .ok_or_else(|| lacks(Missing::BabyDanger))
}

fn danger<const DANGER: usize>(scene: &Scene<'_>) -> Verdict {
    let sought = BabyDanger::ALL[DANGER];
    settle(dangers(scene).map(|told| held_if(told.contains(&Coded::Known(sought)), &[])))
}

/// A danger sign that this version has no rule for must still be heard.
fn danger_other(scene: &Scene<'_>) -> Verdict {
    settle(dangers(scene).map(|told| held_if(told.iter().any(|it| it.known().is_none()), &[])))
}

/// Whether yellow skin is seen now, as far as it was told.
fn yellow(day: &LastDay) -> Option<bool> {
    day.jaundice.map(|it| it != Jaundice::None)
}

fn jaundice_first_day(scene: &Scene<'_>) -> Verdict {
    let told = scene.told(|day| day.baby_danger.clone(), Missing::BabyDanger);
    let named = told
        .as_ref()
        .is_ok_and(|told| told.contains(&Coded::Known(BabyDanger::JaundiceFirstDay)));
    if named {
        return held_if(true, &[]);
    }
    let seen = scene.told(yellow, Missing::Jaundice);
    match (scene.age(), seen) {
        (None, _) => lacks(Missing::Birth),
        // After the first day only the question about it can tell.
        (Some(age), _) if 1 <= age.days() => settle(told.map(|_| Verdict::NotHeld)),
        (Some(_), Ok(true)) => held_if(true, &[]),
        (Some(_), Ok(false)) => Verdict::NotHeld,
        (Some(_), Err(verdict)) => verdict,
    }
}

fn jaundice_extensive(scene: &Scene<'_>) -> Verdict {
    let told = scene.told(|day| day.jaundice, Missing::Jaundice);
    settle(told.map(|it| held_if(it == Jaundice::Extensive, &[])))
}

/// Days beyond which jaundice is prolonged: 14 at term, 21 before 37 weeks (NICE CG98, 2010; from
/// memory). Where the gestation is not known the earlier one is taken.
const fn prolonged_beyond_days(gestation: Option<Gestation>) -> i64 {
    match gestation {
        Some(it) if it.days() < 37 * 7 => 21,
        _ => 14,
    }
}

/// Yellow skin short of extensive, the age, and the days beyond which it is prolonged.
fn yellow_at(scene: &Scene<'_>) -> Result<(bool, Age, i64), Verdict> {
    let told = scene.told(|day| day.jaundice, Missing::Jaundice)?;
    let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
    let some = matches!(told, Jaundice::Face | Jaundice::Body);
    Ok((some, age, prolonged_beyond_days(scene.pair.gestation)))
}

/// Yellow skin after the first day: to be measured.
fn jaundice(scene: &Scene<'_>) -> Verdict {
    settle(yellow_at(scene).map(|(some, age, limit)| {
        let in_time = 1 <= age.days() && !age.is_beyond_days(limit);
        held_if(some && in_time, &[age.days()])
    }))
}

/// Yellow skin beyond the days in which it usually goes.
fn jaundice_prolonged(scene: &Scene<'_>) -> Verdict {
    settle(
        yellow_at(scene).map(|(some, age, limit)| {
            held_if(some && age.is_beyond_days(limit), &[age.days(), limit])
        }),
    )
}

fn sleepy_yellow_few_feeds(scene: &Scene<'_>) -> Verdict {
    let sleepy = scene.told(|day| day.sleepy, Missing::Sleepy);
    let seen = scene.told(yellow, Missing::Jaundice);
    let feeds = scene.told(|day| day.feeds, Missing::Feeds);
    let Some(age) = scene.age() else {
        return lacks(Missing::Birth);
    };
    if age.days() < 1 {
        return Verdict::NotForThis;
    }
    let least = scene.limit(Limit::FeedsLeast);
    let few = feeds.clone().map(|it| i64::from(it) < least);
    let parts = [sleepy, seen, few];
    if parts.contains(&Ok(false)) {
        return Verdict::NotHeld;
    }
    let missing: Vec<Missing> = parts
        .into_iter()
        .filter_map(|part| match part {
            Err(Verdict::Lacks(missing)) => Some(missing),
            _ => None,
        })
        .flatten()
        .collect();
    if missing.is_empty() {
        held_if(true, &[feeds.map_or(0, i64::from), least])
    } else {
        Verdict::Lacks(missing)
    }
}

fn temperature(scene: &Scene<'_>) -> Result<i64, Verdict> {
    let told = scene.told(|day| day.temperature, Missing::Temperature);
    told.map(i64::from)
}

fn temperature_fever(scene: &Scene<'_>) -> Verdict {
    settle(temperature(scene).map(|it| held_if(FEVER_TENTHS <= it, &[it])))
}

fn temperature_high(scene: &Scene<'_>) -> Verdict {
    let limit = scene.limit(Limit::TemperatureHigh);
    settle(temperature(scene).map(|it| held_if(limit < it && it < FEVER_TENTHS, &[it, limit])))
}

fn temperature_low(scene: &Scene<'_>) -> Verdict {
    let limit = scene.limit(Limit::TemperatureLow);
    settle(temperature(scene).map(|it| held_if(it < limit, &[it, limit])))
}

fn temperature_cool(scene: &Scene<'_>) -> Verdict {
    let limit = scene.limit(Limit::TemperatureLow);
    settle(temperature(scene).map(|it| held_if(limit <= it && it < COOL_TENTHS, &[it])))
}

fn stool<const COLOUR: usize>(scene: &Scene<'_>) -> Verdict {
    let stools = scene.stools();
    if stools.is_empty() {
        return lacks(Missing::StoolColour);
    }
    held_if(stools.contains(&StoolColour::ALL[COLOUR]), &[])
}

/// Whether yellow skin is seen, or was in the first day.
fn ever_yellow(scene: &Scene<'_>) -> Result<bool, Verdict> {
    let named =
        dangers(scene).is_ok_and(|told| told.contains(&Coded::Known(BabyDanger::JaundiceFirstDay)));
    if named {
        return Ok(true);
    }
    scene.told(yellow, Missing::Jaundice)
}

/// Whether yellow skin is to be measured, or is prolonged.
fn is_acted_on(scene: &Scene<'_>) -> bool {
    [jaundice(scene), jaundice_prolonged(scene)]
        .iter()
        .any(|it| matches!(it, Verdict::Held(_)))
}

/// Dark urine in a yellow baby: the bile may be held back.
fn urine_dark_yellow(scene: &Scene<'_>) -> Verdict {
    match scene.told(|day| day.dark_urine, Missing::DarkUrine) {
        Ok(true) => settle(ever_yellow(scene).map(|yellow| held_if(yellow, &[]))),
        Ok(false) => Verdict::NotHeld,
        // It is missed where it would change what is to be done; extensive yellow skin, or yellow
        // skin in the first day, is for the doctor now in any case.
        Err(not_asked) if is_acted_on(scene) => not_asked,
        Err(_) => Verdict::NotForThis,
    }
}

/// Dark urine alone: a baby's is without colour.
fn urine_dark(scene: &Scene<'_>) -> Verdict {
    match scene.told(|day| day.dark_urine, Missing::DarkUrine) {
        Ok(dark) => held_if(dark && ever_yellow(scene) != Ok(true), &[]),
        Err(_) => Verdict::NotForThis,
    }
}

fn clicking(scene: &Scene<'_>) -> Verdict {
    super::signs::not_seen(scene, Sign::Quiet)
}
