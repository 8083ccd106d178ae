//! What each event on the hand-over screen leads to.

use crate::app::around::Around;
use crate::handover::ReceiptCheck;
use crate::record::What;

use super::{Effect, Event, Kind, Model, Told};

/// The figures of a receipt.
const RECEIPT_FIGURES: usize = 10;

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
    match event {
        Event::Came => {
            *model = Model::default();
            if open.folded.signed.is_some() {
                return vec![Effect::Pack(false)];
            }
        }
        Event::Made(shown) => {
            let note = What::ShownAsCode {
                transfer: shown.transfer,
                pieces: u8::try_from(shown.record.len()).unwrap_or(u8::MAX),
            };
            model.shown = Some(*shown);
            model.failed = None;
            model.piece = 0;
            return vec![Effect::Note(note)];
        }
        Event::Failed(why) => model.failed = Some(why),
        Event::Previous => model.piece = model.piece.saturating_sub(1),
        Event::Next => {
            let last = model
                .shown
                .as_ref()
                .map_or(0, |shown| shown.record.len().saturating_sub(1));
            model.piece = (model.piece + 1).min(last);
        }
        Event::KindChosen(kind) => {
            model.kind = kind;
            let taps = kind == Kind::WithTaps;
            if kind != Kind::Note && model.shown.as_ref().is_some_and(|it| it.taps != taps) {
                // The other record has a receipt of its own.
                model.typed.clear();
                model.told = Told::Nothing;
                return vec![Effect::Pack(taps)];
            }
        }
        Event::Keyed(key) => return keyed(model, &key, open.folded.receipt.is_some()),
        // What stands no more is not amended: its newest version is.
        Event::AmendWanted if open.folded.signed.is_some() && !open.others.amends => {
            return vec![Effect::Amend];
        }
        Event::AmendWanted => {}
        Event::BackWanted => return vec![Effect::Leave],
    }
    vec![]
}

fn keyed(model: &mut Model, key: &str, taken: bool) -> Vec<Effect> {
    if taken {
        return vec![];
    }
    model.told = Told::Nothing;
    match key {
        "ok" => return take(model),
        "⌫" => {
            model.typed.pop();
        }
        figure if !is_note(model) && model.typed.len() < RECEIPT_FIGURES => {
            model
                .typed
                .extend(figure.chars().filter(char::is_ascii_digit));
        }
        _ => {}
    }
    vec![]
}

fn take(model: &mut Model) -> Vec<Effect> {
    let Some(shown) = &model.shown else {
        return vec![];
    };
    match shown.receipt.check(&model.typed) {
        ReceiptCheck::Fits => vec![Effect::Note(What::ReceiptTaken {
            receipt: shown.receipt.digits(),
        })],
        ReceiptCheck::Mistyped => {
            model.told = Told::Slip;
            vec![]
        }
        ReceiptCheck::OfAnotherRecord => {
            model.told = Told::Other;
            vec![]
        }
    }
}

/// Shows which of the record's pieces, kept inside what there is.
pub(super) fn piece(model: &Model) -> usize {
    model.shown.as_ref().map_or(0, |shown| {
        model.piece.min(shown.record.len().saturating_sub(1))
    })
}

/// Whether the note is shown.
pub(super) fn is_note(model: &Model) -> bool {
    model.kind == Kind::Note
}
