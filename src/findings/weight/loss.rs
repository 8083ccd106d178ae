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

pub(super) fn loss_watch(scene: &Scene<'_>) -> Verdict {
    if loss_above(scene, scene.limit(Limit::WeightLossAct), |_| true).is_some() {
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
