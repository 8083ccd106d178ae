//! Each feed: what was counted and computed, pain, and how it was afterwards.

use super::{Observation, Observed, Why, X, ours};
use crate::record::At;
use crate::report::{FeedFacts, TakenBack};
use crate::rhythm::{Phase, Rate, Summary};

pub(super) fn add(all: &mut Observed<'_>) {
    for it in &all.facts.feeds {
        feed(all, it);
        pains(all, it);
        after(all, it);
    }
    if all.is_amendment() {
        taken_back(all);
    }
}

/// The keys of what is told of the feed that started at a time.
pub(super) fn feed_key(started: At) -> String {
    format!("feed {}", started.as_ms())
}

fn pain_key(at: At) -> String {
    format!("pain {}", at.as_ms())
}

/// Code, and whether the mother is its subject, of what is found after a feed.
const AFTER: [(&str, bool); 3] = [
    ("nipple-after", true),
    ("breast-after", true),
    ("baby-state", false),
];

fn after_key(code: &str, started: At) -> String {
    format!("{code} {}", started.as_ms())
}

fn feed(all: &mut Observed<'_>, it: &FeedFacts) {
    let feed = &it.feed;
    let side = ours("side", feed.side.as_word());
    let mut out = all
        .observation(&feed_key(feed.started), "feed")
        .over(it.began, it.ended)
        .side(side.clone());
    out.by_hand = true;
    out.part("side", X::Coded(side));
    for (at, hold) in &feed.holds {
        let since = at.since_ms(feed.started);
        out.part(&ours("hold", hold.as_word()), seconds(since));
    }
    for tried in &feed.adjustments {
        let since = tried.at.since_ms(feed.started);
        out.part(&ours("adjustment", tried.what.as_word()), seconds(since));
    }
    let ended_by = X::or_absent(feed.ended, Why::NotApplicable, |it| {
        X::Coded(ours("ended-by", it.by.as_word()))
    });
    out.part("ended-by", ended_by);
    let touches = X::count(feed.unresolved_touches, "{count}");
    out.part("unresolved-touches", touches);
    match &it.rhythm {
        Some(summary) => rhythm(all, &mut out, feed.started, summary),
        None => {
            for code in ["sucks", "swallows", "watched", "flow-seen", "first-flow"] {
                out.part(code, X::Absent(Why::Unknown));
            }
        }
    }
    all.observe(out);
}

fn seconds(ms: u64) -> X {
    // A feed lasts far less than 2^52 ms, so nothing is lost.
    #[allow(clippy::cast_precision_loss)]
    X::decimal(ms as f64 / 1000.0, 1, "s")
}

fn minutes(ms: u64) -> X {
    // As above.
    #[allow(clippy::cast_precision_loss)]
    X::decimal(ms as f64 / 60_000.0, 2, "min")
}

fn rhythm(all: &Observed<'_>, out: &mut Observation, started: At, it: &Summary) {
    out.part("sucks", X::count(it.sucks, "{count}"));
    out.part("swallows", X::count(it.swallows, "{count}"));
    out.part("watched", minutes(it.watched_ms));
    out.part("flow-seen", X::Yes(it.first_flow.is_some()));
    let first_flow = X::or_absent(it.first_flow, Why::NotApplicable, |at| {
        seconds(at.since_ms(started))
    });
    out.part("first-flow", first_flow);
    out.part("flow-episodes", X::count(it.flow_episodes, "{count}"));
    for phase in Phase::ALL {
        let code = ours("phase", phase.as_word());
        out.part(&code, minutes(it.totals_ms.of(*phase)));
    }
    for rates in &it.rates {
        let of = rates.phase.map_or("feed", Phase::as_word);
        rate(out, &ours("sucks-per-min", of), rates.sucks_per_min, "/min");
        rate(
            out,
            &ours("sucks-per-swallow", of),
            rates.sucks_per_swallow,
            "1",
        );
    }
    let share = X::or_absent(it.share_sucking, Why::Unknown, |share| {
        X::decimal(share * 100.0, 1, "%")
    });
    out.part("share-sucking", share);
    out.part("runs", X::count(it.run_statistics.count, "{count}"));
    if 0 < it.run_statistics.count {
        let median = X::decimal(it.run_statistics.median_sucks, 1, "{count}");
        out.part("run-sucks-median", median);
    }
    out.part("rests", X::count(it.rest_statistics.count, "{count}"));
    if 0 < it.rest_statistics.count {
        let median = X::decimal(it.rest_statistics.median_ms / 1000.0, 1, "s");
        out.part("rest-median", median);
    }
    for doubt in &it.doubts {
        out.part("doubt", X::Coded(ours("doubt", doubt.as_word())));
    }
    let version = all.facts.rule_versions.rhythm.clone();
    out.part("rule-version", X::Text(version));
}

/// A rate and the ends of its 95 % interval, as components of their own.
fn rate(out: &mut Observation, code: &str, rate: Option<Rate>, unit: &'static str) {
    let Some(Rate { value, low, high }) = rate else {
        out.part(code, X::Absent(Why::Unknown));
        return;
    };
    out.part(code, X::decimal(value, 2, unit));
    out.part(&format!("{code}-low"), X::decimal(low, 2, unit));
    out.part(&format!("{code}-high"), X::decimal(high, 2, unit));
}

fn pains(all: &mut Observed<'_>, it: &FeedFacts) {
    let started = it.feed.started;
    if it.feed.all_pains().next().is_none() {
        let none = pain(all, &format!("pain of {}", feed_key(started)))
            .over(it.began, it.ended)
            .value(X::Absent(Why::NotAsked));
        all.observe(none);
    }
    for told in it.feed.all_pains() {
        let score = X::or_absent(told.pain.value(), Why::AskedUnknown, |it| X::count(it, "1"));
        let wall = all.facts.wall(told.at);
        let told = pain(all, &pain_key(told.at)).at(wall).value(score);
        all.observe(told);
    }
}

fn pain(all: &Observed<'_>, key: &str) -> Observation {
    all.observation(key, "pain").category("survey").of_mother()
}

fn after(all: &mut Observed<'_>, it: &FeedFacts) {
    let feed = &it.feed;
    let words = [
        feed.nipple_after.map(crate::record::NippleAfter::as_word),
        feed.breast_after.map(crate::record::BreastAfter::as_word),
        feed.baby_state.map(crate::record::BabyState::as_word),
    ];
    for ((code, of_mother), word) in AFTER.into_iter().zip(words) {
        let value = X::or_absent(word, Why::NotPerformed, |word| X::Coded(ours(code, word)));
        let mut out = all
            .observation(&after_key(code, feed.started), code)
            .at(it.ended.unwrap_or(all.facts.until))
            .value(value);
        if of_mother {
            out = out.of_mother().side(ours("side", feed.side.as_word()));
        }
        out = out.from(vec![feed_key(feed.started)]);
        all.observe(out);
    }
}

fn taken_back(all: &mut Observed<'_>) {
    for it in &all.facts.taken_back {
        match it {
            TakenBack::Feed(started) => {
                all.take_back(&feed_key(*started), "feed", false);
                all.take_back(&format!("pain of {}", feed_key(*started)), "pain", true);
                for (code, of_mother) in AFTER {
                    all.take_back(&after_key(code, *started), code, of_mother);
                }
            }
            TakenBack::Pain(at) => all.take_back(&pain_key(*at), "pain", true),
            TakenBack::Weight(..) | TakenBack::Nappy(_) | TakenBack::Note(_) => {}
        }
    }
}
