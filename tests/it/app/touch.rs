//! Fingers to taps, with plain structs: what the router makes of raw touches, and what can be read
//! from the toolkit's one pointer.
//!
//! The hands: two thumbs in turn at four taps a second, each staying on the glass up to 150 ms into
//! the other's tap; a palm at rest; three fingers; a swipe; a finger that slides off. Common
//! practice: no published set of such hands.

use feedside::app::bedside::PadKind;
use feedside::app::touch::{
    Felt, FeltKind, FromFingers, Heard, Merged, PadPlace, Phase, Place, Pointer, RESTING_MS,
    RawTouch, Router,
};

const LEFT: Place = Place { x: 100.0, y: 600.0 };
const RIGHT: Place = Place { x: 500.0, y: 600.0 };
const OUTSIDE: Place = Place { x: 100.0, y: 100.0 };

fn router() -> Router {
    let pad = |pad, x| PadPlace {
        pad,
        corner: Place { x, y: 500.0 },
        width: 300.0,
        height: 300.0,
    };
    let mut router = Router::default();
    router.set_pads(vec![
        pad(PadKind::Suck, 0.0),
        pad(PadKind::SuckSwallow, 320.0),
    ]);
    router
}

const fn touch(at_ms: u64, finger: u64, phase: Phase, place: Place) -> RawTouch {
    RawTouch {
        finger,
        phase,
        place,
        at_ms,
    }
}

/// Two thumbs in turn for so long, a tap every 250 ms, each lifted `overlap_ms` after the other
/// came down, or before that if it is negative; in time order.
fn thumbs(for_ms: u64, overlap_ms: i64, first_up_last: bool) -> Vec<RawTouch> {
    let mut touches = Vec::new();
    for index in 0..for_ms / 250 {
        let (finger, place) = if index % 2 == 0 {
            (1, LEFT)
        } else {
            (2, RIGHT)
        };
        let down = index * 250;
        // In the other order the thumb that came second leaves while the first still stays.
        let stays = if first_up_last && index % 2 == 1 {
            60
        } else {
            250 + overlap_ms
        };
        touches.push(touch(down, finger, Phase::Down, place));
        touches.push(touch(
            down.saturating_add_signed(stays),
            finger,
            Phase::Up,
            place,
        ));
    }
    touches.sort_by_key(|it| it.at_ms);
    touches
}

fn routed(router: &mut Router, touches: &[RawTouch]) -> Heard {
    let mut all = Heard::default();
    for touch in touches {
        let heard = router.hear(*touch);
        assert!(heard.kept);
        all.taps.extend(heard.taps);
        all.pointer.extend(heard.pointer);
        all.unresolved += heard.unresolved;
        all.withdrawn = all.withdrawn.or(heard.withdrawn);
    }
    all
}

fn counts(heard: &Heard) -> (usize, usize) {
    let of = |pad| heard.taps.iter().filter(|tap| tap.pad == pad).count();
    (of(PadKind::Suck), of(PadKind::SuckSwallow))
}

/// Ten minutes.
const LONG_MS: u64 = 600_000;

#[test]
fn overlapping_thumbs_are_counted_exactly_in_both_orders_of_lifting() {
    for overlap_ms in [-150, -50, 0, 1, 30, 75, 120, 150] {
        for reversed in [false, true] {
            let heard = routed(&mut router(), &thumbs(LONG_MS, overlap_ms, reversed));
            assert_eq!(counts(&heard), (1200, 1200), "{overlap_ms} {reversed}");
            assert_eq!((heard.unresolved, heard.pointer.len()), (0, 0));
        }
    }
}

#[test]
fn a_tap_has_the_time_at_which_the_finger_came_down() {
    let heard = routed(&mut router(), &thumbs(5_000, 150, false));
    let times: Vec<u64> = heard.taps.iter().map(|tap| tap.at_ms).collect();
    assert_eq!(times, (0..20).map(|it| it * 250).collect::<Vec<_>>());
}

#[test]
fn a_palm_beside_the_pads_changes_no_count_and_presses_nothing_for_long() {
    let mut router = router();
    let palm = router.hear(touch(0, 9, Phase::Down, OUTSIDE));
    assert_eq!(palm.pointer, [Pointer::Press(OUTSIDE)]);
    let heard = routed(&mut router, &thumbs(LONG_MS, 100, true));
    assert_eq!(counts(&heard), (1200, 1200));
    assert_eq!((heard.unresolved, heard.pointer.len()), (0, 0));
    // Another finger takes the pointer from the palm, which leaves without having clicked.
    let place = Place { x: 300.0, y: 50.0 };
    let key = router.hear(touch(LONG_MS, 1, Phase::Down, place));
    assert_eq!(key.pointer, [Pointer::Leave, Pointer::Press(place)]);
    let up = router.hear(touch(LONG_MS, 1, Phase::Up, place));
    assert_eq!(up.pointer, [Pointer::Release(place), Pointer::Leave]);
    let palm = router.hear(touch(LONG_MS, 9, Phase::Up, OUTSIDE));
    assert_eq!((palm.pointer.len(), router.holds_any()), (0, false));
}

#[test]
fn a_palm_that_rests_on_a_pad_is_withdrawn_and_told_once() {
    let mut router = router();
    let palm = router.hear(touch(0, 9, Phase::Down, LEFT));
    assert_eq!(palm.taps.len(), 1);
    assert_eq!(router.tick(RESTING_MS).withdrawn, None);
    let late = router.tick(RESTING_MS + 1);
    assert_eq!(
        (late.withdrawn, late.unresolved),
        (palm.taps.first().copied(), 1)
    );
    assert!(router.is_down(PadKind::Suck));
    let mut shifted = thumbs(LONG_MS, 100, true);
    for touch in &mut shifted {
        touch.at_ms += 5_000;
    }
    let heard = routed(&mut router, &shifted);
    assert_eq!((counts(&heard), heard.unresolved), ((1200, 1200), 0));
    assert_eq!(router.tick(900_000).withdrawn, None);
}

#[test]
fn three_fingers_are_three_taps() {
    let other = Place { x: 250.0, y: 700.0 };
    let heard = routed(
        &mut router(),
        &[
            touch(0, 1, Phase::Down, LEFT),
            touch(20, 2, Phase::Down, RIGHT),
            touch(40, 3, Phase::Down, other),
            touch(90, 2, Phase::Up, RIGHT),
            touch(95, 1, Phase::Up, LEFT),
            touch(99, 3, Phase::Up, other),
        ],
    );
    assert_eq!((counts(&heard), heard.unresolved), ((2, 1), 0));
}

#[test]
fn a_swipe_across_both_pads_is_one_tap_on_the_first() {
    let mut touches = vec![touch(0, 1, Phase::Down, LEFT)];
    for step in 1..40_u16 {
        let place = Place {
            x: LEFT.x + 10.0 * f32::from(step),
            ..LEFT
        };
        touches.push(touch(u64::from(step) * 8, 1, Phase::Moved, place));
    }
    touches.push(touch(330, 1, Phase::Up, RIGHT));
    let heard = routed(&mut router(), &touches);
    assert_eq!((counts(&heard), heard.pointer.len()), ((1, 0), 0));
}

#[test]
fn a_finger_that_slides_off_a_pad_is_one_tap_and_one_that_slides_on_is_none() {
    for (from, to, expected) in [(LEFT, OUTSIDE, (1, 0)), (OUTSIDE, LEFT, (0, 0))] {
        let heard = routed(
            &mut router(),
            &[
                touch(0, 1, Phase::Down, from),
                touch(50, 1, Phase::Moved, to),
                touch(90, 1, Phase::Up, to),
            ],
        );
        assert_eq!(counts(&heard), expected);
    }
    let cancelled = routed(
        &mut router(),
        &[
            touch(0, 1, Phase::Down, LEFT),
            touch(50, 1, Phase::Cancelled, LEFT),
        ],
    );
    assert_eq!(counts(&cancelled), (1, 0));
}

#[test]
fn a_finger_that_was_down_before_the_pads_belongs_to_the_toolkit() {
    let heard = router().hear(touch(0, 1, Phase::Up, LEFT));
    assert_eq!(heard, Heard::default());
}

fn felt(at_ms: u64, pad: Option<PadKind>, kind: FeltKind, finger: i32) -> Felt {
    Felt {
        pad,
        kind,
        finger,
        at_ms,
    }
}

fn read(felt: &[Felt]) -> (Vec<(PadKind, u64)>, u32) {
    let mut merged = Merged::default();
    let (mut taps, mut unresolved) = (Vec::new(), 0);
    for felt in felt {
        let heard = merged.hear(*felt);
        taps.extend(heard.taps.iter().map(|tap| (tap.pad, tap.at_ms)));
        unresolved += heard.unresolved;
    }
    (taps, unresolved)
}

const SUCK: Option<PadKind> = Some(PadKind::Suck);
const SWALLOW: Option<PadKind> = Some(PadKind::SuckSwallow);

#[test]
fn merged_fingers_lifted_in_order_are_counted_at_the_time_they_came_down() {
    use FeltKind::{Down, Up};
    // The first on one pad, the second on the other; the first is lifted first.
    let rows = [
        felt(0, SUCK, Down, 1),
        felt(200, SUCK, Up, 2),
        felt(290, SWALLOW, Down, 2),
        felt(400, SWALLOW, Up, 2),
    ];
    let expected = vec![(PadKind::Suck, 0), (PadKind::SuckSwallow, 200)];
    assert_eq!(read(&rows), (expected, 0));
}

#[test]
fn merged_fingers_lifted_in_the_other_order_are_told_as_unresolved() {
    use FeltKind::{Down, Up};
    let rows = [
        felt(0, SUCK, Down, 1),
        felt(200, SUCK, Up, 2),
        felt(290, SUCK, Down, 1),
        felt(400, SUCK, Up, 1),
        felt(500, SUCK, Down, 1),
    ];
    let expected = vec![(PadKind::Suck, 0), (PadKind::Suck, 500)];
    assert_eq!(read(&rows), (expected, 1));
}

#[test]
fn a_tap_beside_a_resting_palm_is_told_as_unresolved() {
    use FeltKind::{Down, Up};
    let rows = [
        felt(0, None, Down, 1),
        felt(200, None, Up, 2),
        felt(290, None, Down, 1),
        felt(500, None, Up, 2),
        felt(560, None, Down, 1),
    ];
    assert_eq!(read(&rows), (vec![], 2));
}

#[test]
fn a_third_finger_leaves_the_second_untold() {
    use FeltKind::{Down, Up};
    let rows = [
        felt(0, SUCK, Down, 1),
        felt(100, SUCK, Up, 2),
        felt(180, SWALLOW, Down, 3),
    ];
    let expected = vec![(PadKind::Suck, 0), (PadKind::SuckSwallow, 180)];
    assert_eq!(read(&rows), (expected, 1));
}

#[test]
fn a_mouse_is_counted_at_each_press() {
    use FeltKind::{Down, Up};
    let rows = [
        felt(0, SUCK, Down, 0),
        felt(50, SUCK, Up, 0),
        felt(90, SWALLOW, Down, 0),
        felt(120, SWALLOW, Up, 0),
    ];
    let expected = vec![(PadKind::Suck, 0), (PadKind::SuckSwallow, 90)];
    assert_eq!(read(&rows), (expected, 0));
}

#[test]
fn a_merged_finger_that_rests_on_a_pad_is_withdrawn() {
    let mut merged = Merged::default();
    let _ = merged.hear(felt(0, SUCK, FeltKind::Down, 1));
    assert_eq!(merged.tick(RESTING_MS), Heard::default());
    let late = merged.tick(RESTING_MS + 1);
    assert_eq!((late.withdrawn.is_some(), late.unresolved), (true, 1));
    assert_eq!(merged.tick(RESTING_MS + 500), Heard::default());
}
