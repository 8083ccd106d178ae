//! Rules about the rhythm of sucks and swallows over the visit's feeds. Taps are estimates: a
//! feed much of which nobody watched is not judged for what was not seen.

use super::rule::Verdict;
use super::scene::{Scene, held_if, lacks, settle};
use super::{CallWhom, Level, Limit, Missing, Rule, Unit};
use crate::record::{Adjustment, At, PlanWhat};
use crate::rhythm::{Doubt, Phase, Summary, TotalsMs};

/// The rules, gravest first.
pub(super) const RULES: &[Rule] = &[
    Rule::new(
        "rhythm-no-first-flow",
        Level::ActToday,
        "common-practice",
        no_first_flow,
    )
    .limits(&[Limit::FirstFlowWithin])
    .shows(&[("watched", Unit::Second), ("limit", Unit::Second)])
    .tries(&[
        Adjustment::Compress,
        Adjustment::AttachAgain,
        Adjustment::OtherBreast,
    ])
    .plans(&[
        PlanWhat::SkinToSkin,
        PlanWhat::WatchNextFeed,
        PlanWhat::ExpressAfterFeeds,
    ])
    .calls(CallWhom::FeedingTeam),
    Rule::new(
        "rhythm-only-flutter",
        Level::ActToday,
        "common-practice",
        only_flutter,
    )
    .shows(&[("flutter", Unit::Second), ("sucking", Unit::Second)])
    .tries(&[
        Adjustment::Wake,
        Adjustment::Compress,
        Adjustment::AttachAgain,
    ])
    .plans(&[PlanWhat::WatchNextFeed, PlanWhat::ExpressAfterFeeds])
    .calls(CallWhom::FeedingTeam),
    Rule::new(
        "rhythm-flow-short",
        Level::KeepWatching,
        "gardner-2015",
        flow_short,
    )
    .limits(&[Limit::FlowLeast])
    .shows(&[("flow", Unit::Second), ("limit", Unit::Second)])
    .tries(&[Adjustment::Compress, Adjustment::OtherBreast])
    .plans(&[PlanWhat::BothBreasts, PlanWhat::Compressions]),
    Rule::new(
        "rhythm-no-swallow",
        Level::KeepWatching,
        "nhs-checklist",
        no_swallow,
    )
    .shows(&[("sucking", Unit::Second), ("age", Unit::Hour)])
    .tries(&[Adjustment::Compress, Adjustment::AttachAgain])
    .plans(&[
        PlanWhat::WatchNextFeed,
        PlanWhat::CountNappies,
        PlanWhat::WeighAgain,
    ])
    .calls(CallWhom::FeedingTeam)
    .changed("findings-2"),
    Rule::new(
        "rhythm-flow-seen",
        Level::GoingWell,
        "hartmann-2011",
        flow_seen,
    )
    .limits(&[Limit::FlowLeast])
    .shows(&[
        ("first", Unit::Second),
        ("flow", Unit::Second),
        ("swallows", Unit::Count),
    ]),
];

/// The least sucking from which flutter alone is told, in seconds (common practice).
const SUCKING_LEAST_S: i64 = 60;
/// The share of sucking time that counts as "only flutter", in per cent (common practice).
const FLUTTER_PERCENT: u64 = 90;

fn seconds(ms: u64) -> i64 {
    i64::try_from(ms / 1000).unwrap_or(i64::MAX)
}

/// The visit's feeds taken together.
struct Together {
    totals: TotalsMs,
    first_flow_s: Option<i64>,
    swallows: i64,
    doubtful: bool,
    running: bool,
}

impl Together {
    fn of(scene: &Scene<'_>) -> Result<Self, Verdict> {
        if scene.visit.feeds.is_empty() || scene.rhythms.len() < scene.visit.feeds.len() {
            return Err(lacks(Missing::Feed));
        }
        let mut it = Self {
            totals: TotalsMs::default(),
            first_flow_s: None,
            swallows: 0,
            doubtful: false,
            running: scene.visit.running().is_some(),
        };
        for (feed, rhythm) in scene.fed() {
            for phase in Phase::ALL.iter().copied() {
                *it.totals.of_mut(phase) += rhythm.totals_ms.of(phase);
            }
            let since_start = |at: At| seconds(at.since_ms(feed.started));
            it.first_flow_s = it.first_flow_s.or(rhythm.first_flow.map(since_start));
            it.swallows += i64::from(rhythm.swallows);
            it.doubtful |= is_doubtful(rhythm);
        }
        Ok(it)
    }

    const fn sucking_ms(&self) -> u64 {
        self.totals.quick + self.totals.flow + self.totals.flutter
    }

    const fn at_breast_ms(&self) -> u64 {
        self.sucking_ms() + self.totals.rest
    }
}

/// Whether something may well have happened that was not tapped.
fn is_doubtful(rhythm: &Summary) -> bool {
    [
        Doubt::LongUnwatched,
        Doubt::UnresolvedTouches,
        Doubt::LongSilence,
    ]
    .iter()
    .any(|doubt| rhythm.doubts.contains(doubt))
}

fn no_first_flow(scene: &Scene<'_>) -> Verdict {
    settle(Together::of(scene).map(|it| {
        let limit = scene.limit(Limit::FirstFlowWithin);
        let watched = seconds(it.at_breast_ms());
        if it.first_flow_s.is_some() {
            Verdict::NotHeld
        } else if it.doubtful {
            lacks(Missing::CleanRhythm)
        } else if watched < limit {
            lacks(Missing::WatchedTime)
        } else {
            held_if(true, &[watched, limit])
        }
    }))
}

fn only_flutter(scene: &Scene<'_>) -> Verdict {
    settle(Together::of(scene).map(|it| {
        let (sucking, flutter) = (it.sucking_ms(), it.totals.flutter);
        if 0 < it.totals.flow {
            Verdict::NotHeld
        } else if it.doubtful {
            lacks(Missing::CleanRhythm)
        } else if seconds(sucking) < SUCKING_LEAST_S {
            lacks(Missing::WatchedTime)
        } else {
            let only = sucking * FLUTTER_PERCENT <= flutter * 100;
            held_if(only, &[seconds(flutter), seconds(sucking)])
        }
    }))
}

fn flow_short(scene: &Scene<'_>) -> Verdict {
    settle(Together::of(scene).map(|it| {
        let (flow, limit) = (seconds(it.totals.flow), scene.limit(Limit::FlowLeast));
        if it.first_flow_s.is_none() || limit <= flow {
            Verdict::NotHeld
        } else if it.running {
            lacks(Missing::FeedEnd)
        } else if it.doubtful {
            lacks(Missing::CleanRhythm)
        } else {
            held_if(true, &[flow, limit])
        }
    }))
}

/// From this age on swallows are heard often, in hours: from day 3 to 4 (NHS checklists).
const SWALLOWS_FROM_H: i64 = 72;
/// The least sucking without one that counts, in seconds (common practice).
const NO_SWALLOW_LEAST_S: i64 = 120;

fn no_swallow(scene: &Scene<'_>) -> Verdict {
    let Some(hours) = scene.age_hours() else {
        return lacks(Missing::Birth);
    };
    if hours < SWALLOWS_FROM_H {
        return Verdict::NotForThis;
    }
    settle(Together::of(scene).map(|it| {
        let sucking = seconds(it.sucking_ms());
        if 0 < it.swallows {
            Verdict::NotHeld
        } else if it.doubtful {
            lacks(Missing::CleanRhythm)
        } else if sucking < NO_SWALLOW_LEAST_S {
            lacks(Missing::WatchedTime)
        } else {
            held_if(true, &[sucking, hours])
        }
    }))
}

fn flow_seen(scene: &Scene<'_>) -> Verdict {
    settle(Together::of(scene).map(|it| {
        let flow = seconds(it.totals.flow);
        let enough = scene.limit(Limit::FlowLeast) <= flow;
        match it.first_flow_s {
            Some(first) if enough && 0 < it.swallows => held_if(true, &[first, flow, it.swallows]),
            _ => Verdict::NotHeld,
        }
    }))
}
