//! The shell: holds the models, hears events, does deeds, and draws the screen that is seen.
//!
//! One loop for every screen: event, update (pure), effects, deeds, render. Acts at its own pace:
//! answers of the store are events like any other.

use std::collections::VecDeque;

use slint::Global;

use super::around::Around;
use super::clock::{Clock, Now};
use super::deed::Deed;
use super::event::Event;
use super::keeper::{Ask, Keeper, Told};
use super::open_visit::OpenVisit;
use super::preferences::Preferences;
use super::route::Route;
use super::settings::TabletShown;
use super::{bedside, before, demo, handover, looking_back, pair, plan, settings, ui, ward};
use crate::fault;
use crate::findings::Policy;
use crate::handover::TabletKey;
use crate::record::{Label, PairId, Visit, VisitId, What};
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
    /// The tablet's secret.
    pub secret: [u8; 32],
    /// Told the number of each entry once the screen shows it as safe.
    pub say_safe: Option<Box<dyn FnMut(u32)>>,
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
    settings: settings::Model,
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
}

impl Shell {
    /// A shell over its parts, on the Ward screen.
    pub fn new(parts: Parts) -> Self {
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
            trouble: None,
            parts,
        };
        if let Some(window) = shell.parts.window.upgrade() {
            shell.lists.bedside.connect(&window);
            shell.lists.before.connect(&window);
            shell.fill_words(&window);
        }
        shell
    }

    /// The screen that is seen.
    pub const fn route(&self) -> Route {
        self.route
    }

    /// The open visit.
    pub const fn open(&self) -> Option<&OpenVisit> {
        self.open.as_ref()
    }

    /// The hand-over model, for a rehearsal that reads the codes.
    pub const fn handover(&self) -> &handover::Model {
        &self.models.handover
    }

    /// How often the clock is to tick on the screen that is seen, in milliseconds.
    pub fn tick_ms(&self) -> u64 {
        match self.route {
            Route::Bedside => 200,
            Route::Before => 500,
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
            Event::Settings(event) => deeds(settings::update(&mut models.settings, event, &around)),
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
                _ => vec![],
            },
            Event::Arrived => vec![Deed::Go(Route::Ward)],
            Event::Told(told) => self.told(told),
            Event::ToRunning => {
                self.take_running();
                vec![Deed::Go(Route::Bedside)]
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
            Route::Settings => Event::Settings(settings::Event::BackWanted),
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
                };
                ward::update(&mut self.models.ward, ward::Event::Came(rows), &around)
                    .into_iter()
                    .map(Into::into)
                    .collect()
            }
            Told::Story(story) => {
                self.models.pair = pair::Model {
                    story: Some(story),
                    ..pair::Model::default()
                };
                vec![Deed::Go(Route::Pair)]
            }
            Told::Opened(visit, story) => {
                let earlier = earlier(&story, visit.id);
                self.set_open(OpenVisit::take_up(story.pair, *visit, earlier, now));
                vec![Deed::Go(self.where_to())]
            }
            Told::PairSaved(pair) => vec![Deed::ShowPair(pair)],
            Told::Safe(visit, seq) => {
                self.safe(visit, seq);
                vec![]
            }
            Told::Kept => vec![],
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

    fn perform(&mut self, deed: Deed) -> Vec<Deed> {
        match deed {
            Deed::Go(route) => return self.go(route),
            Deed::Note(what) => self.note(what),
            Deed::TakeBack => {
                let last = self
                    .open
                    .as_ref()
                    .and_then(|open| open.visit.journal.last_to_take_back())
                    .map(|entry| entry.seq);
                if let Some(entry) = last {
                    self.note(What::Struck { entry });
                }
            }
            Deed::AskWard => self.parts.keeper.ask(Ask::Ward),
            Deed::ShowPair(pair) => self.parts.keeper.ask(Ask::Story(pair)),
            Deed::ShowForm(_) => {
                self.models.pair = pair::Model {
                    form: Some(pair::Form::default()),
                    ..pair::Model::default()
                };
                self.route = Route::Pair;
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
                    self.bring(visit);
                    return vec![Deed::Go(self.where_to())];
                }
                self.parts.keeper.ask(Ask::Open(visit));
            }
            Deed::FillDemo => {
                let pairs = demo::ward(self.now().wall);
                self.parts.keeper.ask(Ask::Fill(pairs));
            }
            Deed::Keep(preferences) => self.keep(*preferences),
            Deed::Pack => return self.pack(),
            Deed::Amend => return self.amend(),
        }
        vec![]
    }

    fn bring(&mut self, visit: VisitId) {
        if let Some(place) = self.parked.iter().position(|it| it.visit.id == visit) {
            let open = self.parked.remove(place);
            self.set_open(open);
        }
    }

    fn go(&mut self, route: Route) -> Vec<Deed> {
        self.route = route;
        match route {
            Route::Ward => vec![Deed::AskWard],
            Route::Before => self.update(Event::Before(before::Event::Came)),
            Route::LookingBack => self.update(Event::LookingBack(looking_back::Event::Came)),
            Route::Plan => self.update(Event::Plan(plan::Event::Came)),
            Route::Handover => self.update(Event::Handover(handover::Event::Came)),
            Route::Pair | Route::Bedside | Route::Settings => vec![],
        }
    }

    /// Adds an entry to the open visit and has it written.
    fn note(&mut self, what: What) {
        let now = self.now();
        let Some(open) = &mut self.open else {
            return;
        };
        match open.note(now, what) {
            Ok(entry) => self
                .parts
                .keeper
                .ask(Ask::Append(open.visit.id, Box::new(entry))),
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
        let open = OpenVisit::take_up(story.pair.clone(), visit.clone(), earlier(story, id), now);
        self.parts.keeper.ask(Ask::Begin(Box::new(visit)));
        self.set_open(open);
        vec![Deed::Go(Route::Before)]
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
        let taken = OpenVisit::take_up(
            open.pair.clone(),
            visit.clone(),
            open.earlier_weighings.clone(),
            now,
        );
        self.parts.keeper.ask(Ask::Begin(Box::new(visit)));
        self.set_open(taken);
        vec![Deed::Go(Route::LookingBack)]
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

    fn pack(&mut self) -> Vec<Deed> {
        let Some(open) = &self.open else {
            return vec![];
        };
        let around = Around {
            now: self.now(),
            open: Some(open),
            preferences: &self.parts.preferences,
            policy: &self.parts.policy,
        };
        let made =
            handover::pack::pack(open, &around, &self.words, &self.tablet, &self.parts.secret);
        let event = match made {
            Ok(shown) => handover::Event::Made(Box::new(shown)),
            Err(why) => handover::Event::Failed(why),
        };
        self.update(Event::Handover(event))
    }

    fn fill_words(&self, window: &ui::AppWindow) {
        super::strings::fill(&ui::Strings::get(window), &|id| self.words.say(id));
    }

    /// Draws the screen that is seen; `only_clock` where nothing but the time has changed.
    pub fn render(&mut self, only_clock: bool) {
        let Some(window) = self.parts.window.upgrade() else {
            return;
        };
        let around = Around {
            now: self.now(),
            open: self.open.as_ref(),
            preferences: &self.parts.preferences,
            policy: &self.parts.policy,
        };
        let (models, words) = (&self.models, &self.words);
        if only_clock && self.route == Route::Bedside {
            bedside::render_clock(
                &models.bedside,
                &around,
                words,
                &self.lists.bedside,
                &window,
            );
            self.tell_safe();
            return;
        }
        self.frame(&window);
        match self.route {
            Route::Ward => ward::render(&models.ward, &around, words, &window),
            Route::Pair => pair::render(&models.pair, &around, words, &window),
            Route::Before => {
                before::render(&models.before, &around, words, &self.lists.before, &window);
            }
            Route::Bedside => {
                bedside::render(
                    &models.bedside,
                    &around,
                    words,
                    &self.lists.bedside,
                    &window,
                );
            }
            Route::LookingBack => {
                looking_back::render(&models.looking_back, &around, words, &window);
            }
            Route::Plan => plan::render(&models.plan, &around, words, &window),
            Route::Handover => handover::render(&models.handover, &around, words, &window),
            Route::Settings => {
                if let Some(tablet) = &self.tablet_shown {
                    settings::render(&models.settings, &around, words, tablet, &window);
                }
            }
        }
        self.tell_safe();
    }

    /// What stands around every screen: theme, banner, trouble, route.
    fn frame(&self, window: &ui::AppWindow) {
        let theme = ui::Theme::get(window);
        theme.set_night(self.parts.preferences.night);
        theme.set_left_handed(self.parts.preferences.left_handed);
        let frame = ui::FrameAdapter::get(window);
        let running = self
            .open
            .iter()
            .chain(&self.parked)
            .find(|open| open.folded.running().is_some());
        frame.set_running(
            running
                .map_or_else(String::new, |open| {
                    self.words
                        .say_with("frame-running", &[("bed", open.pair.bed.as_str().into())])
                })
                .into(),
        );
        frame.set_trouble(self.trouble.as_deref().unwrap_or_default().into());
        frame.set_route(match self.route {
            Route::Ward => ui::Route::Ward,
            Route::Pair => ui::Route::Pair,
            Route::Before => ui::Route::Before,
            Route::Bedside => ui::Route::Bedside,
            Route::LookingBack => ui::Route::LookingBack,
            Route::Plan => ui::Route::Plan,
            Route::Handover => ui::Route::Handover,
            Route::Settings => ui::Route::Settings,
        });
    }

    fn tell_safe(&mut self) {
        if let (Some(say), Some(open)) = (&mut self.parts.say_safe, &self.open) {
            say(open.safe_seq);
        }
    }
}

/// Weights of the visits before this one.
fn earlier(
    story: &super::keeper::Story,
    visit: VisitId,
) -> Vec<(crate::record::WallTime, crate::record::Weighing)> {
    story
        .weighings
        .iter()
        .filter(|(of, _, _)| *of != visit)
        .map(|(_, wall, weighing)| (*wall, *weighing))
        .collect()
}
