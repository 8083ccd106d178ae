//! The arithmetic of the intervals against a library that is not ours, on stored vectors.

use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Rate, alike, interval, of, ratio, student_95, way};

use super::sucks;

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

#[test]
fn the_ratio_of_clusters_of_one_size_is_that_of_a_weighted_regression() {
    // statsmodels 0.15.0 and numpy 2.4.6; tops on bottoms through the origin, weighed by one over
    // the bottom, with robust errors:
    //   model = sm.WLS(tops, bottoms, weights=1 / bottoms)
    //   alone = model.fit(cov_type='HC1')
    //   beside = model.fit(cov_type='HAC', cov_kwds={'maxlags': 2, 'use_correction': True})
    //   print(beside.params[0], alone.bse[0]**2 / params**2, beside.bse[0]**2 / params**2)
    let apart = [12.0, 9.0, 14.0, 11.0, 8.0, 13.0, 15.0, 10.0];
    let alike = [3.0, 5.0, 4.0, 8.0, 9.0, 7.0, 6.0, 2.0, 4.0, 5.0];
    for (tops, bottom, value, between) in [
        // Neighbours that differ more than others make nothing more certain: as if alone.
        (&apart[..], 40.0, 0.2875, 0.005_671_077_504_725_896),
        (&alike[..], 25.0, 0.212, 0.026_367_627_862_821_89),
    ] {
        let clusters: Vec<(f64, f64)> = tops.iter().map(|top| (*top, bottom)).collect();
        let given = ratio(&[clusters], 0.0).unwrap();
        assert!((given.value / value - 1.0).abs() < NEAR, "{given:?}");
        assert!((given.between / between - 1.0).abs() < NEAR, "{given:?}");
        assert!((given.freedom - (tops.len() as f64 - 1.0)).abs() < NEAR);
        assert_eq!(given.strata, 0.0);
    }
}

#[test]
fn how_far_neighbours_depart_alike_is_their_autocovariance() {
    // statsmodels 0.15.0, of tops over their mean:
    //   acovf(tops / np.mean(tops), adjusted=True, demean=True, fft=False)[1]
    for (tops, expected) in [
        (
            &[12.0, 9.0, 14.0, 11.0, 8.0, 13.0, 15.0, 10.0][..],
            -0.013_232_514_177_693_762,
        ),
        (
            &[3.0, 5.0, 4.0, 8.0, 9.0, 7.0, 6.0, 2.0, 4.0, 5.0][..],
            0.068_865_946_758_435_2,
        ),
    ] {
        let clusters: Vec<(f64, f64)> = tops.iter().map(|top| (*top, 40.0)).collect();
        let (product, pairs) = alike(&[clusters]);
        assert!((product / expected - 1.0).abs() < NEAR, "{product}");
        assert!((pairs - (tops.len() as f64 - 1.0)).abs() < NEAR, "{pairs}");
    }
    assert_eq!(alike(&[]), (0.0, 0.0));
    assert_eq!(alike(&[vec![(3.0, 40.0)]]), (0.0, 0.0));
}

#[test]
fn an_interval_of_two_uncertainties_is_that_of_scipy() {
    // scipy 1.17.1, with the degrees of freedom of Satterthwaite (1946, Biometrics Bulletin 2:110):
    //   freedom = freedom * ((part + known) / part)**2 if part > 0 else 1e9
    //   width = np.exp(t.ppf(0.975, freedom) * np.sqrt(part + known))
    //   print(min(value, centre / width), max(value, centre * width))
    for (value, centre, part, freedom, known, low, high) in [
        (
            5.0,
            4.6,
            0.01,
            7.0,
            0.0,
            3.631_311_501_976_918_4,
            5.827_095_799_542_48,
        ),
        (
            5.0,
            4.6,
            0.01,
            7.0,
            0.02,
            3.254_158_016_941_387,
            6.502_450_062_301_668,
        ),
        (
            72.0,
            72.0,
            0.0004,
            12.0,
            0.0001,
            68.705_029_568_890_72,
            75.452_991_324_339_5,
        ),
        (
            9.0,
            9.0,
            0.04,
            2.5,
            0.001,
            4.471_686_313_428_115_5,
            18.113_971_849_224_64,
        ),
    ] {
        let given = interval(value, centre, (part, freedom), known);
        assert!((given.low / low - 1.0).abs() < NEAR, "{given:?}");
        assert!((given.high / high - 1.0).abs() < NEAR, "{given:?}");
    }
    // Nothing estimated: the normal distribution, as near as ten thousand degrees of freedom.
    let given = interval(2.5, 2.2, (0.0, 3.0), 0.0025);
    assert!((given.low / 1.994_631_179_896_770_6 - 1.0).abs() < 1e-4);
    assert_eq!(given.high, 2.5);
}

/// Two kinds of runs by turns, twelve of each: at 90 sucks a minute with every second suck a
/// swallow, and at 70 with every fourth.
fn of_two_kinds() -> Vec<Tap> {
    (0..24)
        .flat_map(|run| {
            let (gap_ms, nth) = if run % 2 == 0 { (667, 2) } else { (857, 4) };
            sucks(run * 20_000, gap_ms, 16, nth)
        })
        .collect()
}

#[test]
fn what_was_done_in_a_feed_watched_throughout_is_surer_than_the_babys_way() {
    let taps = of_two_kinds();
    let summary = of(&taps);
    let done = summary.rates.last().unwrap();
    let way = way(&taps);
    let width = |rate: Option<Rate>| rate.map(|it| it.high / it.low).unwrap();
    assert!(width(done.sucks_per_min) < width(way.sucks_per_min));
    assert!(width(done.sucks_per_swallow) < width(way.sucks_per_swallow));
}

#[test]
fn what_was_not_watched_makes_what_was_done_less_sure() {
    let watched = of_two_kinds();
    let mut taps = watched.clone();
    let from = At::ms(24 * 20_000);
    taps.push(Tap {
        at: from,
        what: TapWhat::Unwatched,
    });
    taps.push(Tap {
        at: from.plus_ms(300_000),
        what: TapWhat::Watched,
    });
    taps.extend(sucks(from.as_ms() + 301_000, 667, 16, 2));
    let width = |taps: &[Tap]| {
        let summary = of(taps);
        let done = summary.rates.last().unwrap().sucks_per_min.unwrap();
        done.high / done.low
    };
    assert!(width(&watched) < width(&taps));
}
