//! Lines for the eye. Sources: van Dommelen et al. 2007, ADC 92:490 (-2.5 SDS); Flaherman et al.
//! 2015, Pediatrics 135:e16 (medians); Paul et al. 2016, Pediatrics 138:e20162625 (days to birth
//! weight); WHO Child Growth Standards 2006, weight for age.

use feedside::growth::{
    Age, Change, LineAgainst, median_back_day, median_line, median_loss, median_losses, sds_line,
    weight_at_sd, z,
};
use feedside::record::{Grams, Sex, WayOfBirth};
use proptest::prelude::*;

use super::grams;

fn of(points: &[feedside::growth::LinePoint]) -> Vec<(i64, i64)> {
    points
        .iter()
        .map(|it| (it.age.hours(), it.grams.into()))
        .collect()
}

#[test]
fn the_line_of_a_baby_of_4000_g_has_the_published_losses_by_day() {
    // 11.1, 11.9, 11.8, 11.3, 11.0, 10.6, 10.2, 9.8, 9.6, 9.5 % of 4000 g.
    let days: Vec<i64> = (2..=11).map(|day| day * 24).collect();
    let weights = [3556, 3524, 3528, 3548, 3560, 3576, 3592, 3608, 3616, 3620];
    let expected: Vec<_> = days.into_iter().zip(weights).collect();
    assert_eq!(of(&sds_line(grams(4000))), expected);
}

#[test]
fn the_medians_of_a_baby_of_4000_g_begin_at_its_birth_weight() {
    // 4.2, 7.1, 6.4 % vaginal; 4.9, 8.0, 8.6, 5.8 % caesarean, of 4000 g.
    let vaginal = [(0, 4000), (24, 3832), (48, 3716), (72, 3744)];
    let caesarean = [(0, 4000), (24, 3804), (48, 3680), (72, 3656), (96, 3768)];
    let line = |way| of(&median_line(grams(4000), way));
    assert_eq!(line(WayOfBirth::Vaginal), vaginal);
    assert_eq!(line(WayOfBirth::Assisted), vaginal);
    assert_eq!(line(WayOfBirth::Caesarean), caesarean);
}

#[test]
fn each_median_is_the_one_that_is_shown_at_its_hour() {
    for way in WayOfBirth::ALL {
        for it in median_losses(*way) {
            let age = Age::of_hours(u32::try_from(it.hours).unwrap());
            assert_eq!(median_loss(*way, age), Some(*it));
        }
    }
}

#[test]
fn half_of_the_babies_are_back_by_day_9_and_by_day_10_after_a_caesarean() {
    assert_eq!(median_back_day(WayOfBirth::Vaginal), 9);
    assert_eq!(median_back_day(WayOfBirth::Assisted), 9);
    assert_eq!(median_back_day(WayOfBirth::Caesarean), 10);
}

#[test]
fn the_standard_s_weights_are_the_published_ones() {
    // WHO 2006, kilograms: boys and girls at weeks 0, 4 and 13.
    for (sex, day, sd, weight) in [
        (Sex::Male, 0, 0.0, 3346),
        (Sex::Male, 0, -3.0, 2080),
        (Sex::Male, 28, -2.0, 3305),
        (Sex::Male, 91, 3.0, 8962),
        (Sex::Female, 0, 2.0, 4230),
        (Sex::Female, 28, 0.0, 4099),
        (Sex::Female, 91, -1.0, 5145),
    ] {
        assert_eq!(
            weight_at_sd(sex, day, sd),
            Some(grams(weight)),
            "{sex:?} {day} {sd}"
        );
    }
    assert_eq!(weight_at_sd(Sex::Male, 0, 3.01), None);
    assert_eq!(weight_at_sd(Sex::Male, 0, -3.01), None);
    assert_eq!(weight_at_sd(Sex::NotStated, 0, 0.0), None);
    assert_eq!(weight_at_sd(Sex::Male, 1827, 0.0), None);
    assert!(weight_at_sd(Sex::Male, 1826, 0.0).is_some());
}

proptest! {
    #[test]
    fn the_line_in_grams_is_the_edge_of_the_judgement(birth in 500i64..6000, day in 0usize..10) {
        let point = sds_line(grams(birth))[day];
        let below = |weight: Grams| {
            LineAgainst::of(Change::of(grams(birth), weight), point.age).unwrap().below
        };
        prop_assert!(!below(point.grams));
        prop_assert!(below(grams(i64::from(point.grams) - 1)));
    }

    #[test]
    fn a_weight_at_so_many_deviations_has_that_z(day in 0i64..1827, tenths in -29i32..30, boy in any::<bool>()) {
        let sex = if boy { Sex::Male } else { Sex::Female };
        let sd = f64::from(tenths) / 10.0;
        let weight = weight_at_sd(sex, day, sd).unwrap();
        // Half a gram is less than two thousandths of a deviation.
        prop_assert!((z(sex, day, weight).unwrap().exact() - sd).abs() < 0.002);
    }
}
