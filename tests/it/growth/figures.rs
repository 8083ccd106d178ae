//! All figures of a pair together, and their JSON.

use feedside::growth::Age;
use feedside::growth::{Caution, MissingForGrowth, RULE_VERSION, json, median_loss, of};
use feedside::record::WeighingMoment::{AfterFeed, BeforeFeed};
use feedside::record::{Gestation, Sex, WayOfBirth};
use proptest::prelude::*;

use super::{hours, pair, weighed, weighed_as};

#[test]
fn an_ordinary_third_day_has_every_figure_but_a_regained_birth_weight() {
    let it = of(&pair(), &[weighed(24, 3360), weighed(72, 3220)], hours(73));
    assert_eq!(it.age.unwrap().hours(), 73);
    assert_eq!(it.weight.unwrap().change.unwrap().tenths_percent(), -80);
    assert_eq!(it.line.unwrap().line_tenths, 119);
    assert!(!it.line.unwrap().below);
    assert_eq!(it.expected.unwrap().from_day, 3);
    assert_eq!(it.gain.unwrap().per_day, -70);
    assert!(it.z.is_some() && it.centile.is_some());
    assert_eq!(it.back_at, None);
    assert_eq!(it.missing, []);
    assert_eq!(it.cautions, [Caution::UkEarlyDays]);
}

#[test]
fn a_pair_of_which_nothing_is_known_says_what_is_missing() {
    let mut unknown = pair();
    unknown.birth_weight = None;
    unknown.way_of_birth = None;
    unknown.sex = Sex::NotStated;
    let it = of(&unknown, &[], hours(30));
    assert_eq!(
        it.missing,
        [
            MissingForGrowth::BirthWeight,
            MissingForGrowth::Weight,
            MissingForGrowth::Sex,
            MissingForGrowth::WayOfBirth,
            MissingForGrowth::SecondWeight,
        ]
    );
    assert!(it.weight.is_none() && it.z.is_none() && it.line.is_none());
}

#[test]
fn before_birth_nothing_is_computed_and_birth_is_named() {
    let it = of(&pair(), &[], hours(-1));
    assert_eq!(it.age, None);
    assert_eq!(it.expected, None);
    assert!(it.missing.contains(&MissingForGrowth::Birth));
}

#[test]
fn a_bare_weight_counts_before_a_later_clothed_one_which_is_shown_beside_it() {
    let it = of(
        &pair(),
        &[weighed(48, 3300), weighed_as(72, 3400, BeforeFeed, true)],
        hours(73),
    );
    assert_eq!(it.weight.unwrap().grams.value(), 3300);
    assert_eq!(it.clothed_since.unwrap().grams.value(), 3400);
    assert_eq!(it.cautions, [Caution::UkEarlyDays, Caution::Clothed]);
}

#[test]
fn a_weight_before_the_feed_counts_rather_than_the_one_after_it() {
    let feed = |before_at| {
        of(
            &pair(),
            &[
                weighed_as(before_at, 3200, BeforeFeed, false),
                weighed_as(72, 3260, AfterFeed, false),
            ],
            hours(73),
        )
        .weight
        .unwrap()
        .grams
        .value()
    };
    assert_eq!(feed(71), 3200);
    assert_eq!(feed(48), 3260);
}

#[test]
fn weights_are_taken_in_the_order_of_their_times() {
    let there = of(&pair(), &[weighed(24, 3360), weighed(72, 3220)], hours(73));
    let back = of(&pair(), &[weighed(72, 3220), weighed(24, 3360)], hours(73));
    assert_eq!(there, back);
}

#[test]
fn birth_weight_is_regained_at_the_first_weighing_that_shows_it() {
    let it = of(
        &pair(),
        &[
            weighed(10, 3500),
            weighed(72, 3220),
            weighed(240, 3500),
            weighed(300, 3600),
        ],
        hours(310),
    );
    // The one at ten hours of age is too soon to have been lost and regained.
    assert_eq!(it.back_at.unwrap().hours(), 240);
}

#[test]
fn the_uk_caution_ends_at_day_fourteen() {
    let cautions = |at| of(&pair(), &[weighed(at, 3600)], hours(at)).cautions;
    assert_eq!(cautions(14 * 24 - 1), [Caution::UkEarlyDays]);
    assert_eq!(cautions(14 * 24), []);
}

#[test]
fn a_baby_born_before_37_weeks_has_its_caution() {
    let early = |weeks, days| {
        let mut it = pair();
        it.gestation = Some(Gestation::weeks_days(weeks, days).unwrap());
        of(&it, &[], hours(30)).cautions.contains(&Caution::Preterm)
    };
    assert!(early(36, 6));
    assert!(!early(37, 0));
}

#[test]
fn medians_are_the_published_ones_by_way_of_birth() {
    // Flaherman et al. 2015, Pediatrics 135:e16.
    let at = |way, h| median_loss(way, Age::of_hours(h)).map(|it| (it.hours, it.tenths));
    assert_eq!(at(WayOfBirth::Vaginal, 24), Some((24, 42)));
    assert_eq!(at(WayOfBirth::Assisted, 48), Some((48, 71)));
    assert_eq!(at(WayOfBirth::Vaginal, 72), Some((72, 64)));
    assert_eq!(at(WayOfBirth::Caesarean, 24), Some((24, 49)));
    assert_eq!(at(WayOfBirth::Caesarean, 48), Some((48, 80)));
    assert_eq!(at(WayOfBirth::Caesarean, 72), Some((72, 86)));
    assert_eq!(at(WayOfBirth::Caesarean, 96), Some((96, 58)));
    assert_eq!(at(WayOfBirth::Vaginal, 36), Some((48, 71)));
    assert_eq!(at(WayOfBirth::Vaginal, 11), None);
    assert_eq!(at(WayOfBirth::Vaginal, 85), None);
}

#[test]
fn the_json_has_the_numbers_and_the_rule_s_version() {
    let it = json(&of(&pair(), &[weighed(72, 3150)], hours(73)));
    assert_eq!(it["rule_version"], RULE_VERSION);
    assert_eq!(it["age"]["hours"], 73);
    assert_eq!(it["weight"]["change"]["percent"], -10.0);
    assert_eq!(it["weight"]["change"]["more_than_ten_percent_lost"], false);
    assert_eq!(it["sds_line"]["percent"], -11.9);
    assert_eq!(it["median_loss"]["hours"], 72);
    assert_eq!(it["expected_output"]["wet_least"], 3);
    assert_eq!(it["gain"], serde_json::Value::Null);
    assert_eq!(it["missing"], serde_json::json!(["second_weight"]));
}

proptest! {
    #[test]
    fn any_weights_at_any_times_give_figures_and_a_json(
        weights in proptest::collection::vec((-100i64..2000, 1i64..30_000, any::<bool>()), 0..12),
        at in -10i64..3000,
    ) {
        let weighings: Vec<_> = weights
            .iter()
            .map(|(h, g, clothed)| weighed_as(*h, *g, BeforeFeed, *clothed))
            .collect();
        let it = of(&pair(), &weighings, hours(at));
        let _ = json(&it);
        if let Some(weight) = it.weight {
            prop_assert!(0 <= weight.age.hours() && weight.age <= it.age.unwrap());
        }
    }
}

#[test]
fn a_clothed_weight_counts_as_since_only_after_the_bare_one() {
    let clothed = |at| super::weighed_as(at, 3500, feedside::record::WeighingMoment::Routine, true);
    let since = |weighings: &[_]| {
        feedside::growth::of(&super::pair(), weighings, super::hours(90)).clothed_since
    };
    assert!(since(&[super::weighed(70, 3300), clothed(71)]).is_some());
    assert!(since(&[clothed(69), super::weighed(70, 3300)]).is_none());
    assert!(since(&[super::weighed(70, 3300), clothed(70)]).is_none());
}

#[test]
fn a_gain_is_taken_over_72_hours_at_most_where_it_can_be_and_its_spread_holds_the_step() {
    use super::{hours, weighed};
    let three = [weighed(100, 3300), weighed(124, 3310), weighed(172, 3370)];
    assert_eq!(feedside::growth::gain(&three).unwrap().from, hours(100));
    // 50 g steps: 38.8 g of rounding and 14 g of handling are 41.3 g.
    let coarse = |at, grams| {
        let (at, mut it) = weighed(at, grams);
        it.step = Some(feedside::record::ScaleStep::new(50).unwrap());
        (at, it)
    };
    let it = feedside::growth::gain(&[coarse(100, 3300), coarse(124, 3360)]).unwrap();
    assert_eq!((it.per_day, it.low, it.high), (60, 18, 102));
}

#[test]
fn the_weight_before_a_feed_counts_for_the_one_up_to_three_hours_after() {
    use feedside::record::WeighingMoment::{AfterFeed, BeforeFeed};
    let counting = |after| {
        let all = [
            super::weighed_as(70, 3300, BeforeFeed, false),
            super::weighed_as(after, 3350, AfterFeed, false),
        ];
        let growth = feedside::growth::of(&super::pair(), &all, super::hours(90));
        i64::from(growth.weight.unwrap().grams)
    };
    assert_eq!(
        (counting(72), counting(73), counting(74)),
        (3300, 3300, 3350)
    );
}
