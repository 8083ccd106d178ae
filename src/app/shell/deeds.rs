//! The deeds: what a screen's effects do to the world, in one match. Decides nothing that a screen
//! should.

use super::{Said, Shell, others};
use crate::app::around::Around;
use crate::app::clock::Now;
use crate::app::deed::Deed;
use crate::app::event::Event;
use crate::app::keeper::Ask;
use crate::app::open_visit::OpenVisit;
use crate::app::preferences::Preferences;
use crate::app::route::Route;
use crate::app::{before, demo, handover, looking_back, month, pair, pin, plan};
use crate::fault;
use crate::record::{Label, PairId, Visit, VisitId, What};
use crate::words::Words;

impl Shell {
    pub(super) fn perform(&mut self, deed: Deed) -> Vec<Deed> {
        match deed {
            Deed::Go(route) => return self.go(route),
            Deed::Note(what) => self.note(self.now(), what),
            Deed::NoteAt(boot_ms, what) => self.note(self.now().at_boot(boot_ms), what),
            Deed::AskWard => self.parts.keeper.ask(Ask::Ward),
            Deed::AskMonth => {
                let now = self.now().wall;
                self.parts.keeper.ask(Ask::Month(now));
            }
            Deed::ShowPair(pair) => self.parts.keeper.ask(Ask::Story(pair)),
            Deed::ShowForm(_) => {
                self.route = Route::Pair;
                return self.update(Event::Pair(pair::Event::NewWanted));
            }
            Deed::SavePair(pair) => self.parts.keeper.ask(Ask::SavePair(pair)),
            Deed::BeginVisit(pair) => return self.begin(pair),
            Deed::OpenVisit(visit) => {
                let here = self
                    .open
                    .iter()
                    .chain(&self.parked)
                    .any(|open| open.visit.id == visit && open.folded.running().is_some());
                if here {
                    let mut deeds = self.bring(visit);
                    deeds.push(Deed::Go(self.where_to()));
                    return deeds;
                }
                self.parts.keeper.ask(Ask::Open(visit));
            }
            Deed::FillDemo => {
                let pairs = demo::ward(self.now().wall);
                self.parts.keeper.ask(Ask::Fill(pairs));
            }
            Deed::Keep(preferences) => self.keep(*preferences),
            Deed::Pack(taps) => return self.pack(taps),
            Deed::Amend => return self.amend(),
            Deed::SetPin(current, pin) => {
                let now = self.now().wall;
                self.parts.keeper.ask(Ask::SetPin(current, pin, now));
            }
            Deed::Lock => self.lock_wanted = self.parts.has_pin,
        }
        vec![]
    }

    pub(super) fn bring(&mut self, visit: VisitId) -> Vec<Deed> {
        if let Some(place) = self.parked.iter().position(|it| it.visit.id == visit) {
            let open = self.parked.remove(place);
            self.set_open(open);
        }
        self.update(Event::Pair(pair::Event::VisitCame))
    }

    pub(super) fn go(&mut self, route: Route) -> Vec<Deed> {
        self.route = route;
        match route {
            Route::Ward => vec![Deed::AskWard],
            Route::Before => self.update(Event::Before(before::Event::Came)),
            Route::LookingBack => self.update(Event::LookingBack(looking_back::Event::Came)),
            Route::Plan => self.update(Event::Plan(plan::Event::Came)),
            Route::Handover => self.update(Event::Handover(handover::Event::Came)),
            Route::Pin => {
                let has_pin = self.parts.has_pin;
                self.update(Event::Pin(pin::Event::Came(has_pin)))
            }
            Route::Month => self.update(Event::Month(month::Event::Came)),
            Route::Pair | Route::Bedside | Route::Practice | Route::Settings => vec![],
        }
    }

    /// Adds an entry to the open visit and has it written.
    fn note(&mut self, now: Now, what: What) {
        let Some(open) = &mut self.open else {
            return;
        };
        match open.note(now, what) {
            Ok(entry) => {
                let seq = entry.seq;
                self.parts
                    .keeper
                    .ask(Ask::Append(open.visit.id, Box::new(entry)));
                if let Some(say) = &mut self.parts.say_safe {
                    say(Said::Made(seq));
                }
            }
            Err(error) => {
                let explained = fault::record(&error, &self.words);
                self.trouble = Some(format!("{} {}", explained.happened, explained.now_do));
            }
        }
    }

    fn specialist(&self) -> Option<Label> {
        Label::new(&self.parts.preferences.specialist)
            .or_else(|_| Label::new("?"))
            .ok()
    }

    fn begin(&mut self, pair: PairId) -> Vec<Deed> {
        let now = self.now();
        let id = VisitId::from_random((self.parts.random)());
        let (Some(specialist), Some(story)) = (self.specialist(), &self.models.pair.story) else {
            return vec![];
        };
        let visit = Visit::new(id, pair, now.wall, specialist);
        let open = OpenVisit::take_up(story.pair.clone(), visit.clone(), others(story, id), now);
        self.parts.keeper.ask(Ask::Begin(Box::new(visit)));
        let mut deeds = self.take_up(open);
        deeds.push(Deed::Go(Route::Before));
        deeds
    }

    fn amend(&mut self) -> Vec<Deed> {
        let now = self.now();
        let id = VisitId::from_random((self.parts.random)());
        let (Some(specialist), Some(open)) = (self.specialist(), &self.open) else {
            return vec![];
        };
        let Ok(visit) = open.visit.amendment(id, specialist) else {
            return vec![];
        };
        let taken = OpenVisit::take_up(open.pair.clone(), visit.clone(), open.others.clone(), now);
        self.parts.keeper.ask(Ask::Begin(Box::new(visit)));
        let mut deeds = self.take_up(taken);
        deeds.push(Deed::Go(Route::LookingBack));
        deeds
    }

    fn keep(&mut self, preferences: Preferences) {
        for ((name, before), (_, after)) in self
            .parts
            .preferences
            .words()
            .into_iter()
            .zip(preferences.words())
        {
            if before != after {
                self.parts.keeper.ask(Ask::Set(name, after));
            }
        }
        let other_language = preferences.lang != self.parts.preferences.lang;
        self.parts.preferences = preferences;
        if other_language {
            self.words = Words::new(self.parts.preferences.lang);
            if let Some(window) = self.parts.window.upgrade() {
                self.fill_words(&window);
            }
        }
    }

    fn pack(&mut self, taps: bool) -> Vec<Deed> {
        let Some(open) = &self.open else {
            return vec![];
        };
        let around = Around {
            now: self.now(),
            open: Some(open),
            preferences: &self.parts.preferences,
            policy: &self.parts.policy,
            has_pin: self.parts.has_pin,
        };
        let (tablet, secret) = (&self.tablet, &self.parts.secret);
        let made = handover::pack::pack(open, &around, &self.words, tablet, secret, taps);
        let event = match made {
            Ok(shown) => handover::Event::Made(Box::new(shown)),
            Err(why) => handover::Event::Failed(why),
        };
        self.update(Event::Handover(event))
    }
}
