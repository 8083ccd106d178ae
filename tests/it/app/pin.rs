//! The lock as it is used: typed on the real screen, over a real folder. Source: the project's own
//! rules; how long to wait is `WAITS_MS`, common practice.

use std::cell::RefCell;
use std::path::PathBuf;
use std::rc::Rc;

use feedside::app::bedside::{Event as Bedside, PadKind};
use feedside::app::clock::{Clock, HandClock, Now};
use feedside::app::connect::{Hear, connect, hearer};
use feedside::app::event::Event;
use feedside::app::front::{Behind, Front};
use feedside::app::idle::Idle;
use feedside::app::inside::Inside;
use feedside::app::keeper::{Ask, AtOnceKeeper, Keeper, Told};
use feedside::app::look::Look;
use feedside::app::pin::{Effect, Event as Lock, Model, Stage, update};
use feedside::app::route::Route;
use feedside::app::shell::{Parts, Shell};
use feedside::app::{settings, ui};
use feedside::record::{Hold, Side, WallTime, What};
use feedside::store::vault::{Cost, Typed, Vault, WAITS_MS};
use feedside::words::Lang;
use slint::{ComponentHandle, Global};

use super::tablet::{BOOT_MS, CANVAS};
use crate::store::Folder;
use crate::support::{add, empty_visit, sample_began, sample_pair};

const PIN: &str = "402715";
const OTHER: &str = "402716";
const MINUTE_MS: u64 = 60_000;

/// What is behind the front, answering at once.
struct AtOnce {
    folder: PathBuf,
    window: slint::Weak<ui::AppWindow>,
    clock: Rc<HandClock>,
    events: Rc<RefCell<Vec<Event>>>,
    told: Rc<RefCell<Vec<Told>>>,
}

impl Behind for AtOnce {
    fn open(&mut self, typed: Typed) {
        let opened = Inside::typed(&self.folder, &typed, Cost::LEAST, self.clock.now().wall);
        let event = Event::Opened(Box::new(opened));
        self.events.borrow_mut().push(event);
    }

    fn wait_ms(&mut self, now: WallTime) -> u64 {
        vault(&self.folder).wait_ms(now)
    }

    fn shell(&mut self, inside: Inside) -> Shell {
        let trouble = inside.trouble();
        let policy = inside.counting.policy;
        Shell::new(Parts {
            window: self.window.clone(),
            clock: Box::new(Rc::clone(&self.clock)),
            keeper: Box::new(AtOnceKeeper::new(
                inside.store,
                policy.clone(),
                Rc::clone(&self.told),
            )),
            random: Box::new(|| [7; 16]),
            preferences: inside.preferences,
            policy,
            trouble,
            secret: inside.secret,
            has_pin: inside.has_pin,
            say_safe: None,
        })
    }

    fn keep_look(&mut self, look: &Look) {
        look.write(&self.folder);
    }
}

fn vault(folder: &std::path::Path) -> Vault {
    Vault::of(folder, Cost::LEAST).unwrap()
}

/// A tablet over a folder, from its start.
struct Started {
    window: ui::AppWindow,
    front: Rc<RefCell<Front>>,
    clock: Rc<HandClock>,
    idle: Rc<Idle>,
    hear: Hear,
}

fn start(folder: &Folder) -> Started {
    start_after(folder, 0)
}

fn start_after(folder: &Folder, ms: u64) -> Started {
    let window = CANVAS.with(|_| ui::AppWindow::new().unwrap());
    let clock = Rc::new(HandClock::at(Now {
        boot_ms: BOOT_MS + ms,
        wall: sample_began().plus_ms(2_000 + i64::try_from(ms).unwrap()),
    }));
    let idle = Rc::new(Idle::default());
    let (events, told) = (Rc::default(), Rc::default());
    let folder = folder.file(".");
    let behind = AtOnce {
        folder: folder.clone(),
        window: window.as_weak(),
        clock: Rc::clone(&clock),
        events: Rc::clone(&events),
        told: Rc::clone(&told),
    };
    let front = Rc::new(RefCell::new(Front::locked(
        window.as_weak(),
        Box::new(Rc::clone(&clock)),
        Box::new(behind),
        Rc::clone(&idle),
        Look::read(&folder),
    )));
    let one = hearer(&front, None);
    let hear: Hear = Rc::new(move |event| {
        one(event);
        loop {
            let mut answers: Vec<Event> = events.borrow_mut().drain(..).collect();
            answers.extend(told.borrow_mut().drain(..).map(Event::Told));
            if answers.is_empty() {
                return;
            }
            for answer in answers {
                one(answer);
            }
        }
    });
    connect(&window, &hear);
    let vault = vault(&folder);
    if let Some(key) = vault.key_without_pin().unwrap() {
        let inside = Inside::of(&folder, vault, &key, clock.now().wall).unwrap();
        front.borrow_mut().let_in(inside);
        hear(Event::Ticked);
    }
    Started {
        window,
        front,
        clock,
        idle,
        hear,
    }
}

impl Started {
    fn route(&self) -> Option<Route> {
        self.front.borrow().shell().map(Shell::route)
    }

    fn is_locked(&self) -> bool {
        let locked = self.front.borrow().shell().is_none();
        let drawn = ui::FrameAdapter::get(&self.window).get_route() == ui::Route::Pin;
        assert!(!locked || drawn, "locked, but another screen is seen");
        locked
    }

    fn keys(&self, digits: &str) {
        let screen = ui::PinAdapter::get(&self.window);
        for digit in digits.chars() {
            screen.invoke_key(digit.to_string().into());
        }
        screen.invoke_key("ok".into());
    }

    fn told(&self) -> String {
        ui::PinAdapter::get(&self.window).get_told().into()
    }

    /// Sets the PIN in the settings; gives the rescue code.
    fn set_pin(&self) -> String {
        (self.hear)(Event::Settings(settings::Event::PinWanted));
        self.keys(PIN);
        self.keys(PIN);
        let shown = ui::PinAdapter::get(&self.window).get_shown();
        let digits: String = shown.split_whitespace().collect();
        assert_eq!(digits.len(), 30, "{shown}");
        (self.hear)(Event::Pin(Lock::Done));
        assert_eq!(self.route(), Some(Route::Settings));
        let left = ui::PinAdapter::get(&self.window).get_shown();
        assert_eq!(left, "", "the code is not left behind on the screen");
        digits
    }
}

#[test]
fn a_first_start_opens_at_once_and_a_start_with_a_pin_is_locked_until_it_is_typed() {
    let folder = Folder::new("lock-start");
    let tablet = start(&folder);
    assert_eq!(tablet.route(), Some(Route::Ward));
    let rescue = tablet.set_pin();
    drop(tablet);
    for digits in [PIN, &rescue] {
        let tablet = start(&folder);
        assert!(tablet.is_locked());
        tablet.keys(OTHER);
        assert!(tablet.is_locked());
        assert!(tablet.told().contains("does not open"), "{}", tablet.told());
        tablet.keys(digits);
        assert_eq!(tablet.route(), Some(Route::Ward));
    }
}

#[test]
fn untouched_for_as_long_as_is_set_it_locks_and_the_touch_that_comes_then_is_not_heard() {
    let folder = Folder::new("lock-idle");
    let tablet = start(&folder);
    // Without a PIN never.
    tablet.clock.forward_ms(100 * MINUTE_MS);
    (tablet.hear)(Event::Ticked);
    assert!(!tablet.is_locked());
    tablet.set_pin();
    (tablet.hear)(Event::Settings(settings::Event::LockChosen(1)));
    for (wait_ms, event, locked) in [
        (2 * MINUTE_MS - 1, Event::Ticked, false),
        (1, Event::Ticked, true),
        // After sleep: the first touch comes before the clock ticks.
        (2 * MINUTE_MS, Event::Back, true),
    ] {
        if tablet.is_locked() {
            tablet.keys(PIN);
            assert!(!tablet.is_locked());
        }
        tablet.clock.forward_ms(wait_ms);
        (tablet.hear)(event);
        assert_eq!(tablet.is_locked(), locked);
    }
}

#[test]
fn a_hand_that_scrolls_keeps_it_open_but_does_not_open_what_is_over() {
    let folder = Folder::new("lock-hand");
    let tablet = start(&folder);
    tablet.set_pin();
    for _ in 0..10 {
        tablet.clock.forward_ms(4 * MINUTE_MS);
        tablet.idle.touched(tablet.clock.now().boot_ms);
        (tablet.hear)(Event::Ticked);
        assert!(!tablet.is_locked());
    }
    // The device slept; a hand is felt before anything else.
    tablet.clock.forward_ms(5 * MINUTE_MS);
    tablet.idle.touched(tablet.clock.now().boot_ms);
    (tablet.hear)(Event::Ticked);
    assert!(tablet.is_locked());
}

#[test]
fn locked_by_a_key_nothing_but_the_lock_hears_and_no_name_is_left_on_the_screen() {
    let folder = Folder::new("lock-now");
    let tablet = start(&folder);
    tablet.set_pin();
    (tablet.hear)(Event::Settings(settings::Event::LockWanted));
    assert!(tablet.is_locked());
    for event in [
        Event::Ward(feedside::app::ward::Event::SettingsWanted),
        Event::ToRunning,
        Event::Back,
        Event::Arrived,
        Event::Told(Told::Ward(vec![])),
        Event::Bedside(Bedside::Tapped(PadKind::Suck)),
    ] {
        let told = format!("{event:?}");
        (tablet.hear)(event);
        assert!(tablet.is_locked(), "{told}");
    }
    let frame = ui::FrameAdapter::get(&tablet.window);
    assert_eq!(
        (frame.get_running(), frame.get_trouble()),
        ("".into(), "".into())
    );
}

#[test]
fn a_feed_that_runs_goes_on_through_the_lock_with_every_tap() {
    let folder = Folder::new("lock-feed");
    let mut visit = empty_visit();
    let started = What::FeedStarted {
        side: Side::Left,
        hold: Hold::Cradle,
    };
    add(&mut visit, 1_000, started);
    {
        let path = folder.file(".");
        let vault = vault(&path);
        let key = vault.key_without_pin().unwrap().unwrap();
        let inside = Inside::of(&path, vault, &key, sample_began()).unwrap();
        inside.store.save_pair(&sample_pair()).unwrap();
        inside.store.begin_visit(&visit).unwrap();
    }
    let tablet = start(&folder);
    assert_eq!(tablet.route(), Some(Route::Bedside));
    tablet.set_pin();
    (tablet.hear)(Event::ToRunning);
    for _ in 0..5 {
        (tablet.hear)(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
        tablet.clock.forward_ms(700);
    }
    tablet.clock.forward_ms(6 * MINUTE_MS);
    (tablet.hear)(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
    assert!(tablet.is_locked());
    tablet.keys(PIN);
    assert_eq!(tablet.route(), Some(Route::Bedside));
    let front = tablet.front.borrow();
    let open = front.shell().unwrap().open().unwrap();
    assert!(open.folded.running().is_some());
    let taps: Vec<_> = open
        .visit
        .journal
        .entries()
        .iter()
        .filter(|entry| entry.what == What::Suck)
        .map(|entry| entry.at.as_ms())
        .collect();
    assert_eq!(taps, [2_000, 2_700, 3_400, 4_100, 4_800]);
    let now_ms = open.at(tablet.clock.now()).as_ms();
    assert_eq!(
        now_ms,
        2_000 + 5 * 700 + 6 * MINUTE_MS,
        "the feed's clock went on"
    );
}

#[test]
fn after_five_wrong_tries_it_counts_the_wait_down_and_takes_no_digit_until_it_is_over() {
    let folder = Folder::new("lock-wait");
    start(&folder).set_pin();
    let tablet = start(&folder);
    for _ in 0..5 {
        tablet.keys(OTHER);
    }
    assert!(tablet.told().contains("0:30"), "{}", tablet.told());
    tablet.clock.forward_ms(10_000);
    tablet.keys(PIN);
    assert!(tablet.is_locked());
    (tablet.hear)(Event::Ticked);
    assert!(tablet.told().contains("0:20"), "{}", tablet.told());
    // Starting the program again does not shorten it.
    drop(tablet);
    let tablet = start_after(&folder, 10_000);
    (tablet.hear)(Event::Ticked);
    assert!(tablet.told().contains("0:20"), "{}", tablet.told());
    tablet.clock.forward_ms(20_000);
    (tablet.hear)(Event::Ticked);
    assert_eq!(tablet.told(), "");
    tablet.keys(PIN);
    assert!(!tablet.is_locked());
    assert_eq!(WAITS_MS[5], 30_000);
}

#[test]
fn damaged_data_are_set_aside_and_the_first_screen_says_so() {
    let folder = Folder::new("lock-damaged");
    drop(start(&folder));
    let bytes = vec![0xA5; 9_000];
    std::fs::write(folder.file("feedside.db"), &bytes).unwrap();
    let tablet = start(&folder);
    assert_eq!(tablet.route(), Some(Route::Ward));
    let told = ui::FrameAdapter::get(&tablet.window).get_trouble();
    assert!(told.contains("feedside.db.damaged-1"), "{told}");
    assert!(told.contains("scan this tablet's key once more"), "{told}");
    let kept = std::fs::read(folder.file("feedside.db.damaged-1")).unwrap();
    assert_eq!(kept, bytes);
    // The PIN is still the one of before: it belongs to the folder.
    tablet.set_pin();
    drop(tablet);
    std::fs::write(folder.file("feedside.db"), &bytes).unwrap();
    let tablet = start(&folder);
    assert!(tablet.is_locked());
    tablet.keys(PIN);
    let told = ui::FrameAdapter::get(&tablet.window).get_trouble();
    assert!(told.contains("feedside.db.damaged-2"), "{told}");
}

#[test]
fn the_lock_speaks_the_language_and_has_the_light_that_were_set() {
    let folder = Folder::new("lock-look");
    let tablet = start(&folder);
    tablet.set_pin();
    let german = Lang::ALL
        .iter()
        .position(|lang| lang.tag() == "de")
        .unwrap();
    (tablet.hear)(Event::Settings(settings::Event::LanguageChosen(german)));
    (tablet.hear)(Event::Settings(settings::Event::NightChosen(true)));
    drop(tablet);
    let tablet = start(&folder);
    assert!(tablet.is_locked());
    let screen = ui::PinAdapter::get(&tablet.window);
    assert_eq!(screen.get_title(), "Gesperrt");
    assert!(ui::Theme::get(&tablet.window).get_night());
    tablet.keys(PIN);
    assert!(ui::Theme::get(&tablet.window).get_night());
}

#[test]
fn a_pin_is_changed_with_the_one_before_and_a_wrong_one_is_told_at_the_end() {
    let folder = Folder::new("lock-change");
    let tablet = start(&folder);
    tablet.set_pin();
    let change = |current: &str, new: &str, again: &str| {
        (tablet.hear)(Event::Settings(settings::Event::PinWanted));
        tablet.keys(current);
        tablet.keys(new);
        tablet.keys(again);
    };
    change(OTHER, "771203", "771203");
    assert!(tablet.told().contains("does not open"), "{}", tablet.told());
    change(PIN, "771203", "771204");
    assert!(tablet.told().contains("other digits"), "{}", tablet.told());
    change(PIN, "771203", "771203");
    assert_eq!(tablet.told(), "");
    drop(tablet);
    let tablet = start(&folder);
    tablet.keys(PIN);
    assert!(tablet.is_locked());
    tablet.keys("771203");
    assert!(!tablet.is_locked());
}

#[test]
fn a_pair_leaves_at_the_start_that_comes_so_many_days_after_its_receipt() {
    let folder = Folder::new("lock-leaves");
    let mut visit = empty_visit();
    let by = feedside::record::Label::new("E. Hart").unwrap();
    add(&mut visit, 1_000, What::Signed { by });
    let path = folder.file(".");
    let inside = |days: i64| {
        let vault = vault(&path);
        let key = vault.key_without_pin().unwrap().unwrap();
        let now = sample_began().plus_ms(days * 24 * 3_600_000 + 60_000);
        Inside::of(&path, vault, &key, now).unwrap()
    };
    let pairs = |days| inside(days).store.pairs().unwrap().len();
    {
        let inside = inside(0);
        inside.store.save_pair(&sample_pair()).unwrap();
        inside.store.begin_visit(&visit).unwrap();
    }
    assert_eq!(pairs(400), 1, "the desk has no receipt for it yet");
    let receipt = "1234567890".to_owned();
    let entry = visit.journal.next(
        feedside::record::At::ms(2_000),
        sample_began().plus_ms(2_000),
        What::ReceiptTaken { receipt },
    );
    inside(0).store.append(visit.id, &entry).unwrap();
    assert_eq!(pairs(29), 1);
    inside(0).store.set_setting("stay_days", "90").unwrap();
    assert_eq!(pairs(89), 1);
    assert_eq!(pairs(90), 0);
}

#[test]
fn a_store_that_is_not_encrypted_has_no_pin() {
    let told = Rc::default();
    let store = feedside::store::Store::in_memory().unwrap();
    let policy = feedside::findings::Policy::built_in();
    let mut keeper = AtOnceKeeper::new(store, policy, Rc::clone(&told));
    let pin = feedside::store::vault::Pin::new(PIN).unwrap();
    keeper.ask(Ask::SetPin(None, pin, sample_began()));
    assert!(matches!(told.borrow()[0], Told::PinRefused(_)));
}

fn at(boot_ms: u64) -> Now {
    Now {
        boot_ms,
        wall: sample_began(),
    }
}

fn typed(model: &mut Model, digits: &str) -> Vec<Effect> {
    for digit in digits.bytes() {
        update(model, Lock::Digit(digit - b'0'), at(0));
    }
    update(model, Lock::Done, at(0))
}

#[test]
fn what_is_too_short_too_long_or_too_easy_is_not_tried() {
    for (came, digits, stage) in [
        (None, "40271", Stage::Open),
        (None, "4027154027154", Stage::Open),
        (Some(true), "40271", Stage::Current),
        (Some(false), "40271", Stage::New),
        (Some(false), "123456", Stage::New),
        (Some(false), "4027154027154", Stage::New),
    ] {
        let mut model = Model::default();
        if let Some(has_pin) = came {
            update(&mut model, Lock::Came(has_pin), at(0));
        }
        assert_eq!(typed(&mut model, digits), [], "{digits}");
        assert_eq!(model.stage, stage);
        assert!(model.why.is_some());
        assert_eq!(model.digits(), 0);
    }
}

#[test]
fn a_digit_is_taken_back_and_no_more_are_taken_than_a_rescue_code_has() {
    let mut model = Model::default();
    for digit in [4, 0, 2, 7, 1, 5, 9] {
        update(&mut model, Lock::Digit(digit), at(0));
    }
    update(&mut model, Lock::Deleted, at(0));
    let tried = update(&mut model, Lock::Done, at(0));
    assert_eq!(tried, [Effect::Try(Typed::read(PIN).unwrap())]);
    let mut model = Model::default();
    for _ in 0..99 {
        update(&mut model, Lock::Digit(3), at(0));
    }
    assert_eq!(model.digits(), 30);
    update(&mut model, Lock::Digit(10), at(0));
    assert_eq!(model.digits(), 30);
}

#[test]
fn while_an_answer_is_waited_for_nothing_is_typed_or_tried_again() {
    let mut model = Model::default();
    assert_eq!(typed(&mut model, PIN).len(), 1);
    assert_eq!(typed(&mut model, OTHER), []);
    assert_eq!(model.digits(), 0);
}

#[test]
fn nothing_that_was_typed_is_in_debug() {
    let mut model = Model::default();
    for digit in PIN.bytes() {
        update(&mut model, Lock::Digit(digit - b'0'), at(0));
    }
    let told = format!("{model:?} {:?} {:?}", Lock::Digit(4), Lock::Came(true));
    assert!(!told.chars().any(|it| it.is_ascii_digit()), "{told}");
}
