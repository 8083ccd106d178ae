//! Fingers on the real bedside screen: the toolkit's own touch events, and those of the window
//! system that the hook takes before the toolkit has them. The window exists only as pixels.
//!
//! With the hook every count is exact. Without it (Android) a count is exact or marked: what was
//! not counted was told as unresolved.

use std::cell::Cell;
use std::rc::Rc;

use feedside::app::bedside::{Event as Bedside, PadKind};
use feedside::app::connect::Hear;
use feedside::app::event::Event;
use feedside::app::touch::{self, Door, PadPlace, Place, RESTING_MS};
use feedside::app::ui;
use feedside::record::What;
use feedside::rhythm::Doubt;
use i_slint_core::input::TouchPhase;
use i_slint_core::lengths::LogicalPoint;
use i_slint_core::platform::InternalEvent;
use slint::platform::WindowEvent;
use slint::winit_030::winit::dpi::PhysicalPosition;
use slint::winit_030::winit::event as winit;
use slint::{ComponentHandle, Global};

use super::tablet::{BOOT_MS, CANVAS, tablet};

/// What the door told.
#[derive(Default)]
struct Counted {
    sucks: Cell<i64>,
    swallows: Cell<i64>,
    unresolved: Cell<i64>,
}

impl Counted {
    fn hear(&self, event: &Event) {
        let Event::Bedside(event) = event else {
            return;
        };
        let of = |pad: PadKind| match pad {
            PadKind::SuckSwallow => &self.swallows,
            _ => &self.sucks,
        };
        match event {
            Bedside::TappedAt(pad, _) => of(*pad).set(of(*pad).get() + 1),
            Bedside::Withdrawn(pad, _) => of(*pad).set(of(*pad).get() - 1),
            Bedside::Unresolved => self.unresolved.set(self.unresolved.get() + 1),
            _ => {}
        }
    }

    fn counts(&self) -> (i64, i64) {
        (self.sucks.get(), self.swallows.get())
    }
}

/// The real window on the bedside screen, with a door that only counts.
struct Screen {
    window: ui::AppWindow,
    door: Rc<Door>,
    told: Rc<Counted>,
    now_ms: Rc<Cell<u64>>,
}

fn screen(width: u32, height: u32) -> Screen {
    CANVAS.with(|canvas| {
        let window = ui::AppWindow::new().unwrap();
        let told = Rc::new(Counted::default());
        let counted = Rc::clone(&told);
        let hear: Hear = Rc::new(move |event| counted.hear(&event));
        let now_ms = Rc::new(Cell::new(0));
        let clock = Rc::clone(&now_ms);
        let door = touch::connect(&window, &hear, Box::new(move || clock.get()));
        window.show().unwrap();
        canvas.resize(width, height);
        ui::FrameAdapter::get(&window).set_route(ui::Route::Bedside);
        let _ = canvas.draw();
        Screen {
            window,
            door,
            told,
            now_ms,
        }
    })
}

impl Screen {
    fn middle(&self, pad: PadKind) -> Place {
        let it = self.pad(pad);
        Place {
            x: it.corner.x + it.width / 2.0,
            y: it.corner.y + it.height / 2.0,
        }
    }

    fn pad(&self, pad: PadKind) -> PadPlace {
        let pads = self.door.pads();
        pads.into_iter().find(|it| it.pad == pad).unwrap()
    }

    fn at(&self, ms: u64) {
        self.now_ms.set(ms);
        self.door.tick();
    }

    /// As the toolkit's own backends tell a touch.
    fn merged(&self, finger: i32, phase: TouchPhase, place: Place) {
        let touch = InternalEvent::Touch {
            id: finger,
            position: LogicalPoint::new(place.x, place.y),
            phase,
        };
        self.window
            .window()
            .dispatch_event(WindowEvent::internal(touch));
    }

    /// As the window system tells a touch, through the hook; whether it was kept.
    fn raw(&self, finger: i32, phase: TouchPhase, place: Place) -> bool {
        let event = winit::WindowEvent::Touch(winit::Touch {
            device_id: winit::DeviceId::dummy(),
            phase: match phase {
                TouchPhase::Started => winit::TouchPhase::Started,
                TouchPhase::Moved => winit::TouchPhase::Moved,
                TouchPhase::Ended => winit::TouchPhase::Ended,
                TouchPhase::Cancelled => winit::TouchPhase::Cancelled,
            },
            location: PhysicalPosition::new(f64::from(place.x), f64::from(place.y)),
            force: None,
            id: u64::try_from(finger).unwrap(),
        });
        let touch = touch::raw_of(&event, 1.0, self.now_ms.get()).unwrap();
        self.door.raw(touch)
    }

    fn touch(&self, way: Way, finger: i32, phase: TouchPhase, place: Place) {
        match way {
            Way::Merged => self.merged(finger, phase, place),
            Way::Hook => assert!(self.raw(finger, phase, place), "kept from the toolkit"),
        }
    }
}

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Way {
    Hook,
    Merged,
}

/// Two thumbs in turn, a tap every 250 ms, each lifted so much after the other came down; in the
/// other order of lifting the second is lifted while the first still stays.
fn thumbs(screen: &Screen, way: Way, for_ms: u64, overlap_ms: u64, reversed: bool) -> (i64, i64) {
    let mut rows = Vec::new();
    for index in 0..for_ms / 250 {
        let second = index % 2 == 1;
        let stays = if reversed && second {
            60
        } else {
            250 + overlap_ms
        };
        rows.push((index * 250, 1, second, TouchPhase::Started));
        rows.push((index * 250 + stays, 0, second, TouchPhase::Ended));
    }
    // At the same moment a lifting comes first.
    rows.sort_by_key(|row| (row.0, row.1));
    let places = [
        screen.middle(PadKind::Suck),
        screen.middle(PadKind::SuckSwallow),
    ];
    for (at_ms, _, second, phase) in rows {
        screen.at(10_000 + at_ms);
        let finger = i32::from(second);
        screen.touch(way, finger, phase, places[usize::from(second)]);
    }
    let each = i64::try_from(for_ms / 500).unwrap();
    (each, each)
}

/// Ten minutes.
const LONG_MS: u64 = 600_000;

#[test]
fn the_screen_tells_where_its_pads_lie_in_both_orientations() {
    for (width, height) in [(1280, 800), (800, 1280)] {
        let screen = screen(width, height);
        let (suck, swallow) = (screen.pad(PadKind::Suck), screen.pad(PadKind::SuckSwallow));
        #[allow(clippy::cast_precision_loss)]
        let bottom = height as f32 - 14.0;
        for pad in [suck, swallow] {
            // 35 mm at 160 dots an inch.
            assert!(220.0 <= pad.height && 220.0 <= pad.width, "{pad:?}");
            assert!((pad.corner.y + pad.height - bottom).abs() < 1.0, "{pad:?}");
        }
        assert!(suck.corner.x + suck.width + 6.0 <= swallow.corner.x);
    }
}

#[test]
fn with_the_hook_overlapping_thumbs_are_counted_exactly() {
    for overlap_ms in [0, 30, 75, 120, 150] {
        for reversed in [false, true] {
            let screen = screen(1280, 800);
            let expected = thumbs(&screen, Way::Hook, LONG_MS, overlap_ms, reversed);
            assert_eq!(screen.told.counts(), expected, "{overlap_ms} {reversed}");
            assert_eq!(screen.told.unresolved.get(), 0);
        }
    }
}

#[test]
fn with_the_hook_a_palm_three_fingers_a_swipe_and_a_slide_off_change_no_count() {
    let screen = screen(800, 1280);
    let (suck, swallow) = (
        screen.middle(PadKind::Suck),
        screen.middle(PadKind::SuckSwallow),
    );
    let outside = Place { x: 400.0, y: 700.0 };
    assert!(screen.raw(9, TouchPhase::Started, outside));
    let expected = thumbs(&screen, Way::Hook, LONG_MS, 100, true);
    assert_eq!(screen.told.counts(), expected);
    screen.at(700_000);
    for (finger, place) in [(1, suck), (2, swallow), (3, suck)] {
        screen.touch(Way::Hook, finger, TouchPhase::Started, place);
    }
    for (finger, place) in [(2, swallow), (1, suck), (3, suck)] {
        screen.touch(Way::Hook, finger, TouchPhase::Ended, place);
    }
    let expected = (expected.0 + 2, expected.1 + 1);
    assert_eq!(screen.told.counts(), expected);
    // A swipe across both pads, and a finger that slides off.
    for to in [swallow, outside] {
        screen.touch(Way::Hook, 1, TouchPhase::Started, suck);
        screen.touch(Way::Hook, 1, TouchPhase::Moved, to);
        screen.touch(Way::Hook, 1, TouchPhase::Ended, to);
    }
    assert_eq!(screen.told.counts(), (expected.0 + 2, expected.1));
    assert_eq!(screen.told.unresolved.get(), 0);
}

#[test]
fn without_the_hook_thumbs_lifted_in_order_are_counted_exactly() {
    for overlap_ms in [0, 30, 75, 120, 150] {
        let screen = screen(1280, 800);
        let expected = thumbs(&screen, Way::Merged, LONG_MS, overlap_ms, false);
        assert_eq!(screen.told.counts(), expected, "{overlap_ms}");
        assert_eq!(screen.told.unresolved.get(), 0);
    }
}

#[test]
fn without_the_hook_what_is_not_counted_is_told_as_unresolved() {
    for overlap_ms in [0, 30, 75, 120, 150] {
        let screen = screen(1280, 800);
        let expected = thumbs(&screen, Way::Merged, LONG_MS, overlap_ms, true);
        let (counts, unresolved) = (screen.told.counts(), screen.told.unresolved.get());
        assert_eq!(
            counts.0 + counts.1 + unresolved,
            expected.0 + expected.1,
            "{overlap_ms}: {counts:?} counted, {unresolved} unresolved"
        );
        assert!(counts.0 <= expected.0 && counts.1 <= expected.1);
        // The second thumb stays for 60 ms.
        assert_eq!(60 < overlap_ms, 0 < unresolved, "{overlap_ms}");
    }
}

#[test]
fn without_the_hook_taps_beside_a_resting_palm_are_told_as_unresolved() {
    for place in [Place { x: 400.0, y: 700.0 }, Place { x: 30.0, y: 30.0 }] {
        let screen = screen(800, 1280);
        screen.merged(9, TouchPhase::Started, place);
        let suck = screen.middle(PadKind::Suck);
        for tap in 0..100 {
            screen.at(5_000 + tap * 250);
            screen.merged(1, TouchPhase::Started, suck);
            screen.at(5_080 + tap * 250);
            screen.merged(1, TouchPhase::Ended, suck);
        }
        assert_eq!(
            (screen.told.counts(), screen.told.unresolved.get()),
            ((0, 0), 100)
        );
    }
}

#[test]
fn without_the_hook_three_fingers_a_swipe_and_a_slide_off_are_exact_or_marked() {
    let screen = screen(1280, 800);
    let (suck, swallow) = (
        screen.middle(PadKind::Suck),
        screen.middle(PadKind::SuckSwallow),
    );
    for to in [swallow, Place { x: 300.0, y: 300.0 }] {
        screen.merged(1, TouchPhase::Started, suck);
        screen.merged(1, TouchPhase::Moved, to);
        screen.merged(1, TouchPhase::Ended, to);
    }
    assert_eq!(
        (screen.told.counts(), screen.told.unresolved.get()),
        ((2, 0), 0)
    );
    for (finger, place) in [(1, suck), (2, swallow), (3, suck)] {
        screen.merged(finger, TouchPhase::Started, place);
    }
    for (finger, place) in [(1, suck), (2, swallow), (3, suck)] {
        screen.merged(finger, TouchPhase::Ended, place);
    }
    assert!(0 < screen.told.unresolved.get(), "three fingers are marked");
}

#[test]
fn a_mouse_counts_at_each_press_and_a_hand_at_rest_is_withdrawn() {
    let screen = screen(1280, 800);
    let suck = screen.middle(PadKind::Suck);
    let position = slint::LogicalPosition::new(suck.x, suck.y);
    let button = slint::platform::PointerEventButton::Left;
    for _ in 0..3 {
        for event in [
            WindowEvent::PointerPressed { position, button },
            WindowEvent::PointerReleased { position, button },
        ] {
            screen.window.window().dispatch_event(event);
        }
    }
    assert_eq!(screen.told.counts(), (3, 0));
    for way in [Way::Hook, Way::Merged] {
        screen.at(20_000);
        screen.touch(way, 1, TouchPhase::Started, suck);
        assert_eq!(screen.told.counts(), (4, 0));
        screen.at(20_001 + RESTING_MS);
        assert_eq!(screen.told.counts(), (3, 0), "{way:?}");
        screen.touch(way, 1, TouchPhase::Ended, suck);
    }
    assert_eq!(screen.told.unresolved.get(), 2);
}

#[test]
fn a_resting_palm_keeps_no_key_from_another_finger() {
    let screen = screen(800, 1280);
    let looked = Rc::new(Cell::new(0));
    let counted = Rc::clone(&looked);
    ui::BedsideAdapter::get(&screen.window).on_look_away(move || counted.set(counted.get() + 1));
    let pads = screen.pad(PadKind::Suck);
    // The first of the three keys just above the pads, and a palm on the strip.
    let key = Place {
        x: 100.0,
        y: pads.corner.y - 40.0,
    };
    let palm = Place { x: 400.0, y: 250.0 };
    assert!(screen.raw(9, TouchPhase::Started, palm));
    assert!(screen.raw(1, TouchPhase::Started, key));
    assert!(screen.raw(1, TouchPhase::Ended, key));
    assert_eq!(looked.get(), 1);
    assert!(screen.raw(9, TouchPhase::Ended, palm));
    assert_eq!(looked.get(), 1);
}

#[test]
fn on_other_screens_the_toolkit_has_all_fingers() {
    let screen = screen(1280, 800);
    let suck = screen.middle(PadKind::Suck);
    assert!(screen.raw(1, TouchPhase::Started, suck));
    ui::FrameAdapter::get(&screen.window).set_route(ui::Route::Ward);
    // One that began on the bedside ends there.
    assert!(screen.raw(1, TouchPhase::Ended, suck));
    assert!(!screen.raw(2, TouchPhase::Started, suck));
    assert!(!screen.raw(2, TouchPhase::Ended, suck));
    assert_eq!(screen.told.counts(), (1, 0));
}

#[test]
fn an_unresolved_touch_is_in_the_journal_on_the_screen_and_among_the_doubts() {
    let tablet = tablet();
    let hear = &tablet.hear;
    hear(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
    assert_eq!(ui::BedsideAdapter::get(&tablet.window).get_unresolved(), "");
    hear(Event::Bedside(Bedside::Unresolved));
    assert_ne!(ui::BedsideAdapter::get(&tablet.window).get_unresolved(), "");
    let shell = tablet.shell.borrow();
    let open = shell.open().unwrap();
    let last = open.visit.journal.entries().last().unwrap();
    assert_eq!(last.what, What::TouchUnresolved);
    assert!(
        open.summary(0)
            .unwrap()
            .doubts
            .contains(&Doubt::UnresolvedTouches)
    );
}

#[test]
fn a_tap_is_in_the_journal_with_the_time_of_its_touch_and_a_resting_hand_is_struck() {
    let tablet = tablet();
    let hear = &tablet.hear;
    let clock = &tablet.clock;
    clock.forward_ms(40);
    hear(Event::Bedside(Bedside::TappedAt(PadKind::Suck, BOOT_MS)));
    clock.forward_ms(700);
    let second = Bedside::TappedAt(PadKind::Suck, BOOT_MS + 740);
    hear(Event::Bedside(second));
    clock.forward_ms(1_600);
    hear(Event::Bedside(Bedside::Withdrawn(PadKind::Suck, BOOT_MS)));
    assert_eq!(
        tablet.entries(),
        [
            (2_000, What::Suck),
            (2_740, What::Suck),
            (4_340, What::Struck { entry: 2 }),
        ]
    );
}
