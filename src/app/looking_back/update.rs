//! What each event while looking back leads to.

use crate::app::around::Around;
use crate::app::open_visit::OpenVisit;
use crate::record::{BabyState, BreastAfter, Journal, NippleAfter, Pain, PainAt, What};

use super::{After, Effect, Event, Model, Picked, entries, strip};

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
        Event::FeedChosen(feed) => {
            *model = Model {
                feed: Some(feed),
                entries: model.entries,
                ..Model::default()
            };
            vec![]
        }
        Event::Picked(_)
        | Event::BoundaryPut(..)
        | Event::Zoomed(..)
        | Event::Panned(_)
        | Event::StrikeWanted
        | Event::AddWanted(_) => on_strip(model, event, open, around),
        Event::AfterTold(after, index) => {
            let feed = named(model, open);
            told(after, index, feed)
                .map(Effect::Note)
                .into_iter()
                .collect()
        }
        Event::PainTold(pain) => pain_told(model, pain, open),
        Event::Acknowledged(index) => {
            let judged = open.judged(around.policy, around.now.wall);
            let by = around.who(open);
            judged
                .findings
                .get(index)
                .map(|finding| {
                    Effect::Note(What::FindingAcknowledged {
                        rule: finding.rule.clone(),
                        by,
                    })
                })
                .into_iter()
                .collect()
        }
        Event::EntriesWanted(entries) => {
            model.entries = entries;
            vec![]
        }
        Event::EntryStruck(index) => entries::struck(open, index),
        Event::AnotherFeed => vec![Effect::Before],
        Event::PlanWanted => vec![Effect::Plan],
        Event::BackWanted => vec![Effect::Leave],
    }
}

/// Looking closer at the feed that is shown, and correcting it.
fn on_strip(model: &mut Model, event: Event, open: &OpenVisit, around: &Around<'_>) -> Vec<Effect> {
    let now = open.at(around.now);
    let place = model.shown(open.folded.feeds.len());
    let Some(feed) = open.folded.feeds.get(place) else {
        return vec![];
    };
    let journal = &open.visit.journal;
    match event {
        Event::Zoomed(factor, about_s) => {
            model.part = strip::zoomed(model, feed, now, factor, about_s);
        }
        Event::Panned(share) => model.part = strip::panned(model, feed, now, share),
        Event::Picked(at_s) => {
            let shown = strip::part(model, feed, now);
            model.picked = Some(strip::pick(journal, feed, shown, at_s));
        }
        _ if open.folded.signed.is_some() => {}
        Event::BoundaryPut(index, at_s) => {
            let all = open.summary(place).map(|it| strip::movable(&it));
            let whole = strip::whole(feed, now);
            return all
                .and_then(|all| strip::moved(&all, index, at_s, whole))
                .map(|moved| Effect::Note(What::BoundaryMoved(moved)))
                .into_iter()
                .collect();
        }
        Event::StrikeWanted => {
            if let Some(Picked::Tap(entry, at)) = model.picked {
                model.picked = Some(Picked::Moment(at));
                return vec![Effect::Note(What::Struck { entry })];
            }
        }
        Event::AddWanted(what) => {
            if let Some(Picked::Moment(at)) = model.picked {
                // The entry that is about to be made.
                model.picked = Some(Picked::Tap(journal.next_seq(), at));
                return vec![Effect::Note(What::TapAdded { at, what })];
            }
        }
        _ => {}
    }
    vec![]
}

/// The place of the feed that is shown, where it is not the last; an entry that names none is of
/// the last.
fn named(model: &Model, open: &OpenVisit) -> Option<u32> {
    let feeds = open.folded.feeds.len();
    let shown = model.shown(feeds);
    (shown + 1 < feeds)
        .then(|| u32::try_from(shown).ok())
        .flatten()
}

/// Pain after the feed that is shown is one answer: another one takes the place of the one before.
/// While the feed runs, pain is told at the bedside.
fn pain_told(model: &Model, pain: i32, open: &OpenVisit) -> Vec<Effect> {
    let feeds = &open.folded.feeds;
    let Some(feed) = feeds
        .get(model.shown(feeds.len()))
        .filter(|feed| !feed.is_running())
    else {
        return vec![];
    };
    let Some(score) = Pain::told(pain) else {
        return vec![];
    };
    let before = feed.pains_after.last();
    if before.is_some_and(|before| before.pain == score) {
        return vec![];
    }
    let taken_back = before.and_then(|before| entry_of(&open.visit.journal, before));
    let feed = named(model, open);
    taken_back
        .map(|entry| Effect::Note(What::Struck { entry }))
        .into_iter()
        .chain([Effect::Note(What::Pain { score, feed })])
        .collect()
}

/// The entry in which a pain was told, if it stands.
fn entry_of(journal: &Journal, told: &PainAt) -> Option<u32> {
    journal
        .standing_entries()
        .rev()
        .find(|entry| {
            entry.at == told.at
                && matches!(entry.what, What::Pain { score, .. } if score == told.pain)
        })
        .map(|entry| entry.seq)
}

fn told(after: After, index: usize, feed: Option<u32>) -> Option<What> {
    match after {
        After::Nipple => NippleAfter::ALL.get(index).map(|nipple| What::NippleAfter {
            nipple: *nipple,
            feed,
        }),
        After::Breast => BreastAfter::ALL.get(index).map(|breast| What::BreastAfter {
            breast: *breast,
            feed,
        }),
        After::Baby => BabyState::ALL.get(index).map(|state| What::BabyState {
            state: *state,
            feed,
        }),
    }
}
