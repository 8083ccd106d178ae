//! The start-up list of the app, from top to bottom.

use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::time::Duration;

use slint::{ComponentHandle, Timer, TimerMode};

use super::clock::{Clock, SystemClock, monotonic_us, wall_now};
use super::connect::{connect, hearer};
use super::event::Event;
use super::front::{Behind, Front, Hears as _};
use super::idle::Idle;
use super::inside::{Inside, NotOpened};
use super::keeper::{ThreadKeeper, Told};
use super::look::Look;
use super::shell::{Parts, Said, Shell};
use super::{touch, ui};
use crate::fault;
use crate::record::WallTime;
use crate::store::vault::{Cost, Typed, Vault, VaultError};
use crate::words::{Lang, Words};

/// What a guess of the PIN is to cost.
const COST: Cost = Cost::USUAL;

/// Why the app did not start.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// There is no display.
    #[error("no display")]
    NoDisplay,
    /// The window system refused.
    #[error("the window could not be opened: {0}")]
    Window(#[from] slint::PlatformError),
    /// The data folder could not be made.
    #[error("the data folder could not be made: {0}")]
    Folder(std::io::Error),
    /// The keys of the data could not be read.
    #[error("the keys of the data could not be read: {0}")]
    Vault(#[from] VaultError),
    /// The data could not be opened.
    #[error("the data could not be opened: {0}")]
    Data(#[from] NotOpened),
}

impl StartError {
    /// What happened, and what to do, for a terminal.
    pub fn told(&self) -> String {
        let words = Words::new(Lang::En);
        match self {
            Self::Vault(error) | Self::Data(NotOpened::Vault(error)) => {
                fault::vault(error, &words).to_string()
            }
            Self::Data(NotOpened::Store(error)) => fault::store(error, &words).to_string(),
            Self::NoDisplay => "There is no display here to open the app on; feedside rehearse \
                --out DIR shows the whole job without one."
                .to_owned(),
            // The cause may go over several lines, or end in a full stop of its own.
            Self::Window(error) => {
                let cause = error.to_string();
                let cause: Vec<&str> = cause.split_whitespace().collect();
                format!(
                    "The window could not be opened on the display: {}. \
                     feedside rehearse --out DIR shows the whole job without one.",
                    cause.join(" ").trim_end_matches('.')
                )
            }
            Self::Folder(_) | Self::Data(NotOpened::Random) => {
                format!("The app did not start: {self}.")
            }
        }
    }
}

/// Whether there is a display to open a window on.
fn has_display() -> bool {
    if cfg!(all(
        unix,
        not(any(
            target_os = "macos",
            target_os = "ios",
            target_os = "android"
        ))
    )) {
        ["DISPLAY", "WAYLAND_DISPLAY"]
            .iter()
            .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
    } else {
        true
    }
}

thread_local! {
    /// What hears the answers of other threads.
    static HEARER: RefCell<Option<super::connect::Hear>> = const { RefCell::new(None) };
}

/// Has an event heard on the window's thread. One that comes when the window is gone has nobody to
/// hear it.
fn later(event: impl FnOnce() -> Event + Send + 'static) {
    let _ = slint::invoke_from_event_loop(move || {
        HEARER.with_borrow(|hear| {
            if let Some(hear) = hear {
                hear(event());
            }
        });
    });
}

/// What is behind the front, in a data folder.
struct InFolder {
    data: PathBuf,
    window: slint::Weak<ui::AppWindow>,
    say_safe: bool,
}

impl Behind for InFolder {
    fn open(&mut self, typed: Typed) {
        let data = self.data.clone();
        // The PIN takes its time to be tried; the window goes on meanwhile.
        std::thread::spawn(move || {
            let opened = Box::new(Inside::typed(&data, &typed, COST, wall_now()));
            later(move || Event::Opened(opened));
        });
    }

    fn wait_ms(&mut self, now: WallTime) -> u64 {
        // Keys that cannot be read are told when something is typed.
        Vault::of(&self.data, COST).map_or(0, |mut vault| vault.wait_ms(now))
    }

    fn shell(&mut self, inside: Inside) -> Shell {
        let trouble = inside.trouble();
        let policy = inside.counting.policy;
        let keeper = ThreadKeeper::start(inside.store, policy.clone(), |told: Told| {
            later(move || Event::Told(told));
        });
        let desk_key = inside.desk_key;
        let mut shell = Shell::new(Parts {
            window: self.window.clone(),
            clock: Box::new(SystemClock),
            keeper: Box::new(keeper),
            random: Box::new(random_id),
            preferences: inside.preferences,
            policy,
            trouble,
            secret: inside.secret,
            has_pin: inside.has_pin,
            say_safe: self.say_safe.then(said),
        });
        shell.offer_desk_key(desk_key);
        shell
    }

    fn keep_look(&mut self, look: &Look) {
        look.write(&self.data);
    }
}

/// Tells scripts of each entry.
fn said() -> Box<dyn FnMut(Said)> {
    let mut last_safe = 0;
    Box::new(move |said: Said| match said {
        Said::Made(seq) => println!("made {seq} {}", monotonic_us()),
        Said::Safe(seq) if seq != last_safe => {
            last_safe = seq;
            println!("safe {seq}");
            println!("shown {seq} {}", monotonic_us());
        }
        Said::Safe(_) => {}
    })
}

/// Runs the app over a data folder until its window is closed. `say_safe` prints the number of each
/// entry on standard output once the screen shows it as safe.
///
/// # Errors
/// As [`StartError`].
pub fn run(data: &Path, say_safe: bool) -> Result<(), StartError> {
    if !has_display() {
        return Err(StartError::NoDisplay);
    }
    std::fs::create_dir_all(data).map_err(StartError::Folder)?;
    let vault = Vault::of(data, COST)?;
    let key = vault.key_without_pin()?;
    let inside = key
        .map(|key| Inside::of(data, vault, &key, wall_now()))
        .transpose()?;
    let window = ui::AppWindow::new()?;
    let idle = Rc::new(Idle::default());
    let behind = InFolder {
        data: data.to_owned(),
        window: window.as_weak(),
        say_safe,
    };
    let front = Rc::new(RefCell::new(Front::locked(
        window.as_weak(),
        Box::new(SystemClock),
        Box::new(behind),
        Rc::clone(&idle),
        Look::read(data),
    )));
    let timer = Rc::new(Timer::default());
    let hear = hearer(&front, Some(Rc::clone(&timer)));
    #[cfg(not(target_os = "android"))]
    let hear = touch::drawn_at_once(&window, hear);
    HEARER.set(Some(Rc::clone(&hear)));
    connect(&window, &hear);
    let door = touch::connect(&window, &hear, Box::new(|| SystemClock.now().boot_ms));
    #[cfg(not(target_os = "android"))]
    touch::set(&window, &door, &idle);
    if let Some(inside) = inside {
        front.borrow_mut().let_in(inside);
    }

    let tick_ms = front.borrow().tick_ms();
    timer.start(
        TimerMode::Repeated,
        Duration::from_millis(tick_ms),
        move || {
            door.tick();
            hear(Event::Ticked);
        },
    );
    window.run()?;
    HEARER.set(None);
    // What was asked is written before the program ends.
    drop(front);
    Ok(())
}

/// A new id.
fn random_id() -> [u8; 16] {
    let mut bytes = [0; 16];
    match getrandom::fill(&mut bytes) {
        Ok(()) => bytes,
        Err(_) => fallback_id(),
    }
}

/// An id from the clock, for the case that the system gives no random bytes after the start.
fn fallback_id() -> [u8; 16] {
    let now = SystemClock.now();
    let mut bytes = [0; 16];
    bytes[..8].copy_from_slice(&now.wall.utc_ms().to_be_bytes());
    bytes[8..].copy_from_slice(&now.boot_ms.to_be_bytes());
    bytes
}

/// The folder in which data are kept unless another is named: by the system's own custom.
pub fn usual_data_folder() -> std::path::PathBuf {
    let from = |name: &str| {
        std::env::var_os(name)
            .filter(|value| !value.is_empty())
            .map(std::path::PathBuf::from)
    };
    from("XDG_DATA_HOME")
        .or_else(|| {
            // Elsewhere an app of iOS cannot write.
            let in_home = if cfg!(target_os = "ios") {
                "Library/Application Support"
            } else {
                ".local/share"
            };
            from("HOME").map(|home| home.join(in_home))
        })
        .or_else(|| from("LOCALAPPDATA"))
        .unwrap_or_else(std::env::temp_dir)
        .join("feedside")
}
