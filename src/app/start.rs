//! The start-up list of the app, from top to bottom.

use std::cell::RefCell;
use std::path::Path;
use std::rc::Rc;
use std::time::Duration;

use slint::{ComponentHandle, Timer, TimerMode};

use super::clock::{Clock, SystemClock, monotonic_us};
use super::connect::{connect, hearer};
use super::event::Event;
use super::keeper::{Ask, Keeper, ThreadKeeper, Told, answer};
use super::preferences::Preferences;
use super::shell::{Parts, Said, Shell};
use super::{touch, ui, ward_policy};
use crate::store::{Store, StoreError};
use crate::words::Words;

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
    /// The data could not be opened.
    #[error("the data could not be opened: {0}")]
    Store(#[from] StoreError),
    /// The system gave no random bytes.
    #[error("the system gave no random bytes")]
    Random,
}

/// The name under which the tablet's secret is kept.
const SECRET: &str = "tablet_key";

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

/// Random bytes from the system.
fn random<const N: usize>() -> Result<[u8; N], StartError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|_| StartError::Random)?;
    Ok(bytes)
}

/// The tablet's secret, made on the first start.
///
/// # Errors
/// The store refuses, or there is no randomness.
pub fn tablet_secret(store: &mut Store) -> Result<[u8; 32], StartError> {
    if let Some(kept) = store.secret(SECRET)?
        && let Ok(secret) = <[u8; 32]>::try_from(kept.as_slice())
    {
        return Ok(secret);
    }
    let secret = random::<32>()?;
    store.set_secret(SECRET, &secret)?;
    Ok(secret)
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
    let mut store = Store::open(&data.join("feedside.db"))?;
    let secret = tablet_secret(&mut store)?;
    let preferences = {
        let mut kept = std::collections::HashMap::new();
        for name in super::preferences::NAMES {
            if let Some(word) = store.setting(name)? {
                kept.insert(name, word);
            }
        }
        Preferences::read(|name| kept.get(name).cloned())
    };
    let counting = ward_policy::at_start(&store, data)?;
    let trouble = ward_policy::told(&counting, &Words::new(preferences.lang));
    let policy = counting.policy;
    let unfinished = store
        .open_visit()?
        .map(|visit| answer(&mut store, &policy, Ask::Open(visit)));
    let window = ui::AppWindow::new()?;

    thread_local! {
        static HEARER: RefCell<Option<super::connect::Hear>> = const { RefCell::new(None) };
    }
    let keeper: Box<dyn Keeper> =
        Box::new(ThreadKeeper::start(store, policy.clone(), |told: Told| {
            // An answer that comes when the window is gone has nobody to hear it.
            let _ = slint::invoke_from_event_loop(move || {
                HEARER.with_borrow(|hear| {
                    if let Some(hear) = hear {
                        hear(Event::Told(told));
                    }
                });
            });
        }));
    let mut last_safe = 0;
    let say: Option<Box<dyn FnMut(Said)>> = say_safe.then(|| {
        Box::new(move |said: Said| match said {
            Said::Made(seq) => println!("made {seq} {}", monotonic_us()),
            Said::Safe(seq) if seq != last_safe => {
                last_safe = seq;
                println!("safe {seq}");
                println!("shown {seq} {}", monotonic_us());
            }
            Said::Safe(_) => {}
        }) as Box<dyn FnMut(Said)>
    });
    let made = Rc::new(RefCell::new(Shell::new(Parts {
        window: window.as_weak(),
        clock: Box::new(SystemClock),
        keeper,
        random: Box::new(|| random::<16>().unwrap_or_else(|_| fallback_id())),
        preferences,
        policy,
        trouble,
        secret,
        say_safe: say,
    })));
    let timer = Rc::new(Timer::default());
    let hear = hearer(&made, Some(Rc::clone(&timer)));
    #[cfg(not(target_os = "android"))]
    let hear = touch::drawn_at_once(&window, hear);
    HEARER.set(Some(Rc::clone(&hear)));
    connect(&window, &hear);
    let door = touch::connect(&window, &hear, Box::new(|| SystemClock.now().boot_ms));
    #[cfg(not(target_os = "android"))]
    touch::set(&window, &door);

    let ticking = Rc::clone(&hear);
    timer.start(
        TimerMode::Repeated,
        Duration::from_millis(made.borrow().tick_ms()),
        move || {
            door.tick();
            ticking(Event::Ticked);
        },
    );
    // Where the last visit was left, or the ward.
    hear(unfinished.map_or(Event::Arrived, Event::Told));
    window.run()?;
    HEARER.set(None);
    Ok(())
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
        .or_else(|| from("HOME").map(|home| home.join(".local/share")))
        .or_else(|| from("LOCALAPPDATA"))
        .unwrap_or_else(std::env::temp_dir)
        .join("feedside")
}
