//! From the model and the visit to the screen before the feed.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::{Kept, list};
use crate::app::open_visit::OpenVisit;
use crate::app::{say, ui};
use crate::record::{
    BabyDanger, BreastState, Coded, Hold, Jaundice, LastDay, MotherDanger, NippleBefore, Side,
    StoolColour, StoredWord,
};
use crate::words::Words;

use super::{Count, Model, Question, WeightTrouble};

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
    start(model, words, &screen);
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

fn start(model: &Model, words: &Words, screen: &ui::BeforeAdapter<'_>) {
    screen.set_sides(list(one_of(words, "side", Side::ALL, model.side)));
    screen.set_holds(list(one_of(words, "hold", Hold::ALL, model.hold)));
    screen.set_can_start(model.side.is_some() && model.hold.is_some());
}
