//! What each event on the plan screen leads to; what stands between a visit and its signature.

use crate::app::around::Around;
use crate::app::open_visit::OpenVisit;
use crate::findings::{CallWhom, Policy};
use crate::record::{Coded, Label, PlanItem, PlanWhat, Text, What};

use super::{CALLS, Effect, Event, Model, NEXT_LOOK_HOURS, SignTrouble};

/// Milliseconds in an hour.
const HOUR_MS: i64 = 3_600_000;

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
    match event {
        Event::Came => {
            *model = Model::default();
            vec![]
        }
        Event::Chose(index) => PlanWhat::ALL
            .get(index)
            .map(|what| Effect::Note(agreed_or_not(open, *what)))
            .into_iter()
            .collect(),
        Event::CallChosen(index) => CALLS
            .get(index)
            .and_then(|whom| called_or_not(open, *whom, around.policy))
            .map(Effect::Note)
            .into_iter()
            .collect(),
        Event::WeighWanted if open.folded.signed.is_none() => vec![Effect::Before],
        Event::WeighWanted => vec![],
        Event::SheetWanted(sheet) => {
            model.sheet = sheet;
            vec![]
        }
        Event::WordsAdded(words) => Text::new(&words)
            .map(|words| {
                Effect::Note(What::PlanItem(PlanItem {
                    what: None,
                    words: Some(words),
                }))
            })
            .into_iter()
            .collect(),
        Event::NextLookChosen(index) => NEXT_LOOK_HOURS
            .get(index)
            .map(|hours| {
                Effect::Note(What::NextLook {
                    due: around.now.wall.plus_ms(hours * HOUR_MS),
                })
            })
            .into_iter()
            .collect(),
        Event::NoteAdded(text) => Text::new(&text)
            .map(|text| Effect::Note(What::Note { text }))
            .into_iter()
            .collect(),
        Event::SignWanted if open.folded.signed.is_some() => vec![Effect::Codes],
        Event::SignWanted => sign(model, open, around),
        Event::BackWanted if model.sheet => {
            model.sheet = false;
            vec![]
        }
        Event::BackWanted => vec![Effect::LookBack],
    }
}

/// The entry that agrees an item, or that takes back the one that did.
fn agreed_or_not(open: &OpenVisit, what: PlanWhat) -> What {
    let item = PlanItem {
        what: Some(Coded::Known(what)),
        words: None,
    };
    item_or_not(open, item)
}

/// As [`agreed_or_not`], for whom to call, with the ward's number for them.
fn called_or_not(open: &OpenVisit, whom: CallWhom, policy: &Policy) -> Option<What> {
    let item = PlanItem {
        what: Some(Coded::Known(whom.agreed()?)),
        words: policy.call(whom).and_then(|it| Text::new(it).ok()),
    };
    Some(item_or_not(open, item))
}

/// The entry that adds an item, or that takes back the last one of its kind; of whom to call, with
/// whatever number.
fn item_or_not(open: &OpenVisit, item: PlanItem) -> What {
    let is_it = |other: &PlanItem| match item.call() {
        Some(call) => other.call() == Some(call),
        None => *other == item,
    };
    open.visit
        .journal
        .standing_entries()
        .rev()
        .find(|entry| matches!(&entry.what, What::PlanItem(other) if is_it(other)))
        .map_or_else(
            || What::PlanItem(item.clone()),
            |entry| What::Struck { entry: entry.seq },
        )
}

/// What stands between the visit and its signature.
pub fn sign_trouble(open: &OpenVisit, around: &Around<'_>) -> Option<SignTrouble> {
    if open.folded.running().is_some() {
        return Some(SignTrouble::Running);
    }
    if Label::new(&around.preferences.specialist).is_err() {
        return Some(SignTrouble::Specialist);
    }
    (!open
        .unacknowledged(around.policy, around.now.wall)
        .is_empty())
    .then_some(SignTrouble::Review)
}

fn sign(model: &mut Model, open: &OpenVisit, around: &Around<'_>) -> Vec<Effect> {
    model.trouble = sign_trouble(open, around);
    match (model.trouble, Label::new(&around.preferences.specialist)) {
        (None, Ok(by)) => vec![Effect::Note(What::Signed { by }), Effect::Codes],
        _ => vec![],
    }
}
