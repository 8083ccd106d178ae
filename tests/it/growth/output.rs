//! Expected output. Source: UNICEF UK Baby Friendly Initiative, breastfeeding assessment tool, and
//! the NHS checklists drawn from it (days 1-2, 3-4, 5-6, 7-28).

use feedside::growth::{
    Age, OutputAgainst, expected_on_day, expected_over_last_day, usual_feed_volume,
};
use feedside::record::{Gestation, LastDay, StoolColour};

#[test]
fn the_table_is_the_published_one() {
    let wet_dirty = |day| expected_on_day(day).map(|row| (row.wet, row.dirty));
    for (days, row) in [
        (1..=2, (1, 1)),
        (3..=4, (3, 2)),
        (5..=6, (5, 2)),
        (7..=28, (6, 2)),
    ] {
        for day in days {
            assert_eq!(wet_dirty(day), Some(row), "day {day}");
        }
    }
    assert_eq!(wet_dirty(0), None);
    assert_eq!(wet_dirty(29), None);
}

#[test]
fn nothing_is_expected_of_a_first_day_that_is_not_over() {
    assert!(expected_over_last_day(Age::of_hours(23)).is_none());
    assert_eq!(
        expected_over_last_day(Age::of_hours(24)).unwrap().from_day,
        1
    );
}

#[test]
fn the_least_feeds_are_those_of_the_day_in_which_the_middle_of_the_count_lay() {
    // Yamauchi and Yamanouchi 1990, Pediatrics 86:171: 4.3 in the first 24 hours, 7.4 in the next.
    use feedside::growth::feeds_least_over_last_day;
    let least = |hours| feeds_least_over_last_day(Age::of_hours(hours));
    assert_eq!(least(23), None);
    assert_eq!((least(24), least(35)), (Some(3), Some(3)));
    assert_eq!((least(36), least(48)), (Some(8), Some(8)));
}

#[test]
fn a_count_moves_to_the_next_row_when_its_middle_does() {
    // Day 3 begins at 48 hours; the middle of the last 24 hours reaches it at 60.
    assert_eq!(expected_over_last_day(Age::of_hours(59)).unwrap().wet, 1);
    assert_eq!(expected_over_last_day(Age::of_hours(60)).unwrap().wet, 3);
    assert_eq!(expected_over_last_day(Age::of_hours(107)).unwrap().wet, 3);
    assert_eq!(expected_over_last_day(Age::of_hours(108)).unwrap().wet, 5);
}

#[test]
fn a_count_that_was_not_told_is_neither_enough_nor_too_few() {
    let against = OutputAgainst::of(&LastDay::default(), Age::of_hours(100)).unwrap();
    assert_eq!(
        (
            against.wet_enough,
            against.dirty_enough,
            against.colour_fits
        ),
        (None, None, None)
    );
}

#[test]
fn a_count_at_the_least_is_enough_and_one_below_is_not() {
    let day = |wet, dirty| LastDay {
        wet: Some(wet),
        dirty: Some(dirty),
        stool: Some(StoolColour::Yellow),
        ..LastDay::default()
    };
    let against = |day| OutputAgainst::of(&day, Age::of_hours(5 * 24)).unwrap();
    assert_eq!(against(day(5, 2)).wet_enough, Some(true));
    assert_eq!(against(day(4, 2)).wet_enough, Some(false));
    assert_eq!(against(day(5, 1)).dirty_enough, Some(false));
    assert_eq!(against(day(5, 2)).colour_fits, Some(true));
}

#[test]
fn usual_volumes_are_the_published_ranges() {
    // Academy of Breastfeeding Medicine, Protocol 3 (2017): hours 0-24, 25-48, 49-72, 73-96.
    let term =
        |hours| usual_feed_volume(Age::of_hours(hours), None).map(|it| (it.low_ml, it.high_ml));
    for (hours, range) in [
        (0, (2, 10)),
        (24, (2, 10)),
        (25, (5, 15)),
        (48, (5, 15)),
        (49, (15, 30)),
        (72, (15, 30)),
        (73, (30, 60)),
        (96, (30, 60)),
    ] {
        assert_eq!(term(hours), Some(range), "{hours} h");
    }
    assert_eq!(term(97), None);
}

#[test]
fn a_baby_born_late_preterm_has_ranges_of_its_own_and_an_earlier_one_none() {
    // Academy of Breastfeeding Medicine, Protocol 10 (2016): 5-10, then 10-30.
    let early = |weeks, hours| {
        let gestation = Gestation::weeks_days(weeks, 0).unwrap();
        usual_feed_volume(Age::of_hours(hours), Some(gestation)).map(|it| (it.low_ml, it.high_ml))
    };
    assert_eq!(early(36, 20), Some((5, 10)));
    assert_eq!(early(34, 30), Some((10, 30)));
    assert_eq!(early(33, 20), None);
    assert_eq!(early(37, 20), Some((2, 10)));
}
