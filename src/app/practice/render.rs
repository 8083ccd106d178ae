//! From the practice model to its screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::practice::{Baby, HandSeen, Kappa};
use crate::record::At;
use crate::words::Words;

use super::motion::{jaw, throat};
use super::{Between, Compared, Minutes, Model, Observer, Speed, Stage, Told, Watched};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let screen = ui::PracticeAdapter::get(window);
    let choice = |label: String, chosen: bool| ui::Choice {
        label: label.into(),
        chosen,
    };
    screen.set_babies(list(Baby::ALL.iter().map(|baby| {
        choice(say::stored(words, "baby", *baby), *baby == model.baby)
    })));
    screen.set_speeds(list(Speed::ALL.iter().map(|speed| {
        let percent = words.percent(speed.percent() as f64, 0);
        choice(percent, *speed == model.speed)
    })));
    screen.set_lengths(list(Minutes::ALL.iter().map(|minutes| {
        let label = words.say_with(
            "practice-minutes",
            &[("minutes", i64::from(minutes.get()).into())],
        );
        choice(label, *minutes == model.minutes)
    })));
    match &model.stage {
        Stage::Choosing => {
            screen.set_stage(0);
            screen.set_quiet(words.say("practice-quiet").into());
        }
        Stage::Watching(watched) => {
            screen.set_stage(1);
            screen.set_quiet(observer(watched.observer, words).into());
            moment(watched, around, words, &screen);
        }
        Stage::Told(told) => {
            screen.set_stage(2);
            screen.set_quiet(observer(told.observer, words).into());
            screen.set_can_second(told.observer == Observer::First && model.first.is_some());
            tell(told, words, &screen);
        }
    }
}

/// Draws only what the clock moves.
pub fn render_clock(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    if let Stage::Watching(watched) = &model.stage {
        moment(watched, around, words, &ui::PracticeAdapter::get(window));
    }
}

fn moment(watched: &Watched, around: &Around<'_>, words: &Words, screen: &ui::PracticeAdapter<'_>) {
    let at = watched.played(around.now.boot_ms);
    screen.set_jaw(jaw(&watched.truth, at) as f32);
    let swallow = throat(&watched.truth, at);
    screen.set_swallowing(swallow.is_some());
    screen.set_throat(swallow.unwrap_or(0.0) as f32);
    screen.set_clock(
        words
            .say_with(
                "practice-clock",
                &[
                    ("time", words.duration_clock(at.as_ms()).into()),
                    ("end", words.duration_clock(watched.end.as_ms()).into()),
                ],
            )
            .into(),
    );
}

fn observer(observer: Observer, words: &Words) -> String {
    words.say(match observer {
        Observer::First => "practice-first-observer",
        Observer::Second => "practice-second-observer",
    })
}

fn tell(told: &Told, words: &Words, screen: &ui::PracticeAdapter<'_>) {
    screen.set_against_truth(list(truth_rows(&told.against_truth, words)));
    screen.set_between(list(
        told.between
            .iter()
            .flat_map(|between| between_rows(between, words)),
    ));
}

fn row(words: &Words, label: &str, value: String, quiet: String) -> ui::FactRow {
    ui::FactRow {
        label: words.say(label).into(),
        value: value.into(),
        quiet: quiet.into(),
    }
}

fn truth_rows(compared: &Compared, words: &Words) -> Vec<ui::FactRow> {
    let hand = &compared.hand;
    vec![
        row(
            words,
            "practice-sucks",
            of(words, hand.tapped, hand.sucks),
            extra(words, hand.extra),
        ),
        row(
            words,
            "practice-swallows",
            of(words, hand.swallows_marked, hand.swallows),
            extra(words, hand.swallows_extra),
        ),
        row(
            words,
            "practice-lag",
            lag(hand, words),
            words.say("practice-lag-quiet"),
        ),
        row(
            words,
            "practice-first-flow",
            time(compared.first_flow_tapped, words),
            words.say_with(
                "practice-first-flow-true",
                &[("time", time(compared.first_flow, words).into())],
            ),
        ),
        phases(compared.phases, words),
    ]
}

fn between_rows(between: &Between, words: &Words) -> Vec<ui::FactRow> {
    let correlation = |label: &str, value: Option<f64>| {
        row(
            words,
            label,
            value.map_or_else(|| words.say("practice-none"), |it| words.number(it, 2)),
            words.say("practice-correlation-quiet"),
        )
    };
    vec![
        phases(between.phases, words),
        correlation("practice-sucks-each", between.sucks),
        correlation("practice-swallows-each", between.swallows),
    ]
}

fn phases(kappa: Option<Kappa>, words: &Words) -> ui::FactRow {
    let value = kappa
        .and_then(|it| it.kappa)
        .map_or_else(|| words.say("practice-none"), |it| words.number(it, 2));
    let alike = kappa.map_or_else(String::new, |it| {
        words.say_with(
            "practice-alike",
            &[("share", words.percent(it.alike * 100.0, 0).into())],
        )
    });
    row(words, "practice-phases", value, alike)
}

fn of(words: &Words, some: u32, all: u32) -> String {
    words.say_with(
        "practice-of",
        &[
            ("some", i64::from(some).into()),
            ("all", i64::from(all).into()),
        ],
    )
}

fn extra(words: &Words, count: u32) -> String {
    words.say_with("practice-extra", &[("count", i64::from(count).into())])
}

fn lag(hand: &HandSeen, words: &Words) -> String {
    match (hand.lag_ms, hand.unsteady_ms) {
        (Some(lag), Some(unsteady)) => words.say_with(
            "practice-lag-value",
            &[
                ("lag", words.signed(lag as f64, 0).into()),
                ("unsteady", words.number(unsteady as f64, 0).into()),
            ],
        ),
        _ => words.say("practice-none"),
    }
}

fn time(at: Option<At>, words: &Words) -> String {
    at.map_or_else(
        || words.say("practice-none"),
        |it| words.duration_clock(it.as_ms()),
    )
}
