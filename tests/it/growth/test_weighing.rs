//! Test weighing and gain per day.
//! Source of the density: Institute of Medicine 1991, Nutrition During Lactation, page 81: 1.03.

use feedside::growth::{TestWeighing, gain, test_weighings};
use feedside::record::WeighingMoment::{AfterFeed, BeforeFeed};
use feedside::record::{WallTime, Weighing};

use super::{weighed, weighed_as};

fn one(weighings: &[(WallTime, Weighing)]) -> TestWeighing {
    let all = test_weighings(weighings);
    assert_eq!(all.len(), 1);
    all[0]
}

#[test]
fn sixty_grams_are_58_3_millilitres() {
    let it = one(&[
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(71, 3360, AfterFeed, true),
    ]);
    assert_eq!((it.grams, it.tenths_ml), (60, 583));
    assert!(!it.below_resolution);
}

#[test]
fn a_weight_told_later_is_no_side_of_a_feed_and_stands_between_none() {
    // Common practice: both sides of a feed are weighed on the same scale, one after the other.
    let later = |(wall, it): (WallTime, Weighing)| {
        let taken = Some(wall);
        (wall, Weighing { taken, ..it })
    };
    let before = weighed_as(70, 3300, BeforeFeed, true);
    let after = weighed_as(71, 3360, AfterFeed, true);
    assert!(test_weighings(&[later(before), after]).is_empty());
    assert!(test_weighings(&[before, later(after)]).is_empty());
    let mut between = later(weighed(70, 3200));
    between.0 = between.0.plus_ms(600_000);
    assert_eq!(one(&[before, between, after]), one(&[before, after]));
    // Nor is it lighter "after the feed" than before.
    let lighter = later(weighed_as(71, 3200, AfterFeed, true));
    let it = feedside::growth::of(&super::pair(), &[before, lighter], super::hours(72));
    assert!(it.questions.is_empty());
}

#[test]
fn a_weight_told_later_counts_at_the_age_at_which_it_was_taken() {
    let (wall, it) = weighed(30, 3200);
    let told = (
        wall,
        Weighing {
            taken: Some(wall),
            ..it
        },
    );
    let growth = feedside::growth::of(&super::pair(), &[weighed(72, 3250), told], super::hours(72));
    assert_eq!(growth.weight.unwrap().age.hours(), 72);
    assert_eq!(growth.gain.unwrap().hours, 42);
}

#[test]
fn only_before_and_then_after_clothed_alike_is_a_test_weighing() {
    // Common practice.
    use feedside::record::WeighingMoment::Routine;
    for (first, first_clothed, second, second_clothed) in [
        (Routine, true, AfterFeed, true),
        (BeforeFeed, true, Routine, true),
        (AfterFeed, true, BeforeFeed, true),
        (BeforeFeed, true, AfterFeed, false),
        (BeforeFeed, false, AfterFeed, true),
    ] {
        let all = test_weighings(&[
            weighed_as(70, 3300, first, first_clothed),
            weighed_as(71, 3360, second, second_clothed),
        ]);
        assert!(all.is_empty(), "{first:?}, {second:?}");
    }
}

#[test]
fn the_interval_on_a_ward_scale_holds_the_published_limits() {
    // Savenije and Brand 2006: 95 % limits -12.4 to +15 ml.
    let it = one(&[
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(71, 3360, AfterFeed, true),
    ]);
    assert!(it.low_ml <= 58 - 13 && 58 + 13 <= it.high_ml);
}

#[test]
fn repeats_that_agree_make_the_interval_narrower() {
    let single = one(&[
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(71, 3360, AfterFeed, true),
    ]);
    let twice = one(&[
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(71, 3360, AfterFeed, true),
        weighed_as(71, 3360, AfterFeed, true),
    ]);
    assert_eq!(twice.repeats, (2, 2));
    assert!(twice.high_ml - twice.low_ml < single.high_ml - single.low_ml);
}

#[test]
fn a_difference_that_the_scale_cannot_tell_is_never_a_negative_intake() {
    for after in [3250, 3300, 3305] {
        let it = one(&[
            weighed_as(70, 3300, BeforeFeed, true),
            weighed_as(71, after, AfterFeed, true),
        ]);
        assert!(it.below_resolution, "{after}");
        assert!(0 <= it.tenths_ml && 0 <= it.low_ml && 0 <= it.high_ml);
    }
}

#[test]
fn clothes_taken_off_between_make_no_test_weighing() {
    let two = [
        weighed_as(70, 3300, BeforeFeed, true),
        weighed_as(71, 3360, AfterFeed, false),
    ];
    assert!(test_weighings(&two).is_empty());
}

#[test]
fn a_feed_of_more_than_three_hours_makes_no_test_weighing() {
    let apart = |hours: i64| {
        test_weighings(&[
            weighed_as(70, 3300, BeforeFeed, true),
            weighed_as(70 + hours, 3360, AfterFeed, true),
        ])
    };
    assert_eq!(apart(3).len(), 1);
    assert!(apart(4).is_empty());
}

#[test]
fn gain_per_day_is_over_the_time_between() {
    let it = gain(&[weighed(96, 3200), weighed(144, 3260)]).unwrap();
    assert_eq!((it.grams, it.per_day, it.hours), (60, 30, 48));
    assert!(it.low < 30 && 30 < it.high);
}

#[test]
fn two_weights_less_than_24_hours_apart_give_no_gain() {
    assert!(gain(&[weighed(96, 3200), weighed(119, 3230)]).is_none());
    assert!(gain(&[weighed(96, 3200), weighed(120, 3230)]).is_some());
}

#[test]
fn the_gain_is_taken_over_the_last_24_to_72_hours_where_that_can_be() {
    let three = [weighed(24, 3300), weighed(96, 3200), weighed(144, 3260)];
    assert_eq!(gain(&three).unwrap().hours, 48);
    let far = [weighed(24, 3300), weighed(48, 3200), weighed(200, 3300)];
    assert_eq!(gain(&far).unwrap().hours, 152);
}

#[test]
fn weights_after_a_feed_and_in_other_clothes_are_not_compared() {
    assert!(gain(&[weighed(96, 3200), weighed_as(144, 3260, AfterFeed, false)]).is_none());
    assert!(gain(&[weighed_as(96, 3200, BeforeFeed, true), weighed(144, 3260)]).is_none());
}

#[test]
fn repeats_on_both_sides_tell_what_handling_adds_and_one_side_alone_does_not() {
    // Spreads of 4 and 6 g with 5 g steps: 8.19 g; otherwise 14 g (Savenije and Brand 2006) and the
    // step: 14.53 g. Density 1.03.
    let before = [(70, 3300), (70, 3304)].map(|(at, g)| weighed_as(at, g, BeforeFeed, true));
    let after = [(71, 3360), (71, 3366)].map(|(at, g)| weighed_as(at, g, AfterFeed, true));
    let all = [before.as_slice(), after.as_slice()].concat();
    let it = test_weighings(&all)[0];
    assert_eq!((it.grams, it.low_ml, it.high_ml), (61, 51, 68));
    let one_after = [before.as_slice(), &after[..1]].concat();
    let it = test_weighings(&one_after)[0];
    assert_eq!((it.grams, it.low_ml, it.high_ml), (58, 42, 71));
    let one_before = [&before[..1], after.as_slice()].concat();
    let it = test_weighings(&one_before)[0];
    assert_eq!((it.grams, it.low_ml, it.high_ml), (63, 47, 76));
}

#[test]
fn three_hours_are_the_longest_from_before_to_after() {
    let fed = |after| {
        test_weighings(&[
            weighed_as(70, 3300, BeforeFeed, true),
            weighed_as(after, 3350, AfterFeed, true),
        ])
        .len()
    };
    assert_eq!((fed(73), fed(74)), (1, 0));
}
