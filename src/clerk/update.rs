//! What each event at the desk's window leads to.

use super::effect::Effect;
use super::event::Event;
use super::model::{LISTED_MOST, LineFor, Model, Notice, Page};
use super::sound::Tone;
use super::typing::{Key, Typed};
use super::worker::{Ask, FORMS, Told};
use crate::desk::Said;
use crate::desk::command::PATIENCE;
use crate::record::Label;

/// A person who searches has paused after so long, in milliseconds. Common practice.
pub const SEARCH_PAUSE_MS: u64 = 250;

/// Takes a key that came at this time, in milliseconds of a clock that only goes on: what is to be
/// done, and whether the toolkit may have it, too.
pub fn pressed(model: &mut Model, key: Key<'_>, now_ms: u64) -> (Vec<Effect>, bool) {
    let typed = model.typing.key(key, now_ms);
    let is_toolkits = typed == Typed::Toolkits;
    let effects = match typed {
        Typed::Scanned(text) => {
            // What stands behind a code is no new scan.
            model.is_reading |= !text.trim().is_empty();
            model.is_unfinished = true;
            vec![Effect::Ask(Ask::Hear(text))]
        }
        Typed::Edited => {
            if matches!(model.line_for, LineFor::Search) {
                model.is_search_due = true;
            }
            vec![]
        }
        Typed::Accepted(text) => match std::mem::take(&mut model.line_for) {
            LineFor::Name(tablet) => match Label::new(&text) {
                Ok(name) => {
                    model.typing.close();
                    vec![Effect::Ask(Ask::Enrol(Box::new(tablet), name))]
                }
                // Nothing was typed yet, or nothing that can be a name.
                Err(_) => {
                    model.line_for = LineFor::Name(tablet);
                    vec![]
                }
            },
            line_for => {
                model.line_for = line_for;
                search(model)
            }
        },
        Typed::Left if model.page.is_some() => left_page(model),
        Typed::Left => left_line(model),
        Typed::Nothing | Typed::Toolkits => vec![],
    };
    (effects, is_toolkits)
}

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event) -> Vec<Effect> {
    match event {
        Event::InFront(is_in_front) => {
            model.is_in_front = is_in_front;
            if is_in_front {
                vec![Effect::HearKeys]
            } else {
                vec![]
            }
        }
        Event::Ticked(now_ms) => ticked(model, now_ms),
        Event::Told(told) => heard(model, told),
        Event::SearchWanted => {
            model.page = None;
            model.notice = None;
            model.line_for = LineFor::Search;
            model.typing.open();
            vec![Effect::HearKeys]
        }
        Event::SearchLeft => left_line(model),
        Event::Opened(place) => model.heads.get(place).map_or_else(Vec::new, |head| {
            model.notice = None;
            vec![Effect::Ask(Ask::Page(head.number))]
        }),
        Event::PageLeft => left_page(model),
        Event::PrintWanted => of_page(model, Ask::Print),
        Event::ExportWanted(place) => match FORMS.get(place) {
            Some(form) => of_page(model, |number| Ask::Export(number, *form)),
            None => vec![],
        },
        Event::WordsAreSame => {
            if let Some(Said::TabletAsks(tablet)) = model.said {
                model.said = None;
                model.line_for = LineFor::Name(tablet);
                model.typing.open();
            }
            vec![Effect::HearKeys]
        }
        Event::WordsDiffer => {
            model.said = None;
            model.notice = Some(Notice::NotEnrolled);
            vec![Effect::HearKeys]
        }
    }
}

/// What is due now; where nothing is, nothing has changed either.
fn ticked(model: &mut Model, now_ms: u64) -> Vec<Effect> {
    let silent_ms = model.typing.silent_ms(now_ms).unwrap_or(u64::MAX);
    let mut effects = Vec::new();
    if model.is_unfinished && PATIENCE.as_millis() <= u128::from(silent_ms) {
        model.is_unfinished = false;
        model.is_reading = false;
        effects.push(Effect::Ask(Ask::Silence));
    }
    if model.is_search_due && SEARCH_PAUSE_MS <= silent_ms {
        effects.extend(search(model));
    }
    effects
}

fn heard(model: &mut Model, told: Told) -> Vec<Effect> {
    let tone = match told {
        Told::Said(all, waiting) => {
            model.waiting = waiting;
            return all
                .into_iter()
                .flat_map(|said| answered(model, said))
                .collect();
        }
        Told::Ready { has_key } => {
            model.has_key = has_key;
            return vec![Effect::Ask(listed(model))];
        }
        Told::Heads(searched, heads) => {
            // An answer to an older search comes too late.
            if searched == model.searched {
                model.heads = heads;
            }
            return vec![Effect::ShowList];
        }
        Told::Page(number, text, doubts) => {
            model.page = Some(Page {
                number,
                text,
                doubts,
            });
            return vec![Effect::HearKeys];
        }
        Told::Written(file) => {
            model.notice = Some(Notice::Written(file));
            return vec![];
        }
        Told::Printed => {
            model.notice = Some(Notice::Printed);
            return vec![];
        }
        Told::NoPrinter(file) => {
            model.notice = Some(Notice::NoPrinter(file));
            Tone::Refused
        }
        Told::Enrolled(name) => {
            model.notice = Some(Notice::Enrolled(name));
            Tone::Kept
        }
        Told::Failed(error) => {
            model.notice = Some(Notice::Failed(error));
            Tone::Refused
        }
    };
    vec![Effect::Sound(tone)]
}

/// What an answer to a scan leads to.
fn answered(model: &mut Model, said: Said) -> Vec<Effect> {
    model.is_reading = false;
    let mut effects = Vec::new();
    let tone = match &said {
        Said::Piece { .. } | Said::TabletAsks(_) | Said::TabletKnown(_) => Tone::Piece,
        Said::Kept(_) | Said::Test(_) => Tone::Kept,
        Said::Refused(_) => Tone::Refused,
    };
    effects.push(Effect::Sound(tone));
    model.notice = None;
    if let Said::Kept(kept) = said {
        model.said = None;
        model.kept = Some(kept);
        effects.push(Effect::Ask(listed(model)));
    } else {
        model.said = Some(said);
    }
    effects
}

fn listed(model: &Model) -> Ask {
    Ask::Search(model.searched.clone(), LISTED_MOST)
}

/// Asks for what is in the line now.
fn search(model: &mut Model) -> Vec<Effect> {
    model.is_search_due = false;
    let line = model.typing.line().unwrap_or_default();
    line.clone_into(&mut model.searched);
    vec![Effect::Ask(listed(model))]
}

/// Closes the line that is open; the list is whole again.
fn left_line(model: &mut Model) -> Vec<Effect> {
    model.typing.close();
    model.line_for = LineFor::Nothing;
    let mut effects = vec![Effect::HearKeys];
    if !model.searched.is_empty() || model.is_search_due {
        effects.extend(search(model));
    }
    effects
}

fn left_page(model: &mut Model) -> Vec<Effect> {
    model.page = None;
    model.notice = None;
    vec![Effect::HearKeys]
}

fn of_page(model: &mut Model, ask: impl FnOnce(i64) -> Ask) -> Vec<Effect> {
    model.notice = None;
    let number = model.page.as_ref().map(|page| page.number);
    let ask = number.map(|number| Effect::Ask(ask(number)));
    ask.into_iter().chain([Effect::HearKeys]).collect()
}
