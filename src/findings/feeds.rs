//! Rules about feeds in 24 hours and the sleepy baby.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::record::{Adjustment, BabyState, PlanWhat};

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new("feeds-none", Level::MedicalReviewNow, "yicss-2008", none)
        .shows(&[("age", Unit::Hour)])
        .tries(&[Adjustment::Wake])
        .plans(&[
            PlanWhat::MedicalTeamTold,
            PlanWhat::SkinToSkin,
            PlanWhat::ExpressAfterFeeds,
        ])
        .calls(CallWhom::BabyDoctor),
    Rule::new("feeds-few", Level::ActToday, "uk-checklist", few)
        .shows(&[("feeds", Unit::Count), ("least", Unit::Count)])
        .tries(&[Adjustment::Wake])
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::SkinToSkin,
            PlanWhat::WakeForFeeds,
        ]),
    Rule::new("feeds-sleepy", Level::ActToday, "common-practice", sleepy)
        .tries(&[
            Adjustment::Wake,
            Adjustment::Compress,
            Adjustment::OtherBreast,
        ])
        .plans(&[
            PlanWhat::WakeForFeeds,
            PlanWhat::SkinToSkin,
            PlanWhat::WatchNextFeed,
        ])
        .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "feeds-baby-hungry-after",
        Level::KeepWatching,
        "common-practice",
        hungry_after,
    )
    .tries(&[Adjustment::OtherBreast, Adjustment::Compress])
    .plans(&[PlanWhat::BothBreasts, PlanWhat::FeedOften]),
    Rule::new(
        "feeds-baby-sleepy-after",
        Level::KeepWatching,
        "common-practice",
        sleepy_after,
    )
    .tries(&[Adjustment::Wake, Adjustment::Compress])
    .plans(&[PlanWhat::Compressions, PlanWhat::WatchNextFeed]),
    Rule::new("feeds-often", Level::GoingWell, "uk-checklist", often)
        .shows(&[("feeds", Unit::Count), ("least", Unit::Count)]),
    Rule::new(
        "feeds-baby-content",
        Level::GoingWell,
        "common-practice",
        content_after,
    ),
];

/// The count, once a first whole day can be counted (4.3 feeds on average in the first 24 hours,
/// Yamauchi and Yamanouchi 1990, Pediatrics 86:171).
fn feeds(scene: &Scene<'_>) -> Result<i64, Verdict> {
    let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
    if age.days() < 1 {
        return Err(Verdict::NotForThis);
    }
    scene.told(|day| day.feeds, Missing::Feeds).map(i64::from)
}

/// No feed at the breast, and no milk told to have been given another way.
fn none(scene: &Scene<'_>) -> Verdict {
    settle(feeds(scene).map(|feeds| {
        let given = scene.visit.last_day.as_ref().is_some_and(|day| {
            [day.expressed_ml, day.supplement_ml]
                .into_iter()
                .flatten()
                .any(|ml| 0 < ml.value())
        });
        held_if(feeds == 0 && !given, &[scene.age_hours().unwrap_or(0)])
    }))
}

fn few(scene: &Scene<'_>) -> Verdict {
    let least = scene.limit(Limit::FeedsLeast);
    settle(feeds(scene).map(|feeds| held_if(feeds < least, &[feeds, least])))
}

fn often(scene: &Scene<'_>) -> Verdict {
    let least = scene.limit(Limit::FeedsLeast);
    settle(feeds(scene).map(|feeds| held_if(least <= feeds, &[feeds, least])))
}

fn sleepy(scene: &Scene<'_>) -> Verdict {
    let told = scene.told(|day| day.sleepy, Missing::Sleepy);
    settle(told.map(|sleepy| held_if(sleepy, &[])))
}

/// The baby's state after the last feed.
fn after(scene: &Scene<'_>, state: BabyState) -> Verdict {
    let Some(feed) = scene.visit.feeds.last() else {
        return lacks(Missing::Feed);
    };
    match feed.baby_state {
        Some(seen) => held_if(seen == state, &[]),
        None => lacks(Missing::BabyState),
    }
}

fn hungry_after(scene: &Scene<'_>) -> Verdict {
    after(scene, BabyState::Hungry)
}

fn sleepy_after(scene: &Scene<'_>) -> Verdict {
    after(scene, BabyState::Sleepy)
}

fn content_after(scene: &Scene<'_>) -> Verdict {
    after(scene, BabyState::Content)
}
