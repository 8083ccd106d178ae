//! Change from birth weight. Source of the edge: NICE NG75 (2017), 1.1: more than 10 %.

use feedside::growth::{Age, Change, LineAgainst, sds_line_tenths};
use proptest::prelude::*;

use super::grams;

fn change(birth: i64, now: i64) -> Change {
    Change::of(grams(birth), grams(now))
}

#[test]
fn a_loss_of_exactly_ten_percent_is_not_more_than_ten() {
    let exactly = change(3500, 3150);
    assert_eq!(exactly.tenths_percent(), -100);
    assert!(!exactly.lost_more_than_tenths(100));
}

#[test]
fn one_gram_more_than_ten_percent_is_more_though_it_shows_the_same() {
    let more = change(3500, 3149);
    assert_eq!(more.tenths_percent(), -100);
    assert!(more.lost_more_than_tenths(100));
}

#[test]
fn a_birth_weight_not_divisible_by_ten_has_its_edge_between_two_grams() {
    // 10 % of 3333 g is 333.3 g.
    assert!(!change(3333, 3000).lost_more_than_tenths(100));
    assert!(change(3333, 2999).lost_more_than_tenths(100));
}

#[test]
fn rounding_goes_half_away_from_zero() {
    // 1 of 2000 is 0.05 %, 3 of 2000 is 0.15 %.
    assert_eq!(change(2000, 1999).tenths_percent(), -1);
    assert_eq!(change(2000, 2001).tenths_percent(), 1);
    assert_eq!(change(2000, 1997).tenths_percent(), -2);
    assert_eq!(change(3000, 2999).tenths_percent(), 0);
    assert_eq!(change(3500, 3700).tenths_percent(), 57);
}

#[test]
fn birth_weight_is_reached_at_the_very_gram() {
    assert!(!change(3500, 3499).is_at_birth_weight());
    assert!(change(3500, 3500).is_at_birth_weight());
}

#[test]
fn the_line_is_the_published_one_on_days_2_to_11_only() {
    // van Dommelen et al. 2007, Arch Dis Child 92:490: 0.6th centile by day, birth = day 0.
    let published = [111, 119, 118, 113, 110, 106, 102, 98, 96, 95];
    for (day, line) in (2..).zip(published) {
        assert_eq!(
            sds_line_tenths(Age::of_hours(day * 24)),
            Some(line),
            "day {day}"
        );
        assert_eq!(
            sds_line_tenths(Age::of_hours(day * 24 + 23)),
            Some(line),
            "day {day}"
        );
    }
    assert_eq!(sds_line_tenths(Age::of_hours(47)), None);
    assert_eq!(sds_line_tenths(Age::of_hours(12 * 24)), None);
}

#[test]
fn a_loss_on_the_line_is_not_below_it() {
    // Day 3: 11.9 % of 4000 g is 476 g.
    let day_3 = Age::of_hours(72);
    assert!(
        !LineAgainst::of(change(4000, 4000 - 476), day_3)
            .unwrap()
            .below
    );
    assert!(
        LineAgainst::of(change(4000, 4000 - 477), day_3)
            .unwrap()
            .below
    );
}

proptest! {
    #[test]
    fn the_shown_change_is_within_half_a_tenth_of_the_true_one(birth in 400i64..6000, now in 300i64..9000) {
        let true_tenths = (now - birth) as f64 * 1000.0 / birth as f64;
        let shown = change(birth, now).tenths_percent() as f64;
        prop_assert!((shown - true_tenths).abs() <= 0.5 + 1e-9);
    }

    #[test]
    fn what_was_lost_beyond_a_limit_was_lost_beyond_each_lower_one(birth in 400i64..6000, now in 300i64..6000, limit in 1i64..300) {
        let it = change(birth, now);
        if it.lost_more_than_tenths(limit) {
            prop_assert!(it.lost_more_than_tenths(limit - 1));
        }
    }
}
