//! Each feed: what was counted and computed, pain, and how it was afterwards.

use serde_json::json;

use super::build::{
    ASKED_UNKNOWN, Bundle, NOT_APPLICABLE, NOT_ASKED, NOT_PERFORMED, Observation, UNKNOWN, X, key,
    ours,
};
use crate::record::At;
use crate::report::{FeedFacts, TakenBack};
use crate::rhythm::{Phase, Rate, Summary};

pub(super) fn add(bundle: &mut Bundle<'_>) {
    for it in &bundle.facts.feeds {
        feed(bundle, it);
        pains(bundle, it);
        after(bundle, it);
    }
    if bundle.is_amendment() {
        taken_back(bundle);
    }
}

/// The keys of what is told of the feed that started at a time.
fn feed_key(started: At) -> String {
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

fn feed(bundle: &mut Bundle<'_>, it: &FeedFacts) {
    let feed = &it.feed;
    let side = ours("side", feed.side.as_word());
    let mut out = bundle
        .observation(&feed_key(feed.started), "feed")
        .over(it.began, it.ended)
        .with("bodySite", bundle.codes.concept(&side))
        .with("method", bundle.codes.concept("counted-by-hand"))
        .with("device", bundle.reference(key::DEVICE));
    out.part(bundle, "side", X::Coded(side));
    for (at, hold) in &feed.holds {
        let since = at.since_ms(feed.started);
        out.part(bundle, &ours("hold", hold.as_word()), seconds(since));
    }
    for tried in &feed.adjustments {
        let since = tried.at.since_ms(feed.started);
        out.part(
            bundle,
            &ours("adjustment", tried.what.as_word()),
            seconds(since),
        );
    }
    let ended_by = X::or_absent(feed.ended, NOT_APPLICABLE, |it| {
        X::Coded(ours("ended-by", it.by.as_word()))
    });
    out.part(bundle, "ended-by", ended_by);
    let touches = X::count(feed.unresolved_touches, "{count}");
    out.part(bundle, "unresolved-touches", touches);
    match &it.rhythm {
        Some(summary) => rhythm(bundle, &mut out, feed.started, summary),
        None => {
            for code in ["sucks", "swallows", "watched", "flow-seen", "first-flow"] {
                out.part(bundle, code, X::Absent(UNKNOWN));
            }
        }
    }
    bundle.observe(out);
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

fn rhythm(bundle: &Bundle<'_>, out: &mut Observation, started: At, it: &Summary) {
    out.part(bundle, "sucks", X::count(it.sucks, "{count}"));
    out.part(bundle, "swallows", X::count(it.swallows, "{count}"));
    out.part(bundle, "watched", minutes(it.watched_ms));
    out.part(bundle, "flow-seen", X::Yes(it.first_flow.is_some()));
    let first_flow = X::or_absent(it.first_flow, NOT_APPLICABLE, |at| {
        seconds(at.since_ms(started))
    });
    out.part(bundle, "first-flow", first_flow);
    out.part(
        bundle,
        "flow-episodes",
        X::count(it.flow_episodes, "{count}"),
    );
    for phase in Phase::ALL {
        let code = ours("phase", phase.as_word());
        out.part(bundle, &code, minutes(it.totals_ms.of(*phase)));
    }
    for rates in &it.rates {
        let of = rates.phase.map_or("feed", Phase::as_word);
        rate(
            bundle,
            out,
            &ours("sucks-per-min", of),
            rates.sucks_per_min,
            "/min",
        );
        rate(
            bundle,
            out,
            &ours("sucks-per-swallow", of),
            rates.sucks_per_swallow,
            "1",
        );
    }
    let share = X::or_absent(it.share_sucking, UNKNOWN, |share| {
        X::decimal(share * 100.0, 1, "%")
    });
    out.part(bundle, "share-sucking", share);
    out.part(bundle, "runs", X::count(it.run_statistics.count, "{count}"));
    if 0 < it.run_statistics.count {
        let median = X::decimal(it.run_statistics.median_sucks, 1, "{count}");
        out.part(bundle, "run-sucks-median", median);
    }
    out.part(
        bundle,
        "rests",
        X::count(it.rest_statistics.count, "{count}"),
    );
    if 0 < it.rest_statistics.count {
        let median = X::decimal(it.rest_statistics.median_ms / 1000.0, 1, "s");
        out.part(bundle, "rest-median", median);
    }
    for doubt in &it.doubts {
        out.part(bundle, "doubt", X::Coded(ours("doubt", doubt.as_word())));
    }
    let version = bundle.facts.rule_versions.rhythm.clone();
    out.part(bundle, "rule-version", X::Text(version));
}

/// A rate and the ends of its 95 % interval, as components of their own.
fn rate(
    bundle: &Bundle<'_>,
    out: &mut Observation,
    code: &str,
    rate: Option<Rate>,
    unit: &'static str,
) {
    let Some(Rate { value, low, high }) = rate else {
        out.part(bundle, code, X::Absent(UNKNOWN));
        return;
    };
    out.part(bundle, code, X::decimal(value, 2, unit));
    out.part(bundle, &format!("{code}-low"), X::decimal(low, 2, unit));
    out.part(bundle, &format!("{code}-high"), X::decimal(high, 2, unit));
}

fn pains(bundle: &mut Bundle<'_>, it: &FeedFacts) {
    let started = it.feed.started;
    if it.feed.all_pains().next().is_none() {
        let none = pain(bundle, &format!("pain of {}", feed_key(started)))
            .over(it.began, it.ended)
            .value(bundle, X::Absent(NOT_ASKED));
        bundle.observe(none);
    }
    for told in it.feed.all_pains() {
        let score = X::or_absent(told.pain.value(), ASKED_UNKNOWN, |it| X::count(it, "1"));
        let wall = bundle.facts.wall(told.at);
        let told = pain(bundle, &pain_key(told.at))
            .at(wall)
            .value(bundle, score);
        bundle.observe(told);
    }
}

fn pain(bundle: &Bundle<'_>, key: &str) -> Observation {
    bundle
        .observation(key, "pain")
        .category("survey")
        .of_mother(bundle)
}

fn after(bundle: &mut Bundle<'_>, it: &FeedFacts) {
    let feed = &it.feed;
    let words = [
        feed.nipple_after.map(crate::record::NippleAfter::as_word),
        feed.breast_after.map(crate::record::BreastAfter::as_word),
        feed.baby_state.map(crate::record::BabyState::as_word),
    ];
    for ((code, of_mother), word) in AFTER.into_iter().zip(words) {
        let value = X::or_absent(word, NOT_PERFORMED, |word| X::Coded(ours(code, word)));
        let mut out = bundle
            .observation(&after_key(code, feed.started), code)
            .at(it.ended.unwrap_or(bundle.facts.until))
            .value(bundle, value);
        if of_mother {
            let side = bundle.codes.concept(&ours("side", feed.side.as_word()));
            out = out.of_mother(bundle).with("bodySite", side);
        }
        out = out.with(
            "derivedFrom",
            json!([bundle.reference(&feed_key(feed.started))]),
        );
        bundle.observe(out);
    }
}

fn taken_back(bundle: &mut Bundle<'_>) {
    for it in &bundle.facts.taken_back {
        match it {
            TakenBack::Feed(started) => {
                bundle.take_back(&feed_key(*started), "feed", false);
                bundle.take_back(&format!("pain of {}", feed_key(*started)), "pain", true);
                for (code, of_mother) in AFTER {
                    bundle.take_back(&after_key(code, *started), code, of_mother);
                }
            }
            TakenBack::Pain(at) => bundle.take_back(&pain_key(*at), "pain", true),
            TakenBack::Weight(_) | TakenBack::Nappy(_) | TakenBack::Note(_) => {}
        }
    }
}
