//! From the model and the visit to the bedside screen. Decides nothing; the strip's times are
//! seconds since the visit began.

use std::cell::RefCell;
use std::rc::Rc;

use slint::Global;

use crate::app::around::Around;
use crate::app::entry_line;
use crate::app::lists::{Kept, list};
use crate::app::open_visit::OpenVisit;
use crate::app::{compared, say, ui};
use crate::findings::{Comparison, compare};
use crate::record::{Adjustment, At, EndedBy, Hold, SignState, VisitId};
use crate::rhythm::{Live, Phase, PhaseSpan};
use crate::words::Words;

use super::flag::flag_rows;
use super::strip::{band_rows, kind_of, mark_rows, seconds};
use super::take_back::{self, TakenBack};
use super::update::{SHOWN, asks_early_pain};
use super::{Model, Question, Sheet};

/// How much the live strip shows, in milliseconds.
pub const STRIP_MS: u64 = 120_000;
/// How much before that is looked back over with it, so that its first phases rest on something.
const CONTEXT_MS: u64 = 60_000;

/// The lists that change with every tap.
#[derive(Default)]
pub struct Lists {
    signs: Kept<ui::SignRow>,
    figures: Kept<ui::Figure>,
    bands: Kept<ui::StripBand>,
    marks: Kept<ui::StripMark>,
    flags: Kept<ui::StripFlag>,
    tried: Kept<ui::CompareRow>,
    recent: RefCell<Option<Recent>>,
    compared: RefCell<Option<(TriedKey, Rc<Option<Comparison>>)>>,
}

/// The strip's phases, and what they were made for: the visit and its last entry.
type Recent = (VisitId, u32, Rc<Vec<PhaseSpan>>);

/// What a comparison is made anew for: the visit, its feeds, the feed's adjustments, the second.
type TriedKey = (VisitId, usize, usize, u64);

impl Lists {
    /// What came of the last feed's last adjustment, made anew once a second.
    fn compared(&self, open: &OpenVisit, now: At) -> Rc<Option<Comparison>> {
        let feeds = &open.folded.feeds;
        let tried = feeds.last().map_or(0, |feed| feed.adjustments.len());
        let key = (open.visit.id, feeds.len(), tried, now.as_ms() / 1000);
        let mut kept = self.compared.borrow_mut();
        match &*kept {
            Some((of, compared)) if *of == key => Rc::clone(compared),
            _ => {
                let compared = Rc::new(
                    tried
                        .checked_sub(1)
                        .and_then(|tried| compare(feeds, feeds.len() - 1, tried, now)),
                );
                *kept = Some((key, Rc::clone(&compared)));
                compared
            }
        }
    }

    /// The strip's phases, looked back over anew only when an entry was added.
    fn recent(&self, open: &OpenVisit, now: At) -> Rc<Vec<PhaseSpan>> {
        let mut kept = self.recent.borrow_mut();
        let (visit, seq) = (open.visit.id, open.visit.journal.next_seq());
        match &*kept {
            Some((of, at, phases)) if (*of, *at) == (visit, seq) => Rc::clone(phases),
            _ => {
                let phases = open.recent_phases(now.minus_ms(STRIP_MS + CONTEXT_MS));
                let phases = Rc::new(phases);
                *kept = Some((visit, seq, Rc::clone(&phases)));
                phases
            }
        }
    }

    /// Gives the lists to a window, once.
    pub fn connect(&self, window: &ui::AppWindow) {
        let screen = ui::BedsideAdapter::get(window);
        screen.set_signs(self.signs.model());
        screen.set_figures(self.figures.model());
        screen.set_bands(self.bands.model());
        screen.set_marks(self.marks.model());
        screen.set_flags(self.flags.model());
        screen.set_tried_rows(self.tried.model());
    }
}

/// Draws all of the screen.
pub fn render(
    model: &Model,
    around: &Around<'_>,
    words: &Words,
    lists: &Lists,
    window: &ui::AppWindow,
) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::BedsideAdapter::get(window);
    let growth = open.growth(around.now.wall);
    screen.set_title(say::title(&open.pair).into());
    let age = say::age(words, growth.age);
    let change = say::change(words, &growth);
    screen.set_quiet(
        if change.is_empty() {
            age
        } else {
            format!("{age} · {change}")
        }
        .into(),
    );
    lists.signs.put(sign_rows(open, words));
    if let Some(feed) = open.folded.feeds.last() {
        let hold = feed
            .hold()
            .map_or_else(String::new, |hold| say::stored(words, "hold", hold));
        screen.set_place(
            words
                .say_with(
                    "bedside-place",
                    &[
                        ("side", say::stored(words, "side", feed.side).into()),
                        ("hold", hold.into()),
                    ],
                )
                .into(),
        );
        screen.set_unwatched(feed.is_unwatched());
        screen.set_off(feed.is_off());
        screen.set_pain(say::pain_key(feed.pains.last()));
    }
    let taken_back = take_back::last(open);
    screen.set_can_take_back(taken_back.is_some());
    screen.set_take_back_what(
        taken_back
            .map_or_else(String::new, |it| match it {
                TakenBack::Told(entry) | TakenBack::Start(entry) => {
                    entry_line::line(&entry.what, around.now.wall, words)
                }
                TakenBack::OtherBreast { .. } => words.say("bedside-other-breast"),
            })
            .into(),
    );
    let unresolved = open
        .folded
        .running()
        .map_or(0, |feed| feed.unresolved_touches);
    screen.set_unresolved(
        if unresolved == 0 {
            String::new()
        } else {
            words.say_with(
                "bedside-unresolved",
                &[("count", i64::from(unresolved).into())],
            )
        }
        .into(),
    );
    sheet(model, open, words, &screen);
    render_clock(model, around, words, lists, window);
}

/// Draws what moves with the clock and with taps: phase, figures, strip, safety.
pub fn render_clock(
    model: &Model,
    around: &Around<'_>,
    words: &Words,
    lists: &Lists,
    window: &ui::AppWindow,
) {
    let Some(open) = around.open else {
        return;
    };
    let screen = ui::BedsideAdapter::get(window);
    let now = open.at(around.now);
    let noted = open.visit.journal.next_seq() - 1;
    screen.set_safe(
        if open.is_all_safe() {
            words.say_with("bedside-safe", &[("count", i64::from(noted).into())])
        } else {
            words.say_with(
                "bedside-saving",
                &[
                    ("safe", i64::from(open.safe_seq).into()),
                    ("count", i64::from(noted).into()),
                ],
            )
        }
        .into(),
    );
    let Some(feed) = open.folded.running() else {
        return;
    };
    screen.set_clock(say::wide_clock(now.since_ms(feed.started)).into());
    let asks = asks_early_pain(feed, now);
    screen.set_pain_asks(asks);
    screen.set_pain_label(
        words
            .say(if asks {
                "bedside-pain-early"
            } else {
                "bedside-pain-now"
            })
            .into(),
    );
    question(model, now, words, &screen);
    tried(open, now, words, &screen, lists);
    let live = open.live(around.now);
    if let Some(live) = &live {
        phase(live, now, words, &screen, lists);
    }
    let from = now.minus_ms(STRIP_MS + 5_000);
    lists.bands.put(band_rows(
        &lists.recent(open, now),
        from,
        now,
        live.map(|live| live.phase),
        words,
    ));
    let marks = mark_rows(feed, from);
    let counted = |kinds: &[i32]| {
        let count = marks.iter().filter(|it| kinds.contains(&it.kind)).count();
        i64::try_from(count).unwrap_or(i64::MAX)
    };
    let (sucks, swallows) = (counted(&[0, 1]), counted(&[1, 2]));
    lists.marks.put(marks);
    lists
        .flags
        .put(flag_rows(feed, from, seconds(At::ms(STRIP_MS))));
    screen.set_end_s(seconds(if around.preferences.motion {
        now
    } else {
        page_end(now)
    }));
    screen.set_strip_label(
        words
            .say_with(
                "bedside-strip",
                &[("sucks", sucks.into()), ("swallows", swallows.into())],
            )
            .into(),
    );
}

/// Without motion the strip stands still and turns on every so often.
const PAGE_MS: u64 = 15_000;

fn page_end(now: At) -> At {
    At::ms(now.as_ms().div_ceil(PAGE_MS) * PAGE_MS)
}

fn sign_rows(open: &OpenVisit, words: &Words) -> Vec<ui::SignRow> {
    let feed_start = open
        .folded
        .feeds
        .last()
        .map_or(At::START, |feed| feed.started);
    SHOWN
        .iter()
        .map(|sign| {
            let now = open.folded.sign(*sign);
            ui::SignRow {
                name: say::stored(words, "sign", *sign).into(),
                since: now
                    .filter(|now| feed_start <= now.at)
                    .map_or_else(String::new, |now| {
                        words.duration_clock(now.at.since_ms(feed_start))
                    })
                    .into(),
                state: now.map_or(0, |now| match now.state {
                    SignState::Seen => 1,
                    SignState::Unclear => 2,
                    SignState::NotSeen => 3,
                }),
            }
        })
        .collect()
}

fn phase(live: &Live, now: At, words: &Words, screen: &ui::BedsideAdapter<'_>, lists: &Lists) {
    let nothing_yet = live.sucks == 0 && live.swallows == 0 && live.phase == Phase::Rest;
    screen.set_phase(
        if nothing_yet {
            words.say("bedside-waiting")
        } else {
            say::stored(words, "phase", live.phase)
        }
        .into(),
    );
    screen.set_phase_kind(kind_of(live.phase));
    let sure = if 0.9 <= live.probability {
        "bedside-sure"
    } else if 0.7 <= live.probability {
        "bedside-fairly-sure"
    } else {
        "bedside-unsure"
    };
    screen.set_phase_quiet(
        if nothing_yet {
            String::new()
        } else {
            words.say_with(
                "bedside-phase-for",
                &[
                    (
                        "time",
                        words.duration_clock(now.since_ms(live.since)).into(),
                    ),
                    ("sure", words.say(sure).into()),
                ],
            )
        }
        .into(),
    );
    let number = |value: Option<f64>, decimals| {
        value.map_or_else(|| "–".to_owned(), |value| words.number(value, decimals))
    };
    let last = if 0 < live.rest_ms && live.phase == Phase::Rest {
        (words.duration_clock(live.rest_ms), "bedside-resting")
    } else {
        (live.run_sucks.to_string(), "bedside-in-this-run")
    };
    lists.figures.put(vec![
        ui::Figure {
            value: number(live.sucks_per_min, 0).into(),
            quiet: words.say("bedside-sucks-a-minute").into(),
        },
        ui::Figure {
            value: number(live.sucks_per_swallow, 1).into(),
            quiet: words.say("bedside-sucks-a-swallow").into(),
        },
        ui::Figure {
            value: last.0.into(),
            quiet: words.say(last.1).into(),
        },
    ]);
}

/// What came of the running feed's last adjustment.
fn tried(open: &OpenVisit, now: At, words: &Words, screen: &ui::BedsideAdapter<'_>, lists: &Lists) {
    let feeds = &open.folded.feeds;
    let compared = lists.compared(open, now);
    let (Some(compared), Some(feed)) = (&*compared, feeds.last()) else {
        screen.set_tried_word("".into());
        screen.set_tried_heading("".into());
        return;
    };
    screen.set_tried_word(
        words
            .say(if compared.sides.is_some() {
                "bedside-tried-ready"
            } else {
                "bedside-tried-early"
            })
            .into(),
    );
    screen.set_tried_heading(compared::heading(compared, feed.started, words).into());
    screen.set_tried_quiet(compared::quiet(compared, words).into());
    lists.tried.put(compared::rows(compared, words));
}

fn question(model: &Model, now: At, words: &Words, screen: &ui::BedsideAdapter<'_>) {
    let text = match model.question {
        Some(Question::Silent(since)) => words.say_with(
            "bedside-question-silent",
            &[(
                "seconds",
                i64::try_from(now.since_ms(since) / 1000)
                    .unwrap_or(i64::MAX)
                    .into(),
            )],
        ),
        None => String::new(),
    };
    screen.set_question(text.into());
    screen.set_answer_yes(words.say("bedside-question-resting").into());
    screen.set_answer_no(words.say("bedside-question-away").into());
}

fn sheet(model: &Model, open: &OpenVisit, words: &Words, screen: &ui::BedsideAdapter<'_>) {
    let choice = |label: String| ui::Choice {
        label: label.into(),
        chosen: false,
    };
    let (title, text, choices) = match model.sheet {
        Sheet::None => (String::new(), String::new(), vec![]),
        Sheet::Hold => (
            words.say("bedside-hold-title"),
            String::new(),
            Hold::offered(open.pair.babies)
                .map(|hold| choice(say::stored(words, "hold", hold)))
                .collect(),
        ),
        Sheet::Adjustment => (
            words.say("bedside-adjustment-title"),
            String::new(),
            Adjustment::ALL
                .iter()
                .map(|what| choice(say::stored(words, "adjustment", *what)))
                .collect(),
        ),
        Sheet::End => (
            words.say("bedside-end-title"),
            String::new(),
            EndedBy::ALL
                .iter()
                .map(|by| choice(say::stored(words, "ended-by", *by)))
                .collect(),
        ),
        Sheet::Help(sign) => {
            let id = format!("sign-{}", sign.as_word().replace('_', "-"));
            (
                say::stored(words, "sign", sign),
                words.say_with(
                    "bedside-sign-help",
                    &[
                        ("look", words.say(&format!("{id}-look")).into()),
                        ("try", words.say(&format!("{id}-try")).into()),
                    ],
                ),
                vec![],
            )
        }
    };
    screen.set_sheet(model.sheet != Sheet::None);
    screen.set_sheet_holds(model.sheet == Sheet::Hold);
    screen.set_sheet_tried(model.sheet == Sheet::Adjustment);
    screen.set_sheet_sign(match model.sheet {
        Sheet::Help(sign) => i32::try_from(sign.index()).unwrap_or(-1),
        _ => -1,
    });
    screen.set_sheet_title(title.into());
    screen.set_sheet_text(text.into());
    screen.set_sheet_choices(list(choices));
}
