//! The pair, the last day, weights with their figures, nappies, and the breasts before.

use super::Page;
use crate::record::{LastDay, Millilitres};
use crate::report::phrase;

impl Page<'_> {
    pub(super) fn pair(&mut self) {
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

    pub(super) fn last_day(&mut self) {
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
        let ml = |it: Option<Millilitres>| it.map(|it| format!("{} ml", it.value()));
        self.field("report-feeds", count(day.feeds));
        self.field("report-wet", count(day.wet));
        self.field("report-dirty", count(day.dirty));
        let stool = day.stool.map(|it| phrase::of(words, "stool", it));
        self.field("report-stool", stool);
        let urates = day.urates.map(|it| self.yes(it));
        self.field("report-urates", urates);
        let meconium = day.meconium.map(|it| self.yes(it));
        self.field("report-meconium", meconium);
        let dark = day.dark_urine.map(|it| self.yes(it));
        self.field("report-dark-urine", dark);
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

    pub(super) fn weight(&mut self) {
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
            let moment = match it.taken {
                Some(_) => words.say("report-told-later"),
                None => phrase::of(words, "weighing", it.moment),
            };
            let args = [
                ("when", self.when(*wall).into()),
                ("grams", it.grams.value().to_string().into()),
                ("moment", moment.into()),
                ("clothes", words.say(clothes).into()),
                ("step", step.into()),
            ];
            self.say("report-weighed", &args);
        }
        self.figures();
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

    fn figures(&mut self) {
        let (facts, words) = (self.facts, self.words);
        let Some(figures) = &facts.growth else {
            self.say("report-no-figures", &[]);
            return;
        };
        for it in &figures.numbers {
            let label = words.say(&format!("figure-{}", it.name.replace('_', "-")));
            let unit = phrase::unit(words, it.unit);
            let shown = |value: f64| words.number(value, it.decimals);
            let range = match (it.low, it.high) {
                (Some(low), Some(high)) => {
                    let args = [("low", shown(low).into()), ("high", shown(high).into())];
                    let id = if it.value.is_some() {
                        "report-interval"
                    } else {
                        "report-range"
                    };
                    Some(words.say_with(id, &args))
                }
                (Some(low), None) => {
                    Some(words.say_with("report-at-least", &[("low", shown(low).into())]))
                }
                (None, Some(high)) => {
                    Some(words.say_with("report-under", &[("high", shown(high).into())]))
                }
                (None, None) => None,
            };
            let value = it.value.map(|value| format!("{}{unit}", shown(value)));
            let range = range.map(|range| {
                let unit = if value.is_none() { unit.as_str() } else { "" };
                format!("{range}{unit}")
            });
            let why = it.why.map(|why| phrase::word(words, "question", why));
            let all: Vec<String> = value.into_iter().chain(range).chain(why).collect();
            self.line(&format!("{label}: {}", all.join(" ")));
        }
        for it in &figures.cautions {
            let line = phrase::word(words, "caution", it);
            self.line(&line);
        }
        if !figures.missing.is_empty() {
            let missing = figures
                .missing
                .iter()
                .map(|it| phrase::word(words, "missing", it));
            let missing: Vec<String> = missing.collect();
            self.say(
                "report-figures-missing",
                &[("missing", missing.join("; ").into())],
            );
        }
    }

    pub(super) fn before(&mut self) {
        let (facts, words) = (self.facts, self.words);
        if facts.breasts_before.is_empty() {
            return;
        }
        let heading = words.say("report-before");
        self.heading(&heading);
        for it in &facts.breasts_before {
            let unlooked = || words.say("report-not-looked");
            let breast = it.breast.map(|it| phrase::of(words, "breast", it));
            let nipple = it.nipple.map(|it| phrase::of(words, "nipple", it));
            let args = [
                ("side", phrase::of(words, "side", it.side).into()),
                ("breast", breast.unwrap_or_else(unlooked).into()),
                ("nipple", nipple.unwrap_or_else(unlooked).into()),
            ];
            self.say("report-breast-before", &args);
        }
    }
}
