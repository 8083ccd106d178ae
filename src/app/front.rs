//! The front: the data are locked and only the lock hears, or they are open and the shell does. Locks
//! them when nobody touched the tablet for a while.
//!
//! To lock is to let go of everything: the shell with all its models, the store, the key. What a
//! feed has seen is on the disk by then; opening takes it up again as a start does.

use std::rc::Rc;

use slint::Global;

use super::clock::{Clock, Now};
use super::event::Event;
use super::idle::Idle;
use super::inside::{Inside, NotOpened};
use super::look::{self, Look};
use super::shell::Shell;
use super::{pin, ui};
use crate::record::WallTime;
use crate::store::vault::{Typed, VaultError};
use crate::words::Words;

/// Something that hears events and knows how often the clock is to tick.
pub trait Hears {
    /// Hears an event and all that it leads to, then draws.
    fn hear(&mut self, event: Event);

    /// How often the clock is to tick, in milliseconds.
    fn tick_ms(&self) -> u64;
}

/// What the front can do with what is behind it.
pub trait Behind {
    /// Tries to open it; the answer comes as [`Event::Opened`].
    fn open(&mut self, typed: Typed);

    /// How long nothing can be tried yet, in milliseconds.
    fn wait_ms(&mut self, now: WallTime) -> u64;

    /// A shell over what was opened.
    fn shell(&mut self, inside: Inside) -> Shell;

    /// Keeps how the lock is to look.
    fn keep_look(&mut self, look: &Look);
}

enum State {
    Locked(pin::Model),
    Open(Box<Shell>),
}

/// The front.
pub struct Front {
    window: slint::Weak<ui::AppWindow>,
    clock: Box<dyn Clock>,
    behind: Box<dyn Behind>,
    idle: Rc<Idle>,
    look: Look,
    words: Words,
    state: State,
}

impl Front {
    /// A front that is locked.
    pub fn locked(
        window: slint::Weak<ui::AppWindow>,
        clock: Box<dyn Clock>,
        behind: Box<dyn Behind>,
        idle: Rc<Idle>,
        look: Look,
    ) -> Self {
        let mut front = Self {
            window,
            clock,
            behind,
            idle,
            words: Words::new(look.lang),
            look,
            state: State::Locked(pin::Model::default()),
        };
        front.lock();
        front
    }

    /// Lets in what was opened.
    pub fn let_in(&mut self, mut inside: Inside) {
        let unfinished = inside.unfinished.take();
        self.idle.begin(self.clock.now().boot_ms, None);
        let mut shell = Box::new(self.behind.shell(inside));
        // Where the last visit was left, or the ward.
        shell.hear(unfinished.map_or(Event::Arrived, Event::Told));
        self.state = State::Open(shell);
        self.look_again();
    }

    /// The shell, while it is open.
    pub const fn shell(&self) -> Option<&Shell> {
        match &self.state {
            State::Open(shell) => Some(shell),
            State::Locked(_) => None,
        }
    }

    /// Lets go of everything that was open.
    fn lock(&mut self) {
        let now = self.clock.now();
        self.idle.begin(now.boot_ms, None);
        // First what is open: what was asked of the store is written before it is gone.
        self.state = State::Locked(pin::Model::default());
        let wait_ms = self.behind.wait_ms(now.wall);
        self.state = State::Locked(pin::Model::locked(now.boot_ms, wait_ms));
        if let Some(window) = self.window.upgrade() {
            look::fill(&self.words, &window);
            let frame = ui::FrameAdapter::get(&window);
            frame.set_running("".into());
            frame.set_trouble("".into());
        }
        self.draw(now);
    }

    fn draw(&self, now: Now) {
        let (State::Locked(model), Some(window)) = (&self.state, self.window.upgrade()) else {
            return;
        };
        self.look.put(&ui::Theme::get(&window));
        pin::render(model, now, &self.words, &window);
        ui::FrameAdapter::get(&window).set_route(ui::Route::Pin);
    }

    /// What the settings say of the lock: after how long, and how it is to look.
    fn look_again(&mut self) {
        let State::Open(shell) = &self.state else {
            return;
        };
        let least_ms = u64::from(shell.preferences().lock_minutes) * 60_000;
        self.idle.set_least_ms(shell.has_pin().then_some(least_ms));
        let look = Look::of(shell.preferences());
        if look != self.look {
            self.words = Words::new(look.lang);
            self.behind.keep_look(&look);
            self.look = look;
        }
    }

    fn at_the_lock(&mut self, event: Event, now: Now) {
        let State::Locked(model) = &mut self.state else {
            return;
        };
        let event = match event {
            Event::Pin(event) => event,
            Event::Back => pin::Event::BackWanted,
            Event::Ticked => pin::Event::Ticked,
            Event::Opened(opened) => match *opened {
                Ok(inside) => return self.let_in(inside),
                Err(NotOpened::Vault(error)) => pin::Event::Refused(error),
                Err(NotOpened::Store(error)) => pin::Event::Unusable(error),
                Err(NotOpened::Random) => pin::Event::Refused(VaultError::NoRandom),
            },
            // Whatever was on its way when it was locked.
            _ => return,
        };
        for effect in pin::update(model, event, now) {
            if let pin::Effect::Try(typed) = effect {
                self.behind.open(typed);
            }
        }
        self.draw(now);
    }
}

impl Hears for Front {
    fn hear(&mut self, event: Event) {
        let now = self.clock.now();
        if self.idle.left_ms(now.boot_ms) == Some(0) {
            // Not even the touch that comes now is heard: it may be a stranger's.
            return self.lock();
        }
        if event.is_a_persons() {
            self.idle.touched(now.boot_ms);
        }
        let State::Open(shell) = &mut self.state else {
            return self.at_the_lock(event, now);
        };
        shell.hear(event);
        if shell.lock_wanted() {
            self.look_again();
            return self.lock();
        }
        self.look_again();
    }

    fn tick_ms(&self) -> u64 {
        let now = self.clock.now();
        match &self.state {
            State::Locked(model) if 0 < model.wait_ms(now.boot_ms) => 1_000,
            State::Locked(_) => 60_000,
            State::Open(shell) => {
                let left_ms = self.idle.left_ms(now.boot_ms).unwrap_or(u64::MAX);
                shell.tick_ms().min(left_ms.max(100))
            }
        }
    }
}

impl Hears for Shell {
    fn hear(&mut self, event: Event) {
        Self::hear(self, event);
    }

    fn tick_ms(&self) -> u64 {
        Self::tick_ms(self)
    }
}
