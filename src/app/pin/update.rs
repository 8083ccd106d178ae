//! What each event on the lock's screen leads to.

use crate::app::clock::Now;
use crate::store::vault::{Pin, Typed, VaultError};

use super::{Effect, Event, Model, Stage, Why};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, now: Now) -> Vec<Effect> {
    match event {
        Event::Came(has_pin) => {
            *model = Model {
                stage: first(has_pin),
                has_pin,
                ..Model::default()
            };
        }
        Event::Digit(digit) => {
            let most = Typed::DIGITS_MOST;
            if digit <= 9 && is_typing(model, now) && model.typed.len() < most {
                // As long as it can become, so that it never grows and leaves a copy behind.
                let longest = most.saturating_sub(model.typed.len());
                model.typed.reserve_exact(longest);
                model.typed.push(char::from(b'0' + digit));
                model.why = None;
            }
        }
        Event::Deleted => {
            if is_typing(model, now) {
                let _ = model.typed.pop();
                model.why = None;
            }
        }
        Event::Done => return done(model, now),
        Event::Refused(error) => refused(model, error, now),
        Event::Unusable(error) => {
            begin_again(model, Some(Why::Unusable(error)));
        }
        Event::Set(code) => {
            *model = Model {
                stage: Stage::WriteDown,
                rescue: Some(code),
                ..Model::default()
            };
        }
        Event::BackWanted => return leave(model),
        Event::Ticked => {
            if 0 < model.wait_until_boot_ms && model.wait_ms(now.boot_ms) == 0 {
                model.wait_until_boot_ms = 0;
                model.why = None;
            }
        }
    }
    vec![]
}

/// What is asked for first where a PIN is to be set.
const fn first(has_pin: bool) -> Stage {
    if has_pin { Stage::Current } else { Stage::New }
}

/// Whether digits are taken now.
fn is_typing(model: &Model, now: Now) -> bool {
    !model.busy && model.stage != Stage::WriteDown && model.wait_ms(now.boot_ms) == 0
}

fn done(model: &mut Model, now: Now) -> Vec<Effect> {
    if model.stage == Stage::WriteDown {
        return leave(model);
    }
    if !is_typing(model, now) {
        return vec![];
    }
    let typed = std::mem::take(&mut model.typed);
    model.why = None;
    match model.stage {
        Stage::Open => match Typed::read(&typed) {
            Ok(typed) => {
                model.busy = true;
                return vec![Effect::Try(typed)];
            }
            Err(fault) => model.why = Some(Why::NoPin(fault)),
        },
        Stage::Current => match Typed::read(&typed) {
            Ok(typed) => {
                model.current = Some(typed);
                model.stage = Stage::New;
            }
            Err(fault) => model.why = Some(Why::NoPin(fault)),
        },
        Stage::New => match Pin::new(&typed) {
            Ok(pin) => {
                model.new = Some(pin);
                model.stage = Stage::Again;
            }
            Err(fault) => model.why = Some(Why::NoPin(fault)),
        },
        Stage::Again => match (Pin::new(&typed), model.new.take()) {
            (Ok(again), Some(new)) if again == new => {
                model.busy = true;
                return vec![Effect::Set(model.current.take(), new)];
            }
            _ => {
                model.stage = Stage::New;
                model.why = Some(Why::Differs);
            }
        },
        Stage::WriteDown => {}
    }
    vec![]
}

fn refused(model: &mut Model, error: VaultError, now: Now) {
    if let VaultError::Wrong { wait_ms } | VaultError::Wait { wait_ms } = error
        && 0 < wait_ms
    {
        model.wait_until_boot_ms = now.boot_ms.saturating_add(wait_ms);
    }
    begin_again(model, Some(Why::Refused(error)));
}

/// What was typed is gone; asked for is what was asked for first.
fn begin_again(model: &mut Model, why: Option<Why>) {
    *model = Model {
        stage: match model.stage {
            Stage::Open => Stage::Open,
            _ => first(model.has_pin),
        },
        has_pin: model.has_pin,
        why,
        wait_until_boot_ms: model.wait_until_boot_ms,
        ..Model::default()
    };
}

/// Nothing that was typed stays behind. While the data are locked there is nowhere to go.
fn leave(model: &mut Model) -> Vec<Effect> {
    if model.stage == Stage::Open {
        model.typed = Default::default();
        return vec![];
    }
    *model = Model::default();
    vec![Effect::Leave]
}
