//! The arithmetic of the intervals against a library that is not ours, on stored vectors.

use feedside::rhythm::student_95;

/// As near as this, relative.
const NEAR: f64 = 1e-9;

#[test]
fn students_t_is_that_of_scipy() {
    // scipy 1.17.1. The file was printed by this script:
    //   from scipy.stats import t
    //   print("freedom,t")
    //   for n in [2, 2.5, 3, 3.3, 4, 5, 6.75, 7.5, 10, 14.2, 20, 30, 42.5, 60, 120, 365.25, 1000, 20000]:
    //       print(f"{n},{float(t.ppf(0.975, n))!r}")
    let stored = include_str!("../../data/rhythm/student-by-scipy.csv");
    let mut count = 0;
    for line in stored.lines().skip(1) {
        let (freedom, expected) = line.split_once(',').unwrap();
        let (freedom, expected): (f64, f64) = (freedom.parse().unwrap(), expected.parse().unwrap());
        let given = student_95(freedom);
        assert!(
            (given / expected - 1.0).abs() < NEAR,
            "{freedom}: {given} {expected}"
        );
        count += 1;
    }
    assert_eq!(count, 18);
}

#[test]
fn fewer_than_two_degrees_of_freedom_count_as_two() {
    assert_eq!(student_95(0.0), student_95(2.0));
}
