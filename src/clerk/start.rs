//! The start-up list of the desk's window, from top to bottom.

use std::cell::RefCell;
use std::path::PathBuf;
use std::rc::Rc;
use std::time::{Duration, Instant};

use slint::winit_030::winit::event::WindowEvent;
use slint::winit_030::{EventResult, WinitWindowAccessor};
use slint::{ComponentHandle, Timer, TimerMode};

use super::connect::{Parts, Shell};
use super::event::Event;
use super::sound::Sounder;
use super::system;
use super::ui::ClerkWindow;
use super::worker::{self, Around};
use crate::desk::{Desk, DeskError};
use crate::record::WallTime;
use crate::words::{Lang, Words};

/// How often the window looks whether a scan broke off or a person paused.
const TICK: Duration = Duration::from_millis(100);

/// Opens the window over a desk until it is closed. Files for other systems go into a folder;
/// `is_quiet` leaves the signals away.
///
/// # Errors
/// [`DeskError::NoDisplay`].
pub fn run(desk: Desk, folder: PathBuf, lang: Lang, is_quiet: bool) -> Result<(), DeskError> {
    thread_local! {
        static SHELL: RefCell<Option<Rc<Shell>>> = const { RefCell::new(None) };
    }
    let window = ClerkWindow::new().map_err(|_| DeskError::NoDisplay)?;
    let sounder = (!is_quiet).then(|| Sounder::over(&folder.join("sounds")));
    let around = Around {
        folder: folder.join("exports"),
        words: Words::new(lang),
        now: Box::new(|| WallTime::of(chrono::Local::now().fixed_offset()).ok()),
        printer: Box::new(system::print),
    };
    let asks = worker::start(desk, around, |told| {
        // An answer that comes when the window is gone has nobody to hear it.
        let _ = slint::invoke_from_event_loop(move || {
            let shell = SHELL.with_borrow(Clone::clone);
            if let Some(shell) = shell {
                shell.hear(Event::Told(told));
            }
        });
    });
    let started = Instant::now();
    let parts = Parts {
        words: Words::new(lang),
        ask: Box::new(move |ask| {
            // The desk's thread ends with the window alone.
            let _ = asks.send(ask);
        }),
        sound: Box::new(move |tone| {
            if let Some(sounder) = &sounder {
                sounder.play(tone);
            }
        }),
        now_ms: Box::new(move || u64::try_from(started.elapsed().as_millis()).unwrap_or(u64::MAX)),
    };
    let shell = Shell::over(&window, parts);
    SHELL.set(Some(Rc::clone(&shell)));
    let fronted = Rc::clone(&shell);
    window.window().on_winit_window_event(move |_, event| {
        if let WindowEvent::Focused(is_in_front) = event {
            fronted.hear(Event::InFront(*is_in_front));
        }
        EventResult::Propagate
    });
    let ticked = Rc::clone(&shell);
    let timer = Timer::default();
    timer.start(TimerMode::Repeated, TICK, move || ticked.tick());
    window.run().map_err(|_| DeskError::NoDisplay)?;
    SHELL.set(None);
    Ok(())
}
