//! Rules about how much of the birth weight is lost.

use super::{unless_doubtful, weight, weights};
use crate::findings::rule::Verdict;
use crate::findings::scene::{Scene, held_if, lacks, settle};
use crate::findings::{Limit, Missing};
use crate::growth::{Age, LineAgainst, OutputAgainst, SDS_LINE_DAYS};
use crate::record::Jaundice;

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

pub(super) fn loss_over_ten(scene: &Scene<'_>) -> Verdict {
    loss_over(scene, Limit::WeightLossAct)
}

pub(super) fn loss_medical(scene: &Scene<'_>) -> Verdict {
    loss_over(scene, Limit::WeightLossMedical)
}

/// The days of gestation of babies born late preterm: 34 weeks to 36 weeks and 6 days.
const LATE_PRETERM_DAYS: std::ops::Range<u16> = 34 * 7..37 * 7;
/// What such a baby may lose in each of the first days, in tenths of a per cent, and at most.
///
/// Source: Academy of Breastfeeding Medicine, Clinical Protocol 10, second revision 2016 (Boies EG,
/// Vaucher YE. Breastfeed Med 2016;11:494-500): more than 3 % a day, or 7 % by day 3.
const LATE_PRETERM_TENTHS: (i64, i64) = (30, 70);
/// The first two weeks, in days, in which that is judged.
const LATE_PRETERM_TO_DAY: i64 = 14;

fn late_preterm_limit(age: Age) -> i64 {
    let (a_day, most) = LATE_PRETERM_TENTHS;
    (a_day * (age.days() + 1)).min(most)
}

/// A loss that is too much for a baby born late preterm, at the age of each weight.
fn loss_too_early(scene: &Scene<'_>) -> Option<Vec<i64>> {
    let late_preterm = |it: crate::record::Gestation| LATE_PRETERM_DAYS.contains(&it.days());
    if !scene.pair.gestation.is_some_and(late_preterm) {
        return None;
    }
    weights(scene)
        .filter(|(it, _)| it.age.days() < LATE_PRETERM_TO_DAY)
        .filter(|(it, change)| change.lost_more_than_tenths(late_preterm_limit(it.age)))
        .min_by_key(|(_, change)| change.grams)
        .map(|(it, change)| {
            let limit = late_preterm_limit(it.age);
            vec![change.loss_tenths_percent(), limit, it.age.hours()]
        })
}

pub(super) fn loss_born_early(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        if LATE_PRETERM_TO_DAY <= age.days() {
            return Ok(Verdict::NotForThis);
        }
        let gestation = scene.pair.gestation;
        let gestation = gestation.ok_or_else(|| lacks(Missing::Gestation))?;
        if !LATE_PRETERM_DAYS.contains(&gestation.days()) {
            return Ok(Verdict::NotForThis);
        }
        let (last, _) = weight(scene)?;
        Ok(loss_too_early(scene).map_or_else(|| unless_doubtful(scene, last), Verdict::Held))
    })())
}

pub(super) fn loss_watch(scene: &Scene<'_>) -> Verdict {
    if loss_too_early(scene).is_some()
        || loss_above(scene, scene.limit(Limit::WeightLossAct), |_| true).is_some()
    {
        return Verdict::NotHeld;
    }
    loss_over(scene, Limit::WeightLossWatch)
}

pub(super) fn second_week(scene: &Scene<'_>) -> Verdict {
    // Fixed by its source, not by the ward: more than 10 % on days 7 to 13.
    const LIMIT_TENTHS: i64 = 100;
    let in_week = |age: Age| 7 <= age.days() && age.days() < 14;
    if let Some(numbers) = loss_above(scene, LIMIT_TENTHS, in_week) {
        return Verdict::Held(numbers);
    }
    for_days(scene, in_week)
}

pub(super) fn below_line(scene: &Scene<'_>) -> Verdict {
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

pub(super) fn loss_with_signs(scene: &Scene<'_>) -> Verdict {
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
