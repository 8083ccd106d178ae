//! Rules about what is known before anything is watched: born early, twins, notes of risk. They
//! say what to keep in mind; none of them says that something is wrong.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, late_pains, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::Age;
use crate::record::{Adjustment, Coded, NippleAfter, PlanWhat, RiskNote, Sign, SignState};

/// The rules.
pub(super) const RULES: &[Rule] = &[
    keep("risk-born-early", "abm-10", born_early)
        .shows(&[("weeks", Unit::Count)])
        .tries(&[Adjustment::Wake, Adjustment::Compress])
        .plans(&[
            PlanWhat::WakeForFeeds,
            PlanWhat::SkinToSkin,
            PlanWhat::ExpressAfterFeeds,
            PlanWhat::WeighAgain,
        ])
        .calls(CallWhom::FeedingTeam),
    keep("risk-twins", "common-practice", twins)
        .shows(&[("babies", Unit::Count)])
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::WatchNextFeed,
            PlanWhat::ExpressAfterFeeds,
        ])
        .calls(CallWhom::FeedingTeam),
    keep("risk-low-sugar", "abm-1", low_sugar)
        .shows(&[("age", Unit::Hour)])
        .plans(&[PlanWhat::SkinToSkin, PlanWhat::FeedOften])
        .calls(CallWhom::MidwifeInCharge),
    keep("risk-jaundice", "nice-cg98", jaundice)
        .shows(&[("age", Unit::Hour)])
        .plans(&[PlanWhat::FeedOften])
        .calls(CallWhom::MidwifeInCharge),
    keep("risk-milk-later", "common-practice", milk_later)
        .shows(&[("notes", Unit::Count)])
        .plans(&[
            PlanWhat::SkinToSkin,
            PlanWhat::FeedOften,
            PlanWhat::ExpressAfterFeeds,
            PlanWhat::WeighAgain,
        ]),
    keep("risk-tongue", "common-practice", tongue)
        .limits(&[Limit::PainFrom])
        .tries(&[Adjustment::ChinFirst, Adjustment::ChangeHold])
        .plans(&[PlanWhat::WatchNextFeed])
        .calls(CallWhom::FeedingTeam)
        .changed("findings-3"),
];

const fn keep(id: &'static str, source: &'static str, judge: fn(&Scene<'_>) -> Verdict) -> Rule {
    Rule::new(id, Level::KeepWatching, source, judge).changed("findings-2")
}

/// Born before 37 weeks, in days.
const EARLY_BELOW_DAYS: u16 = 37 * 7;
/// A higher risk of jaundice: born before 38 weeks, in days (NICE CG98, 2010).
const JAUNDICE_BELOW_DAYS: u16 = 38 * 7;
/// For so many days after birth a baby born early, or twins, are reminded of (common practice).
const REMINDED_DAYS: i64 = 28;
/// The hours in which low blood sugar of a baby at risk is looked for (ABM Protocol 1, 2021: the
/// first day or two; from memory).
const SUGAR_H: i64 = 48;
/// The hours in which a baby at risk of jaundice is looked at once more (NICE CG98, 2010: within
/// the first 48 hours).
const JAUNDICE_H: i64 = 48;
/// The days in which milk that comes later matters (common practice).
const MILK_DAYS: i64 = 14;

fn age(scene: &Scene<'_>) -> Result<Age, Verdict> {
    scene.age().ok_or_else(|| lacks(Missing::Birth))
}

fn noted(scene: &Scene<'_>, note: RiskNote) -> bool {
    scene.pair.risk_notes.contains(&Coded::Known(note))
}

/// Whole days of gestation, or that they are missing.
fn gestation(scene: &Scene<'_>) -> Result<u16, Verdict> {
    let gestation = scene.pair.gestation;
    gestation
        .map(crate::record::Gestation::days)
        .ok_or_else(|| lacks(Missing::Gestation))
}

fn born_early(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        if REMINDED_DAYS <= age(scene)?.days() {
            return Ok(Verdict::NotForThis);
        }
        let days = gestation(scene)?;
        Ok(held_if(days < EARLY_BELOW_DAYS, &[(days / 7).into()]))
    })())
}

fn twins(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        if REMINDED_DAYS <= age(scene)?.days() {
            return Ok(Verdict::NotForThis);
        }
        let babies = i64::from(scene.pair.babies);
        Ok(held_if(1 < babies, &[babies]))
    })())
}

fn low_sugar(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let hours = age(scene)?.hours();
        if SUGAR_H <= hours {
            return Ok(Verdict::NotForThis);
        }
        let noted = [RiskNote::Diabetes, RiskNote::SmallBaby, RiskNote::Preterm]
            .into_iter()
            .any(|note| noted(scene, note));
        let at_risk = noted || gestation(scene)? < EARLY_BELOW_DAYS;
        Ok(held_if(at_risk, &[hours]))
    })())
}

fn jaundice(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let hours = age(scene)?.hours();
        if JAUNDICE_H <= hours {
            return Ok(Verdict::NotForThis);
        }
        let noted = [
            RiskNote::JaundiceTreated,
            RiskNote::Preterm,
            RiskNote::EarlyTerm,
        ];
        let treated = noted.into_iter().any(|note| self::noted(scene, note));
        let at_risk = treated || gestation(scene)? < JAUNDICE_BELOW_DAYS;
        Ok(held_if(at_risk, &[hours]))
    })())
}

fn milk_later(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        if MILK_DAYS <= age(scene)?.days() {
            return Ok(Verdict::NotForThis);
        }
        let count = [
            RiskNote::BloodLoss,
            RiskNote::BreastSurgery,
            RiskNote::Separated,
            RiskNote::Diabetes,
        ]
        .into_iter()
        .filter(|note| noted(scene, *note))
        .count();
        let count = i64::try_from(count).unwrap_or(0);
        Ok(held_if(0 < count, &[count]))
    })())
}

/// A note that the tongue looks restricted, and something seen in the visit that goes with it.
fn tongue(scene: &Scene<'_>) -> Verdict {
    if !noted(scene, RiskNote::Tongue) {
        return Verdict::NotForThis;
    }
    let from = scene.limit(Limit::PainFrom);
    let feeds = &scene.visit.feeds;
    let pressed = feeds.iter().filter_map(|feed| feed.nipple_after);
    let clicking = scene.visit.sign_at_worst(Sign::Quiet) == Some(SignState::NotSeen);
    let goes_with_it = clicking
        || pressed.into_iter().any(|it| it != NippleAfter::Rounded)
        || feeds
            .iter()
            .any(|feed| late_pains(feed).iter().any(|(_, score)| from <= *score));
    if goes_with_it {
        return held_if(true, &[]);
    }
    let mut missing = Vec::new();
    if feeds.is_empty() {
        missing.push(Missing::Feed);
    } else {
        if feeds.iter().any(|feed| feed.nipple_after.is_none()) {
            missing.push(Missing::NippleAfter);
        }
        if feeds.iter().any(|feed| late_pains(feed).is_empty()) {
            missing.push(Missing::Pain);
        }
    }
    if missing.is_empty() {
        Verdict::NotHeld
    } else {
        Verdict::Lacks(missing)
    }
}
