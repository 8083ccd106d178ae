//! Rules about feeds in 24 hours and the sleepy baby.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::growth::{Age, FEEDS_LEAST, FEEDS_LEAST_FIRST_DAY, counts_first_day, usual_feed_volume};
use crate::record::{Adjustment, BabyState, EndedBy, LastDay, Millilitres, PlanWhat};

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
    Rule::new(
        "feeds-none-first-day",
        Level::ActToday,
        "common-practice",
        none_first_day,
    )
    .shows(&[("age", Unit::Hour), ("by", Unit::Hour)])
    .tries(&[Adjustment::Wake])
    .plans(&[
        PlanWhat::SkinToSkin,
        PlanWhat::ExpressAfterFeeds,
        PlanWhat::WatchNextFeed,
    ])
    .calls(CallWhom::MidwifeInCharge)
    .changed("findings-3"),
    Rule::new("feeds-few", Level::ActToday, "uk-checklist", few)
        .changed("findings-3")
        .limits(&[Limit::FeedsLeast])
        .shows(&[("feeds", Unit::Count), ("least", Unit::Count)])
        .tries(&[Adjustment::Wake])
        .plans(&[
            PlanWhat::FeedOften,
            PlanWhat::SkinToSkin,
            PlanWhat::WakeForFeeds,
        ]),
    Rule::new(
        "feeds-few-first-day",
        Level::ActToday,
        "yamauchi-1990",
        few_first_day,
    )
    .shows(&[("feeds", Unit::Count), ("least", Unit::Count)])
    .tries(&[Adjustment::Wake])
    .plans(&[
        PlanWhat::FeedOften,
        PlanWhat::SkinToSkin,
        PlanWhat::WakeForFeeds,
    ])
    .changed("findings-3"),
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
    Rule::new(
        "feeds-baby-unsettled-after",
        Level::KeepWatching,
        "common-practice",
        unsettled_after,
    )
    .tries(&[Adjustment::PauseAndBurp, Adjustment::OtherBreast])
    .plans(&[PlanWhat::SkinToSkin, PlanWhat::WatchNextFeed])
    .changed("findings-2"),
    Rule::new("feeds-supplement", Level::KeepWatching, "abm-3", supplement)
        .shows(&[("given", Unit::Millilitre)])
        .plans(&[
            PlanWhat::WatchNextFeed,
            PlanWhat::ExpressAfterFeeds,
            PlanWhat::WeighAgain,
        ])
        .calls(CallWhom::FeedingTeam)
        .changed("findings-2"),
    Rule::new(
        "feeds-given-above-usual",
        Level::KeepWatching,
        "abm-3",
        given_above_usual,
    )
    .shows(&[("given", Unit::Millilitre), ("usual", Unit::Millilitre)])
    .plans(&[PlanWhat::FeedOften, PlanWhat::WatchNextFeed])
    .calls(CallWhom::FeedingTeam)
    .changed("findings-2"),
    Rule::new(
        "feeds-very-often",
        Level::KeepWatching,
        "kent-2006",
        very_often,
    )
    .shows(&[("feeds", Unit::Count), ("most", Unit::Count)])
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(&[PlanWhat::WatchNextFeed, PlanWhat::WeighAgain])
    .changed("findings-2"),
    Rule::new("feeds-long", Level::KeepWatching, "nhs-checklist", long)
        .shows(&[("lasted", Unit::Second), ("most", Unit::Second)])
        .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
        .plans(&[PlanWhat::WatchNextFeed, PlanWhat::WeighAgain])
        .changed("findings-2"),
    Rule::new("feeds-short", Level::KeepWatching, "nhs-checklist", short)
        .shows(&[("lasted", Unit::Second), ("least", Unit::Second)])
        .tries(&[Adjustment::Wake, Adjustment::OtherBreast])
        .plans(&[PlanWhat::BothBreasts, PlanWhat::WatchNextFeed])
        .changed("findings-2"),
    Rule::new("feeds-often", Level::GoingWell, "uk-checklist", often)
        .limits(&[Limit::FeedsLeast])
        .shows(&[("feeds", Unit::Count), ("least", Unit::Count)])
        .changed("findings-2"),
    Rule::new(
        "feeds-baby-content",
        Level::GoingWell,
        "common-practice",
        content_after,
    ),
];

/// From this age on no feed at all is acted on, in hours. Common practice: the first feed is offered
/// within the first hour, and a baby that has not fed by about six hours is helped (from memory;
/// local policy decides). Of 140 babies some had none in their first 24 hours (Yamauchi and
/// Yamanouchi 1990, Pediatrics 86:171: 0 to 11), so that it is not by itself for the doctor.
const FIRST_FEED_BY_H: i64 = 6;

fn age(scene: &Scene<'_>) -> Result<Age, Verdict> {
    scene.age().ok_or_else(|| lacks(Missing::Birth))
}

/// The count, once a first whole day can be counted. Before that the first day's own rules say what
/// is lacking, once for all.
fn feeds(scene: &Scene<'_>) -> Result<i64, Verdict> {
    if age(scene)?.days() < 1 {
        return Err(Verdict::NotForThis);
    }
    scene.told(|day| day.feeds, Missing::Feeds).map(i64::from)
}

/// No feed at the breast was told, nor any milk given another way.
fn is_unfed(scene: &Scene<'_>) -> Result<bool, Verdict> {
    let feeds = scene.told(|day| day.feeds, Missing::Feeds)?;
    let given = scene.visit.last_day.as_ref().is_some_and(|day| {
        [day.expressed_ml, day.supplement_ml]
            .into_iter()
            .flatten()
            .any(|ml| 0 < ml.value())
    });
    Ok(feeds == 0 && !given)
}

/// In a whole day.
fn none(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if age.days() < 1 {
            // Before that the first day's own rule speaks.
            return Ok(Verdict::NotForThis);
        }
        Ok(held_if(is_unfed(scene)?, &[age.hours()]))
    })())
}

/// In the first day, from the age on at which a first feed is expected.
fn none_first_day(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = age(scene)?;
        if age.hours() < FIRST_FEED_BY_H || 1 <= age.days() {
            return Ok(Verdict::NotForThis);
        }
        let numbers = [age.hours(), FIRST_FEED_BY_H];
        Ok(held_if(is_unfed(scene)?, &numbers))
    })())
}

/// The most feeds in 24 hours of 71 babies that were fed as they wished (Kent et al. 2006,
/// Pediatrics 117:e387: 6 to 18).
const FEEDS_MOST: i64 = 18;
/// The longest usual feed (NHS checklists for parents: 5 to 40 minutes), in milliseconds.
const FEED_LONG_MS: u64 = 40 * 60_000;
/// The shortest, as above.
const FEED_SHORT_MS: u64 = 5 * 60_000;

fn very_often(scene: &Scene<'_>) -> Verdict {
    settle(feeds(scene).map(|feeds| held_if(FEEDS_MOST < feeds, &[feeds, FEEDS_MOST])))
}

/// Formula or donor milk in the last 24 hours.
fn supplement(scene: &Scene<'_>) -> Verdict {
    let told = scene.told(|day| day.supplement_ml, Missing::Supplement);
    settle(told.map(i64::from).map(|ml| held_if(0 < ml, &[ml])))
}

/// More milk given another way in 24 hours than eight usual feeds at this age would be.
fn given_above_usual(scene: &Scene<'_>) -> Verdict {
    settle((|| {
        let age = scene.age().ok_or_else(|| lacks(Missing::Birth))?;
        let usual = usual_feed_volume(age, scene.pair.gestation);
        let usual = usual.ok_or(Verdict::NotForThis)?.high_ml * i64::from(FEEDS_LEAST);
        let told =
            |what: fn(&LastDay) -> Option<Millilitres>, word| scene.told(what, word).map(i64::from);
        let expressed = told(|day| day.expressed_ml, Missing::Expressed);
        let supplement = told(|day| day.supplement_ml, Missing::Supplement);
        let told = [&expressed, &supplement].into_iter().flatten().sum();
        if usual < told {
            return Ok(held_if(true, &[told, usual]));
        }
        // What was not told may lie above it.
        supplement.and(expressed).map(|_| Verdict::NotHeld)
    })())
}

/// How long the visit's ended feeds lasted, in milliseconds.
fn durations(scene: &Scene<'_>) -> Result<Vec<u64>, Verdict> {
    if scene.visit.feeds.is_empty() {
        return Err(lacks(Missing::Feed));
    }
    if scene.visit.running().is_some() {
        return Err(lacks(Missing::FeedEnd));
    }
    let feeds = scene.visit.feeds.iter();
    Ok(feeds
        .filter_map(|feed| Some(feed.ended?.at.since_ms(feed.started)))
        .collect())
}

fn seconds(ms: u64) -> i64 {
    i64::try_from(ms / 1000).unwrap_or(i64::MAX)
}

/// One feed longer than usual.
fn long(scene: &Scene<'_>) -> Verdict {
    settle(durations(scene).map(|all| {
        let longest = all.into_iter().max().unwrap_or(0);
        held_if(
            FEED_LONG_MS < longest,
            &[seconds(longest), seconds(FEED_LONG_MS)],
        )
    }))
}

/// All of the visit's feeds together shorter than usual, the last ended by the baby.
fn short(scene: &Scene<'_>) -> Verdict {
    settle(durations(scene).map(|all| {
        let sum: u64 = all.into_iter().sum();
        let by = scene.visit.feeds.last().and_then(|feed| feed.ended);
        let by_baby = by.is_some_and(|end| end.by == EndedBy::Baby);
        held_if(
            by_baby && sum < FEED_SHORT_MS,
            &[seconds(sum), seconds(FEED_SHORT_MS)],
        )
    }))
}

/// Few feeds in a count that lay mostly after the first day.
fn few(scene: &Scene<'_>) -> Verdict {
    let least = scene.limit(Limit::FeedsLeast);
    settle((|| {
        if counts_first_day(age(scene)?) {
            return Ok(Verdict::NotForThis);
        }
        let feeds = feeds(scene)?;
        Ok(held_if(feeds < least, &[feeds, least]))
    })())
}

/// Few feeds in a count that lay mostly in the first day.
fn few_first_day(scene: &Scene<'_>) -> Verdict {
    let least = i64::from(FEEDS_LEAST_FIRST_DAY);
    settle((|| {
        let age = age(scene)?;
        if !counts_first_day(age) {
            return Ok(Verdict::NotForThis);
        }
        let feeds = i64::from(scene.told(|day| day.feeds, Missing::Feeds)?);
        if age.days() < 1 && feeds < least {
            // More may come before the day is over.
            return Ok(lacks(Missing::WholeDay));
        }
        Ok(held_if(feeds < least, &[feeds, least]))
    })())
}

fn often(scene: &Scene<'_>) -> Verdict {
    let least = scene.limit(Limit::FeedsLeast);
    settle(feeds(scene).map(|feeds| {
        let usual = least <= feeds && feeds <= FEEDS_MOST;
        held_if(usual, &[feeds, least])
    }))
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

fn unsettled_after(scene: &Scene<'_>) -> Verdict {
    after(scene, BabyState::Unsettled)
}

fn content_after(scene: &Scene<'_>) -> Verdict {
    after(scene, BabyState::Content)
}
