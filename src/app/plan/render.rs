//! From the visit to the plan screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::record::{Coded, PlanWhat};
use crate::words::Words;

use super::{Model, NEXT_LOOK_HOURS, SignTrouble};

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::PlanAdapter::get(window);
    let now = around.now.wall;
    screen.set_title(say::title(&open.pair).into());
    screen.set_quiet(words.say("plan-title").into());
    let mut usual: Vec<PlanWhat> = open
        .judged(around.policy, now)
        .findings
        .iter()
        .flat_map(|finding| finding.plan.iter().filter_map(Coded::known))
        .collect();
    usual.sort();
    usual.dedup();
    let named = usual
        .iter()
        .map(|what| say::stored(words, "plan", *what))
        .collect::<Vec<_>>()
        .join(", ");
    screen.set_usual(
        if usual.is_empty() {
            words.say("plan-usual-none")
        } else {
            words.say_with("plan-usual", &[("items", named.into())])
        }
        .into(),
    );
    screen.set_items(list(PlanWhat::ALL.iter().map(|what| {
        ui::Choice {
            label: say::stored(words, "plan", *what).into(),
            chosen: open
                .folded
                .plan
                .iter()
                .any(|item| item.what == Some(Coded::Known(*what))),
        }
    })));
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
    let own = open
        .folded
        .plan
        .iter()
        .filter_map(|item| item.words.as_ref());
    let notes = open.folded.notes.iter().map(|(_, text)| text);
    screen.set_notes(list(own.chain(notes).map(|text| text.as_str().into())));
    sign(model, around, words, &screen);
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
