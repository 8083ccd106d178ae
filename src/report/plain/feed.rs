//! One feed, with the doubts beside its numbers.

use super::Page;
use crate::record::At;
use crate::report::{FeedFacts, phrase};
use crate::rhythm::{Phase, Rate, Summary};

impl Page<'_> {
    pub(super) fn feed(&mut self, number: usize, it: &FeedFacts) {
        let words = self.words;
        let feed = &it.feed;
        let args = [
            ("number", number.into()),
            ("side", phrase::of(words, "side", feed.side).into()),
        ];
        let heading = words.say_with("report-feed", &args);
        self.heading(&heading);
        let clock = |at: At| words.duration_clock(at.since_ms(feed.started));
        let holds: Vec<String> = feed
            .holds
            .iter()
            .map(|(at, hold)| format!("{} {}", clock(*at), phrase::of(words, "hold", *hold)))
            .collect();
        self.field("report-holds", Some(holds.join("; ")));
        match (it.ended, feed.ended) {
            (Some(ended), Some(end)) => {
                let ms = u64::try_from(ended.since_ms(it.began)).unwrap_or(0);
                let args = [
                    ("began", words.time(it.began.local()).into()),
                    ("ended", words.time(ended.local()).into()),
                    ("clock", words.duration_clock(ms).into()),
                    ("by", phrase::of(words, "ended-by", end.by).into()),
                ];
                self.say("report-feed-ended", &args);
            }
            _ => {
                let began = words.time(it.began.local());
                self.say("report-feed-running", &[("began", began.into())]);
            }
        }
        match &it.rhythm {
            Some(summary) => self.rhythm(feed.started, summary),
            None => self.say("report-no-rhythm", &[]),
        }
        let pains: Vec<String> = feed
            .all_pains()
            .map(|it| {
                let score = it.pain.value().map_or_else(
                    || words.say("note-pain-cannot-say"),
                    |score| words.number(score.into(), 0),
                );
                format!("{} {score}", clock(it.at))
            })
            .collect();
        let pains = (!pains.is_empty()).then(|| pains.join("; "));
        self.field(
            "report-pain",
            pains.or_else(|| Some(words.say("report-not-asked"))),
        );
        if !feed.adjustments.is_empty() {
            let tried: Vec<String> = feed
                .adjustments
                .iter()
                .map(|it| {
                    format!(
                        "{} {}",
                        clock(it.at),
                        phrase::of(words, "adjustment", it.what)
                    )
                })
                .collect();
            self.field("report-tried", Some(tried.join("; ")));
        }
        let unlooked = || Some(words.say("report-not-looked"));
        let nipple = feed
            .nipple_after
            .map(|it| phrase::of(words, "nipple-after", it));
        self.field("report-nipple-after", nipple.or_else(unlooked));
        let breast = feed
            .breast_after
            .map(|it| phrase::of(words, "breast-after", it));
        self.field("report-breast-after", breast.or_else(unlooked));
        let baby = feed
            .baby_state
            .map(|it| phrase::of(words, "baby-state", it));
        self.field("report-baby-after", baby.or_else(unlooked));
        if 0 < feed.unresolved_touches {
            let touches = i64::from(feed.unresolved_touches);
            self.say("report-unresolved", &[("count", touches.into())]);
        }
    }

    fn rhythm(&mut self, started: At, it: &Summary) {
        let words = self.words;
        let total = it
            .phases
            .iter()
            .map(|span| span.to.since_ms(span.from))
            .sum::<u64>();
        let args = [
            ("watched", words.duration_clock(it.watched_ms).into()),
            ("total", words.duration_clock(total).into()),
            ("sucks", it.sucks.into()),
            ("swallows", it.swallows.into()),
        ];
        self.say("report-counts", &args);
        match it.first_flow {
            Some(at) => {
                let clock = words.duration_clock(at.since_ms(started));
                let args = [("clock", clock.into()), ("count", it.flow_episodes.into())];
                self.say("report-first-flow", &args);
            }
            None => self.say("report-no-flow", &[]),
        }
        let phases: Vec<String> = Phase::ALL
            .iter()
            .filter(|phase| 0 < it.totals_ms.of(**phase))
            .map(|phase| {
                let clock = words.duration_clock(it.totals_ms.of(*phase));
                format!("{} {clock}", phrase::of(words, "phase", *phase))
            })
            .collect();
        self.field("report-phases", Some(phases.join("; ")));
        for rates in &it.rates {
            let of = rates.phase.map_or_else(
                || words.say("report-whole-feed"),
                |phase| phrase::of(words, "phase", phase),
            );
            let shown = |rate: Option<Rate>, decimals: usize| match rate {
                Some(rate) => {
                    let [value, low, high] =
                        [rate.value, rate.low, rate.high].map(|it| words.number(it, decimals));
                    let args = [("low", low.into()), ("high", high.into())];
                    format!("{value} {}", words.say_with("report-interval", &args))
                }
                None => words.say("report-too-few"),
            };
            let args = [
                ("phase", of.into()),
                ("rate", shown(rates.sucks_per_min, 0).into()),
                ("ratio", shown(rates.sucks_per_swallow, 1).into()),
            ];
            self.say("report-rates", &args);
        }
        if 0 < it.run_statistics.count {
            let runs = &it.run_statistics;
            let args = [
                ("runs", runs.count.into()),
                ("sucks", words.number(runs.median_sucks, 0).into()),
                ("seconds", words.number(runs.median_ms / 1000.0, 1).into()),
            ];
            self.say("report-runs", &args);
        }
        if 0 < it.rest_statistics.count {
            let rests = &it.rest_statistics;
            let args = [
                ("rests", rests.count.into()),
                ("seconds", words.number(rests.median_ms / 1000.0, 1).into()),
            ];
            self.say("report-rests", &args);
        }
        if !it.doubts.is_empty() {
            let doubts: Vec<String> = it
                .doubts
                .iter()
                .map(|it| phrase::of(words, "doubt", *it))
                .collect();
            self.field("report-doubts", Some(doubts.join("; ")));
        }
    }
}
