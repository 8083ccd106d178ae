//! Age in hours and days. Source: arithmetic on instants (RFC 3339 offsets).

use feedside::growth::Age;

use super::{birth, hours, wall};

#[test]
fn there_is_no_age_before_birth() {
    assert_eq!(Age::of(birth(), birth().plus_ms(-1)), None);
    assert_eq!(Age::of(birth(), birth()).unwrap().hours(), 0);
}

#[test]
fn a_day_is_full_at_24_hours_and_not_at_midnight() {
    // Born at noon: midnight is 12 hours of age.
    let midnight = Age::of(birth(), wall("2026-03-02T00:00:00+00:00")).unwrap();
    assert_eq!((midnight.hours(), midnight.days()), (12, 0));
    let just_before = Age::of(birth(), hours(24).plus_ms(-1)).unwrap();
    assert_eq!((just_before.hours(), just_before.days()), (23, 0));
    let full = Age::of(birth(), hours(24)).unwrap();
    assert_eq!((full.hours(), full.days(), full.day_of_life()), (24, 1, 2));
}

#[test]
fn a_clock_change_does_not_move_the_age() {
    // Central European clocks go forward on 29 March 2026 at 02:00 (EU directive 2000/84/EC).
    let born = wall("2026-03-28T12:00:00+01:00");
    let noon_after = wall("2026-03-29T12:00:00+02:00");
    assert_eq!(Age::of(born, noon_after).unwrap().hours(), 23);
    assert_eq!(Age::of(born, noon_after).unwrap().days(), 0);
}

#[test]
fn another_time_zone_does_not_move_the_age() {
    let born = wall("2026-03-01T23:30:00+00:00");
    let far = wall("2026-03-03T09:30:00+10:00");
    assert_eq!(Age::of(born, far).unwrap().hours(), 24);
}

#[test]
fn the_who_day_is_rounded_with_halves_up() {
    // WHO anthro package, age in days rounded to whole days, halves up.
    for (at, day) in [(0, 0), (11, 0), (12, 1), (35, 1), (36, 2), (168, 7)] {
        assert_eq!(Age::of_hours(at).who_day(), day, "{at} h");
    }
    let just_before = Age::of(birth(), hours(12).plus_ms(-1)).unwrap();
    assert_eq!(just_before.who_day(), 0);
}

#[test]
fn a_count_belongs_to_the_day_in_which_its_middle_lay() {
    // Own rule: the middle of the last 24 hours is 12 hours ago.
    for (at, day) in [
        (24, 1),
        (35, 1),
        (36, 2),
        (59, 2),
        (60, 3),
        (107, 4),
        (108, 5),
    ] {
        assert_eq!(Age::of_hours(at).day_of_last_count(), day, "{at} h");
    }
}

#[test]
fn an_age_is_milliseconds_since_birth() {
    assert_eq!(feedside::growth::Age::of_hours(3).as_ms(), 10_800_000);
}
