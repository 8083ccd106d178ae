//! What each event on the bedside screen leads to. All decisions; no clock, no disk.

use crate::app::around::Around;
use crate::record::{
    Adjustment, At, EndedBy, Entry, Feed, Hold, Journal, Pain, Sign, SignState, Tap, TapWhat, What,
};

use super::model::{EARLY_PAIN_MS, EARLY_PAIN_SHOWN_MS, SILENT_ASK_MS};
use super::take_back::{self, TakenBack};
use super::{Act, Effect, Event, Model, PadKind, Question, Sheet};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let Some(open) = around.open else {
        return vec![Effect::Leave];
    };
    let now = open.at(around.now);
    let feed = open.folded.running();
    match event {
        Event::Tapped(kind) => tapped(model, kind, feed, around.now.boot_ms),
        Event::TappedAt(kind, boot_ms) => tapped(model, kind, feed, boot_ms),
        Event::Withdrawn(kind, boot_ms) => {
            let at = open.at(around.now.at_boot(boot_ms));
            tap_since(&open.visit.journal, kind, at)
                .map(|entry| Effect::Note(What::Struck { entry }))
                .into_iter()
                .collect()
        }
        Event::Unresolved => feed
            .map(|_| Effect::Note(What::TouchUnresolved))
            .into_iter()
            .collect(),
        Event::SignSet(sign, state) => vec![Effect::Note(What::SignChanged {
            sign,
            state: state_of(state),
        })],
        Event::HelpWanted(sign) => {
            model.sheet = Sheet::Help(sign);
            vec![]
        }
        Event::PainTold(pain) => pain_told(pain, feed),
        Event::Acted(act) => acted(model, act, feed),
        Event::LookedAway => {
            model.question = None;
            match feed {
                Some(feed) if feed.is_unwatched() => vec![Effect::Note(What::UnwatchedTo)],
                Some(_) => vec![Effect::Note(What::UnwatchedFrom { from: now })],
                None => vec![],
            }
        }
        Event::TakenBack => {
            model.question = None;
            take_back::last(open).map(taken_back).unwrap_or_default()
        }
        Event::Answered(resting) => answered(model, resting),
        Event::Chose(index) => chose(model, index, open.pair.babies),
        Event::SheetClosed => {
            model.sheet = Sheet::None;
            vec![]
        }
        Event::Ticked => {
            model.question = feed
                .and_then(|feed| silent_since(feed, now))
                .filter(|since| model.answered != Some(*since))
                .map(Question::Silent);
            vec![]
        }
        Event::BackWanted => vec![Effect::Leave],
    }
}

/// What is struck. Without its start there is no feed to watch.
fn taken_back(what: TakenBack<'_>) -> Vec<Effect> {
    let struck = |entry: &Entry| Effect::Note(What::Struck { entry: entry.seq });
    match what {
        TakenBack::Told(entry) => vec![struck(entry)],
        TakenBack::OtherBreast { started, ended } => vec![struck(started), struck(ended)],
        TakenBack::Start(entry) => vec![struck(entry), Effect::Before],
    }
}

const fn state_of(state: i32) -> Option<SignState> {
    match state {
        1 => Some(SignState::Seen),
        2 => Some(SignState::Unclear),
        3 => Some(SignState::NotSeen),
        _ => None,
    }
}

/// A tap says that somebody looks and that the baby is on: it ends both "looked away" and "off".
fn tapped(model: &mut Model, kind: PadKind, feed: Option<&Feed>, boot_ms: u64) -> Vec<Effect> {
    let Some(feed) = feed else {
        return vec![];
    };
    model.question = None;
    let mut effects = Vec::new();
    if feed.is_unwatched() {
        effects.push(Effect::NoteAt(boot_ms, What::UnwatchedTo));
    }
    if feed.is_off() && kind != PadKind::Swallow {
        effects.push(Effect::NoteAt(boot_ms, What::BabyOn));
    }
    effects.push(Effect::NoteAt(boot_ms, what_of(kind)));
    effects
}

const fn what_of(kind: PadKind) -> What {
    match kind {
        PadKind::Suck => What::Suck,
        PadKind::SuckSwallow => What::SuckSwallow,
        PadKind::Swallow => What::Swallow,
    }
}

/// The entry of the first tap on a pad at a time or later, if it stands.
fn tap_since(journal: &Journal, kind: PadKind, at: At) -> Option<u32> {
    journal
        .standing_entries()
        .rev()
        .take_while(|entry| at <= entry.at)
        .filter(|entry| entry.what == what_of(kind))
        .last()
        .map(|entry| entry.seq)
}

fn pain_told(pain: i32, feed: Option<&Feed>) -> Vec<Effect> {
    match (Pain::told(pain), feed) {
        (Some(score), Some(_)) => vec![Effect::Note(What::Pain { score, feed: None })],
        _ => vec![],
    }
}

fn acted(model: &mut Model, act: Act, feed: Option<&Feed>) -> Vec<Effect> {
    let Some(feed) = feed else {
        return vec![];
    };
    model.question = None;
    match act {
        Act::OtherBreast => vec![
            Effect::Note(What::FeedEnded {
                by: EndedBy::Specialist,
            }),
            Effect::Note(What::FeedStarted {
                side: feed.side.other(),
                hold: feed.hold().unwrap_or(Hold::CrossCradle),
            }),
        ],
        Act::OffOn if feed.is_off() => vec![Effect::Note(What::BabyOn)],
        Act::OffOn => vec![Effect::Note(What::BabyOff)],
        Act::ChangeHold => {
            model.sheet = Sheet::Hold;
            vec![]
        }
        Act::TryChange => {
            model.sheet = Sheet::Adjustment;
            vec![]
        }
        Act::EndFeed => {
            model.sheet = Sheet::End;
            vec![]
        }
    }
}

fn answered(model: &mut Model, resting: bool) -> Vec<Effect> {
    let Some(Question::Silent(since)) = model.question.take() else {
        return vec![];
    };
    model.answered = Some(since);
    if resting {
        vec![]
    } else {
        // Back-dated to just after the last tap: that suck was seen.
        vec![Effect::Note(What::UnwatchedFrom {
            from: since.plus_ms(1),
        })]
    }
}

fn chose(model: &mut Model, index: usize, babies: u8) -> Vec<Effect> {
    match std::mem::take(&mut model.sheet) {
        Sheet::Hold => Hold::offered(babies)
            .nth(index)
            .map(|hold| Effect::Note(What::HoldChanged { hold }))
            .into_iter()
            .collect(),
        Sheet::Adjustment => Adjustment::ALL
            .get(index)
            .map(|what| Effect::Note(What::AdjustmentTried { what: *what }))
            .into_iter()
            .collect(),
        Sheet::End => EndedBy::ALL
            .get(index)
            .map(|by| vec![Effect::Note(What::FeedEnded { by: *by }), Effect::LookBack])
            .unwrap_or_default(),
        Sheet::Help(_) | Sheet::None => vec![],
    }
}

/// Since when nothing was tapped, if that is long, the baby is on and somebody is said to watch.
fn silent_since(feed: &Feed, now: At) -> Option<At> {
    if feed.is_off() || feed.is_unwatched() {
        return None;
    }
    let last = feed.taps.last().map_or(feed.started, |tap| tap.at);
    (SILENT_ASK_MS <= now.since_ms(last)).then_some(last)
}

/// Whether the screen asks just now if early pain has gone: once for each latch, until a pain is
/// told.
pub(super) fn asks_early_pain(feed: &Feed, now: At) -> bool {
    let latched = feed
        .taps
        .iter()
        .rev()
        .find(|Tap { what, .. }| *what == TapWhat::On)
        .map_or(feed.started, |tap| tap.at);
    let since_ms = now.since_ms(latched);
    let told = feed
        .pains
        .iter()
        .any(|pain| latched.plus_ms(EARLY_PAIN_MS) <= pain.at);
    (EARLY_PAIN_MS..EARLY_PAIN_MS + EARLY_PAIN_SHOWN_MS).contains(&since_ms) && !told
}

/// The signs in the order in which the screen shows them.
pub(super) const SHOWN: &[Sign] = Sign::ALL;
