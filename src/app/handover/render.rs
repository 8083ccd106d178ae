//! From the model to the hand-over screen. Codes are drawn with whole pixels, dark on white.

use slint::{Global, Image, Rgb8Pixel, SharedPixelBuffer};

use crate::app::around::Around;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::handover::Code;
use crate::handover::qr::QUIET_MODULES;
use crate::words::Words;

use super::update::{is_note, piece};
use super::{Kind, Model, Told};

/// Pixels of a module in the picture; the screen enlarges it by whole steps.
const MODULE_PX: usize = 1;

/// Draws the screen.
pub fn render(model: &Model, around: &Around<'_>, words: &Words, window: &ui::AppWindow) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::HandoverAdapter::get(window);
    screen.set_title(say::title(&open.pair).into());
    screen.set_quiet(words.say("handover-title").into());
    let choice = |id: &str, kind: Kind| ui::Choice {
        label: words.say(id).into(),
        chosen: model.kind == kind,
    };
    screen.set_kinds(list([
        choice("handover-record", Kind::Record),
        choice("handover-with-taps", Kind::WithTaps),
        choice("handover-note", Kind::Note),
    ]));
    code(model, words, &screen);
    let taken = open.folded.receipt.as_deref();
    screen.set_can_type(model.shown.is_some() && taken.is_none() && !is_note(model));
    screen.set_can_amend(open.folded.signed.is_some() && !open.others.amends);
    screen.set_receipt_taken(taken.is_some());
    screen.set_receipt(grouped(taken.unwrap_or(&model.typed)).into());
    screen.set_receipt_told(
        words
            .say(match (taken, model.told) {
                (Some(_), _) => "handover-receipt-taken",
                (None, Told::Nothing) => "handover-receipt-type",
                (None, Told::Slip) => "handover-receipt-slip",
                (None, Told::Other) => "handover-receipt-other",
            })
            .into(),
    );
    let warning = if is_note(model) {
        words.say("handover-note-warning")
    } else if let Some(why) = &model.failed {
        why.clone()
    } else if open.folded.signed.is_none() {
        words.say("handover-not-signed")
    } else {
        words.say("handover-record-quiet")
    };
    screen.set_warning(warning.into());
}

fn code(model: &Model, words: &Words, screen: &ui::HandoverAdapter<'_>) {
    let Some(shown) = &model.shown else {
        screen.set_code(Image::default());
        screen.set_what("".into());
        screen.set_can_previous(false);
        screen.set_can_next(false);
        return;
    };
    let place = piece(model);
    let count = shown.record.len();
    let numbers = [
        ("index", i64::try_from(place + 1).unwrap_or(0).into()),
        ("count", i64::try_from(count).unwrap_or(0).into()),
    ];
    if is_note(model) {
        screen.set_code(image_of(&shown.note));
        screen.set_code_modules(modules(&shown.note));
        screen.set_what(words.say("handover-note-label").into());
        screen.set_code_label(words.say("handover-note-label").into());
        screen.set_can_previous(false);
        screen.set_can_next(false);
    } else if let Some(code) = shown.record.get(place) {
        screen.set_code(image_of(code));
        screen.set_code_modules(modules(code));
        screen.set_what(words.say_with("handover-piece", &numbers).into());
        screen.set_code_label(words.say_with("handover-code-label", &numbers).into());
        screen.set_can_previous(0 < place);
        screen.set_can_next(place + 1 < count);
    }
}

/// Figures in groups of three, three and four.
fn grouped(figures: &str) -> String {
    figures
        .chars()
        .enumerate()
        .flat_map(|(index, figure)| {
            let gap = (index == 3 || index == 6).then_some(' ');
            gap.into_iter().chain(std::iter::once(figure))
        })
        .collect()
}

/// Modules of a side with the quiet zone.
pub fn modules(code: &Code) -> i32 {
    i32::try_from(code.side + 2 * QUIET_MODULES).unwrap_or(i32::MAX)
}

/// A code as a picture.
pub fn image_of(code: &Code) -> Image {
    let (side_px, luma) = code.to_luma(MODULE_PX, QUIET_MODULES);
    let side = u32::try_from(side_px).unwrap_or(0);
    let mut pixels = SharedPixelBuffer::<Rgb8Pixel>::new(side, side);
    for (pixel, grey) in pixels.make_mut_slice().iter_mut().zip(luma) {
        *pixel = Rgb8Pixel::new(grey, grey, grey);
    }
    Image::from_rgb8(pixels)
}
