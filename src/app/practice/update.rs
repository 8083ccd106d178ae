//! What each event on the practice screen leads to.

use std::rc::Rc;

use crate::app::around::Around;
use crate::app::bedside::PadKind;
use crate::practice::{Baby, HandLevel, simulate};
use crate::record::{At, Tap, TapWhat};

use super::{
    Effect, Event, Minutes, Model, Observer, Speed, Stage, Told, Watched, compare,
    compare_observers,
};

/// Takes an event; changes the model; says what is to be done. `seed` makes a new feed.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>, seed: u64) -> Vec<Effect> {
    let boot_ms = around.now.boot_ms;
    match event {
        Event::BabyChosen(index) => choose(&mut model.baby, Baby::ALL, index),
        Event::SpeedChosen(index) => choose(&mut model.speed, &Speed::ALL, index),
        Event::MinutesChosen(index) => choose(&mut model.minutes, &Minutes::ALL, index),
        Event::StartWanted => start(model, boot_ms, seed),
        Event::SecondWanted => second(model, boot_ms),
        Event::Tapped(pad) => tapped(model, pad, boot_ms),
        Event::StopWanted => stop(model, boot_ms),
        Event::Ticked => {
            if let Stage::Watching(watched) = &model.stage
                && watched.end <= watched.played(boot_ms)
            {
                stop(model, boot_ms);
            }
        }
        Event::AnotherWanted => model.stage = Stage::Choosing,
        Event::BackWanted => {
            if model.stage == Stage::Choosing {
                return vec![Effect::Leave];
            }
            model.stage = Stage::Choosing;
        }
    }
    vec![]
}

fn choose<T: Copy>(place: &mut T, all: &[T], index: usize) {
    if let Some(chosen) = all.get(index) {
        *place = *chosen;
    }
}

fn start(model: &mut Model, boot_ms: u64, seed: u64) {
    let minutes = model.minutes;
    let feed = simulate(model.baby, HandLevel::Perfect.hand(), seed, minutes.get());
    model.first = None;
    model.stage = Stage::Watching(Box::new(Watched {
        observer: Observer::First,
        truth: Rc::new(feed.truth),
        end: minutes.end(),
        speed: model.speed,
        began_boot_ms: boot_ms,
        taps: vec![Tap::new(0, TapWhat::On)],
    }));
}

/// The same feed again, for a second pair of eyes.
fn second(model: &mut Model, boot_ms: u64) {
    let first_told = matches!(&model.stage, Stage::Told(told) if told.observer == Observer::First);
    if let Some(first) = model.first.as_ref().filter(|_| first_told) {
        model.stage = Stage::Watching(Box::new(Watched {
            observer: Observer::Second,
            began_boot_ms: boot_ms,
            taps: vec![Tap::new(0, TapWhat::On)],
            ..(**first).clone()
        }));
    }
}

fn tapped(model: &mut Model, pad: PadKind, boot_ms: u64) {
    if let Stage::Watching(watched) = &mut model.stage {
        let at = watched.played(boot_ms);
        let what = match pad {
            PadKind::Suck => TapWhat::Suck,
            PadKind::SuckSwallow => TapWhat::SuckSwallow,
            PadKind::Swallow => TapWhat::Swallow,
        };
        watched.taps.push(Tap { at, what });
    }
}

fn stop(model: &mut Model, boot_ms: u64) {
    let Stage::Watching(watched) = &mut model.stage else {
        return;
    };
    let end = watched.played(boot_ms);
    watched.taps.push(Tap {
        at: end,
        what: TapWhat::End,
    });
    watched.end = end;
    let between = match (watched.observer, &model.first) {
        (Observer::Second, Some(first)) => {
            let end = At::min(first.end, end);
            Some(compare_observers(&first.taps, &watched.taps, end))
        }
        _ => None,
    };
    let told = Told {
        observer: watched.observer,
        against_truth: compare(&watched.truth, &watched.taps, end),
        between,
    };
    if watched.observer == Observer::First {
        model.first = Some(watched.clone());
    }
    model.stage = Stage::Told(Box::new(told));
}
