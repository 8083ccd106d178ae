//! The rows of everything but the feeds.

use super::{Row, SEEN, Table};
use crate::record::{BabyDanger, Coded, MotherDanger, StoredWord};
use crate::report::{Facts, form};

pub(super) fn record(table: &mut Table, facts: &Facts) {
    let began = Some(facts.began);
    table.seen("visit", began, "id", &facts.visit.to_string());
    if let Some(replaces) = facts.replaces {
        table.seen("visit", None, "replaces", &replaces.to_string());
    }
    table.text("visit", None, "specialist", facts.specialist.as_str());
    match &facts.signed {
        Some(signed) => table.text("visit", Some(signed.wall), "signed", signed.by.as_str()),
        None => table.seen("visit", None, "signed", "no"),
    }
    table.seen("visit", None, "app_version", &facts.app_version);
    for (name, version) in [
        ("rhythm_version", &facts.rule_versions.rhythm),
        ("growth_version", &facts.rule_versions.growth),
        ("findings_version", &facts.rule_versions.findings),
    ] {
        table.seen("visit", None, name, version);
    }
    table.text("policy", None, "name", &facts.policy.name);
    table.text("policy", None, "version", &facts.policy.version);
    table.seen("policy", None, "sha256", &facts.policy.hash);
    for (of, word) in &facts.unknown {
        table.text("doubt", None, &format!("unknown {of}"), word);
    }
}

pub(super) fn findings(table: &mut Table, facts: &Facts) {
    let version = &facts.rule_versions.findings;
    for it in &facts.judged.findings {
        let source = format!("{version} {}", it.source);
        table.push(&Row {
            section: "finding",
            name: &it.rule,
            value: it.level.as_word().to_owned(),
            source: &source,
            ..Row::default()
        });
        for number in &it.numbers {
            let (value, unit, decimals) = form::in_ucum(number);
            table.push(&Row {
                section: "finding",
                name: &format!("{} {}", it.rule, number.name),
                value: format!("{value:.decimals$}"),
                unit,
                source: &source,
                ..Row::default()
            });
        }
    }
    for it in &facts.acknowledged {
        table.text("acknowledged", Some(it.wall), &it.rule, it.by.as_str());
    }
    for it in &facts.judged.unjudged {
        table.push(&Row {
            section: "unjudged",
            name: &it.rule,
            value: format!("missing: {}", it.missing.join(" ")),
            source: version,
            ..Row::default()
        });
    }
}

pub(super) fn pair(table: &mut Table, facts: &Facts) {
    let pair = &facts.pair;
    let section = "pair";
    table.text(section, None, "bed", pair.bed.as_str());
    table.text(section, None, "initials", pair.initials.as_str());
    for (name, number) in [
        ("mother_number", &pair.mother_number),
        ("baby_number", &pair.baby_number),
    ] {
        if let Some(number) = number {
            table.text(section, None, name, number.as_str());
        }
    }
    table.seen(section, Some(pair.birth), "birth", &form::iso(pair.birth));
    table.seen(section, None, "sex", pair.sex.as_word());
    table.number(
        section,
        None,
        "gestation",
        pair.gestation.map(|it| it.days().into()),
        "d",
    );
    table.number(
        section,
        None,
        "birth_weight",
        pair.birth_weight.map(Into::into),
        "g",
    );
    let way = pair
        .way_of_birth
        .map_or("unknown", crate::record::WayOfBirth::as_word);
    table.seen(section, None, "way_of_birth", way);
    table.number(section, None, "babies", Some(pair.babies.into()), "{count}");
    for note in &pair.risk_notes {
        table.text(section, None, "risk_note", note.word());
    }
    for reason in &pair.reasons {
        table.text(section, None, "reason", reason.word());
    }
    if let Some(language) = &pair.language {
        table.seen(section, None, "language", language.tag());
    }
}

pub(super) fn last_day(table: &mut Table, facts: &Facts) {
    let section = "last_day";
    let day = facts.last_day.clone().unwrap_or_default();
    let yes = |answer: Option<bool>| answer.map_or("unknown", |yes| if yes { "yes" } else { "no" });
    for (name, count) in [("feeds", day.feeds), ("wet", day.wet), ("dirty", day.dirty)] {
        table.number(section, None, name, count.map(Into::into), "{count}");
    }
    table.seen(
        section,
        None,
        "stool",
        day.stool.map_or("unknown", |it| it.as_word()),
    );
    table.seen(section, None, "urates", yes(day.urates));
    table.seen(section, None, "meconium", yes(day.meconium));
    table.seen(section, None, "dark_urine", yes(day.dark_urine));
    table.number(
        section,
        None,
        "hours_since_wet",
        day.hours_since_wet.map(Into::into),
        "h",
    );
    table.number(
        section,
        None,
        "expressed",
        day.expressed_ml.map(Into::into),
        "mL",
    );
    table.number(
        section,
        None,
        "supplement",
        day.supplement_ml.map(Into::into),
        "mL",
    );
    table.seen(section, None, "sleepy", yes(day.sleepy));
    table.seen(
        section,
        None,
        "jaundice",
        day.jaundice.map_or("unknown", |it| it.as_word()),
    );
    let (value, unit) = day.temperature.map_or_else(
        || ("unknown".to_owned(), "Cel"),
        |it| (format!("{}.{}", it.value() / 10, it.value() % 10), "Cel"),
    );
    table.push(&Row {
        section,
        name: "temperature",
        value,
        unit,
        source: SEEN,
        ..Row::default()
    });
    let dangers = [
        (
            "baby_danger",
            day.baby_danger.map(|it| coded_words::<BabyDanger>(&it)),
        ),
        (
            "mother_danger",
            day.mother_danger.map(|it| coded_words::<MotherDanger>(&it)),
        ),
    ];
    for (name, asked) in dangers {
        match asked {
            None => table.seen(section, None, name, "unknown"),
            Some(none) if none.is_empty() => table.seen(section, None, name, "none"),
            Some(some) => some
                .iter()
                .for_each(|it| table.text(section, None, name, it)),
        }
    }
}

fn coded_words<T: StoredWord>(coded: &[Coded<T>]) -> Vec<String> {
    coded.iter().map(|it| it.word().to_owned()).collect()
}

pub(super) fn measured(table: &mut Table, facts: &Facts) {
    for (wall, it) in &facts.weighings {
        let at = Some(*wall);
        let half_step = it.step.map(|step| f64::from(step.value()) / 2.0);
        let grams = f64::from(it.grams.value());
        let end =
            |by: f64| half_step.map_or_else(String::new, |half| (grams + half * by).to_string());
        table.push(&Row {
            section: "weight",
            at,
            name: it.moment.as_word(),
            value: it.grams.value().to_string(),
            unit: "g",
            low: end(-1.0),
            high: end(1.0),
            source: SEEN,
        });
        table.seen(
            "weight",
            at,
            "clothed",
            if it.clothed { "yes" } else { "no" },
        );
        if it.taken.is_some() {
            table.seen("weight", at, "told_later", "yes");
        }
    }
    growth(table, facts);
    for (wall, it) in &facts.nappies {
        let mut what = Vec::new();
        if it.wet {
            what.push(if it.heavy { "wet heavy" } else { "wet" });
        }
        what.extend(it.stool.map(crate::record::StoolColour::as_word));
        if it.urates {
            what.push("urates");
        }
        let what = if what.is_empty() {
            "dry".to_owned()
        } else {
            what.join(" ")
        };
        table.seen("nappy", Some(*wall), "nappy", &what);
    }
    for it in &facts.breasts_before {
        let name = format!("breast_{}", it.side.as_word());
        table.seen(
            "before",
            None,
            &name,
            it.breast.map_or("unknown", |it| it.as_word()),
        );
        let name = format!("nipple_{}", it.side.as_word());
        table.seen(
            "before",
            None,
            &name,
            it.nipple.map_or("unknown", |it| it.as_word()),
        );
    }
}

fn growth(table: &mut Table, facts: &Facts) {
    let Some(figures) = &facts.growth else {
        return;
    };
    let row = Row {
        section: "growth",
        source: &facts.rule_versions.growth,
        ..Row::default()
    };
    for it in &figures.numbers {
        let shown = |value: Option<f64>| {
            value.map_or_else(String::new, |value| format!("{value:.*}", it.decimals))
        };
        let name = it
            .why
            .map_or_else(|| it.name.to_owned(), |why| format!("{} {why}", it.name));
        table.push(&Row {
            at: it.at,
            name: &name,
            value: shown(it.value),
            unit: it.unit,
            low: shown(it.low),
            high: shown(it.high),
            ..row
        });
    }
    for (name, words) in [
        ("caution", &figures.cautions),
        ("missing", &figures.missing),
    ] {
        for word in words {
            table.push(&Row {
                name,
                value: (*word).to_owned(),
                low: String::new(),
                high: String::new(),
                ..row
            });
        }
    }
}

pub(super) fn plan(table: &mut Table, facts: &Facts) {
    for item in &facts.plan {
        if let Some(what) = &item.what {
            table.text("plan", None, "agreed", what.word());
        }
        if let Some(words) = &item.words {
            table.text("plan", None, "own_words", words.as_str());
        }
    }
    match facts.next_look {
        Some(due) => table.seen("plan", Some(due), "next_look", &form::iso(due)),
        None => table.seen("plan", None, "next_look", "unknown"),
    }
}
