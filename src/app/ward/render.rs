//! From the model to the Ward screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::findings::{Level, WardFound, WardWhy, weight_falls};
use crate::report::phrase;
use crate::words::Words;

use super::{Line, Model};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let screen = ui::WardAdapter::get(window);
    let now = around.now.wall;
    let count = |test: &dyn Fn(&Line) -> bool| {
        i64::try_from(model.lines.iter().filter(|line| test(line)).count()).unwrap_or(0)
    };
    screen.set_title(words.say("ward-title").into());
    screen.set_quiet(
        words
            .say_with(
                "ward-count",
                &[
                    ("count", count(&|_| true).into()),
                    (
                        "due",
                        count(&|line| {
                            line.next_look
                                .is_some_and(|due| due.utc_ms() <= now.utc_ms())
                        })
                        .into(),
                    ),
                    ("waiting", count(&|line| line.waiting).into()),
                ],
            )
            .into(),
    );
    screen.set_has_pin(around.has_pin);
    screen.set_offer_demo(model.loaded && model.lines.is_empty());
    screen.set_rows(list(
        model.lines.iter().map(|line| row(line, around, words)),
    ));
}

fn row(line: &Line, around: &Around<'_>, words: &Words) -> ui::WardRow {
    let now = around.now.wall;
    let at = |id: &str, due| words.say_with(id, &[("time", say::time(words, due, now).into())]);
    let due = match (line.place.why, line.next_look) {
        (WardWhy::Open, _) => words.say("ward-visit-open"),
        (WardWhy::Waiting, _) => words.say("ward-waiting-receipt"),
        (WardWhy::NotSeen, _) => words.say("ward-not-seen"),
        (_, Some(due)) if due.utc_ms() <= now.utc_ms() => at("ward-due-now", due),
        (_, Some(due)) => at("ward-due-at", due),
        (_, None) => words.say("ward-no-next-look"),
    };
    let due = if line.waiting && line.place.why != WardWhy::Waiting {
        format!("{due} · {}", words.say("ward-waiting-receipt"))
    } else {
        due
    };
    let why = line
        .pair
        .reasons
        .iter()
        .map(|reason| say::coded(words, "reason", reason.word()))
        .collect::<Vec<_>>()
        .join(", ");
    ui::WardRow {
        bed: line.pair.bed.as_str().into(),
        initials: line.pair.initials.as_str().into(),
        age: say::age(words, line.growth.age).into(),
        change: say::change(words, &line.growth).into(),
        due: due.into(),
        why: why.into(),
        found: line
            .found
            .as_ref()
            .map_or_else(String::new, |it| found(it, words))
            .into(),
        worse: worse(line, words).into(),
        review: line.place.why == WardWhy::Review,
        waiting: line.waiting,
    }
}

/// The level, and the rule that it comes from.
fn found(it: &WardFound, words: &Words) -> String {
    let level = say::stored(words, "level", it.level);
    if it.level == Level::GoingWell {
        return level;
    }
    let count = i64::try_from(it.others).unwrap_or(0);
    let args = [
        ("level", level.into()),
        ("rule", phrase::rule(words, &it.rule).into()),
        ("count", count.into()),
    ];
    words.say_with("ward-found", &args)
}

/// What got worse, and against what.
fn worse(line: &Line, words: &Words) -> String {
    let level = line.found.as_ref().and_then(|it| it.worse_than);
    let level = level.map(|before| {
        let before = say::stored(words, "level", before);
        words.say_with("ward-worse", &[("before", before.into())])
    });
    let falls = weight_falls(&line.growth).map(|(grams, hours)| {
        let grams = words.signed(say::tenths(grams * 10), 0);
        let args = [("grams", grams.into()), ("hours", hours.into())];
        words.say_with("ward-falls", &args)
    });
    let said: Vec<String> = level.into_iter().chain(falls).collect();
    said.join(" · ")
}
