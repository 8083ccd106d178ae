//! What was seen, asked and measured outside the feeds themselves.

use super::build::{Bundle, NOT_ASKED, NOT_PERFORMED, Observation, UNKNOWN, X, ours};
use crate::record::{BabyDanger, Coded, MotherDanger, Sign, StoredWord, WallTime};
use crate::report::TakenBack;

/// How long "the last day" is.
const DAY_MS: i64 = 24 * 60 * 60 * 1000;

pub(super) fn add(bundle: &mut Bundle<'_>) {
    birth(bundle);
    let weights = weights(bundle);
    last_day(bundle);
    mother_dangers(bundle);
    nappies(bundle);
    breasts(bundle);
    signs(bundle);
    growth(bundle, &weights);
    notes(bundle);
    if bundle.is_amendment() {
        taken_back(bundle);
    }
}

fn birth(bundle: &mut Bundle<'_>) {
    let pair = &bundle.facts.pair;
    let grams = X::or_absent(pair.birth_weight, UNKNOWN, |it| X::count(it.value(), "g"));
    let weight = bundle
        .observation("birth weight", "birth-weight")
        .category("vital-signs")
        .of_birth(pair.birth)
        .value(bundle, grams);
    bundle.observe(weight);

    let weeks = X::or_absent(pair.gestation, UNKNOWN, |it| {
        X::decimal(f64::from(it.days()) / 7.0, 2, "wk")
    });
    let mut gestation = bundle
        .observation("gestation", "gestation")
        .of_birth(pair.birth)
        .value(bundle, weeks);
    if let Some(it) = pair.gestation {
        gestation.part(bundle, "gestation-days", X::count(it.days(), "d"));
    }
    bundle.observe(gestation);

    let way = X::or_absent(pair.way_of_birth, UNKNOWN, |it| {
        X::Coded(ours("birth", it.as_word()))
    });
    let way = bundle
        .observation("way of birth", "way-of-birth")
        .of_birth(pair.birth)
        .value(bundle, way);
    bundle.observe(way);

    if !pair.risk_notes.is_empty() {
        let mut risk = bundle.observation("risk notes", "risk-notes");
        for note in &pair.risk_notes {
            risk.part(bundle, &ours("risk", note.word()), X::Yes(true));
        }
        bundle.observe(risk);
    }
}

fn weights(bundle: &mut Bundle<'_>) -> Vec<String> {
    let mut keys = Vec::new();
    for (wall, it) in &bundle.facts.weighings {
        let mut weight = bundle
            .observation(&weight_key(*wall), "body-weight")
            .category("vital-signs")
            .at(*wall)
            .value(bundle, X::count(it.grams.value(), "g"));
        let moment = X::Coded(ours("weighing", it.moment.as_word()));
        weight.part(bundle, "weighing-moment", moment);
        weight.part(bundle, "clothed", X::Yes(it.clothed));
        let step = X::or_absent(it.step, UNKNOWN, |step| X::count(step.value(), "g"));
        weight.part(bundle, "scale-step", step);
        keys.push(bundle.observe(weight));
    }
    keys
}

fn weight_key(wall: WallTime) -> String {
    format!("weight {}", wall.utc_ms())
}

fn nappy_key(wall: WallTime) -> String {
    format!("nappy {}", wall.utc_ms())
}

fn note_key(wall: WallTime) -> String {
    format!("note {}", wall.utc_ms())
}

/// An observation of what was told of the day that ended when the visit began.
fn of_last_day(bundle: &Bundle<'_>, key: &str, code: &str) -> Observation {
    let began = bundle.facts.began;
    bundle
        .observation(key, code)
        .category("survey")
        .over(began.plus_ms(-DAY_MS), Some(began))
}

fn last_day(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let absent = if facts.last_day.is_some() {
        UNKNOWN
    } else {
        NOT_ASKED
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
    let mut panel = of_last_day(bundle, "last day", "last-day");
    for (code, value) in [
        ("last-day-feeds", count(day.feeds, "{count}")),
        ("last-day-wet", count(day.wet, "{count}")),
        ("last-day-dirty", count(day.dirty, "{count}")),
        ("last-day-stool", stool),
        ("last-day-urates", yes(day.urates)),
        ("last-day-hours-since-wet", count(day.hours_since_wet, "h")),
        ("last-day-expressed", ml(day.expressed_ml)),
        ("last-day-supplement", ml(day.supplement_ml)),
        ("last-day-sleepy", yes(day.sleepy)),
        ("last-day-jaundice", jaundice),
        ("last-day-temperature", temperature),
    ] {
        panel.part(bundle, code, value);
    }
    dangers(
        bundle,
        &mut panel,
        "baby-danger",
        BabyDanger::ALL,
        day.baby_danger.as_deref(),
    );
    bundle.observe(panel);
}

fn mother_dangers(bundle: &mut Bundle<'_>) {
    let asked = bundle
        .facts
        .last_day
        .as_ref()
        .and_then(|day| day.mother_danger.as_deref());
    let mut panel = of_last_day(bundle, "mother dangers", "mother-dangers").of_mother(bundle);
    dangers(
        bundle,
        &mut panel,
        "mother-danger",
        MotherDanger::ALL,
        asked,
    );
    bundle.observe(panel);
}

/// One component for each danger sign: yes, no, or not asked.
fn dangers<T: StoredWord + PartialEq>(
    bundle: &Bundle<'_>,
    panel: &mut Observation,
    thing: &str,
    all: &[T],
    asked: Option<&[Coded<T>]>,
) {
    for danger in all {
        let there = asked.map(|it| it.iter().any(|it| it.known() == Some(*danger)));
        let value = X::or_absent(there, NOT_ASKED, X::Yes);
        panel.part(bundle, &ours(thing, danger.word()), value);
    }
    for other in asked
        .into_iter()
        .flatten()
        .filter(|it| it.known().is_none())
    {
        panel.part(bundle, &ours(thing, other.word()), X::Yes(true));
    }
}

fn nappies(bundle: &mut Bundle<'_>) {
    for (wall, it) in &bundle.facts.nappies {
        let mut nappy = bundle.observation(&nappy_key(*wall), "nappy").at(*wall);
        nappy.part(bundle, "nappy-wet", X::Yes(it.wet));
        nappy.part(bundle, "nappy-heavy", X::Yes(it.heavy));
        let stool = it
            .stool
            .map_or_else(|| "none".to_owned(), |it| it.as_word().to_owned());
        nappy.part(bundle, "nappy-stool", X::Coded(ours("stool", &stool)));
        nappy.part(bundle, "nappy-urates", X::Yes(it.urates));
        bundle.observe(nappy);
    }
}

fn breasts(bundle: &mut Bundle<'_>) {
    for side in crate::record::Side::ALL {
        let before = bundle
            .facts
            .breasts_before
            .iter()
            .find(|it| it.side == *side);
        let key = format!("before {}", side.as_word());
        let mut breast = bundle
            .observation(&key, "breast-before")
            .of_mother(bundle)
            .with(
                "bodySite",
                bundle.codes.concept(&ours("side", side.as_word())),
            );
        let state = X::or_absent(before.and_then(|it| it.breast), NOT_PERFORMED, |it| {
            X::Coded(ours("breast", it.as_word()))
        });
        breast.part(bundle, "breast-state", state);
        let nipple = X::or_absent(before.and_then(|it| it.nipple), NOT_PERFORMED, |it| {
            X::Coded(ours("nipple", it.as_word()))
        });
        breast.part(bundle, "nipple-before", nipple);
        bundle.observe(breast);
    }
}

fn signs(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let mut panel = bundle
        .observation("signs", "signs")
        .over(facts.began, Some(facts.until));
    for sign in Sign::ALL {
        let state = X::or_absent(facts.sign(*sign), NOT_PERFORMED, |it| {
            X::Coded(ours("state", it.state.as_word()))
        });
        panel.part(bundle, &ours("sign", sign.as_word()), state);
    }
    bundle.observe(panel);
}

fn growth(bundle: &mut Bundle<'_>, weights: &[String]) {
    let facts = bundle.facts;
    let mut panel = bundle.observation("growth", "growth").at(facts.until);
    let Some(figures) = &facts.growth else {
        let panel = panel.value(bundle, X::Absent(UNKNOWN));
        bundle.observe(panel);
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
                panel.part(bundle, &code, X::decimal(value, it.decimals, it.unit));
            }
        }
    }
    for it in &figures.cautions {
        panel.part(bundle, "figure-caution", X::Coded(ours("caution", it)));
    }
    for it in &figures.missing {
        panel.part(bundle, "figure-missing", X::Coded(ours("missing", it)));
    }
    panel.part(
        bundle,
        "rule-version",
        X::Text(facts.rule_versions.growth.clone()),
    );
    if !weights.is_empty() {
        let from: Vec<_> = weights.iter().map(|key| bundle.reference(key)).collect();
        panel = panel.with("derivedFrom", from.into());
    }
    bundle.observe(panel);
}

fn notes(bundle: &mut Bundle<'_>) {
    for (wall, text) in &bundle.facts.notes {
        let note = bundle
            .observation(&note_key(*wall), "note")
            .at(*wall)
            .value(bundle, X::Text(text.as_str().to_owned()));
        bundle.observe(note);
    }
}

fn taken_back(bundle: &mut Bundle<'_>) {
    for it in &bundle.facts.taken_back {
        match it {
            TakenBack::Weight(wall) => bundle.take_back(&weight_key(*wall), "body-weight", false),
            TakenBack::Nappy(wall) => bundle.take_back(&nappy_key(*wall), "nappy", false),
            TakenBack::Note(wall) => bundle.take_back(&note_key(*wall), "note", false),
            TakenBack::Feed(_) | TakenBack::Pain(_) => {}
        }
    }
}
