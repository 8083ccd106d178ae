//! From the model to the lock's screen.

use slint::Global;
use zeroize::Zeroizing;

use crate::app::clock::Now;
use crate::app::ui;
use crate::fault;
use crate::store::vault::{PinFault, VaultError, in_groups};
use crate::words::Words;

use super::{Model, Stage, Why};

/// The most digits that are shown as dots: more are no PIN, but a rescue code on the way, which is
/// long enough to be compared with the paper.
const DOTS_MOST: usize = 12;

/// Draws the screen.
pub fn render(model: &Model, now: Now, words: &Words, window: &ui::AppWindow) {
    let screen = ui::PinAdapter::get(window);
    let (title, how, done) = match model.stage {
        Stage::Open => ("pin-title-open", "pin-how-open", "pin-done-open"),
        Stage::Current => ("pin-title-current", "pin-how-current", "pin-done-next"),
        Stage::New => ("pin-title-new", "pin-how-new", "pin-done-next"),
        Stage::Again => ("pin-title-again", "pin-how-again", "pin-done-set"),
        Stage::WriteDown => ("pin-title-write", "pin-how-write", "pin-done-written"),
    };
    screen.set_title(words.say(title).into());
    screen.set_how(words.say(how).into());
    screen.set_done_label(words.say(done).into());
    screen.set_typing(model.stage != Stage::WriteDown);
    screen.set_ready(!model.busy && model.wait_ms(now.boot_ms) == 0);
    screen.set_can_go_back(!matches!(model.stage, Stage::Open | Stage::WriteDown));
    screen.set_shown(shown(model).as_str().into());
    let digits = i64::try_from(model.digits()).unwrap_or(0);
    screen.set_shown_label(
        words
            .say_with("pin-digits", &[("count", digits.into())])
            .into(),
    );
    screen.set_told(told(model, now, words).into());
}

/// Takes away what was typed, and the rescue code, once another screen is seen.
pub fn clear(window: &ui::AppWindow) {
    let screen = ui::PinAdapter::get(window);
    screen.set_shown("".into());
    screen.set_shown_label("".into());
}

/// What was typed, as dots or digits; or the rescue code.
fn shown(model: &Model) -> Zeroizing<String> {
    if let Some(code) = &model.rescue {
        code.shown()
    } else if model.digits() <= DOTS_MOST {
        "● ".repeat(model.digits()).into()
    } else {
        in_groups(&model.typed)
    }
}

fn told(model: &Model, now: Now, words: &Words) -> String {
    let wait_ms = model.wait_ms(now.boot_ms);
    let wait = || {
        // The second that is not yet over counts.
        let time = words.duration_clock(wait_ms.div_ceil(1_000) * 1_000);
        words.say_with("pin-wait", &[("time", time.into())])
    };
    match &model.why {
        _ if model.busy => words.say("pin-busy"),
        None if 0 < wait_ms => wait(),
        None => String::new(),
        Some(Why::NoPin(PinFault::Length)) => words.say("pin-length"),
        Some(Why::NoPin(PinFault::Easy)) => words.say("pin-easy"),
        Some(Why::Differs) => words.say("pin-differs"),
        Some(Why::Refused(VaultError::Wrong { .. })) if 0 < wait_ms => {
            format!("{} {}", words.say("pin-wrong"), wait())
        }
        Some(Why::Refused(VaultError::Wait { .. })) => wait(),
        Some(Why::Refused(error)) => fault::vault(error, words).to_string(),
        Some(Why::Unusable(error)) => fault::store(error, words).to_string(),
    }
}
