//! The rehearsal's tablet and desk: set up from a seed, on an invented day.

use std::cell::RefCell;
use std::path::Path;
use std::rc::Rc;

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use slint::ComponentHandle;

use crate::app::clock::{HandClock, Now};
use crate::app::event::Event;
use crate::app::keeper::{AtOnceKeeper, Told};
use crate::app::preferences::Preferences;
use crate::app::shell::{Parts, Shell};
use crate::app::ui;
use crate::desk::Desk;
use crate::findings::Policy;
use crate::handover::TabletKey;
use crate::record::{Label, WallTime};
use crate::store::Store;

use super::RehearseError;

/// The invented day: 2 March 2026, 09:10 UTC.
const WALL_UTC_MS: i64 = 1_772_442_600_000;

/// The tablet, its clock, and what the store has answered.
pub struct Tablet {
    /// The shell.
    pub shell: Shell,
    /// Its clock.
    pub clock: Rc<HandClock>,
    /// When the rehearsal began.
    pub start: Now,
    window: ui::AppWindow,
    told: Rc<RefCell<Vec<Told>>>,
}

impl Tablet {
    /// Its window.
    pub const fn window(&self) -> &ui::AppWindow {
        &self.window
    }

    /// Hears an event, and all that the store answers to it.
    pub fn hear(&mut self, event: Event) {
        self.shell.hear(event);
        loop {
            let told: Vec<Told> = self.told.borrow_mut().drain(..).collect();
            if told.is_empty() {
                return;
            }
            for answer in told {
                self.shell.hear(Event::Told(answer));
            }
        }
    }
}

/// Sets up a tablet and the desk that knows it.
pub fn set_up(desk_folder: &Path, seed: u64) -> Result<(Tablet, Desk), RehearseError> {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut bytes = move || {
        let mut bytes = [0; 32];
        random.fill_bytes(&mut bytes);
        bytes
    };
    let wall = WallTime::new(WALL_UTC_MS, 0).unwrap_or_default();
    let start = Now {
        boot_ms: 1_000_000,
        wall,
    };
    let secret = bytes();
    let tablet_public = TabletKey::from_random(secret).public();
    let mut desk = Desk::open(desk_folder)?;
    let desk_public = desk.new_key(bytes(), wall)?;
    let name =
        Label::new("Tablet of the rehearsal").map_err(|_| RehearseError::Step("no label"))?;
    desk.enrol(tablet_public, &name, wall)?;

    let window = ui::AppWindow::new()?;
    let told = Rc::new(RefCell::new(Vec::new()));
    let clock = Rc::new(HandClock::at(start));
    let shell = Shell::new(Parts {
        window: window.as_weak(),
        clock: Box::new(Rc::clone(&clock)),
        keeper: Box::new(AtOnceKeeper::new(
            Store::in_memory()?,
            Policy::built_in(),
            Rc::clone(&told),
        )),
        random: Box::new(move || {
            let mut id = [0; 16];
            id.copy_from_slice(&bytes()[..16]);
            id
        }),
        preferences: Preferences {
            specialist: "E. Hart".to_owned(),
            desk_key: desk_public.to_typed(),
            ..Preferences::default()
        },
        policy: Policy::built_in(),
        trouble: None,
        secret,
        has_pin: false,
        say_safe: None,
    });
    window.show()?;
    let tablet = Tablet {
        shell,
        clock,
        start,
        window,
        told,
    };
    Ok((tablet, desk))
}
