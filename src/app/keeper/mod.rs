//! What is asked of the store and what it tells back. On the tablet a thread of its own answers, so
//! that a slow disk never holds up a finger; in rehearsals and tests the answer comes at once.
//!
//! Decides nothing.

mod looked;
mod month;
mod ward;

use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::JoinHandle;

use crate::app::open_visit::Weighed;
use crate::findings::Policy;
use crate::record::{Acknowledged, Entry, LastDay, Pair, PairId, Visit, VisitId, WallTime, fold};
use crate::report::month::Month;
use crate::store::vault::{Pin, RescueCode, Typed, VaultError};
use crate::store::{Store, StoreError, VisitHead};

pub use ward::WardLine;

/// What is asked.
#[derive(Debug)]
pub enum Ask {
    /// The ward's list.
    Ward,
    /// The last days' figures up to a time, or more of them.
    Month(WallTime),
    /// One pair's story.
    Story(PairId),
    /// One visit, to be opened.
    Open(VisitId),
    /// A new or changed pair.
    SavePair(Box<Pair>),
    /// Many pairs with their visits.
    Fill(Vec<(Pair, Vec<Visit>)>),
    /// A new visit, with the entries it already has.
    Begin(Box<Visit>),
    /// One more entry.
    Append(VisitId, Box<Entry>),
    /// A setting.
    Set(&'static str, String),
    /// A new PIN, with the one before or the rescue code, at a time.
    SetPin(Option<Typed>, Pin, WallTime),
}

/// What is told back.
#[derive(Debug)]
pub enum Told {
    /// The ward's list.
    Ward(Vec<WardLine>),
    /// The last days' figures as far as they are worked out, and how many visits are left.
    Month(Box<Month>, u32),
    /// One pair's story.
    Story(Box<Story>),
    /// A visit to be opened, with its pair's story.
    Opened(Box<Visit>, Box<Story>),
    /// A pair is on disk.
    PairSaved(PairId),
    /// An entry, and so all before it, is on disk.
    Safe(VisitId, u32),
    /// A setting is on disk.
    Kept,
    /// The PIN is set; the rescue code that goes with it.
    PinSet(RescueCode),
    /// The PIN could not be set.
    PinRefused(VaultError),
    /// It could not be done.
    Failed(StoreError),
}

/// A pair's story so far.
#[derive(Debug, Clone)]
pub struct Story {
    /// The pair.
    pub pair: Pair,
    /// Its visits, newest first.
    pub visits: Vec<VisitHead>,
    /// The receipt of each visit that has one.
    pub receipts: Vec<(VisitId, String)>,
    /// Weights of all visits that stand, oldest first, each with its visit.
    pub weighings: Vec<(VisitId, Weighed)>,
    /// The last answers about 24 hours, and when that visit began.
    pub last_day: Option<(WallTime, LastDay)>,
    /// The answers of every visit, oldest first, and when it began.
    pub days: Vec<(WallTime, LastDay)>,
    /// What was acknowledged in any visit.
    pub acknowledged: Vec<Acknowledged>,
}

/// Something that answers.
pub trait Keeper {
    /// Asks; the answer comes by the way that was given when the keeper was made.
    fn ask(&mut self, ask: Ask);
}

/// Answers one question.
pub fn answer(store: &mut Store, policy: &Policy, ask: Ask) -> Told {
    try_answer(store, policy, ask).unwrap_or_else(Told::Failed)
}

fn try_answer(store: &mut Store, policy: &Policy, ask: Ask) -> Result<Told, StoreError> {
    Ok(match ask {
        Ask::Ward => Told::Ward(ward::ward(store, policy)?),
        Ask::Month(now) => {
            let (month, left) = month::month(store, policy, now)?;
            Told::Month(Box::new(month), left)
        }
        Ask::Story(pair) => match story(store, pair)? {
            Some(story) => Told::Story(Box::new(story)),
            None => Told::Ward(ward::ward(store, policy)?),
        },
        Ask::Open(id) => {
            let visit = store.visit(id)?;
            let story = match &visit {
                Some(visit) => story(store, visit.pair)?,
                None => None,
            };
            match (visit, story) {
                (Some(visit), Some(story)) => Told::Opened(Box::new(visit), Box::new(story)),
                _ => Told::Ward(ward::ward(store, policy)?),
            }
        }
        Ask::SavePair(pair) => {
            store.save_pair(&pair)?;
            Told::PairSaved(pair.id)
        }
        Ask::Fill(pairs) => {
            for (pair, visits) in pairs {
                store.save_pair(&pair)?;
                for visit in visits {
                    store.begin_visit(&visit)?;
                }
            }
            Told::Ward(ward::ward(store, policy)?)
        }
        Ask::Begin(visit) => {
            store.begin_visit(&visit)?;
            Told::Safe(visit.id, visit.journal.next_seq() - 1)
        }
        Ask::Append(visit, entry) => {
            store.append(visit, &entry)?;
            Told::Safe(visit, entry.seq)
        }
        Ask::Set(name, word) => {
            store.set_setting(name, &word)?;
            Told::Kept
        }
        Ask::SetPin(current, pin, now) => match store.set_pin(current.as_ref(), &pin, now) {
            Ok(code) => Told::PinSet(code),
            Err(error) => Told::PinRefused(error),
        },
    })
}

/// All visits of a pair, oldest first.
fn visits(store: &mut Store, pair: PairId) -> Result<Vec<Visit>, StoreError> {
    let mut visits = Vec::new();
    for head in store.visits_of(pair)? {
        visits.extend(store.visit(head.id)?);
    }
    visits.sort_by_key(|visit| visit.began.utc_ms());
    Ok(visits)
}

fn story(store: &mut Store, id: PairId) -> Result<Option<Story>, StoreError> {
    let Some(pair) = store.pair(id)? else {
        return Ok(None);
    };
    let mut heads = store.visits_of(id)?;
    heads.sort_by_key(|head| std::cmp::Reverse(head.began.utc_ms()));
    let mut story = Story {
        pair,
        visits: heads,
        receipts: Vec::new(),
        weighings: Vec::new(),
        last_day: None,
        days: Vec::new(),
        acknowledged: Vec::new(),
    };
    let replaced: Vec<VisitId> = story.visits.iter().filter_map(|it| it.replaces).collect();
    for visit in visits(store, id)? {
        let folded = fold(&visit.journal);
        if let Some(receipt) = folded.receipt {
            story.receipts.push((visit.id, receipt));
        }
        // What an amendment took over, it tells.
        if replaced.contains(&visit.id) {
            continue;
        }
        let weighings = Weighed::all_of(&visit.journal);
        story
            .weighings
            .extend(weighings.map(|weighed| (visit.id, weighed)));
        story.acknowledged.extend(folded.acknowledged);
        if let Some(day) = folded.last_day {
            story.days.push((visit.began, day.clone()));
            story.last_day = Some((visit.began, day));
        }
    }
    // A weight may have been taken before one of an earlier visit.
    story
        .weighings
        .sort_by_key(|(_, weighed)| weighed.at.utc_ms());
    Ok(Some(story))
}

/// A keeper on a thread of its own.
pub struct ThreadKeeper {
    asks: Option<Sender<Ask>>,
    thread: Option<JoinHandle<()>>,
}

impl ThreadKeeper {
    /// Starts the thread; each answer goes to `tell`, on that thread.
    pub fn start(
        mut store: Store,
        policy: Policy,
        mut tell: impl FnMut(Told) + Send + 'static,
    ) -> Self {
        let (asks, heard): (Sender<Ask>, Receiver<Ask>) = channel();
        let thread = std::thread::spawn(move || {
            for ask in heard {
                tell(answer(&mut store, &policy, ask));
            }
        });
        Self {
            asks: Some(asks),
            thread: Some(thread),
        }
    }
}

impl Keeper for ThreadKeeper {
    fn ask(&mut self, ask: Ask) {
        if let Some(asks) = &self.asks {
            // The thread ends only when this is dropped, so somebody is always listening.
            let _ = asks.send(ask);
        }
    }
}

impl Drop for ThreadKeeper {
    fn drop(&mut self) {
        // What was asked is still written before the program ends.
        self.asks = None;
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

/// A keeper that answers at once into a list that the shell reads after each event.
pub struct AtOnceKeeper {
    store: Store,
    policy: Policy,
    told: std::rc::Rc<std::cell::RefCell<Vec<Told>>>,
}

impl AtOnceKeeper {
    /// A keeper over a store, telling into a list.
    pub const fn new(
        store: Store,
        policy: Policy,
        told: std::rc::Rc<std::cell::RefCell<Vec<Told>>>,
    ) -> Self {
        Self {
            store,
            policy,
            told,
        }
    }
}

impl Keeper for AtOnceKeeper {
    fn ask(&mut self, ask: Ask) {
        let told = answer(&mut self.store, &self.policy, ask);
        self.told.borrow_mut().push(told);
    }
}
