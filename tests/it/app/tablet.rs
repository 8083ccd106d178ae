//! A tablet for tests: the real window as pixels, a clock set by hand, a store in memory.

use std::cell::RefCell;
use std::rc::Rc;

use feedside::app::clock::{Clock, HandClock, Now};
use feedside::app::connect::{Hear, connect, hearer};
use feedside::app::event::Event;
use feedside::app::keeper::{AtOnceKeeper, Story, Told};
use feedside::app::picture::Canvas;
use feedside::app::preferences::Preferences;
use feedside::app::shell::{Parts, Shell};
use feedside::app::{touch, ui};
use feedside::findings::Policy;
use feedside::record::{Hold, Side, What};
use feedside::store::Store;
use slint::ComponentHandle;

use crate::support::{add, empty_visit, sample_began, sample_pair};

thread_local! {
    // One for all tests that share a thread.
    pub static CANVAS: Canvas = Canvas::set_up().unwrap();
}

/// The tablet.
pub struct Tablet {
    pub window: ui::AppWindow,
    pub shell: Rc<RefCell<Shell>>,
    pub clock: Rc<HandClock>,
    pub hear: Hear,
}

/// When the tablet's clock stands at first, in milliseconds since the device started; the feed then
/// runs for a second.
pub const BOOT_MS: u64 = 7_000_000;

/// A tablet with a feed of the left breast that began at second 1 of the visit, at second 2.
pub fn tablet() -> Tablet {
    let mut visit = empty_visit();
    let started = What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    };
    add(&mut visit, 1_000, started);
    let store = Store::in_memory().unwrap();
    store.save_pair(&sample_pair()).unwrap();
    store.begin_visit(&visit).unwrap();
    let tablet = tablet_over(store, (1280, 800));
    let story = told_nothing();
    (tablet.hear)(Event::Told(Told::Opened(Box::new(visit), Box::new(story))));
    CANVAS.with(|canvas| {
        let _ = canvas.draw();
    });
    tablet
}

/// The story of the sample pair, of which no visit told anything.
pub fn told_nothing() -> Story {
    Story {
        pair: sample_pair(),
        visits: vec![],
        receipts: vec![],
        weighings: vec![],
        last_day: None,
        days: vec![],
        acknowledged: vec![],
    }
}

/// A tablet over a store, as it is before its first screen.
pub fn tablet_over(store: Store, (width, height): (u32, u32)) -> Tablet {
    let window = CANVAS.with(|canvas| {
        let window = ui::AppWindow::new().unwrap();
        window.show().unwrap();
        canvas.resize(width, height);
        window
    });
    let clock = Rc::new(HandClock::at(Now {
        boot_ms: BOOT_MS,
        wall: sample_began().plus_ms(2_000),
    }));
    let told = Rc::new(RefCell::new(Vec::new()));
    let shell = Rc::new(RefCell::new(Shell::new(Parts {
        window: window.as_weak(),
        clock: Box::new(Rc::clone(&clock)),
        keeper: Box::new(AtOnceKeeper::new(
            store,
            Policy::built_in(),
            Rc::clone(&told),
        )),
        random: Box::new(|| [7; 16]),
        preferences: Preferences::default(),
        policy: Policy::built_in(),
        trouble: None,
        secret: [3; 32],
        has_pin: false,
        say_safe: None,
    })));
    let one = hearer(&shell, None);
    let hear: Hear = Rc::new(move |event| {
        one(event);
        loop {
            let answers: Vec<Told> = told.borrow_mut().drain(..).collect();
            if answers.is_empty() {
                return;
            }
            for answer in answers {
                one(Event::Told(answer));
            }
        }
    });
    connect(&window, &hear);
    let time = Rc::clone(&clock);
    let _ = touch::connect(&window, &hear, Box::new(move || time.now().boot_ms));
    Tablet {
        window,
        shell,
        clock,
        hear,
    }
}

impl Tablet {
    /// The entries since the feed began: time since the visit began, and what.
    pub fn entries(&self) -> Vec<(u64, What)> {
        let shell = self.shell.borrow();
        let entries = shell.open().unwrap().visit.journal.entries();
        entries
            .iter()
            .skip(1)
            .map(|entry| (entry.at.as_ms(), entry.what.clone()))
            .collect()
    }
}
