//! From the model and the visit to the screen before the feed.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::{Kept, list};
use crate::app::open_visit::OpenVisit;
use crate::app::{say, ui};
use crate::growth::{Age, Growth};
use crate::record::{
    BabyDanger, BreastState, Coded, Hold, Jaundice, LastDay, MotherDanger, Nappy, NippleBefore,
    Side, StoolColour, StoredWord, WallTime, WeighingMoment,
};
use crate::words::Words;

use super::told;
use super::update::{open_questions, wanted};
use super::{Count, Model, Question, SCALE_STEPS_G, TimePart, WeightTrouble};

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
    let day = wanted(model, open);
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
            .map(|count| count_row(*count, &day, model.offered, words))
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

fn count_row(count: Count, day: &LastDay, offered: Option<Count>, words: &Words) -> ui::CountRow {
    let id = match count {
        Count::Feeds => "before-feeds",
        Count::Wet => "before-wet",
        Count::Dirty => "before-dirty",
        Count::HoursSinceWet => "before-hours-since-wet",
        Count::Temperature => "before-temperature",
        Count::Expressed => "before-expressed",
        Count::Supplement => "before-supplement",
    };
    let shown = |value: i64| match count {
        // Far below a float's 53 bits.
        #[allow(clippy::cast_precision_loss)]
        Count::Temperature => words.number(value as f64 / 10.0, 1),
        _ => value.to_string(),
    };
    let told = told::value(day, count);
    let offered = told.is_none() && offered == Some(count);
    let label = words.say(id);
    ui::CountRow {
        label: if offered {
            words.say_with("before-not-kept", &[("what", label.into())])
        } else {
            label
        }
        .into(),
        value: match told {
            Some(value) => shown(value),
            None if offered => format!("{}?", shown(told::offer(count))),
            None => "–".to_owned(),
        }
        .into(),
        told: told.is_some(),
    }
}

fn group(question: Question, day: &LastDay, words: &Words) -> ui::ChoiceGroup {
    let (id, choices) = match question {
        Question::Stool => (
            "before-stool",
            one_of(words, "stool", StoolColour::ALL, day.stool),
        ),
        Question::Urates => ("before-urates", yes_no(words, day.urates)),
        Question::Meconium => ("before-meconium", yes_no(words, day.meconium)),
        Question::DarkUrine => ("before-dark-urine", yes_no(words, day.dark_urine)),
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
    growth: &Growth,
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
    screen.set_weight_when(list([
        choice(words.say("before-weighed-now"), model.earlier.is_none()),
        choice(words.say("before-weighed-earlier"), model.earlier.is_some()),
    ]));
    // A weight that is told as earlier belongs to no feed that is watched here.
    let moment = model.moment.unwrap_or(WeighingMoment::Routine);
    let moments = match model.earlier {
        None => one_of(words, "weighing", WeighingMoment::ALL, Some(moment)),
        Some(_) => Vec::new(),
    };
    screen.set_weight_moments(list(moments));
    let parts = model.earlier.map(|it| earlier(it.at, words));
    screen.set_weight_earlier(list(parts.unwrap_or_default()));
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
    let told = match (model.trouble, model.earlier) {
        (Some(WeightTrouble::NotGrams), _) => words.say("before-weight-not"),
        (Some(WeightTrouble::Far(grams)), _) => {
            words.say_with("before-weight-odd", &[("grams", i64::from(grams).into())])
        }
        (Some(WeightTrouble::NoTime), _) => words.say("before-weight-no-time"),
        (None, Some(it)) if it.set => {
            let age = Age::of(open.pair.birth, it.at);
            let time = say::time(words, it.at, growth.at);
            let args = [("time", time.into()), ("age", say::age(words, age).into())];
            words.say_with("before-weighed-at", &args)
        }
        (None, Some(_)) => words.say("before-weight-no-time"),
        (None, None) => last_told(open, words, growth),
    };
    screen.set_weight_quiet(told.into());
}

/// The weight that was taken last, with the change since birth.
fn last_told(open: &OpenVisit, words: &Words, growth: &Growth) -> String {
    let all = open.weighings();
    let last = all.iter().max_by_key(|(wall, _)| wall.utc_ms());
    let Some((_, weighing)) = last else {
        return words.say("pair-no-weight");
    };
    let grams = i64::from(weighing.grams.value());
    let grams = words.say_with("pair-grams", &[("grams", grams.into())]);
    let change = say::change(words, growth);
    if change.is_empty() {
        grams
    } else {
        format!("{grams} · {change}")
    }
}

/// The parts of the time at which a weight was taken.
fn earlier(at: WallTime, words: &Words) -> Vec<ui::CountRow> {
    let row = |part: &TimePart| {
        let (id, value) = match part {
            TimePart::Day => ("before-weighed-day", words.date(at.local())),
            TimePart::Hour => ("before-weighed-hour", at.local().format("%H").to_string()),
            TimePart::Minute => ("before-weighed-minute", at.local().format("%M").to_string()),
        };
        ui::CountRow {
            label: words.say(id).into(),
            value: value.into(),
            told: false,
        }
    };
    TimePart::ALL.iter().map(row).collect()
}

fn start(model: &Model, open: &OpenVisit, words: &Words, screen: &ui::BeforeAdapter<'_>) {
    screen.set_running(open.folded.running().is_some());
    screen.set_sides(list(one_of(words, "side", Side::ALL, model.side)));
    let holds: Vec<Hold> = Hold::offered(open.pair.babies).collect();
    screen.set_holds(list(one_of(words, "hold", &holds, model.hold)));
    screen.set_can_start(model.side.is_some() && model.hold.is_some());
}
