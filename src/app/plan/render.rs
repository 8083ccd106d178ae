//! From the visit to the plan screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::findings::{CallWhom, Judged, Policy};
use crate::record::{Coded, PlanItem, PlanWhat};
use crate::report::phrase;
use crate::words::Words;

use super::{CALLS, Model, NEXT_LOOK_HOURS, SignTrouble, sheet};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::PlanAdapter::get(window);
    let now = around.now.wall;
    screen.set_title(say::title(&open.pair).into());
    screen.set_quiet(words.say("plan-title").into());
    let judged = open.judged(around.policy, now);
    screen.set_advice(advice(&judged, around.policy, words).into());
    let mut usual: Vec<PlanWhat> = judged
        .findings
        .iter()
        .flat_map(|finding| finding.plan.iter().filter_map(Coded::known))
        .collect();
    usual.sort();
    usual.dedup();
    let agreed = |test: &dyn Fn(&PlanItem) -> bool| open.folded.plan.iter().any(test);
    let item = |what: PlanWhat| ui::Choice {
        label: say::stored(words, "plan", what).into(),
        chosen: agreed(&|item| item.what == Some(Coded::Known(what))),
    };
    // What is usual for the findings first, then the rest; each with its place among all.
    let usual = &usual;
    let places = |is_usual: bool| {
        let all = PlanWhat::ALL.iter().enumerate();
        let all = all.filter(|(_, what)| !what.is_call());
        all.filter(move |(_, what)| usual.contains(what) == is_usual)
            .map(|(place, what)| (i32::try_from(place).unwrap_or(-1), *what))
            .collect::<Vec<_>>()
    };
    let (first, rest) = (places(true), places(false));
    screen.set_usual(list(first.iter().map(|(_, what)| item(*what))));
    screen.set_usual_places(list(first.iter().map(|(place, _)| *place)));
    screen.set_items(list(rest.iter().map(|(_, what)| item(*what))));
    screen.set_item_places(list(rest.iter().map(|(place, _)| *place)));
    let calls = CALLS.iter().filter_map(|whom| Some((whom, whom.agreed()?)));
    screen.set_calls(list(calls.map(|(whom, what)| {
        let line = say::stored(words, "plan", what);
        ui::Choice {
            label: phrase::with_number(words, line, around.policy.call(*whom)).into(),
            chosen: agreed(&|item| item.call() == Some(what)),
        }
    })));
    screen.set_sheet_open(model.sheet);
    if model.sheet {
        sheet::render(open, around, words, &screen);
    }
    screen.set_next_looks(list(NEXT_LOOK_HOURS.iter().map(|hours| {
        ui::Choice {
            label: words
                .say_with("plan-in-hours", &[("hours", (*hours).into())])
                .into(),
            chosen: false,
        }
    })));
    screen.set_next_look(
        open.folded
            .next_look
            .map_or_else(String::new, |due| {
                words.say_with("plan-due", &[("time", say::time(words, due, now).into())])
            })
            .into(),
    );
    let own = open.folded.plan.iter().filter_map(PlanItem::own_words);
    let notes = open.folded.notes.iter().map(|(_, text)| text);
    screen.set_notes(list(own.chain(notes).map(|text| text.as_str().into())));
    sign(model, around, words, &screen);
}

/// What is usually tried for all that was found, and whom to call, each once; empty lines left out.
fn advice(judged: &Judged, policy: &Policy, words: &Words) -> String {
    let mut tries: Vec<String> = Vec::new();
    let mut calls: Vec<String> = Vec::new();
    let once = |all: &mut Vec<String>, one: String| {
        if !all.contains(&one) {
            all.push(one);
        }
    };
    for finding in &judged.findings {
        for it in &finding.tries {
            once(&mut tries, say::coded(words, "adjustment", it.word()));
        }
        if finding.call != CallWhom::Nobody {
            let whom = say::stored(words, "call", finding.call);
            let number = policy.call(finding.call);
            once(&mut calls, phrase::with_number(words, whom, number));
        }
    }
    let line = |id: &str, name: &'static str, all: Vec<String>| {
        (!all.is_empty()).then(|| words.say_with(id, &[(name, all.join("; ").into())]))
    };
    let tries = line("report-tries", "tries", tries);
    let calls = line("report-call", "whom", calls);
    let lines: Vec<String> = calls.into_iter().chain(tries).collect();
    lines.join("\n")
}

fn sign(model: &Model, around: &Around<'_>, words: &Words, screen: &ui::PlanAdapter<'_>) {
    let signed = around.open.and_then(|open| open.folded.signed.as_ref());
    screen.set_signed(signed.is_some());
    screen.set_can_sign(true);
    screen.set_sign_label(
        if signed.is_some() {
            words.say("plan-to-codes")
        } else {
            words.say_with(
                "plan-sign",
                &[("by", around.preferences.specialist.as_str().into())],
            )
        }
        .into(),
    );
    let trouble = match (signed, model.trouble) {
        (Some(signed), _) => words.say_with(
            "plan-signed",
            &[
                ("by", signed.by.as_str().into()),
                (
                    "time",
                    say::time(words, signed.wall, around.now.wall).into(),
                ),
            ],
        ),
        (None, None) => String::new(),
        (None, Some(SignTrouble::Running)) => words.say("plan-trouble-running"),
        (None, Some(SignTrouble::Review)) => words.say("plan-trouble-review"),
        (None, Some(SignTrouble::Specialist)) => words.say("plan-trouble-specialist"),
    };
    screen.set_trouble(trouble.into());
}
