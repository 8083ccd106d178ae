//! From the model to the Pair screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::keeper::Story;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::growth::{self, Checked};
use crate::record::{Coded, StoredWord, WallTime, Weighing};
use crate::words::Words;

use super::Model;
use super::drawn::{charts, figures};
use super::form_render::form_of;
use super::update::{open_questions, weighings};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let screen = ui::PairAdapter::get(window);
    screen.set_form(model.form.is_some());
    if let Some(form) = &model.form {
        form_of(form, model.trouble, words, &screen);
    } else if let Some(story) = &model.story {
        story_of(story, model, around, words, &screen);
    }
}

pub(super) fn fact(label: String, value: String, quiet: String) -> ui::FactRow {
    ui::FactRow {
        label: label.into(),
        value: value.into(),
        quiet: quiet.into(),
    }
}

fn story_of(
    story: &Story,
    model: &Model,
    around: &Around<'_>,
    words: &Words,
    screen: &ui::PairAdapter<'_>,
) {
    let now = around.now.wall;
    let pair = &story.pair;
    let weighings = weighings(story);
    let checked = Checked::of(&story.acknowledged);
    let growth_now = growth::of_checked(pair, &weighings, &checked, now);
    screen.set_title(say::title(pair).into());
    screen.set_quiet(say::age(words, growth_now.age).into());
    screen.set_begin_label(
        words
            .say(if story.visits.iter().any(|head| !head.signed) {
                "pair-go-on"
            } else {
                "pair-begin"
            })
            .into(),
    );
    screen.set_facts(list(facts(story, words)));
    screen.set_weights(list(weights(story, &weighings, words)));
    screen.set_figures(list(figures(&growth_now, words)));
    let cautions = growth_now
        .cautions
        .iter()
        .map(|caution| say::stored(words, "caution", *caution))
        .collect::<Vec<_>>()
        .join(" ");
    screen.set_caution(cautions.into());
    screen.set_output(list(output(story, words)));
    screen.set_expected(expected(&growth_now, words).into());
    screen.set_visits(list(visits(story, around, words)));
    screen.set_table(model.table);
    let asked = open_questions(model, story, around);
    screen.set_questions(list(asked.iter().map(|it| {
        let grams = words.say_with("pair-grams", &[("grams", it.grams.into())]);
        ui::AskedRow {
            title: words
                .say_with(
                    "pair-asked",
                    &[
                        ("grams", grams.into()),
                        ("time", say::time(words, it.at, now).into()),
                    ],
                )
                .into(),
            why: say::stored(words, "question", it.why).into(),
        }
    })));
    charts(story, &weighings, around, words, screen);
}

fn joined<T: StoredWord>(words: &Words, thing: &str, values: &[Coded<T>]) -> String {
    values
        .iter()
        .map(|value| say::coded(words, thing, value.word()))
        .collect::<Vec<_>>()
        .join(", ")
}

fn facts(story: &Story, words: &Words) -> Vec<ui::FactRow> {
    let pair = &story.pair;
    let unknown = || words.say("frame-not-known");
    let mut rows = vec![
        fact(
            words.say("pair-birth"),
            words.date_time(pair.birth.local()),
            String::new(),
        ),
        fact(
            words.say("pair-sex"),
            say::stored(words, "sex", pair.sex),
            String::new(),
        ),
        fact(
            words.say("pair-birth-weight"),
            pair.birth_weight.map_or_else(unknown, |grams| {
                words.say_with("pair-grams", &[("grams", i64::from(grams.value()).into())])
            }),
            String::new(),
        ),
        fact(
            words.say("pair-gestation"),
            pair.gestation.map_or_else(unknown, |gestation| {
                let (weeks, days) = gestation.in_weeks();
                words.say_with(
                    "pair-weeks-days",
                    &[
                        ("weeks", i64::from(weeks).into()),
                        ("days", i64::from(days).into()),
                    ],
                )
            }),
            String::new(),
        ),
        fact(
            words.say("pair-way"),
            pair.way_of_birth
                .map_or_else(unknown, |way| say::stored(words, "birth", way)),
            String::new(),
        ),
    ];
    if let Some(language) = &pair.language {
        let name = say::coded(words, "language", &language.tag().to_lowercase());
        rows.push(fact(words.say("pair-language"), name, String::new()));
    }
    if 1 < pair.babies || pair.mother_id.is_some() {
        let babies = pair.babies.to_string();
        let quiet = pair.mother_id.map(|_| words.say("pair-shares-mother"));
        rows.push(fact(
            words.say("pair-babies"),
            babies,
            quiet.unwrap_or_default(),
        ));
    }
    for (id, number) in [
        ("pair-mother-number", &pair.mother_number),
        ("pair-baby-number", &pair.baby_number),
    ] {
        if let Some(number) = number {
            let number = number.as_str().to_owned();
            rows.push(fact(words.say(id), number, String::new()));
        }
    }
    if !pair.reasons.is_empty() {
        rows.push(fact(
            words.say("pair-reasons"),
            joined(words, "reason", &pair.reasons),
            String::new(),
        ));
    }
    if !pair.risk_notes.is_empty() {
        rows.push(fact(
            words.say("pair-risks"),
            joined(words, "risk", &pair.risk_notes),
            String::new(),
        ));
    }
    rows
}

fn weights(story: &Story, weighings: &[(WallTime, Weighing)], words: &Words) -> Vec<ui::FactRow> {
    let mut rows: Vec<ui::FactRow> = weighings
        .iter()
        .enumerate()
        .map(|(index, (wall, weighing))| {
            let so_far = growth::of(&story.pair, &weighings[..=index], *wall);
            let change = say::change(words, &so_far);
            let grams = words.say_with(
                "pair-grams",
                &[("grams", i64::from(weighing.grams.value()).into())],
            );
            let value = if change.is_empty() {
                grams
            } else {
                format!("{grams} · {change}")
            };
            let centile = match (so_far.centile, so_far.z) {
                (Some(centile), Some(z)) => words.say_with(
                    "pair-centile",
                    &[
                        ("centile", say::centile(words, centile).into()),
                        ("z", words.signed(z.exact(), 2).into()),
                    ],
                ),
                _ => String::new(),
            };
            fact(say::age(words, so_far.age), value, centile)
        })
        .rev()
        .collect();
    if rows.is_empty() {
        rows.push(fact(
            words.say("pair-no-weight"),
            String::new(),
            String::new(),
        ));
    }
    rows
}

fn output(story: &Story, words: &Words) -> Vec<ui::FactRow> {
    let day = story.last_day.as_ref().map(|(_, day)| day);
    let count = |value: Option<u8>| {
        value.map_or_else(|| words.say("frame-not-asked"), |value| value.to_string())
    };
    let mut rows = vec![
        fact(
            words.say("before-feeds"),
            count(day.and_then(|day| day.feeds)),
            String::new(),
        ),
        fact(
            words.say("before-wet"),
            count(day.and_then(|day| day.wet)),
            String::new(),
        ),
        fact(
            words.say("before-dirty"),
            count(day.and_then(|day| day.dirty)),
            String::new(),
        ),
    ];
    for (wall, day) in story.days.iter().rev() {
        let told = |it: Option<u8>| it.map_or_else(|| "–".to_owned(), |it| it.to_string());
        let args = [
            ("wet", told(day.wet).into()),
            ("dirty", told(day.dirty).into()),
            ("feeds", told(day.feeds).into()),
        ];
        rows.push(fact(
            say::age(words, growth::Age::of(story.pair.birth, *wall)),
            words.say_with("pair-day", &args),
            String::new(),
        ));
    }
    rows
}

/// What is expected of nappies at this age, in a line; empty if that is not known.
fn expected(growth: &growth::Growth, words: &Words) -> String {
    let (Some(expected), Some(age)) = (growth.expected, growth.age) else {
        return String::new();
    };
    let args = [
        ("day", age.day_of_life().into()),
        ("wet", i64::from(expected.wet).into()),
        ("dirty", i64::from(expected.dirty).into()),
    ];
    words.say_with("pair-expected", &args)
}

fn visits(story: &Story, around: &Around<'_>, words: &Words) -> Vec<ui::VisitLine> {
    story
        .visits
        .iter()
        .map(|head| {
            let label = words.say_with(
                "pair-visit",
                &[
                    ("date", say::time(words, head.began, around.now.wall).into()),
                    ("by", head.specialist.as_str().into()),
                ],
            );
            // By what is signed: until then the one before stands.
            let replaces = |it: &crate::store::VisitHead| it.signed && it.replaces == Some(head.id);
            let is_replaced = story.visits.iter().any(replaces);
            let receipt = story
                .receipts
                .iter()
                .find(|(id, _)| *id == head.id)
                .map(|(_, receipt)| receipt.as_str());
            let mut quiet = match receipt {
                Some(receipt) => {
                    words.say_with("pair-visit-received", &[("receipt", receipt.into())])
                }
                // Nobody waits for a receipt of what stands no more.
                None if head.signed && is_replaced => words.say("pair-visit-signed-only"),
                None if head.signed => words.say("pair-visit-signed"),
                None => words.say("pair-visit-open"),
            };
            if is_replaced {
                quiet = format!("{quiet}, {}", words.say("pair-visit-replaced"));
            }
            if head.replaces.is_some() {
                quiet = format!("{quiet}, {}", words.say("pair-visit-amends"));
            }
            ui::VisitLine {
                label: label.into(),
                quiet: quiet.into(),
            }
        })
        .collect()
}
