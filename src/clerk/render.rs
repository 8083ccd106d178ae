//! What the desk's window shows of its model. Words come from `words`, sentences about records and
//! refusals from the desk.

use std::rc::Rc;

use slint::{Global, Model as _, ModelRc, VecModel};

use super::model::{LineFor, Model, Notice};
use super::ui::{ClerkAdapter, ClerkWindow, HeadRow, Line, Mood};
use crate::desk::tell::{grouped, kept_about, marks, missing_line, record};
use crate::desk::{RecordHead, Said, tell};
use crate::words::Words;

/// A space at which no line ends.
const NO_BREAK: &str = "\u{a0}";

/// What is told of a scan: how it stands, what happened, and what more there is to say.
struct Told {
    mood: Mood,
    headline: String,
    lines: Vec<String>,
}

/// Shows it.
pub fn render(model: &Model, words: &Words, window: &ClerkWindow) {
    let it = ClerkAdapter::get(window);
    let told = told(model, words);
    it.set_mood(told.mood);
    it.set_headline(told.headline.into());
    it.set_lines(told.lines.join("\n").into());
    it.set_asks_words(matches!(model.said, Some(Said::TabletAsks(_))) && model.is_in_front);
    if let Some(pieces) = other(&it.get_pieces(), pieces(model)) {
        it.set_pieces(pieces);
    }
    it.set_missing(missing(model, words).into());
    let kept = model.kept.as_ref();
    it.set_receipt(
        kept.map_or_else(String::new, |it| grouped(&it.head.receipt))
            .into(),
    );
    it.set_receipt_about(
        kept.map_or_else(String::new, |it| kept_about(it, words).join("\n"))
            .into(),
    );
    it.set_line(match model.line_for {
        LineFor::Nothing => Line::None,
        LineFor::Search => Line::Search,
        LineFor::Name(_) => Line::Name,
    });
    it.set_typed(model.typing.line().unwrap_or_default().into());
    it.set_none_found(none_found(model, words).into());
    let page = model.page.as_ref();
    it.set_page_open(page.is_some());
    it.set_page(
        page.map_or_else(String::new, |page| page.text.clone())
            .into(),
    );
    it.set_page_title(
        page.map_or_else(String::new, |page| {
            words.say_with("clerk-record", &[("number", page.number.into())])
        })
        .into(),
    );
    it.set_page_doubts(
        page.map_or_else(String::new, |it| it.doubts.join("\n"))
            .into(),
    );
    it.set_notice(
        model
            .notice
            .as_ref()
            .map_or_else(String::new, |it| notice(it, words))
            .into(),
    );
    it.set_notice_is_bad(matches!(
        model.notice,
        Some(Notice::Failed(_) | Notice::NotEnrolled | Notice::NoPrinter(_))
    ));
}

/// Shows the list: by itself, as its sentences are many, and most of what happens leaves it as it is.
pub fn render_list(model: &Model, words: &Words, window: &ClerkWindow) {
    let it = ClerkAdapter::get(window);
    let rows = model.heads.iter().map(|head| row(head, words)).collect();
    // A list that is drawn anew loses its place.
    if let Some(rows) = other(&it.get_heads(), rows) {
        it.set_heads(rows);
    }
}

/// The list of these, if it is another than the one shown.
fn other<T: Clone + PartialEq + 'static>(shown: &ModelRc<T>, now: Vec<T>) -> Option<ModelRc<T>> {
    (!shown.iter().eq(now.iter().cloned())).then(|| ModelRc::from(Rc::new(VecModel::from(now))))
}

/// The gravest thing that is to be told of scanning.
fn told(model: &Model, words: &Words) -> Told {
    let of = |mood, headline: &str, lines: Vec<String>| Told {
        mood,
        headline: words.say(headline),
        lines,
    };
    if !model.is_in_front {
        return of(
            Mood::Deaf,
            "clerk-not-in-front",
            vec![words.say("clerk-not-in-front-do")],
        );
    }
    if model.is_reading {
        return of(
            Mood::Reading,
            "clerk-reading",
            vec![words.say("clerk-reading-do")],
        );
    }
    match &model.said {
        Some(Said::Refused(error)) => {
            let explained = error.explained(words);
            Told {
                mood: Mood::Refused,
                headline: explained.happened,
                lines: vec![explained.now_do],
            }
        }
        Some(said) => {
            let text = tell(said, words);
            let mut all = text.lines().map(str::to_owned);
            let headline = all.next().unwrap_or_default();
            let lines = match said {
                // What the command line says of the next step is not how it is done here.
                Said::TabletAsks(_) => vec![words.say("clerk-tablet-asks-do")],
                _ => all.collect(),
            };
            Told {
                mood: Mood::Piece,
                headline,
                lines,
            }
        }
        None if !model.has_key => of(
            Mood::Refused,
            "clerk-no-key",
            vec![words.say("clerk-no-key-do")],
        ),
        None => of(
            Mood::Ready,
            "clerk-ready",
            vec![words.say("clerk-ready-do")],
        ),
    }
}

/// Which pieces of the record that is scanned are there; empty where none is begun.
fn pieces(model: &Model) -> Vec<bool> {
    model.waiting.last().map_or_else(Vec::new, |waiting| {
        (1..=waiting.count)
            .map(|piece| !waiting.missing.contains(&piece))
            .collect()
    })
}

/// What is missing of records begun, for those whom the boxes do not serve.
fn missing(model: &Model, words: &Words) -> String {
    let lines: Vec<String> = model
        .waiting
        .iter()
        .map(|it| missing_line(it, words))
        .collect();
    lines.join("\n")
}

fn row(head: &RecordHead, words: &Words) -> HeadRow {
    HeadRow {
        number: head.number.to_string().into(),
        record: record(head, words).into(),
        arrived: words
            .say_with(
                "clerk-arrived",
                &[
                    ("arrived", words.date_time(head.arrived.local()).into()),
                    ("tablet", head.tablet.as_str().into()),
                    (
                        "receipt",
                        grouped(&head.receipt).replace(' ', NO_BREAK).into(),
                    ),
                ],
            )
            .into(),
        marks: marks(head, words).join("\n").into(),
        review: 0 < head.reviews_now,
    }
}

fn none_found(model: &Model, words: &Words) -> String {
    match (model.heads.is_empty(), model.searched.trim().is_empty()) {
        (false, _) => String::new(),
        (true, true) => words.say("desk-inbox-none"),
        (true, false) => words.say("desk-inbox-none-found"),
    }
}

fn notice(notice: &Notice, words: &Words) -> String {
    let file = |id: &str, file: &std::path::Path| {
        let args = [("file", file.to_string_lossy().into_owned().into())];
        words.say_with(id, &args)
    };
    match notice {
        Notice::Written(path) => file("clerk-written", path),
        Notice::Printed => words.say("clerk-printed"),
        Notice::NoPrinter(path) => file("clerk-no-printer", path),
        Notice::Enrolled(name) => {
            words.say_with("desk-tablet-enrolled", &[("name", name.as_str().into())])
        }
        Notice::NotEnrolled => words.say("clerk-not-enrolled"),
        Notice::Failed(error) => {
            let explained = error.explained(words);
            format!("{} {}", explained.happened, explained.now_do)
        }
    }
}
