//! What was seen, asked and measured outside the feeds themselves.

use super::feed::feed_key;
use super::{Observation, Observed, Why, X, ours};
use crate::record::{At, BabyDanger, Coded, MotherDanger, Sign, StoredWord, WallTime, Weighing};
use crate::report::TakenBack;

/// How long "the last day" is.
const DAY_MS: i64 = 24 * 60 * 60 * 1000;

pub(super) fn add(all: &mut Observed<'_>) {
    birth(all);
    let weights = weights(all);
    last_day(all);
    mother_dangers(all);
    nappies(all);
    breasts(all);
    signs(all);
    growth(all, &weights);
    notes(all);
    unknown_words(all);
    if all.is_amendment() {
        taken_back(all);
    }
}

fn birth(all: &mut Observed<'_>) {
    let pair = &all.facts.pair;
    let grams = X::or_absent(pair.birth_weight, Why::Unknown, |it| {
        X::count(it.value(), "g")
    });
    let weight = all
        .observation("birth weight", "birth-weight")
        .category("vital-signs")
        .of_birth(pair.birth)
        .value(grams);
    all.observe(weight);

    let weeks = X::or_absent(pair.gestation, Why::Unknown, |it| {
        X::decimal(f64::from(it.days()) / 7.0, 2, "wk")
    });
    let mut gestation = all
        .observation("gestation", "gestation")
        .of_birth(pair.birth)
        .value(weeks);
    if let Some(it) = pair.gestation {
        gestation.part("gestation-days", X::count(it.days(), "d"));
    }
    all.observe(gestation);

    let way = X::or_absent(pair.way_of_birth, Why::Unknown, |it| {
        X::Coded(ours("birth", it.as_word()))
    });
    let way = all
        .observation("way of birth", "way-of-birth")
        .of_birth(pair.birth)
        .value(way);
    all.observe(way);

    if !pair.risk_notes.is_empty() {
        let mut risk = all.observation("risk notes", "risk-notes");
        for note in &pair.risk_notes {
            risk.part(&ours("risk", note.word()), X::Yes(true));
        }
        all.observe(risk);
    }
}

fn weights(all: &mut Observed<'_>) -> Vec<String> {
    let mut keys = Vec::new();
    for (wall, it) in &all.facts.weighings {
        let mut weight = all
            .observation(&weight_key(*wall, it), "body-weight")
            .category("vital-signs")
            .at(*wall)
            .value(X::count(it.grams.value(), "g"));
        let moment = X::Coded(ours("weighing", it.moment.as_word()));
        weight.part("weighing-moment", moment);
        weight.part("clothed", X::Yes(it.clothed));
        let step = X::or_absent(it.step, Why::Unknown, |step| X::count(step.value(), "g"));
        weight.part("scale-step", step);
        if it.taken.is_some() {
            weight.part("told-later", X::Yes(true));
        }
        keys.push(all.observe(weight));
    }
    keys
}

/// Two weights told later may be of one time, as far as she knows it.
fn weight_key(wall: WallTime, it: &Weighing) -> String {
    let told = it.taken.map(|_| format!(" told {}", it.grams.value()));
    format!("weight {}{}", wall.utc_ms(), told.unwrap_or_default())
}

fn nappy_key(wall: WallTime) -> String {
    format!("nappy {}", wall.utc_ms())
}

fn note_key(wall: WallTime) -> String {
    format!("note {}", wall.utc_ms())
}

/// An observation of what was told of the day that ended when the visit began.
fn of_last_day(all: &Observed<'_>, key: &str, code: &str) -> Observation {
    let began = all.facts.began;
    all.observation(key, code)
        .category("survey")
        .over(began.plus_ms(-DAY_MS), Some(began))
}

fn last_day(all: &mut Observed<'_>) {
    let facts = all.facts;
    let absent = if facts.last_day.is_some() {
        Why::Unknown
    } else {
        Why::NotAsked
    };
    let day = facts.last_day.clone().unwrap_or_default();
    let count = |value: Option<u8>, unit| X::or_absent(value, absent, |it| X::count(it, unit));
    let yes = |value: Option<bool>| X::or_absent(value, absent, X::Yes);
    let ml = |value: Option<crate::record::Millilitres>| {
        X::or_absent(value, absent, |it| X::count(it.value(), "mL"))
    };
    let stool = X::or_absent(day.stool, absent, |it| {
        X::Coded(ours("stool", it.as_word()))
    });
    let jaundice = X::or_absent(day.jaundice, absent, |it| {
        X::Coded(ours("jaundice", it.as_word()))
    });
    let temperature = X::or_absent(day.temperature, absent, |it| {
        X::decimal(f64::from(it.value()) / 10.0, 1, "Cel")
    });
    let mut panel = of_last_day(all, "last day", "last-day");
    for (code, value) in [
        ("last-day-feeds", count(day.feeds, "{count}")),
        ("last-day-wet", count(day.wet, "{count}")),
        ("last-day-dirty", count(day.dirty, "{count}")),
        ("last-day-stool", stool),
        ("last-day-urates", yes(day.urates)),
        ("last-day-meconium", yes(day.meconium)),
        ("last-day-dark-urine", yes(day.dark_urine)),
        ("last-day-hours-since-wet", count(day.hours_since_wet, "h")),
        ("last-day-expressed", ml(day.expressed_ml)),
        ("last-day-supplement", ml(day.supplement_ml)),
        ("last-day-sleepy", yes(day.sleepy)),
        ("last-day-jaundice", jaundice),
        ("last-day-temperature", temperature),
    ] {
        panel.part(code, value);
    }
    dangers(
        &mut panel,
        "baby-danger",
        BabyDanger::ALL,
        day.baby_danger.as_deref(),
    );
    all.observe(panel);
}

fn mother_dangers(all: &mut Observed<'_>) {
    let asked = all
        .facts
        .last_day
        .as_ref()
        .and_then(|day| day.mother_danger.as_deref());
    let mut panel = of_last_day(all, "mother dangers", "mother-dangers").of_mother();
    dangers(&mut panel, "mother-danger", MotherDanger::ALL, asked);
    all.observe(panel);
}

/// One component for each danger sign: yes, no, or not asked.
fn dangers<T: StoredWord + PartialEq>(
    panel: &mut Observation,
    thing: &str,
    all: &[T],
    asked: Option<&[Coded<T>]>,
) {
    for danger in all {
        let there = asked.map(|it| it.iter().any(|it| it.known() == Some(*danger)));
        let value = X::or_absent(there, Why::NotAsked, X::Yes);
        panel.part(&ours(thing, danger.word()), value);
    }
    for other in asked
        .into_iter()
        .flatten()
        .filter(|it| it.known().is_none())
    {
        panel.part(&ours(thing, other.word()), X::Yes(true));
    }
}

fn nappies(all: &mut Observed<'_>) {
    for (wall, it) in &all.facts.nappies {
        let mut nappy = all.observation(&nappy_key(*wall), "nappy").at(*wall);
        nappy.part("nappy-wet", X::Yes(it.wet));
        nappy.part("nappy-heavy", X::Yes(it.heavy));
        let stool = it
            .stool
            .map_or_else(|| "none".to_owned(), |it| it.as_word().to_owned());
        nappy.part("nappy-stool", X::Coded(ours("stool", &stool)));
        nappy.part("nappy-urates", X::Yes(it.urates));
        all.observe(nappy);
    }
}

fn breasts(all: &mut Observed<'_>) {
    for side in crate::record::Side::ALL {
        let before = all.facts.breasts_before.iter().find(|it| it.side == *side);
        let key = format!("before {}", side.as_word());
        let mut breast = all
            .observation(&key, "breast-before")
            .of_mother()
            .side(ours("side", side.as_word()));
        let state = X::or_absent(before.and_then(|it| it.breast), Why::NotPerformed, |it| {
            X::Coded(ours("breast", it.as_word()))
        });
        breast.part("breast-state", state);
        let nipple = X::or_absent(before.and_then(|it| it.nipple), Why::NotPerformed, |it| {
            X::Coded(ours("nipple", it.as_word()))
        });
        breast.part("nipple-before", nipple);
        all.observe(breast);
    }
}

/// The key of the signs of a feed that is not the first; those of the first, and of a visit in
/// which nothing was fed, are `signs`.
fn signs_key(started: At) -> String {
    format!("signs {}", started.as_ms())
}

/// The signs, one panel for each feed; of several each tells its side and its feed.
fn signs(all: &mut Observed<'_>) {
    let facts = all.facts;
    let looks = facts.looks();
    for (place, look) in looks.iter().enumerate() {
        let key = match look.feed {
            Some(it) if 0 < place => signs_key(it.feed.started),
            _ => "signs".to_owned(),
        };
        let mut panel = all
            .observation(&key, "signs")
            .over(facts.began, Some(facts.until));
        if let Some(it) = look.feed.filter(|_| 1 < looks.len()) {
            panel = panel
                .over(it.began, it.ended)
                .side(ours("side", it.feed.side.as_word()))
                .from(vec![feed_key(it.feed.started)]);
        }
        for sign in Sign::ALL {
            let state = X::or_absent(look.state(*sign), Why::NotPerformed, |it| {
                X::Coded(ours("state", it.as_word()))
            });
            panel.part(&ours("sign", sign.as_word()), state);
        }
        all.observe(panel);
    }
}

fn growth(all: &mut Observed<'_>, weights: &[String]) {
    let facts = all.facts;
    let mut panel = all.observation("growth", "growth").at(facts.until);
    let Some(figures) = &facts.growth else {
        let panel = panel.value(X::Absent(Why::Unknown));
        all.observe(panel);
        return;
    };
    for it in &figures.numbers {
        let code = ours("figure", it.name);
        let ends = [
            (code.clone(), it.value),
            (format!("{code}-low"), it.low),
            (format!("{code}-high"), it.high),
        ];
        for (code, value) in ends {
            if let Some(value) = value {
                panel.part(&code, X::decimal(value, it.decimals, it.unit));
            }
        }
    }
    for it in &figures.cautions {
        panel.part("figure-caution", X::Coded(ours("caution", it)));
    }
    for it in &figures.missing {
        panel.part("figure-missing", X::Coded(ours("missing", it)));
    }
    panel.part("rule-version", X::Text(facts.rule_versions.growth.clone()));
    if !weights.is_empty() {
        panel = panel.from(weights.to_vec());
    }
    all.observe(panel);
}

fn notes(all: &mut Observed<'_>) {
    for (wall, text) in &all.facts.notes {
        let note = all
            .observation(&note_key(*wall), "note")
            .at(*wall)
            .value(X::Text(text.as_str().to_owned()));
        all.observe(note);
    }
}

/// What was left out because this version does not know the word for it.
fn unknown_words(all: &mut Observed<'_>) {
    if all.facts.unknown.is_empty() {
        return;
    }
    let named = all.facts.unknown.iter();
    let text: Vec<String> = named.map(|(of, word)| format!("{of} {word}")).collect();
    let doubt = all
        .observation("unknown words", "unknown-words")
        .at(all.facts.until)
        .value(X::Text(text.join(", ")));
    all.observe(doubt);
}

fn taken_back(all: &mut Observed<'_>) {
    for it in &all.facts.taken_back {
        match it {
            TakenBack::Weight(wall, it) => {
                all.take_back(&weight_key(*wall, it), "body-weight", false);
            }
            TakenBack::Nappy(wall) => all.take_back(&nappy_key(*wall), "nappy", false),
            TakenBack::Note(wall) => all.take_back(&note_key(*wall), "note", false),
            TakenBack::Feed(started) => signs_taken_back(all, *started),
            TakenBack::Pain(_) => {}
        }
    }
}

/// Of a feed that was taken back: the signs of it, or, if it came before the first one that is left,
/// those of that one, which now has the key of the first.
fn signs_taken_back(all: &mut Observed<'_>, struck: At) {
    let first = all.facts.feeds.first().map(|it| it.feed.started);
    if let Some(first) = first {
        all.take_back(&signs_key(first.max(struck)), "signs", false);
    }
}
