//! The shell: holds the models and runs one loop for every screen: event, update (pure), effects,
//! deeds, draw. The store answers at its own pace; its answers are events like any other.
//!
//! What deeds do is in `deeds`, what is drawn in `draw`; nothing of either is decided here.

mod deeds;
mod draw;

use std::collections::VecDeque;
use std::rc::Rc;

use super::around::Around;
use super::clock::{Clock, Now};
use super::deed::Deed;
use super::desk_key_file::Offered;
use super::event::Event;
use super::keeper::{Keeper, Told};
use super::open_visit::{OpenVisit, Others};
use super::preferences::Preferences;
use super::route::Route;
use super::settings::TabletShown;
use super::{
    bedside, before, handover, looking_back, month, pair, pin, plan, practice, settings, ui, ward,
};
use crate::fault;
use crate::findings::{Finding, Policy};
use crate::handover::TabletKey;
use crate::record::{PairId, VisitId};
use crate::words::Words;

/// What the shell is made of.
pub struct Parts {
    /// The window.
    pub window: slint::Weak<ui::AppWindow>,
    /// The clock.
    pub clock: Box<dyn Clock>,
    /// The store's keeper.
    pub keeper: Box<dyn Keeper>,
    /// Random bytes for new ids.
    pub random: Box<dyn FnMut() -> [u8; 16]>,
    /// The settings as kept.
    pub preferences: Preferences,
    /// The ward policy.
    pub policy: Policy,
    /// What to tell at the start, if something is not as it should be.
    pub trouble: Option<String>,
    /// The tablet's secret.
    pub secret: [u8; 32],
    /// Whether a PIN is set.
    pub has_pin: bool,
    /// Told of each entry by its number, for scripts that watch from outside.
    pub say_safe: Option<Box<dyn FnMut(Said)>>,
}

/// What a script is told of an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Said {
    /// It was made.
    Made(u32),
    /// The screen begins to show it, and all before it, as safe.
    Safe(u32),
}

/// The lists that screens keep.
#[derive(Default)]
struct Lists {
    bedside: bedside::Lists,
    before: before::Lists,
}

/// The models of all screens.
#[derive(Default)]
struct Models {
    ward: ward::Model,
    pair: pair::Model,
    before: before::Model,
    bedside: bedside::Model,
    looking_back: looking_back::Model,
    plan: plan::Model,
    handover: handover::Model,
    practice: practice::Model,
    settings: settings::Model,
    pin: pin::Model,
    month: month::Model,
}

/// The shell.
pub struct Shell {
    parts: Parts,
    words: Words,
    tablet: TabletKey,
    tablet_shown: Option<TabletShown>,
    route: Route,
    open: Option<OpenVisit>,
    /// Other visits with a feed that still runs.
    parked: Vec<OpenVisit>,
    models: Models,
    lists: Lists,
    trouble: Option<String>,
    lock_wanted: bool,
}

impl Shell {
    /// A shell over its parts, on the Ward screen.
    pub fn new(mut parts: Parts) -> Self {
        let tablet = TabletKey::from_random(parts.secret);
        let words = Words::new(parts.preferences.lang);
        let tablet_shown = tablet.public().to_code().ok().map(|code| TabletShown {
            code,
            words: tablet.public().fingerprint().join(" "),
        });
        let shell = Self {
            words,
            tablet,
            tablet_shown,
            route: Route::Ward,
            open: None,
            parked: Vec::new(),
            models: Models::default(),
            lists: Lists::default(),
            trouble: parts.trouble.take(),
            lock_wanted: false,
            parts,
        };
        if let Some(window) = shell.parts.window.upgrade() {
            shell.lists.bedside.connect(&window);
            shell.lists.before.connect(&window);
            shell.fill_words(&window);
        }
        shell
    }

    /// Offers a desk's key, from a file, in the settings.
    pub fn offer_desk_key(&mut self, offered: Option<Offered>) {
        self.models.settings.offered = offered;
    }

    /// The screen that is seen.
    pub const fn route(&self) -> Route {
        self.route
    }

    /// The open visit.
    pub const fn open(&self) -> Option<&OpenVisit> {
        self.open.as_ref()
    }

    /// The settings.
    pub const fn preferences(&self) -> &Preferences {
        &self.parts.preferences
    }

    /// Whether a PIN is set, so that the data can be locked.
    pub const fn has_pin(&self) -> bool {
        self.parts.has_pin
    }

    /// Whether the data are to be locked now.
    pub const fn lock_wanted(&self) -> bool {
        self.lock_wanted
    }

    /// The hand-over model, for a rehearsal that reads the codes.
    pub const fn handover(&self) -> &handover::Model {
        &self.models.handover
    }

    /// The practice model, for a rehearsal that taps along.
    pub const fn practice(&self) -> &practice::Model {
        &self.models.practice
    }

    /// How often the clock is to tick on the screen that is seen, in milliseconds.
    pub fn tick_ms(&self) -> u64 {
        match self.route {
            // As often as the strip moves by a pixel on the usual screen.
            Route::Bedside => 100,
            Route::Before => 500,
            Route::Practice if self.models.practice.is_playing() => 33,
            // A wait is counted down.
            Route::Pin => 1_000,
            _ => 60_000,
        }
    }

    /// Hears an event and all that it leads to, then draws.
    pub fn hear(&mut self, event: Event) {
        let only_clock = matches!(event, Event::Ticked);
        let mut deeds: VecDeque<Deed> = self.update(event).into();
        let acted = !deeds.is_empty();
        while let Some(deed) = deeds.pop_front() {
            deeds.extend(self.perform(deed));
        }
        self.render(only_clock && !acted);
    }

    fn now(&self) -> Now {
        self.parts.clock.now()
    }

    fn update(&mut self, event: Event) -> Vec<Deed> {
        let now = self.now();
        let around = Around {
            now,
            open: self.open.as_ref(),
            preferences: &self.parts.preferences,
            policy: &self.parts.policy,
            has_pin: self.parts.has_pin,
        };
        fn deeds<E: Into<Deed>>(effects: Vec<E>) -> Vec<Deed> {
            effects.into_iter().map(Into::into).collect()
        }
        let models = &mut self.models;
        match event {
            Event::Ward(event) => deeds(ward::update(&mut models.ward, event, &around)),
            Event::Pair(event) => {
                let fresh = PairId::from_random((self.parts.random)());
                deeds(pair::update(&mut models.pair, event, &around, fresh))
            }
            Event::Before(event) => deeds(before::update(&mut models.before, event, &around)),
            Event::Bedside(event) => deeds(bedside::update(&mut models.bedside, event, &around)),
            Event::LookingBack(event) => deeds(looking_back::update(
                &mut models.looking_back,
                event,
                &around,
            )),
            Event::Plan(event) => deeds(plan::update(&mut models.plan, event, &around)),
            Event::Handover(event) => deeds(handover::update(&mut models.handover, event, &around)),
            Event::Practice(event) => {
                let seed = seed_of((self.parts.random)());
                deeds(practice::update(&mut models.practice, event, &around, seed))
            }
            Event::Settings(event) => deeds(settings::update(&mut models.settings, event, &around)),
            Event::Pin(event) => deeds(pin::update(&mut models.pin, event, now)),
            Event::Month(event) => deeds(month::update(&mut models.month, event)),
            // Only what is locked is opened.
            Event::Opened(_) => vec![],
            Event::Ticked => match self.route {
                Route::Bedside => deeds(bedside::update(
                    &mut models.bedside,
                    bedside::Event::Ticked,
                    &around,
                )),
                Route::Before => deeds(before::update(
                    &mut models.before,
                    before::Event::Ticked,
                    &around,
                )),
                Route::Practice => deeds(practice::update(
                    &mut models.practice,
                    practice::Event::Ticked,
                    &around,
                    0,
                )),
                Route::Pin => deeds(pin::update(&mut models.pin, pin::Event::Ticked, now)),
                // What is due moves up as time goes.
                Route::Ward => vec![Deed::AskWard],
                _ => vec![],
            },
            Event::Arrived => vec![Deed::Go(Route::Ward)],
            Event::Told(told) => self.told(told),
            Event::ToRunning => {
                self.settle();
                self.take_running();
                let mut deeds = self.update(Event::Pair(pair::Event::VisitCame));
                deeds.push(Deed::Go(Route::Bedside));
                deeds
            }
            Event::ToReview => {
                let Some(visit) = self.in_review().map(|(open, _)| open.visit.id) else {
                    return vec![];
                };
                self.settle();
                let mut deeds = self.bring(visit);
                deeds.push(Deed::Go(Route::LookingBack));
                deeds
            }
            Event::TroubleSeen => {
                self.trouble = None;
                vec![]
            }
            Event::Back => self.back(),
        }
    }

    /// The hardware's back key does what the screen's own back key does.
    fn back(&mut self) -> Vec<Deed> {
        let event = match self.route {
            Route::Ward => return vec![],
            Route::Pair => Event::Pair(pair::Event::BackWanted),
            Route::Before => Event::Before(before::Event::BackWanted),
            Route::Bedside => Event::Bedside(bedside::Event::BackWanted),
            Route::LookingBack => Event::LookingBack(looking_back::Event::BackWanted),
            Route::Plan => Event::Plan(plan::Event::BackWanted),
            Route::Handover => Event::Handover(handover::Event::BackWanted),
            Route::Practice => Event::Practice(practice::Event::BackWanted),
            Route::Settings => Event::Settings(settings::Event::BackWanted),
            Route::Pin => Event::Pin(pin::Event::BackWanted),
            Route::Month => Event::Month(month::Event::BackWanted),
        };
        self.update(event)
    }

    fn told(&mut self, told: Told) -> Vec<Deed> {
        let now = self.now();
        match told {
            Told::Ward(rows) => {
                let around = Around {
                    now,
                    open: self.open.as_ref(),
                    preferences: &self.parts.preferences,
                    policy: &self.parts.policy,
                    has_pin: self.parts.has_pin,
                };
                ward::update(&mut self.models.ward, ward::Event::Came(rows), &around)
                    .into_iter()
                    .map(Into::into)
                    .collect()
            }
            Told::Story(story) => {
                let mut deeds = self.update(Event::Pair(pair::Event::Came(story)));
                deeds.push(Deed::Go(Route::Pair));
                deeds
            }
            Told::Opened(visit, story) => {
                let others = others(&story, visit.id);
                let open = OpenVisit::take_up(story.pair, *visit, others, now);
                let mut deeds = self.take_up(open);
                deeds.push(Deed::Go(self.where_to()));
                deeds
            }
            Told::PairSaved(pair) => vec![Deed::ShowPair(pair)],
            Told::Safe(visit, seq) => {
                self.safe(visit, seq);
                vec![]
            }
            Told::Kept => vec![],
            // Whoever left does not wait for the rest of it.
            Told::Month(month, left) if self.route == Route::Month => {
                self.update(Event::Month(month::Event::Told(month, left)))
            }
            Told::Month(..) => vec![],
            Told::PinSet(code) => {
                self.parts.has_pin = true;
                self.update(Event::Pin(pin::Event::Set(code)))
            }
            Told::PinRefused(error) => self.update(Event::Pin(pin::Event::Refused(error))),
            Told::Failed(error) => {
                let explained = fault::store(&error, &self.words);
                self.trouble = Some(format!("{} {}", explained.happened, explained.now_do));
                vec![]
            }
        }
    }

    fn safe(&mut self, visit: VisitId, seq: u32) {
        let opens = self.open.iter_mut().chain(&mut self.parked);
        for open in opens.filter(|open| open.visit.id == visit) {
            open.safe_seq = open.safe_seq.max(seq);
        }
    }

    /// Where an opened visit goes on.
    fn where_to(&self) -> Route {
        match &self.open {
            None => Route::Ward,
            Some(open) if open.folded.running().is_some() => Route::Bedside,
            Some(open) if open.folded.signed.is_some() => Route::Handover,
            Some(open) if open.folded.feeds.is_empty() => Route::Before,
            Some(_) => Route::LookingBack,
        }
    }

    /// Opens a visit, and lets what was said of its pair beforehand go into its journal.
    fn take_up(&mut self, open: OpenVisit) -> Vec<Deed> {
        self.set_open(open);
        self.update(Event::Pair(pair::Event::VisitCame))
    }

    /// Opens a visit; the one before is parked if its feed still runs.
    fn set_open(&mut self, open: OpenVisit) {
        self.parked.retain(|it| it.visit.id != open.visit.id);
        if let Some(before) = self.open.replace(open) {
            let same = self
                .open
                .as_ref()
                .is_some_and(|open| open.visit.id == before.visit.id);
            if before.folded.running().is_some() && !same {
                self.parked.push(before);
            }
        }
    }

    /// Has what was told on the screen before the feed written, now that it is left by a banner.
    fn settle(&mut self) {
        if self.route == Route::Before {
            for deed in self.update(Event::Before(before::Event::Left)) {
                self.perform(deed);
            }
        }
    }

    /// The visit at hand in which medical review is called for and not acknowledged, and by what.
    fn in_review(&self) -> Option<(&OpenVisit, Rc<[Finding]>)> {
        let wall = self.now().wall;
        let visits = self.open.iter().chain(&self.parked);
        visits
            .map(|open| (open, open.reviews(&self.parts.policy, wall)))
            .find(|(_, findings)| !findings.is_empty())
    }

    /// Takes the visit whose feed runs back to the front.
    fn take_running(&mut self) {
        let here = self
            .open
            .as_ref()
            .is_some_and(|open| open.folded.running().is_some());
        if !here && let Some(open) = self.parked.pop() {
            self.set_open(open);
        }
    }
}

/// A seed from random bytes.
fn seed_of(random: [u8; 16]) -> u64 {
    let (mut seed, (half, _)) = ([0; 8], random.split_at(8));
    seed.copy_from_slice(half);
    u64::from_le_bytes(seed)
}

/// What the pair's other visits know.
fn others(story: &super::keeper::Story, visit: VisitId) -> Others {
    let weighings = story.weighings.iter().filter(|(of, _)| *of != visit);
    Others {
        weighings: weighings.map(|(_, weighed)| *weighed).collect(),
        acknowledged: story.acknowledged.clone(),
        amends: story.visits.iter().any(|it| it.replaces == Some(visit)),
    }
}
