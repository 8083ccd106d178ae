//! Weights asked about. Source: common practice (slips of typing, unit and order);
//! 2.2046 pounds in a kilogram (international pound).

use feedside::growth::{Checked, Question, questions};
use feedside::record::WeighingMoment::{AfterFeed, BeforeFeed};
use feedside::record::{Pair, WallTime, Weighing};

use super::{grams, hours, pair, weighed, weighed_as};

fn why(weighings: &[(WallTime, Weighing)]) -> Vec<Question> {
    let asked = questions(&pair(), weighings, &Checked::default(), hours(200));
    asked.into_iter().map(|it| it.why).collect()
}

#[test]
fn an_ordinary_course_raises_no_question() {
    assert!(why(&[weighed(24, 3360), weighed(72, 3220), weighed(150, 3400)]).is_empty());
}

#[test]
fn a_slip_of_a_factor_of_ten_is_asked_about_both_ways() {
    assert_eq!(why(&[weighed(72, 330)]), [Question::FactorOfTen]);
    assert_eq!(why(&[weighed(72, 30_000)]), [Question::FactorOfTen]);
}

#[test]
fn after_a_slip_the_next_weight_is_held_against_the_last_good_one() {
    assert_eq!(
        why(&[weighed(72, 330), weighed(96, 3300)]),
        [Question::FactorOfTen]
    );
}

#[test]
fn pounds_typed_for_kilograms_are_asked_about() {
    // 3.3 kg are 7.28 pounds.
    assert_eq!(why(&[weighed(72, 7280)]), [Question::Pounds]);
}

#[test]
fn a_baby_of_five_months_that_has_doubled_its_weight_is_not_asked_about() {
    // Birth weight doubles at about four to five months (WHO 2006 medians: 3.35 kg, 7.0 kg at 4 months).
    let five_months = 150 * 24;
    let asked = questions(
        &pair(),
        &[weighed(five_months, 7500)],
        &Checked::default(),
        hours(five_months),
    );
    assert!(asked.is_empty(), "{asked:?}");
}

#[test]
fn before_and_after_swapped_are_asked_about_beyond_what_handling_explains() {
    let feed = |after| {
        why(&[
            weighed_as(70, 3300, BeforeFeed, true),
            weighed_as(71, after, AfterFeed, true),
        ])
    };
    assert!(feed(3270).is_empty());
    assert_eq!(feed(3269), [Question::Swapped]);
}

#[test]
fn before_and_after_belong_to_one_feed_up_to_three_hours_apart() {
    // Common practice: no feed with its weighings takes longer.
    let feed = |apart_h: i64| {
        why(&[
            weighed_as(70, 3300, BeforeFeed, true),
            weighed_as(70 + apart_h, 3260, AfterFeed, true),
        ])
    };
    assert_eq!(feed(3), [Question::Swapped]);
    assert!(feed(4).is_empty());
}

#[test]
fn a_weight_before_birth_or_later_than_now_is_asked_about() {
    assert_eq!(why(&[weighed(-1, 3300)]), [Question::BeforeBirth]);
    assert_eq!(why(&[weighed(201, 3300)]), [Question::AfterNow]);
}

#[test]
fn an_implausible_birth_weight_is_asked_about() {
    let mut tiny = pair();
    tiny.birth_weight = Some(grams(350));
    let asked = questions(&tiny, &[], &Checked::default(), hours(10));
    assert_eq!(asked[0].why, Question::Implausible);
}

#[test]
fn a_loss_within_three_days_is_asked_about_beyond_fifteen_percent_and_a_gain_beyond_ten() {
    // Macdonald et al. 2003, ADC-FN 88:F472: the 97.5th centile of the largest loss is 12.8 %.
    // Common practice for the gain. 15 % of the 3500 g at birth are 525 g.
    assert!(why(&[weighed(72, 2975)]).is_empty());
    assert_eq!(why(&[weighed(72, 2974)]), [Question::Jump]);
    assert!(why(&[weighed(72, 3850)]).is_empty());
    assert_eq!(why(&[weighed(72, 3851)]), [Question::Jump]);
}

#[test]
fn a_change_over_more_than_three_days_is_no_jump() {
    assert!(why(&[weighed(73, 2974)]).is_empty());
    assert!(why(&[weighed(72, 3300), weighed(145, 3900)]).is_empty());
    assert_eq!(
        why(&[weighed(72, 3300), weighed(144, 3900)]),
        [Question::Jump]
    );
}

#[test]
fn one_digit_typed_wrong_is_asked_about_alone() {
    assert_eq!(
        why(&[weighed(48, 3310), weighed(72, 4310), weighed(96, 3340)]),
        [Question::Jump]
    );
}

#[test]
fn two_weights_that_agree_after_a_jump_end_the_question() {
    assert_eq!(
        why(&[weighed(48, 3310), weighed(72, 3900), weighed(90, 3910)]),
        [Question::Jump]
    );
}

#[test]
fn clothes_are_no_jump() {
    let dressed = weighed_as(72, 4000, feedside::record::WeighingMoment::Routine, true);
    assert!(why(&[weighed(48, 3310), dressed]).is_empty());
}

#[test]
fn a_baby_born_early_is_not_held_against_the_standard_of_term() {
    // WHO Child Growth Standards 2006 are for babies born at term.
    let mut early = pair();
    early.birth_weight = Some(grams(700));
    let asked =
        |pair: &Pair| questions(pair, &[weighed(24, 690)], &Checked::default(), hours(30)).len();
    early.gestation = Some(feedside::record::Gestation::weeks_days(36, 6).unwrap());
    assert_eq!(asked(&early), 0);
    early.gestation = Some(feedside::record::Gestation::weeks_days(37, 0).unwrap());
    assert_eq!(asked(&early), 2);
}

#[test]
fn a_slip_is_one_within_a_quarter_of_ten_and_a_seventh_of_a_pound() {
    // Common practice. Against 3500 g: a tenth from 12.5 to 7.5 times less, pounds from 1.875 to
    // 2.535 times more.
    assert_eq!(why(&[weighed(72, 280)]), [Question::FactorOfTen]);
    assert_eq!(why(&[weighed(72, 279)]), [Question::Implausible]);
    assert_eq!(why(&[weighed(72, 466)]), [Question::FactorOfTen]);
    assert_eq!(why(&[weighed(72, 467)]), [Question::Implausible]);
    assert_eq!(why(&[weighed(72, 6563)]), [Question::Pounds]);
    assert_ne!(why(&[weighed(72, 6562)]), [Question::Pounds]);
    assert_eq!(why(&[weighed(72, 8872)]), [Question::Pounds]);
    assert_ne!(why(&[weighed(72, 8873)]), [Question::Pounds]);
}
