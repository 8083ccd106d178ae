//! Rules about pain over time. The first seconds after the baby goes on are apart: some feel pain
//! then that goes (about 20 seconds, common practice).

use super::rule::Verdict;
use super::scene::{
    FIRST_SECONDS_MS, Latch, Scene, held_if, lacks, latches, late_pains, scored_pains,
};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::record::{Adjustment, Feed, PlanWhat};

const BETTER: &[Adjustment] = &[
    Adjustment::AttachAgain,
    Adjustment::ChinFirst,
    Adjustment::CloserIn,
    Adjustment::ChangeHold,
];

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new("pain-severe", Level::ActToday, "common-practice", severe)
        .shows(&[("score", Unit::Score), ("limit", Unit::Score)])
        .tries(BETTER)
        .plans(&[
            PlanWhat::WorkOnAttachment,
            PlanWhat::NippleCare,
            PlanWhat::WatchNextFeed,
        ])
        .calls(CallWhom::FeedingTeam),
    Rule::new(
        "pain-severe-latching",
        Level::ActToday,
        "common-practice",
        severe_latching,
    )
    .shows(&[
        ("score", Unit::Score),
        ("limit", Unit::Score),
        ("count", Unit::Count),
    ])
    .tries(BETTER)
    .plans(&[
        PlanWhat::WorkOnAttachment,
        PlanWhat::NippleCare,
        PlanWhat::WatchNextFeed,
    ])
    .calls(CallWhom::FeedingTeam)
    .changed("findings-3"),
    Rule::new(
        "pain-through-feed",
        Level::ActToday,
        "kent-2015",
        through_feed,
    )
    .limits(&[Limit::PainFrom])
    .shows(&[("score", Unit::Score), ("seconds", Unit::Second)])
    .tries(BETTER)
    .plans(&[
        PlanWhat::WorkOnAttachment,
        PlanWhat::NippleCare,
        PlanWhat::WatchNextFeed,
    ])
    .calls(CallWhom::FeedingTeam),
    Rule::new("pain-at-end", Level::ActToday, "kent-2015", at_end)
        .limits(&[Limit::PainEnd])
        .shows(&[("score", Unit::Score), ("limit", Unit::Score)])
        .tries(BETTER)
        .plans(&[PlanWhat::WorkOnAttachment, PlanWhat::NippleCare]),
    Rule::new(
        "pain-beyond-start",
        Level::KeepWatching,
        "common-practice",
        beyond_start,
    )
    .limits(&[Limit::PainFrom])
    .shows(&[("score", Unit::Score), ("limit", Unit::Score)])
    .tries(BETTER)
    .plans(&[PlanWhat::WorkOnAttachment]),
    Rule::new("pain-after", Level::KeepWatching, "kent-2015", after)
        .limits(&[Limit::PainFrom])
        .shows(&[("score", Unit::Score), ("limit", Unit::Score)])
        .tries(&[Adjustment::AttachAgain])
        .plans(&[PlanWhat::NippleCare, PlanWhat::WorkOnAttachment])
        .calls(CallWhom::FeedingTeam)
        .changed("findings-2"),
    Rule::new("pain-settled", Level::GoingWell, "common-practice", settled)
        .limits(&[Limit::PainFrom])
        .shows(&[("before", Unit::Score), ("after", Unit::Score)])
        .changed("findings-2"),
    Rule::new("pain-none", Level::GoingWell, "common-practice", none)
        .limits(&[Limit::PainFrom])
        .changed("findings-2"),
];

/// A severe score on the 0 to 10 scale (7 to 10; from memory).
const SEVERE_FROM: i64 = 7;
/// Pain goes on through a feed if it was told over at least so long, in milliseconds (common
/// practice).
const THROUGH_LEAST_MS: u64 = 120_000;

fn feeds<'a>(scene: &'a Scene<'_>) -> Result<&'a [Feed], Verdict> {
    if scene.visit.feeds.is_empty() {
        Err(lacks(Missing::Feed))
    } else {
        Ok(&scene.visit.feeds)
    }
}

/// The highest score that a look at one feed gives, over all feeds; lacking if no feed has pain
/// told after its first seconds.
fn highest(scene: &Scene<'_>, look: impl Fn(&Feed, &[(u64, i64)]) -> Option<Vec<i64>>) -> Verdict {
    let feeds = match feeds(scene) {
        Ok(feeds) => feeds,
        Err(verdict) => return verdict,
    };
    let late: Vec<_> = feeds.iter().map(|feed| (feed, late_pains(feed))).collect();
    let held = late
        .iter()
        .filter_map(|(feed, pains)| look(feed, pains))
        .max_by_key(|numbers| numbers.first().copied());
    match held {
        Some(numbers) => Verdict::Held(numbers),
        // Each feed has to have told before all of them are said to be free of it.
        None if late.iter().any(|(_, pains)| pains.is_empty()) => lacks(Missing::Pain),
        None => Verdict::NotHeld,
    }
}

fn top(pains: &[(u64, i64)]) -> Option<i64> {
    pains.iter().map(|(_, score)| *score).max()
}

/// The highest score told after the end of a feed.
fn top_after(feed: &Feed) -> Option<i64> {
    let told = feed.pains_after.iter();
    told.filter_map(|it| it.pain.value().map(i64::from)).max()
}

/// Told at least twice, far enough apart, and never below the limit between.
fn goes_through(pains: &[(u64, i64)], from: i64) -> Option<u64> {
    let (first, last) = (pains.first()?, pains.last()?);
    let over = last.0.saturating_sub(first.0);
    let through = THROUGH_LEAST_MS <= over && pains.iter().all(|(_, score)| from <= *score);
    through.then_some(over)
}

fn severe(scene: &Scene<'_>) -> Verdict {
    highest(scene, |_, pains| {
        let score = top(pains).filter(|score| SEVERE_FROM <= *score)?;
        Some(vec![score, SEVERE_FROM])
    })
}

/// Severe pain in the first seconds of a latch.
struct SevereStart {
    /// The highest score in those seconds.
    score: i64,
    /// Whether the latch ended within those seconds, and no lower pain was told before.
    cut_short: bool,
    /// Whether it cannot be told what came of it: nothing was told after those seconds.
    untold: bool,
}

fn severe_start(latch: &Latch) -> Option<SevereStart> {
    let is_early = |since_on: u64| since_on <= FIRST_SECONDS_MS;
    let is_severe = |score: i64| SEVERE_FROM <= score;
    let early = latch
        .scores
        .iter()
        .filter(|(since_on, _)| is_early(*since_on));
    let score = early
        .map(|(_, score)| *score)
        .max()
        .filter(|it| is_severe(*it))?;
    let last_severe = latch
        .scores
        .iter()
        .rposition(|(_, score)| is_severe(*score))?;
    // That it hurts less once the baby is off is no easing of the latch.
    let within = |since_on: u64| latch.lasted_ms.is_none_or(|lasted| since_on <= lasted);
    let later = &latch.scores[last_severe + 1..];
    let eased = later.iter().any(|(since_on, _)| within(*since_on));
    let late = latch
        .scores
        .iter()
        .any(|(since_on, _)| !is_early(*since_on));
    Some(SevereStart {
        score,
        cut_short: !eased && latch.lasted_ms.is_some_and(is_early),
        untold: !eased && !late,
    })
}

/// Severe pain as the baby goes on, which the first seconds do not excuse: the latch ended within
/// them, so that nobody knows whether it would have eased, or it came again at another latch of the
/// feed. Common practice: some feel pain at first that goes; pain for which she takes the baby off, or
/// that comes with each latch, is not that.
fn severe_latching(scene: &Scene<'_>) -> Verdict {
    let feeds = match feeds(scene) {
        Ok(feeds) => feeds,
        Err(verdict) => return verdict,
    };
    let starts = feeds.iter().map(|feed| -> Vec<SevereStart> {
        latches(feed).iter().filter_map(severe_start).collect()
    });
    let starts: Vec<Vec<SevereStart>> = starts.collect();
    let held = starts
        .iter()
        .filter(|feed| 1 < feed.len() || feed.iter().any(|it| it.cut_short))
        .flatten();
    let (mut highest, mut count) = (None, 0);
    for start in held {
        highest = highest.max(Some(start.score));
        count += 1;
    }
    let was_told = |feed: &Feed| !scored_pains(feed).is_empty();
    match highest {
        Some(score) => held_if(true, &[score, SEVERE_FROM, count]),
        None if starts.iter().flatten().any(|it| it.untold) => lacks(Missing::Pain),
        None if !feeds.iter().all(was_told) => lacks(Missing::Pain),
        None => Verdict::NotHeld,
    }
}

fn through_feed(scene: &Scene<'_>) -> Verdict {
    let from = scene.limit(Limit::PainFrom);
    highest(scene, |_, pains| {
        let over = goes_through(pains, from)?;
        Some(vec![top(pains)?, i64::try_from(over / 1000).unwrap_or(0)])
    })
}

fn beyond_start(scene: &Scene<'_>) -> Verdict {
    let from = scene.limit(Limit::PainFrom);
    highest(scene, |_, pains| {
        if goes_through(pains, from).is_some() {
            return None;
        }
        let score = top(pains).filter(|score| from <= *score)?;
        Some(vec![score, from])
    })
}

fn at_end(scene: &Scene<'_>) -> Verdict {
    let from = scene.limit(Limit::PainEnd);
    highest(scene, |feed, pains| {
        let (_, score) = pains.last().filter(|(_, score)| from <= *score)?;
        feed.ended.map(|_| vec![*score, from])
    })
}

/// Pain told after the end of a feed, the highest of all feeds.
fn after(scene: &Scene<'_>) -> Verdict {
    let feeds = match feeds(scene) {
        Ok(feeds) => feeds,
        Err(verdict) => return verdict,
    };
    let from = scene.limit(Limit::PainFrom);
    let highest = feeds.iter().filter_map(top_after).max();
    match highest.filter(|score| from <= *score) {
        Some(score) => held_if(true, &[score, from]),
        None if feeds.iter().any(|feed| top_after(feed).is_none()) => lacks(Missing::PainAfter),
        None => Verdict::NotHeld,
    }
}

/// In the last feed: pain at first, and below the limit when last told.
fn settled(scene: &Scene<'_>) -> Verdict {
    let from = scene.limit(Limit::PainFrom);
    last_feed(scene, |feed, pains| {
        let at_first = scored_pains(feed)
            .into_iter()
            .filter(|(since_on, _, _)| *since_on <= FIRST_SECONDS_MS)
            .map(|(_, _, score)| score)
            .max();
        let last = pains.last().map_or(0, |(_, score)| *score);
        let before = at_first.max(top(pains)).unwrap_or(0);
        let last = top_after(feed).unwrap_or(last).max(last);
        held_if(from <= before && last < from, &[before, last])
    })
}

/// In the last feed: told, and always below the limit.
fn none(scene: &Scene<'_>) -> Verdict {
    let from = scene.limit(Limit::PainFrom);
    last_feed(scene, |feed, _| {
        let all = scored_pains(feed);
        let after = top_after(feed).is_some_and(|score| from <= score);
        held_if(!after && all.iter().all(|(_, _, score)| *score < from), &[])
    })
}

fn last_feed(scene: &Scene<'_>, look: impl Fn(&Feed, &[(u64, i64)]) -> Verdict) -> Verdict {
    let Some(feed) = scene.visit.feeds.last() else {
        return lacks(Missing::Feed);
    };
    let pains = late_pains(feed);
    if pains.is_empty() {
        return lacks(Missing::Pain);
    }
    look(feed, &pains)
}
