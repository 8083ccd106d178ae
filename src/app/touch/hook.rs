//! The hook in front of the toolkit, where the window system is reached through winit: desktops
//! and iOS. Android has no such place.
//!
//! winit's touches carry no time of their own; the time is taken here, before anything else is
//! done.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::rc::Rc;

use slint::ComponentHandle;
use slint::winit_030::winit::event::{TouchPhase, WindowEvent};
use slint::winit_030::{EventResult, WinitWindowAccessor};

use super::{Door, Phase, Place, RawTouch};
use crate::app::connect::Hear;
use crate::app::event::Event;
use crate::app::idle::Idle;
use crate::app::ui;

/// Sets the hook of a window: touches go through the door first. When anything was touched last is
/// told to `idle`, for the lock; a page that is scrolled is a page that is read.
pub fn set(window: &ui::AppWindow, door: &Rc<Door>, idle: &Rc<Idle>) {
    let (door, idle) = (Rc::clone(door), Rc::clone(idle));
    window.window().on_winit_window_event(move |window, event| {
        if is_a_hand(event) {
            idle.touched(door.now_ms());
        }
        let touch = raw_of(event, window.scale_factor(), door.now_ms());
        if touch.is_some_and(|touch| door.raw(touch)) {
            EventResult::PreventDefault
        } else {
            EventResult::Propagate
        }
    });
}

/// Whether a person moves something.
const fn is_a_hand(event: &WindowEvent) -> bool {
    matches!(
        event,
        WindowEvent::Touch(_)
            | WindowEvent::CursorMoved { .. }
            | WindowEvent::MouseInput { .. }
            | WindowEvent::MouseWheel { .. }
            | WindowEvent::KeyboardInput { .. }
    )
}

/// Lets what taps change be drawn at once. The toolkit by itself begins to draw a frame after the
/// first change, which is one frame more than a tap has.
pub fn drawn_at_once(window: &ui::AppWindow, hear: Hear) -> Hear {
    let window = window.as_weak();
    Rc::new(move |event: Event| {
        let is_tap = event.is_tap();
        hear(event);
        if is_tap && let Some(window) = window.upgrade() {
            window
                .window()
                .with_winit_window(slint::winit_030::winit::window::Window::request_redraw);
        }
    })
}

/// The touch that an event of the window system tells, in logical pixels.
pub fn raw_of(event: &WindowEvent, scale: f32, at_ms: u64) -> Option<RawTouch> {
    let WindowEvent::Touch(touch) = event else {
        return None;
    };
    // A finger is known by its device and its number there.
    let mut finger = DefaultHasher::new();
    (touch.device_id, touch.id).hash(&mut finger);
    let place = touch.location.to_logical::<f32>(f64::from(scale));
    Some(RawTouch {
        finger: finger.finish(),
        phase: match touch.phase {
            TouchPhase::Started => Phase::Down,
            TouchPhase::Moved => Phase::Moved,
            TouchPhase::Ended => Phase::Up,
            TouchPhase::Cancelled => Phase::Cancelled,
        },
        place: Place {
            x: place.x,
            y: place.y,
        },
        at_ms,
    })
}
