//! The whole feed's strip under real fingers: the toolkit's own pointer and touch events on the real
//! window. What zooming and moving compute is told in `looking_closer`.

use feedside::app::bedside::{Act, Event as Bedside, PadKind};
use feedside::app::event::Event;
use feedside::app::looking_back::Event as LookingBack;
use feedside::app::ui;
use feedside::record::What;
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery};
use i_slint_core::input::TouchPhase;
use i_slint_core::lengths::LogicalPoint;
use i_slint_core::platform::InternalEvent;
use slint::platform::{PointerEventButton, WindowEvent};
use slint::{ComponentHandle, Global, LogicalPosition};

use super::tablet::{CANVAS, Tablet, tablet};

/// A step of a finger that moves, in pixels.
const STEP_PX: f32 = 4.0;
/// How high the strip itself is, and a handle's own place below it.
const STRIP_PX: f32 = 170.0;
const LANE_PX: f32 = 63.0;

/// A feed of quick sucks, then milk, then quick sucks again where `again`; ended and looked back at.
fn looked_back(again: bool) -> Tablet {
    let tablet = tablet();
    let hear = |event| (tablet.hear)(Event::Bedside(event));
    for tap in 0..240 {
        let flows = (80..180).contains(&tap);
        let swallow = if flows { tap % 2 == 0 } else { tap % 8 == 0 };
        hear(Bedside::Tapped(if swallow {
            PadKind::SuckSwallow
        } else {
            PadKind::Suck
        }));
        tablet.clock.forward_ms(if flows { 680 } else { 540 });
        if !again && tap == 179 {
            break;
        }
    }
    hear(Bedside::Acted(Act::EndFeed));
    hear(Bedside::Chose(0));
    draw();
    tablet
}

fn draw() {
    CANVAS.with(|canvas| {
        let _ = canvas.draw();
    });
}

/// The handles of the boundaries, from left to right.
fn handles(tablet: &Tablet) -> Vec<ElementHandle> {
    let mut found = ElementQuery::from_root(&tablet.window)
        .match_accessible_role(AccessibleRole::Slider)
        .find_all();
    found.sort_by(|a, b| a.absolute_position().x.total_cmp(&b.absolute_position().x));
    found.dedup_by_key(|it| it.absolute_position().x as i32);
    found
}

/// The middle of a handle's grip.
fn grip(handle: &ElementHandle) -> (f32, f32) {
    let (at, size) = (handle.absolute_position(), handle.size());
    (at.x + size.width / 2.0, at.y + size.height - LANE_PX / 2.0)
}

/// A pointer goes down, along, and up.
fn drag(tablet: &Tablet, (x, y): (f32, f32), by_px: f32) {
    let window = tablet.window.window();
    let at = |x: f32| LogicalPosition::new(x, y);
    let button = PointerEventButton::Left;
    window.dispatch_event(WindowEvent::PointerMoved { position: at(x) });
    window.dispatch_event(WindowEvent::PointerPressed {
        position: at(x),
        button,
    });
    let mut gone = 0.0;
    while gone < by_px.abs() {
        gone = (gone + STEP_PX).min(by_px.abs());
        let position = at(x + gone * by_px.signum());
        window.dispatch_event(WindowEvent::PointerMoved { position });
        draw();
    }
    window.dispatch_event(WindowEvent::PointerReleased {
        position: at(x + by_px),
        button,
    });
    draw();
}

fn touch(tablet: &Tablet, id: i32, phase: TouchPhase, (x, y): (f32, f32)) {
    let position = LogicalPoint::new(x, y);
    let touch = InternalEvent::Touch {
        id,
        position,
        phase,
    };
    let window = tablet.window.window();
    window.dispatch_event(WindowEvent::internal(touch));
}

/// The strip: its left and upper edge, its width, and the seconds at its left and right edge.
fn strip(tablet: &Tablet) -> ((f32, f32, f32), (f64, f64)) {
    let shown = ui::LookingBackAdapter::get(&tablet.window);
    let label = shown.get_strip_label();
    let strip = ElementHandle::find_by_accessible_label(&tablet.window, &label).next();
    let strip = strip.unwrap();
    let at = strip.absolute_position();
    let end_s = f64::from(shown.get_end_s());
    let from_s = end_s - f64::from(shown.get_shown_s());
    ((at.x, at.y, strip.size().width), (from_s, end_s))
}

#[test]
fn a_boundary_that_a_finger_drags_lies_where_it_was_let_go() {
    let tablet = looked_back(false);
    let ((_, _, width), (from_s, end_s)) = strip(&tablet);
    let handle = handles(&tablet).into_iter().next().unwrap();
    let boundary = ui::LookingBackAdapter::get(&tablet.window);
    let before_s = slint::Model::row_data(&boundary.get_boundaries(), 0)
        .unwrap()
        .at_s;
    drag(&tablet, grip(&handle), 90.0);
    let (_, what) = tablet.entries().pop().unwrap();
    let What::BoundaryMoved(moved) = what else {
        panic!("{what:?}");
    };
    let expected_s = f64::from(before_s) + 90.0 * (end_s - from_s) / f64::from(width);
    let now_s = moved.now.as_ms() as f64 / 1_000.0;
    // It snaps to a suck: they come up to 0.7 s apart.
    assert!((now_s - expected_s).abs() < 0.8, "{now_s} for {expected_s}");
}

#[test]
fn two_fingers_that_part_on_the_strip_show_less_of_it_about_the_middle_between_them() {
    let tablet = looked_back(false);
    let ((left, top, width), (from_s, end_s)) = strip(&tablet);
    let middle = (left + width * 0.4, top + STRIP_PX / 2.0);
    let middle_s = from_s + (end_s - from_s) * 0.4;
    let at = |apart: f32| [(middle.0 - apart, middle.1), (middle.0 + apart, middle.1)];
    for (id, place) in at(40.0).into_iter().enumerate() {
        touch(&tablet, id as i32, TouchPhase::Started, place);
    }
    let mut apart = 40.0;
    while apart < 160.0 {
        apart += STEP_PX;
        for (id, place) in at(apart).into_iter().enumerate() {
            touch(&tablet, id as i32, TouchPhase::Moved, place);
        }
        draw();
    }
    for (id, place) in at(160.0).into_iter().enumerate() {
        touch(&tablet, id as i32, TouchPhase::Ended, place);
    }
    draw();
    let (_, (now_from_s, now_end_s)) = strip(&tablet);
    let factor = (end_s - from_s) / (now_end_s - now_from_s);
    // Four times as far apart; what the fingers move before it counts as a gesture is lost.
    assert!((3.0..4.1).contains(&factor), "{factor}");
    let there = now_from_s + (now_end_s - now_from_s) * 0.4;
    assert!((there - middle_s).abs() < 2.0, "{there} for {middle_s}");
    // Nothing was picked out, moved or counted by it.
    assert!(
        !tablet
            .entries()
            .iter()
            .any(|it| matches!(it.1, What::BoundaryMoved(_)))
    );
}

#[test]
fn a_finger_that_moves_along_the_strip_moves_it() {
    let tablet = looked_back(false);
    (tablet.hear)(Event::LookingBack(LookingBack::Zoomed(3.0, 60.0)));
    draw();
    let ((left, top, width), (from_s, end_s)) = strip(&tablet);
    let place = (left + width * 0.5, top + STRIP_PX / 2.0);
    drag(&tablet, place, -100.0);
    let (_, (now_from_s, now_end_s)) = strip(&tablet);
    let expected_s = 100.0 * (end_s - from_s) / f64::from(width);
    assert!((now_end_s - now_from_s - (end_s - from_s)).abs() < 0.1);
    assert!(
        (now_from_s - from_s - expected_s).abs() < 1.0,
        "{now_from_s}"
    );
}

#[test]
fn two_boundaries_that_stand_together_can_be_taken_one_by_one() {
    let tablet = looked_back(true);
    let shown = ui::LookingBackAdapter::get(&tablet.window);
    let all: Vec<ui::Boundary> = slint::Model::iter(&shown.get_boundaries()).collect();
    assert_eq!(all.len(), 2);
    // As a feed would show them in which the milk flowed for three seconds.
    let mut near = all.clone();
    near[1].at_s = near[0].at_s + 3.0;
    shown.set_boundaries(std::rc::Rc::new(slint::VecModel::from(near)).into());
    shown.set_closest_share(3.0 / shown.get_shown_s());
    draw();
    let found = handles(&tablet);
    let (first, second) = (grip(&found[0]), grip(&found[1]));
    assert!((first.0 - second.0).abs() < LANE_PX);
    assert!(
        LANE_PX <= (first.1 - second.1).abs(),
        "{first:?} {second:?}"
    );
    drag(&tablet, second, 60.0);
    let (_, what) = tablet.entries().pop().unwrap();
    let What::BoundaryMoved(moved) = what else {
        panic!("{what:?}");
    };
    // Of the two it is the later: the phase after it is quick sucks again.
    assert_eq!(moved.after, feedside::record::SuckPhase::Quick);
}
