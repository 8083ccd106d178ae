//! The rows of one feed.

use super::{Row, Table};
use crate::record::At;
use crate::report::{Facts, FeedFacts};
use crate::rhythm::{Phase, Rate, Summary};

pub(super) fn add(table: &mut Table, facts: &Facts, section: &str, it: &FeedFacts) {
    let feed = &it.feed;
    let wall = |at: At| Some(facts.wall(at));
    table.seen(section, Some(it.began), "began", feed.side.as_word());
    for (at, hold) in &feed.holds {
        table.seen(section, wall(*at), "hold", hold.as_word());
    }
    for pain in feed.all_pains() {
        match pain.pain.value() {
            Some(score) => {
                table.number(
                    section,
                    wall(pain.at),
                    "pain",
                    Some(score.into()),
                    "{score}",
                );
            }
            None => table.seen(section, wall(pain.at), "pain", "cannot_say"),
        }
    }
    if feed.all_pains().next().is_none() {
        table.seen(section, None, "pain", "unknown");
    }
    for change in &feed.signs {
        let state = change
            .state
            .map_or("not_looked", crate::record::SignState::as_word);
        table.seen(section, wall(change.at), change.sign.as_word(), state);
    }
    for tried in &feed.adjustments {
        table.seen(section, wall(tried.at), "adjustment", tried.what.as_word());
    }
    match feed.ended {
        Some(end) => table.seen(section, wall(end.at), "ended", end.by.as_word()),
        None => table.seen(section, None, "ended", "no"),
    }
    for (name, word) in [
        (
            "nipple_after",
            feed.nipple_after.map(crate::record::NippleAfter::as_word),
        ),
        (
            "breast_after",
            feed.breast_after.map(crate::record::BreastAfter::as_word),
        ),
        (
            "baby_state",
            feed.baby_state.map(crate::record::BabyState::as_word),
        ),
    ] {
        table.seen(section, None, name, word.unwrap_or("unknown"));
    }
    if 0 < feed.unresolved_touches {
        table.number(
            section,
            None,
            "unresolved_touches",
            Some(feed.unresolved_touches.into()),
            "{count}",
        );
    }
    if let Some(rhythm) = &it.rhythm {
        rhythm_rows(table, facts, section, feed.started, rhythm);
    }
}

fn rhythm_rows(table: &mut Table, facts: &Facts, section: &str, started: At, it: &Summary) {
    let source = facts.rule_versions.rhythm.clone();
    let mut put =
        |at: Option<At>, name: &str, value: String, unit: &str, ends: Option<[f64; 2]>| {
            let [low, high] =
                ends.map_or_else(Default::default, |ends| ends.map(|end| format!("{end:.2}")));
            table.push(&Row {
                section,
                at: at.map(|at| facts.wall(at)),
                name,
                value,
                unit,
                low,
                high,
                source: &source,
            });
        };
    put(None, "watched", it.watched_ms.to_string(), "ms", None);
    put(None, "sucks", it.sucks.to_string(), "{count}", None);
    put(None, "swallows", it.swallows.to_string(), "{count}", None);
    let first_flow = it.first_flow.map_or_else(
        || "none_seen".to_owned(),
        |at| at.since_ms(started).to_string(),
    );
    put(it.first_flow, "first_flow", first_flow, "ms", None);
    put(
        None,
        "flow_episodes",
        it.flow_episodes.to_string(),
        "{count}",
        None,
    );
    for phase in Phase::ALL {
        let name = format!("total_{}", phase.as_word());
        put(None, &name, it.totals_ms.of(*phase).to_string(), "ms", None);
    }
    for rates in &it.rates {
        let phase = rates.phase.map_or("feed", Phase::as_word);
        for (kind, unit, rate) in [
            ("sucks_per_min", "/min", rates.sucks_per_min),
            ("sucks_per_swallow", "1", rates.sucks_per_swallow),
        ] {
            let name = format!("{kind}_{phase}");
            match rate {
                Some(Rate { value, low, high }) => {
                    put(None, &name, format!("{value:.2}"), unit, Some([low, high]));
                }
                None => put(None, &name, "unknown".to_owned(), unit, None),
            }
        }
    }
    put(
        None,
        "runs",
        it.run_statistics.count.to_string(),
        "{count}",
        None,
    );
    put(
        None,
        "rests",
        it.rest_statistics.count.to_string(),
        "{count}",
        None,
    );
    for span in &it.phases {
        let name = format!("phase_{}", span.phase.as_word());
        put(
            Some(span.from),
            &name,
            span.to.since_ms(span.from).to_string(),
            "ms",
            None,
        );
    }
    for run in &it.runs {
        put(
            Some(run.from),
            "run_sucks",
            run.sucks.to_string(),
            "{count}",
            None,
        );
    }
    for doubt in &it.doubts {
        put(None, "doubt", doubt.as_word().to_owned(), "", None);
    }
}
