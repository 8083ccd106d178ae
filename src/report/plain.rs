//! The visit as a plain page to be read: what is pressing first, doubts beside the numbers, and
//! what could not be judged said as plainly as what could.

use super::{Facts, FeedFacts, phrase};
use crate::findings::{Finding, Level};
use crate::record::{LastDay, Sign, SignState, WallTime};
use crate::rhythm::{Phase, Rate, Summary};
use crate::words::{Arg, Words};

/// Writes the page; lines end in a line feed.
pub fn text(facts: &Facts, words: &Words) -> String {
    let mut page = Page {
        facts,
        words,
        text: String::new(),
    };
    page.head();
    page.findings();
    page.unjudged();
    page.pair();
    page.last_day();
    page.weight();
    page.before();
    for (index, feed) in facts.feeds.iter().enumerate() {
        page.feed(index + 1, feed);
    }
    page.signs();
    page.notes();
    page.plan();
    page.foot();
    page.text
}

struct Page<'a> {
    facts: &'a Facts,
    words: &'a Words,
    text: String,
}

impl Page<'_> {
    fn line(&mut self, line: &str) {
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    fn heading(&mut self, line: &str) {
        self.line("");
        self.line(line);
        let rule = "-".repeat(line.chars().count());
        self.line(&rule);
    }

    fn say(&mut self, id: &str, args: &[(&str, Arg)]) {
        let line = self.words.say_with(id, args);
        self.line(&line);
    }

    /// A label and its value; "not known" where there is none.
    fn field(&mut self, id: &str, value: Option<String>) {
        let label = self.words.say(id);
        let value = value.unwrap_or_else(|| self.words.say("report-unknown"));
        self.line(&format!("{label}: {value}"));
    }

    fn when(&self, wall: WallTime) -> String {
        self.words.date_time(wall.local())
    }

    fn yes(&self, yes: bool) -> String {
        self.words.say(if yes { "report-yes" } else { "report-no" })
    }

    fn head(&mut self) {
        let facts = self.facts;
        let title = self.words.say("report-title");
        self.line(&title);
        let rule = "=".repeat(title.chars().count());
        self.line(&rule);
        let args = [
            ("bed", facts.pair.bed.as_str().into()),
            ("initials", facts.pair.initials.as_str().into()),
        ];
        self.say("report-pair", &args);
        let args = [
            ("began", self.when(facts.began).into()),
            ("specialist", facts.specialist.as_str().into()),
            ("id", facts.short_id().into()),
        ];
        self.say("report-visit", &args);
        if let Some(replaced) = facts.replaces {
            let id = replaced.uuid().simple().to_string()[..8].to_owned();
            self.say("report-amends", &[("id", id.into())]);
        }
        match &facts.signed {
            Some(signed) => {
                let by = signed.by.as_str().into();
                let args = [("by", by), ("when", self.when(signed.wall).into())];
                self.say("report-signed", &args);
            }
            None => self.say("report-not-signed", &[]),
        }
    }

    fn findings(&mut self) {
        let findings = &self.facts.judged.findings;
        for level in Level::ALL {
            let of_level: Vec<&Finding> = findings.iter().filter(|it| it.level == *level).collect();
            if of_level.is_empty() {
                continue;
            }
            let heading = phrase::of(self.words, "level", *level);
            let is_now = *level == Level::MedicalReviewNow;
            self.heading(&if is_now {
                heading.to_uppercase()
            } else {
                heading
            });
            for it in of_level {
                self.finding(it);
            }
        }
        if findings.is_empty() {
            self.line("");
            self.say("report-no-finding", &[]);
        }
    }

    fn finding(&mut self, it: &Finding) {
        let words = self.words;
        self.line(&format!("* {}", phrase::finding(words, it)));
        let reason = phrase::reason(words, it);
        if !reason.is_empty() {
            self.line(&format!("  {reason}"));
        }
        let source = phrase::word(words, "source", &it.source);
        self.say("report-source", &[("source", source.into())]);
        if !it.tries.is_empty() {
            let tries: Vec<String> = it
                .tries
                .iter()
                .map(|it| phrase::coded(words, "adjustment", it))
                .collect();
            self.say("report-tries", &[("tries", tries.join("; ").into())]);
        }
        if it.call != crate::findings::CallWhom::Nobody {
            let whom = phrase::of(words, "call", it.call);
            self.say("report-call", &[("whom", whom.into())]);
        }
        if it.level != Level::MedicalReviewNow {
            return;
        }
        let facts = self.facts;
        match facts.acknowledged.iter().find(|ack| ack.rule == it.rule) {
            Some(ack) => {
                let by = ack.by.as_str().into();
                let args = [("by", by), ("when", self.when(ack.wall).into())];
                self.say("report-acknowledged", &args);
            }
            None => self.say("report-not-acknowledged", &[]),
        }
    }

    fn unjudged(&mut self) {
        let facts = self.facts;
        if facts.judged.unjudged.is_empty() {
            return;
        }
        let heading = self.words.say("report-unjudged");
        self.heading(&heading);
        for it in &facts.judged.unjudged {
            let missing: Vec<String> = it
                .missing
                .iter()
                .map(|it| phrase::word(self.words, "missing", it))
                .collect();
            let args = [
                ("rule", phrase::rule(self.words, &it.rule).into()),
                ("missing", missing.join(", ").into()),
            ];
            self.say("report-unjudged-rule", &args);
        }
    }

    fn pair(&mut self) {
        let (words, pair) = (self.words, &self.facts.pair);
        let heading = words.say("report-about");
        self.heading(&heading);
        let born = self.when(pair.birth);
        self.field("report-born", Some(born));
        let gestation = pair.gestation.map(|it| {
            let (weeks, days) = it.in_weeks();
            let args = [
                ("weeks", i64::from(weeks).into()),
                ("days", i64::from(days).into()),
            ];
            words.say_with("report-weeks-days", &args)
        });
        self.field("report-gestation", gestation);
        let grams = pair.birth_weight.map(|it| format!("{} g", it.value()));
        self.field("report-birth-weight", grams);
        let way = pair.way_of_birth.map(|it| phrase::of(words, "birth", it));
        self.field("report-way-of-birth", way);
        let list = |phrases: Vec<String>| (!phrases.is_empty()).then(|| phrases.join("; "));
        let notes = pair
            .risk_notes
            .iter()
            .map(|it| phrase::coded(words, "risk", it));
        if let Some(notes) = list(notes.collect()) {
            self.field("report-risk-notes", Some(notes));
        }
        let reasons = pair
            .reasons
            .iter()
            .map(|it| phrase::coded(words, "reason", it));
        self.field("report-reasons", list(reasons.collect()));
    }

    fn last_day(&mut self) {
        let heading = self.words.say("report-last-day");
        self.heading(&heading);
        let Some(day) = &self.facts.last_day else {
            self.say("report-last-day-not-asked", &[]);
            return;
        };
        self.last_day_fields(day);
    }

    fn last_day_fields(&mut self, day: &LastDay) {
        let words = self.words;
        let count = |it: Option<u8>| it.map(|it| it.to_string());
        let ml = |it: Option<crate::record::Millilitres>| it.map(|it| format!("{} ml", it.value()));
        self.field("report-feeds", count(day.feeds));
        self.field("report-wet", count(day.wet));
        self.field("report-dirty", count(day.dirty));
        let stool = day.stool.map(|it| phrase::of(words, "stool", it));
        self.field("report-stool", stool);
        let urates = day.urates.map(|it| self.yes(it));
        self.field("report-urates", urates);
        let hours = day.hours_since_wet.map(|it| format!("{it} h"));
        self.field("report-hours-since-wet", hours);
        self.field("report-expressed", ml(day.expressed_ml));
        self.field("report-supplement", ml(day.supplement_ml));
        let sleepy = day.sleepy.map(|it| self.yes(it));
        self.field("report-sleepy", sleepy);
        let jaundice = day.jaundice.map(|it| phrase::of(words, "jaundice", it));
        self.field("report-jaundice", jaundice);
        let temperature = day
            .temperature
            .map(|it| format!("{} °C", words.number(f64::from(it.value()) / 10.0, 1)));
        self.field("report-temperature", temperature);
        let dangers = |thing: &str, asked: Option<Vec<&str>>| {
            asked.map(|there| {
                if there.is_empty() {
                    return words.say("report-asked-none");
                }
                let there: Vec<String> = there
                    .iter()
                    .map(|it| phrase::word(words, thing, it))
                    .collect();
                there.join("; ")
            })
        };
        let baby = day
            .baby_danger
            .as_ref()
            .map(|it| it.iter().map(|it| it.word()).collect());
        self.field("report-baby-danger", dangers("baby-danger", baby));
        let mother = day
            .mother_danger
            .as_ref()
            .map(|it| it.iter().map(|it| it.word()).collect());
        self.field("report-mother-danger", dangers("mother-danger", mother));
    }

    fn weight(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let heading = words.say("report-weight");
        self.heading(&heading);
        if facts.weighings.is_empty() {
            self.say("report-weight-none", &[]);
        }
        for (wall, it) in &facts.weighings {
            let step = match it.step {
                Some(step) => {
                    words.say_with("report-step", &[("grams", i64::from(step.value()).into())])
                }
                None => words.say("report-step-unknown"),
            };
            let clothes = if it.clothed {
                "report-clothed"
            } else {
                "report-unclothed"
            };
            let args = [
                ("when", self.when(*wall).into()),
                ("grams", it.grams.value().to_string().into()),
                ("moment", phrase::of(words, "weighing", it.moment).into()),
                ("clothes", words.say(clothes).into()),
                ("step", step.into()),
            ];
            self.say("report-weighed", &args);
        }
        for it in facts.growth.iter().flatten() {
            let shown = |value: f64| words.number(value, it.decimals);
            let label = phrase::word(words, "figure", it.name);
            let unit = phrase::unit(words, it.unit);
            let mut line = format!("{label}: {}{unit}", shown(it.value));
            if let (Some(low), Some(high)) = (it.low, it.high) {
                let args = [("low", shown(low).into()), ("high", shown(high).into())];
                line = format!("{line} {}", words.say_with("report-interval", &args));
            }
            self.line(&line);
        }
        for (wall, it) in &facts.nappies {
            let mut what = vec![words.say(match (it.wet, it.heavy) {
                (false, _) => "report-nappy-not-wet",
                (true, false) => "report-nappy-wet",
                (true, true) => "report-nappy-heavy",
            })];
            what.extend(it.stool.map(|it| phrase::of(words, "stool", it)));
            if it.urates {
                what.push(words.say("report-urates"));
            }
            let args = [
                ("when", self.when(*wall).into()),
                ("what", what.join(", ").into()),
            ];
            self.say("report-nappy", &args);
        }
    }

    fn before(&mut self) {
        let (facts, words) = (self.facts, self.words);
        if facts.breasts_before.is_empty() {
            return;
        }
        let heading = words.say("report-before");
        self.heading(&heading);
        for it in &facts.breasts_before {
            let args = [
                ("side", phrase::of(words, "side", it.side).into()),
                ("breast", phrase::of(words, "breast", it.breast).into()),
                ("nipple", phrase::of(words, "nipple", it.nipple).into()),
            ];
            self.say("report-breast-before", &args);
        }
    }

    fn feed(&mut self, number: usize, it: &FeedFacts) {
        let (facts, words) = (self.facts, self.words);
        let feed = &it.feed;
        let args = [
            ("number", number.into()),
            ("side", phrase::of(words, "side", feed.side).into()),
        ];
        let heading = words.say_with("report-feed", &args);
        self.heading(&heading);
        let clock = |at: crate::record::At| words.duration_clock(at.since_ms(feed.started));
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
            .pains
            .iter()
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
        let _ = facts;
    }

    fn rhythm(&mut self, started: crate::record::At, it: &Summary) {
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

    fn signs(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let heading = words.say("report-signs");
        self.heading(&heading);
        let groups = [
            ("report-signs-missing", Some(SignState::NotSeen)),
            ("report-signs-unclear", Some(SignState::Unclear)),
            ("report-signs-seen", Some(SignState::Seen)),
            ("report-signs-unlooked", None),
        ];
        for (id, state) in groups {
            let signs: Vec<String> = Sign::ALL
                .iter()
                .filter(|sign| facts.sign(**sign).map(|now| now.state) == state)
                .map(|sign| phrase::of(words, "sign", *sign))
                .collect();
            if !signs.is_empty() {
                self.field(id, Some(signs.join("; ")));
            }
        }
    }

    fn notes(&mut self) {
        let facts = self.facts;
        if facts.notes.is_empty() {
            return;
        }
        let heading = self.words.say("report-notes");
        self.heading(&heading);
        for (wall, text) in &facts.notes {
            let when = self.when(*wall);
            self.line(&format!("{when}: {}", text.as_str().replace('\n', "\n  ")));
        }
    }

    fn plan(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let heading = words.say("report-plan");
        self.heading(&heading);
        if facts.plan.is_empty() {
            self.say("report-plan-none", &[]);
        }
        for item in &facts.plan {
            let what = item
                .what
                .as_ref()
                .map(|it| phrase::coded(words, "plan", it));
            let own = item.words.as_ref().map(|it| it.as_str().replace('\n', " "));
            let both: Vec<String> = what.into_iter().chain(own).collect();
            self.line(&format!("* {}", both.join(": ")));
        }
        let due = facts.next_look.map(|due| self.when(due));
        self.field(
            "report-next-look",
            due.or_else(|| Some(words.say("report-next-look-none"))),
        );
    }

    fn foot(&mut self) {
        let facts = self.facts;
        self.line("");
        if 0 < facts.odd {
            self.say("report-odd", &[("count", facts.odd.into())]);
        }
        let rules = &facts.rule_versions;
        let hash = facts.policy.hash.get(..8).unwrap_or(&facts.policy.hash);
        let args = [
            ("name", facts.policy.name.as_str().into()),
            ("version", facts.policy.version.as_str().into()),
            ("hash", hash.into()),
        ];
        self.say("report-policy", &args);
        let args = [
            ("app", facts.app_version.as_str().into()),
            ("rhythm", rules.rhythm.as_str().into()),
            ("growth", rules.growth.as_str().into()),
            ("findings", rules.findings.as_str().into()),
        ];
        self.say("report-versions", &args);
        self.say("report-caution", &[]);
    }
}
