//! From the model and the visit to the screen before the feed.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::{Kept, list};
use crate::app::open_visit::OpenVisit;
use crate::app::{say, ui};
use crate::record::{
    BabyDanger, BreastState, Coded, Hold, Jaundice, LastDay, MotherDanger, Nappy, NippleBefore,
    Side, StoolColour, StoredWord, WallTime, WeighingMoment,
};
use crate::words::Words;

use super::update::open_questions;
use super::{Count, Model, Question, SCALE_STEPS_G, WeightTrouble};

/// The lists that keep their place while they change.
#[derive(Default)]
pub struct Lists {
    counts: Kept<ui::CountRow>,
}

impl Lists {
    /// Gives the lists to a window, once.
    pub fn connect(&self, window: &ui::AppWindow) {
        ui::BeforeAdapter::get(window).set_counts(self.counts.model());
    }
}

/// Draws the screen.
pub fn render(
    model: &Model,
    around: &Around<'_>,
    words: &Words,
    lists: &Lists,
    window: &ui::AppWindow,
) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::BeforeAdapter::get(window);
    let day = open.last_day().overlaid(&model.draft);
    let growth = open.growth(around.now.wall);
    screen.set_title(say::title(&open.pair).into());
    let mut quiet = say::age(words, growth.age);
    if !open.pair.reasons.is_empty() {
        let reasons = open
            .pair
            .reasons
            .iter()
            .map(|reason| say::coded(words, "reason", reason.word()))
            .collect::<Vec<_>>()
            .join(", ");
        quiet = format!(
            "{quiet} · {}",
            words.say_with("before-reasons", &[("reasons", reasons.into())])
        );
    }
    screen.set_quiet(quiet.into());
    lists.counts.put(
        Count::ALL
            .iter()
            .map(|count| count_row(*count, &day, words))
            .collect(),
    );
    screen.set_groups(list(
        Question::ALL
            .iter()
            .map(|question| group(*question, &day, words)),
    ));
    screen.set_breasts(list(breasts(open, words)));
    weight(model, open, words, &growth, &screen);
    nappy(model, open, words, around.now.wall, &screen);
    start(model, open, words, &screen);
    screen.set_risks(risks(open, words).into());
}

/// What to keep in mind about this pair, as one line; nothing where nothing was told.
fn risks(open: &OpenVisit, words: &Words) -> String {
    let risks = open.pair.risk_notes.iter();
    let risks: Vec<String> = risks
        .map(|it| say::coded(words, "risk", it.word()))
        .collect();
    if risks.is_empty() {
        return String::new();
    }
    words.say_with("before-risks", &[("risks", risks.join(", ").into())])
}

/// The nappy that is told, and those that were changed in this visit.
fn nappy(
    model: &Model,
    open: &OpenVisit,
    words: &Words,
    now: WallTime,
    screen: &ui::BeforeAdapter<'_>,
) {
    let told = model.nappy;
    let is = |test: &dyn Fn(Nappy) -> bool| told.is_some_and(test);
    screen.set_nappy_kinds(list([
        choice(words.say("before-nappy-wet"), is(&|it| it.wet)),
        choice(words.say("before-nappy-heavy"), is(&|it| it.heavy)),
        choice(words.say("before-nappy-urates"), is(&|it| it.urates)),
    ]));
    let stool = told.and_then(|it| it.stool);
    screen.set_nappy_stools(list(one_of(words, "stool", StoolColour::ALL, stool)));
    screen.set_can_add_nappy(is(&|it| it.wet || it.stool.is_some()));
    let changed: Vec<String> = open
        .folded
        .nappies
        .iter()
        .map(|(wall, it)| {
            let mut said = vec![say::time(words, *wall, now)];
            if it.heavy {
                said.push(words.say("before-nappy-heavy"));
            } else if it.wet {
                said.push(words.say("before-nappy-wet"));
            }
            said.extend(it.stool.map(|colour| say::stored(words, "stool", colour)));
            if it.urates {
                said.push(words.say("before-nappy-urates"));
            }
            said.join(" · ")
        })
        .collect();
    screen.set_nappies(list(changed.into_iter().map(Into::into)));
}

fn choice(label: String, chosen: bool) -> ui::Choice {
    ui::Choice {
        label: label.into(),
        chosen,
    }
}

fn count_row(count: Count, day: &LastDay, words: &Words) -> ui::CountRow {
    let (id, value) = match count {
        Count::Feeds => ("before-feeds", day.feeds.map(i64::from)),
        Count::Wet => ("before-wet", day.wet.map(i64::from)),
        Count::Dirty => ("before-dirty", day.dirty.map(i64::from)),
        Count::HoursSinceWet => ("before-hours-since-wet", day.hours_since_wet.map(i64::from)),
        Count::Temperature => {
            let value = day.temperature.map_or_else(
                || "–".to_owned(),
                |tenths| words.number(f64::from(tenths.value()) / 10.0, 1),
            );
            return ui::CountRow {
                label: words.say("before-temperature").into(),
                value: value.into(),
            };
        }
        Count::Expressed => (
            "before-expressed",
            day.expressed_ml.map(|ml| i64::from(ml.value())),
        ),
        Count::Supplement => (
            "before-supplement",
            day.supplement_ml.map(|ml| i64::from(ml.value())),
        ),
    };
    ui::CountRow {
        label: words.say(id).into(),
        value: value
            .map_or_else(|| "–".to_owned(), |value| value.to_string())
            .into(),
    }
}

fn group(question: Question, day: &LastDay, words: &Words) -> ui::ChoiceGroup {
    let (id, choices) = match question {
        Question::Stool => (
            "before-stool",
            one_of(words, "stool", StoolColour::ALL, day.stool),
        ),
        Question::Urates => ("before-urates", yes_no(words, day.urates)),
        Question::Sleepy => ("before-sleepy", yes_no(words, day.sleepy)),
        Question::Jaundice => (
            "before-jaundice",
            one_of(words, "jaundice", Jaundice::ALL, day.jaundice),
        ),
        Question::BabyDanger => (
            "before-baby-danger",
            danger(
                words,
                "baby-danger",
                BabyDanger::ALL,
                day.baby_danger.as_deref(),
            ),
        ),
        Question::MotherDanger => (
            "before-mother-danger",
            danger(
                words,
                "mother-danger",
                MotherDanger::ALL,
                day.mother_danger.as_deref(),
            ),
        ),
    };
    ui::ChoiceGroup {
        heading: words.say(id).into(),
        choices: list(choices),
    }
}

fn one_of<T: StoredWord + PartialEq>(
    words: &Words,
    thing: &str,
    all: &[T],
    told: Option<T>,
) -> Vec<ui::Choice> {
    all.iter()
        .map(|value| choice(say::stored(words, thing, *value), told == Some(*value)))
        .collect()
}

fn yes_no(words: &Words, told: Option<bool>) -> Vec<ui::Choice> {
    vec![
        choice(words.say("frame-yes"), told == Some(true)),
        choice(words.say("frame-no"), told == Some(false)),
    ]
}

fn danger<T: StoredWord + PartialEq>(
    words: &Words,
    thing: &str,
    all: &[T],
    told: Option<&[Coded<T>]>,
) -> Vec<ui::Choice> {
    let mut choices: Vec<ui::Choice> = all
        .iter()
        .map(|value| {
            choice(
                say::stored(words, thing, *value),
                told.is_some_and(|told| told.contains(&Coded::Known(*value))),
            )
        })
        .collect();
    choices.push(choice(
        words.say("before-none-of-these"),
        told.is_some_and(<[Coded<T>]>::is_empty),
    ));
    choices
}

fn breasts(open: &OpenVisit, words: &Words) -> Vec<ui::ChoiceGroup> {
    let mut groups = Vec::new();
    for side in Side::ALL {
        let told = open
            .folded
            .breasts_before
            .iter()
            .find(|it| it.side == *side);
        let side_word = say::stored(words, "side", *side);
        let heading = |id| words.say_with(id, &[("side", side_word.clone().into())]);
        groups.push(ui::ChoiceGroup {
            heading: heading("before-breast-side").into(),
            choices: list(one_of(
                words,
                "breast",
                BreastState::ALL,
                told.and_then(|it| it.breast),
            )),
        });
        groups.push(ui::ChoiceGroup {
            heading: heading("before-nipple-side").into(),
            choices: list(one_of(
                words,
                "nipple",
                NippleBefore::ALL,
                told.and_then(|it| it.nipple),
            )),
        });
    }
    groups
}

fn weight(
    model: &Model,
    open: &OpenVisit,
    words: &Words,
    growth: &crate::growth::Growth,
    screen: &ui::BeforeAdapter<'_>,
) {
    screen.set_weight(model.weight.as_str().into());
    screen.set_weight_how(list([
        choice(words.say("before-naked"), !model.clothed),
        choice(words.say("before-clothed"), model.clothed),
    ]));
    screen.set_weight_steps(list(SCALE_STEPS_G.iter().map(|step| {
        let label = words.say_with("pair-grams", &[("grams", (*step).into())]);
        choice(label, model.step_g == Some(*step))
    })));
    let moment = model.moment.unwrap_or(WeighingMoment::Routine);
    screen.set_weight_moments(list(one_of(
        words,
        "weighing",
        WeighingMoment::ALL,
        Some(moment),
    )));
    let asked = open_questions(open, growth.at);
    screen.set_questions(list(asked.iter().map(|it| {
        let grams = words.say_with("pair-grams", &[("grams", it.grams.into())]);
        let time = say::time(words, it.at, growth.at);
        ui::AskedRow {
            title: words
                .say_with(
                    "pair-asked",
                    &[("grams", grams.into()), ("time", time.into())],
                )
                .into(),
            why: say::stored(words, "question", it.why).into(),
        }
    })));
    let told = match model.trouble {
        Some(WeightTrouble::NotGrams) => words.say("before-weight-not"),
        Some(WeightTrouble::Far(grams)) => {
            words.say_with("before-weight-odd", &[("grams", i64::from(grams).into())])
        }
        None => open.weighings().last().map_or_else(
            || words.say("pair-no-weight"),
            |(_, weighing)| {
                let grams = words.say_with(
                    "pair-grams",
                    &[("grams", i64::from(weighing.grams.value()).into())],
                );
                let change = say::change(words, growth);
                if change.is_empty() {
                    grams
                } else {
                    format!("{grams} · {change}")
                }
            },
        ),
    };
    screen.set_weight_quiet(told.into());
}

fn start(model: &Model, open: &OpenVisit, words: &Words, screen: &ui::BeforeAdapter<'_>) {
    screen.set_running(open.folded.running().is_some());
    screen.set_sides(list(one_of(words, "side", Side::ALL, model.side)));
    let holds: Vec<Hold> = Hold::offered(open.pair.babies).collect();
    screen.set_holds(list(one_of(words, "hold", &holds, model.hold)));
    screen.set_can_start(model.side.is_some() && model.hold.is_some());
}
