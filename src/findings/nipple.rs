//! Rules about nipple and breast, before and after.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks};
use super::{CallWhom, Level, Missing, Rule, Unit};
use crate::record::{
    Adjustment, BreastAfter, BreastBefore, BreastState, NippleAfter, NippleBefore, PlanWhat,
};

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new("nipple-damaged", Level::ActToday, "kent-2015", damaged)
        .tries(&[Adjustment::AttachAgain, Adjustment::ChangeHold])
        .plans(&[
            PlanWhat::NippleCare,
            PlanWhat::WorkOnAttachment,
            PlanWhat::WatchNextFeed,
        ])
        .calls(CallWhom::FeedingTeam),
    Rule::new(
        "nipple-misshapen",
        Level::ActToday,
        "common-practice",
        misshapen,
    )
    .tries(&[Adjustment::AttachAgain, Adjustment::ChinFirst])
    .plans(&[PlanWhat::WorkOnAttachment, PlanWhat::WatchNextFeed]),
    Rule::new(
        "nipple-blanched",
        Level::ActToday,
        "common-practice",
        blanched,
    )
    .tries(&[Adjustment::AttachAgain, Adjustment::ChinFirst])
    .plans(&[PlanWhat::WorkOnAttachment, PlanWhat::NippleCare]),
    Rule::new(
        "breast-red",
        Level::ActToday,
        "abm-36",
        breast::<{ BreastState::Red as usize }>,
    )
    .plans(&[PlanWhat::FeedOften])
    .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "breast-lump",
        Level::ActToday,
        "abm-36",
        breast::<{ BreastState::Lump as usize }>,
    )
    .plans(&[PlanWhat::FeedOften])
    .calls(CallWhom::MidwifeInCharge),
    Rule::new(
        "breast-engorged",
        Level::ActToday,
        "abm-36",
        breast::<{ BreastState::Engorged as usize }>,
    )
    .tries(&[Adjustment::SoftenFirst])
    .plans(&[PlanWhat::FeedOften]),
    Rule::new("nipple-sore", Level::KeepWatching, "common-practice", sore)
        .tries(&[Adjustment::AttachAgain])
        .plans(&[PlanWhat::NippleCare, PlanWhat::WorkOnAttachment]),
    Rule::new("nipple-flat", Level::KeepWatching, "common-practice", flat)
        .tries(&[Adjustment::SoftenFirst, Adjustment::ChangeHold])
        .plans(&[PlanWhat::WatchNextFeed]),
    Rule::new(
        "breast-not-softer",
        Level::KeepWatching,
        "common-practice",
        not_softer,
    )
    .tries(&[Adjustment::Compress])
    .plans(&[PlanWhat::WatchNextFeed, PlanWhat::CountNappies]),
    Rule::new(
        "breast-not-filling",
        Level::KeepWatching,
        "abm-3",
        not_filling,
    )
    .shows(&[("age", Unit::Hour)])
    .tries(&[Adjustment::Compress])
    .plans(&[
        PlanWhat::SkinToSkin,
        PlanWhat::FeedOften,
        PlanWhat::ExpressAfterFeeds,
        PlanWhat::WeighAgain,
    ])
    .calls(CallWhom::FeedingTeam)
    .changed("findings-2"),
    Rule::new(
        "nipple-rounded",
        Level::GoingWell,
        "common-practice",
        rounded,
    ),
    Rule::new("breast-softer", Level::GoingWell, "common-practice", softer),
];

/// A mother's two sides: what was seen on one says nothing of the other.
const SIDES: usize = 2;

/// Whether some side before a feed fits; lacking if none does and a side was not looked at.
fn side_before<T>(
    scene: &Scene<'_>,
    missing: Missing,
    told: impl Fn(&BreastBefore) -> Option<T>,
    fits: impl Fn(T) -> bool,
) -> Verdict {
    let looked: Vec<T> = scene.visit.breasts_before.iter().filter_map(told).collect();
    let sides = looked.len();
    if looked.into_iter().any(fits) {
        held_if(true, &[])
    } else if sides < SIDES {
        lacks(missing)
    } else {
        Verdict::NotHeld
    }
}

fn before(scene: &Scene<'_>, fits: impl Fn(NippleBefore) -> bool) -> Verdict {
    side_before(scene, Missing::NippleBefore, |it| it.nipple, fits)
}

/// Whether some nipple after a feed fits; lacking if none does and some was not looked at.
fn after(scene: &Scene<'_>, fits: impl Fn(NippleAfter) -> bool) -> Verdict {
    let feeds = &scene.visit.feeds;
    if feeds.is_empty() {
        return lacks(Missing::Feed);
    }
    if feeds.iter().filter_map(|it| it.nipple_after).any(fits) {
        return held_if(true, &[]);
    }
    if feeds.iter().any(|it| it.nipple_after.is_none()) {
        return lacks(Missing::NippleAfter);
    }
    Verdict::NotHeld
}

/// Before or after; lacking if neither holds and either is lacking.
fn damaged(scene: &Scene<'_>) -> Verdict {
    let broken = |it| matches!(it, NippleBefore::Cracked | NippleBefore::Bleeding);
    match (
        before(scene, broken),
        after(scene, |it| it == NippleAfter::Damaged),
    ) {
        (held @ Verdict::Held(_), _) | (_, held @ Verdict::Held(_)) => held,
        (Verdict::Lacks(mut one), Verdict::Lacks(two)) => {
            one.extend(two);
            Verdict::Lacks(one)
        }
        (lacking @ Verdict::Lacks(_), _) | (_, lacking @ Verdict::Lacks(_)) => lacking,
        _ => Verdict::NotHeld,
    }
}

fn sore(scene: &Scene<'_>) -> Verdict {
    before(scene, |it| it == NippleBefore::Sore)
}

fn flat(scene: &Scene<'_>) -> Verdict {
    before(scene, |it| {
        matches!(it, NippleBefore::Flat | NippleBefore::Inverted)
    })
}

fn misshapen(scene: &Scene<'_>) -> Verdict {
    after(scene, |it| {
        matches!(it, NippleAfter::Flattened | NippleAfter::Creased)
    })
}

fn blanched(scene: &Scene<'_>) -> Verdict {
    after(scene, |it| it == NippleAfter::Blanched)
}

/// Every feed's nipple was looked at and is rounded.
fn rounded(scene: &Scene<'_>) -> Verdict {
    match after(scene, |it| it != NippleAfter::Rounded) {
        Verdict::Held(_) => Verdict::NotHeld,
        Verdict::NotHeld => held_if(true, &[]),
        lacking => lacking,
    }
}

fn breast<const STATE: usize>(scene: &Scene<'_>) -> Verdict {
    let state = BreastState::ALL[STATE];
    side_before(
        scene,
        Missing::BreastBefore,
        |it| it.breast,
        |breast| breast == state,
    )
}

/// By this age breasts are expected to fill, in hours (ABM Protocol 3, 2017: milk not in by 72
/// hours; from memory).
const FILLING_FROM_H: i64 = 72;
/// From this age on a soft breast is usual again, in hours (common practice).
const FILLING_TO_H: i64 = 7 * 24;

/// Both breasts soft at an age at which they are expected to fill.
fn not_filling(scene: &Scene<'_>) -> Verdict {
    let Some(hours) = scene.age_hours() else {
        return lacks(Missing::Birth);
    };
    if !(FILLING_FROM_H..FILLING_TO_H).contains(&hours) {
        return Verdict::NotForThis;
    }
    let told = scene.visit.breasts_before.iter().filter_map(|it| it.breast);
    let told: Vec<BreastState> = told.collect();
    if told.iter().any(|it| *it != BreastState::Soft) {
        Verdict::NotHeld
    } else if told.len() < SIDES {
        lacks(Missing::BreastBefore)
    } else {
        held_if(true, &[hours])
    }
}

/// The breast after the last feed.
fn breast_after(scene: &Scene<'_>, state: BreastAfter) -> Verdict {
    let Some(feed) = scene.visit.feeds.last() else {
        return lacks(Missing::Feed);
    };
    match feed.breast_after {
        Some(felt) if felt == state => held_if(true, &[]),
        Some(BreastAfter::Unclear) | None => lacks(Missing::BreastAfter),
        Some(_) => Verdict::NotHeld,
    }
}

fn not_softer(scene: &Scene<'_>) -> Verdict {
    breast_after(scene, BreastAfter::Unchanged)
}

fn softer(scene: &Scene<'_>) -> Verdict {
    breast_after(scene, BreastAfter::Softer)
}
