//! The one door through which touches come to the bedside screen, whichever way they were told.

use std::cell::RefCell;
use std::rc::Rc;

use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, Global, LogicalPosition};

use super::{
    Felt, FeltKind, FromFingers, Heard, Merged, PadKind, PadPlace, Place, Pointer, RawTouch, Router,
};
use crate::app::connect::Hear;
use crate::app::event::Event;
use crate::app::{bedside, practice, ui};

/// The pads, by the numbers under which the screen knows them.
const PADS: [PadKind; 2] = [PadKind::Suck, PadKind::SuckSwallow];

/// The stage of the practice screen at which it has pads.
const WATCHING: i32 = 1;

/// The door.
pub struct Door {
    window: slint::Weak<ui::AppWindow>,
    hear: Hear,
    now_ms: Box<dyn Fn() -> u64>,
    places: RefCell<[Option<PadPlace>; PADS.len()]>,
    router: RefCell<Router>,
    merged: RefCell<Merged>,
}

/// Makes the door of a window; `now_ms` is the clock that the shell counts by.
pub fn connect(window: &ui::AppWindow, hear: &Hear, now_ms: Box<dyn Fn() -> u64>) -> Rc<Door> {
    let door = Rc::new(Door {
        window: window.as_weak(),
        hear: Rc::clone(hear),
        now_ms,
        places: RefCell::default(),
        router: RefCell::default(),
        merged: RefCell::default(),
    });
    let it = ui::TouchAdapter::get(window);
    let felt = Rc::clone(&door);
    it.on_felt(move |area, kind, finger| felt.felt(area, kind, finger));
    let placed = Rc::clone(&door);
    it.on_placed(move |area, x, y, width, height| placed.placed(area, x, y, width, height));
    door
}

impl Door {
    /// The time now, in milliseconds.
    pub fn now_ms(&self) -> u64 {
        (self.now_ms)()
    }

    /// Where the pads lie, as the screen told last.
    pub fn pads(&self) -> Vec<PadPlace> {
        self.places.borrow().iter().flatten().copied().collect()
    }

    /// A touch before the toolkit has it; whether it is to be kept from the toolkit.
    pub fn raw(&self, touch: RawTouch) -> bool {
        let Some(window) = self.window.upgrade() else {
            return false;
        };
        let has_pads = screen(&window).is_some();
        let heard = {
            let mut router = self.router.borrow_mut();
            // On other screens the toolkit has all fingers, but those that began here end here.
            if !has_pads && !router.holds_any() {
                return false;
            }
            let places = self.places.borrow();
            router.set_pads(
                places
                    .iter()
                    .filter(|_| has_pads)
                    .flatten()
                    .copied()
                    .collect(),
            );
            router.hear(touch)
        };
        let kept = heard.kept;
        self.act(heard);
        kept
    }

    /// The clock went on.
    pub fn tick(&self) {
        let now_ms = self.now_ms();
        let merged = self.merged.borrow_mut().tick(now_ms);
        self.act(merged);
        let routed = self.router.borrow_mut().tick(now_ms);
        self.act(routed);
    }

    fn felt(&self, area: i32, kind: i32, finger: i32) {
        // Where nothing is counted, nothing is left open.
        if self.window.upgrade().is_none_or(|it| screen(&it).is_none()) {
            *self.merged.borrow_mut() = Merged::default();
            return;
        }
        let felt = Felt {
            pad: usize::try_from(area)
                .ok()
                .and_then(|it| PADS.get(it))
                .copied(),
            kind: match kind {
                0 => FeltKind::Down,
                1 => FeltKind::Up,
                _ => FeltKind::Cancelled,
            },
            finger,
            at_ms: self.now_ms(),
        };
        let heard = self.merged.borrow_mut().hear(felt);
        self.act(heard);
    }

    fn placed(&self, area: i32, x: f32, y: f32, width: f32, height: f32) {
        let Some(index) = usize::try_from(area).ok().filter(|it| *it < PADS.len()) else {
            return;
        };
        self.places.borrow_mut()[index] = Some(PadPlace {
            pad: PADS[index],
            corner: Place { x, y },
            width,
            height,
        });
    }

    fn tell_bedside(&self, heard: &Heard) {
        let tell = |event| (self.hear)(Event::Bedside(event));
        for tap in &heard.taps {
            tell(bedside::Event::TappedAt(tap.pad, tap.at_ms));
        }
        if let Some(tap) = heard.withdrawn {
            tell(bedside::Event::Withdrawn(tap.pad, tap.at_ms));
        }
        for _ in 0..heard.unresolved {
            tell(bedside::Event::Unresolved);
        }
    }

    fn act(&self, heard: Heard) {
        let Some(window) = self.window.upgrade() else {
            return;
        };
        match screen(&window) {
            Some(Screen::Practice) => {
                for tap in heard.taps {
                    (self.hear)(Event::Practice(practice::Event::Tapped(tap.pad)));
                }
            }
            // A finger that began at the bedside may end elsewhere; what it did is told there.
            Some(Screen::Bedside) | None => self.tell_bedside(&heard),
        }
        let it = ui::TouchAdapter::get(&window);
        it.set_suck_down(self.router.borrow().is_down(PadKind::Suck));
        it.set_swallow_down(self.router.borrow().is_down(PadKind::SuckSwallow));
        for pointer in heard.pointer {
            window.window().dispatch_event(event_of(pointer));
        }
    }
}

/// A screen that has pads.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Screen {
    Bedside,
    Practice,
}

/// The screen that is seen, if it has pads just now.
fn screen(window: &ui::AppWindow) -> Option<Screen> {
    match ui::FrameAdapter::get(window).get_route() {
        ui::Route::Bedside => Some(Screen::Bedside),
        ui::Route::Practice if ui::PracticeAdapter::get(window).get_stage() == WATCHING => {
            Some(Screen::Practice)
        }
        _ => None,
    }
}

/// What the toolkit's pointer is told.
fn event_of(pointer: Pointer) -> WindowEvent {
    let button = PointerEventButton::Left;
    let position = |place: Place| LogicalPosition::new(place.x, place.y);
    match pointer {
        Pointer::Press(place) => WindowEvent::PointerPressed {
            position: position(place),
            button,
        },
        Pointer::Move(place) => WindowEvent::PointerMoved {
            position: position(place),
        },
        Pointer::Release(place) => WindowEvent::PointerReleased {
            position: position(place),
            button,
        },
        Pointer::Leave => WindowEvent::PointerExited,
    }
}
