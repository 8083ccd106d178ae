//! The facts as a table: one row for each fact or entry, RFC 4180, lines ending in CR LF.
//!
//! Coded words stay coded words. A cell of free text that a spreadsheet would take for a formula
//! gets an apostrophe before it. Single taps are not rows: their counts are.

use super::{Facts, FeedFacts};
use crate::record::{At, BabyDanger, MotherDanger, Sign, WallTime};
use crate::rhythm::{Phase, Rate, Summary};

/// The first line.
pub const HEADER: &str = "section,at,name,value,unit,low,high,source";

/// Where a fact comes from when it was seen, asked or typed at the bedside.
const SEEN: &str = "journal";

/// Writes the whole table.
pub fn write(facts: &Facts) -> String {
    let mut table = Table::default();
    record(&mut table, facts);
    findings(&mut table, facts);
    pair(&mut table, facts);
    last_day(&mut table, facts);
    measured(&mut table, facts);
    for sign in Sign::ALL {
        let now = facts.sign(*sign);
        let at = now.map(|now| facts.wall(now.at));
        let state = now.map_or("not_looked", |now| now.state.as_word());
        table.seen("sign", at, sign.as_word(), state);
    }
    for (index, feed) in facts.feeds.iter().enumerate() {
        feed_rows(&mut table, facts, &format!("feed {}", index + 1), feed);
    }
    for (wall, text) in &facts.notes {
        table.text("note", Some(*wall), "note", text.as_str());
    }
    plan(&mut table, facts);
    table.text
}

#[derive(Default)]
struct Table {
    text: String,
}

/// One row; what is left out is empty.
#[derive(Default)]
struct Row<'a> {
    section: &'a str,
    at: Option<WallTime>,
    name: &'a str,
    value: String,
    unit: &'a str,
    low: String,
    high: String,
    source: &'a str,
}

impl Table {
    fn push(&mut self, row: &Row<'_>) {
        if self.text.is_empty() {
            self.text.push_str(HEADER);
            self.text.push_str("\r\n");
        }
        let at = row.at.map(super::form::iso).unwrap_or_default();
        let cells = [
            row.section,
            &at,
            row.name,
            &row.value,
            row.unit,
            &row.low,
            &row.high,
            row.source,
        ];
        for (index, cell) in cells.into_iter().enumerate() {
            if index != 0 {
                self.text.push(',');
            }
            self.text.push_str(&quoted(cell));
        }
        self.text.push_str("\r\n");
    }

    /// A coded word seen at the bedside.
    fn seen(&mut self, section: &str, at: Option<WallTime>, name: &str, value: &str) {
        self.push(&Row {
            section,
            at,
            name,
            value: value.to_owned(),
            source: SEEN,
            ..Row::default()
        });
    }

    /// Text that somebody typed.
    fn text(&mut self, section: &str, at: Option<WallTime>, name: &str, value: &str) {
        self.seen(section, at, name, &harmless(value));
    }

    /// A number seen at the bedside; `unknown` where it was not asked.
    fn number(
        &mut self,
        section: &str,
        at: Option<WallTime>,
        name: &str,
        value: Option<i64>,
        unit: &str,
    ) {
        let value = value.map_or_else(|| "unknown".to_owned(), |value| value.to_string());
        self.push(&Row {
            section,
            at,
            name,
            value,
            unit,
            source: SEEN,
            ..Row::default()
        });
    }
}

/// A cell as RFC 4180 wants it: quoted where it holds a comma, a quote or a line break.
fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}

/// Text that no spreadsheet takes for a formula.
/// Source: OWASP, "CSV injection": a cell starting with `= + - @`, tab or carriage return (from memory).
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

fn record(table: &mut Table, facts: &Facts) {
    let began = Some(facts.began);
    table.seen("visit", began, "id", &facts.visit.to_string());
    if let Some(replaces) = facts.replaces {
        table.seen("visit", None, "replaces", &replaces.to_string());
    }
    table.text("visit", None, "specialist", &facts.specialist);
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
}

fn findings(table: &mut Table, facts: &Facts) {
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
            let (value, unit, decimals) = super::form::in_ucum(number);
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

fn pair(table: &mut Table, facts: &Facts) {
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
    table.seen(
        section,
        Some(pair.birth),
        "birth",
        &super::form::iso(pair.birth),
    );
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

fn last_day(table: &mut Table, facts: &Facts) {
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

fn coded_words<T: crate::record::StoredWord>(coded: &[crate::record::Coded<T>]) -> Vec<String> {
    coded.iter().map(|it| it.word().to_owned()).collect()
}

fn measured(table: &mut Table, facts: &Facts) {
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
    }
    for it in facts.growth.iter().flatten() {
        let shown = |value: f64| format!("{value:.*}", it.decimals);
        table.push(&Row {
            section: "growth",
            name: it.name,
            value: shown(it.value),
            unit: it.unit,
            low: it.low.map(shown).unwrap_or_default(),
            high: it.high.map(shown).unwrap_or_default(),
            source: &facts.rule_versions.growth,
            ..Row::default()
        });
    }
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
        table.seen("before", None, &name, it.breast.as_word());
        let name = format!("nipple_{}", it.side.as_word());
        table.seen("before", None, &name, it.nipple.as_word());
    }
}

fn feed_rows(table: &mut Table, facts: &Facts, section: &str, it: &FeedFacts) {
    let feed = &it.feed;
    let wall = |at: At| Some(facts.wall(at));
    table.seen(section, Some(it.began), "began", feed.side.as_word());
    for (at, hold) in &feed.holds {
        table.seen(section, wall(*at), "hold", hold.as_word());
    }
    for pain in &feed.pains {
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
    if feed.pains.is_empty() {
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

fn plan(table: &mut Table, facts: &Facts) {
    for item in &facts.plan {
        if let Some(what) = &item.what {
            table.text("plan", None, "agreed", what.word());
        }
        if let Some(words) = &item.words {
            table.text("plan", None, "own_words", words.as_str());
        }
    }
    match facts.next_look {
        Some(due) => table.seen("plan", Some(due), "next_look", &super::form::iso(due)),
        None => table.seen("plan", None, "next_look", "unknown"),
    }
}
