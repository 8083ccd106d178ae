//! Agreement against outside libraries and worked examples, and what must always hold of it.

use feedside::practice::{Baby, HandLevel, Truth, counts, hand_seen, intraclass, kappa, simulate};
use feedside::record::{At, Tap, TapWhat};
use proptest::prelude::*;

fn digits(text: &str) -> Vec<u8> {
    text.bytes().collect()
}

#[test]
fn kappa_equals_that_of_an_outside_library() {
    // scikit-learn 1.9.1, `sklearn.metrics.cohen_kappa_score`, on categories drawn once with
    // numpy's `default_rng(20261125)`.
    let vectors = [
        (
            "110031120000122313201013033012101310003103033121113221232113",
            "110031110230122313201023033022102310003103333111121222232323",
            0.710_896_960_711_638_2,
            0.783_333_333_333_333_3,
        ),
        (
            "30120131114230230113232424342334220233211103212013134311220103104440040112412231323104411332231131244321022441032133412211431201344101102000212342343412041122204102340100311201231103213214012322000332",
            "32120141110243240314312440042414200234210130303013433434233133304420003111432232323131441142131431234321132232100034422114400112044304110440224242340412041111333443341100311011021233212214412221300332",
            0.404_015_056_461_731_5,
            0.525,
        ),
    ];
    for (first, second, expected, alike) in vectors {
        let pairs: Vec<_> = digits(first).into_iter().zip(digits(second)).collect();
        let found = kappa(&pairs).unwrap();
        assert!((found.kappa.unwrap() - expected).abs() < 1e-12);
        assert!((found.alike - alike).abs() < 1e-12);
    }
}

#[test]
fn kappa_of_nothing_or_of_one_category_is_not_told() {
    // Common practice: 0 / 0 is no agreement and no disagreement.
    assert!(kappa::<u8>(&[]).is_none());
    let same = kappa(&[(1, 1), (1, 1)]).unwrap();
    assert_eq!((same.alike, same.kappa), (1.0, None));
    assert_eq!(kappa(&[(1, 2), (1, 2)]).unwrap().kappa, Some(0.0));
}

#[test]
fn intraclass_correlation_equals_the_worked_example_and_an_outside_library() {
    // Shrout and Fleiss 1979, Psychol Bull 86:420, table 2: ICC(2,1) = 0.29; to more digits with
    // pingouin 0.7.0 (`intraclass_corr`, ICC(A,1)), which gave the second vector as well.
    let judges = [
        [9.0, 2.0, 5.0, 8.0],
        [6.0, 1.0, 3.0, 2.0],
        [8.0, 4.0, 6.0, 8.0],
        [7.0, 1.0, 2.0, 6.0],
        [10.0, 5.0, 6.0, 9.0],
        [6.0, 2.0, 4.0, 7.0],
    ];
    let rows: Vec<_> = judges.iter().map(|row| row.to_vec()).collect();
    assert!((intraclass(&rows).unwrap() - 0.289_763_779_527_559_16).abs() < 1e-9);
    let first = [
        39, 45, 49, 50, 35, 41, 39, 35, 35, 51, 37, 49, 44, 39, 33, 45, 52, 37, 47, 47,
    ];
    let second = [
        38, 43, 47, 49, 30, 36, 35, 29, 32, 45, 37, 44, 43, 36, 32, 44, 51, 33, 44, 46,
    ];
    let rows: Vec<_> = first
        .into_iter()
        .zip(second)
        .map(|(first, second)| vec![f64::from(first), f64::from(second)])
        .collect();
    assert!((intraclass(&rows).unwrap() - 0.876_597_995_709_289_2).abs() < 1e-9);
}

#[test]
fn intraclass_correlation_of_too_little_is_not_told() {
    // Common practice.
    assert!(intraclass(&[]).is_none());
    assert!(intraclass(&[vec![1.0, 2.0]]).is_none());
    assert!(intraclass(&[vec![1.0], vec![2.0]]).is_none());
    assert!(intraclass(&[vec![1.0, 2.0], vec![2.0]]).is_none());
    assert!(intraclass(&[vec![3.0, 3.0], vec![3.0, 3.0]]).is_none());
}

#[test]
fn only_whole_stretches_are_counted() {
    let times = [0, 29_999, 30_000, 65_000].map(At::ms);
    assert_eq!(counts(&times, At::ms(65_001)), [2, 1]);
}

fn truth() -> Truth {
    simulate(Baby::Established, HandLevel::Perfect.hand(), 5, 6).truth
}

/// The truth as a hand taps it that comes so late and misses every n-th.
fn tapped(truth: &Truth, late_ms: u64, missed_each: usize) -> Vec<Tap> {
    truth
        .sucks
        .iter()
        .enumerate()
        .filter(|(at, _)| missed_each == 0 || at % missed_each != 1)
        .map(|(_, (at, swallow))| Tap {
            at: at.plus_ms(late_ms),
            what: if *swallow {
                TapWhat::SuckSwallow
            } else {
                TapWhat::Suck
            },
        })
        .collect()
}

const END: At = At::ms(6 * 60_000);

#[test]
fn a_steady_lag_is_found_and_is_no_miss() {
    let truth = truth();
    for late_ms in [0, 60, 180, 320] {
        let seen = hand_seen(&truth, &tapped(&truth, late_ms, 0), END);
        assert_eq!(seen.tapped, seen.sucks, "{late_ms}");
        assert_eq!(seen.extra, 0);
        assert_eq!(seen.lag_ms, Some(late_ms as i64));
        assert_eq!(seen.unsteady_ms, Some(0));
        assert_eq!(seen.swallows_marked, seen.swallows);
    }
}

#[test]
fn every_tenth_suck_missed_is_a_tenth_missed() {
    let truth = truth();
    let seen = hand_seen(&truth, &tapped(&truth, 90, 10), END);
    let missed = truth
        .sucks
        .iter()
        .enumerate()
        .filter(|(at, _)| at % 10 == 1);
    assert_eq!((seen.sucks - seen.tapped) as usize, missed.count());
    assert_eq!(seen.extra, 0);
}

#[test]
fn a_hand_that_taps_nothing_has_no_lag() {
    let seen = hand_seen(&truth(), &[], END);
    assert_eq!((seen.tapped, seen.extra, seen.lag_ms), (0, 0, None));
}

#[test]
fn the_simulated_hands_are_found_as_noisy_as_they_were_made() {
    // The levels' own parameters are the truth here: misses within 4 points, and the median
    // departure of a normal distribution is 0.6745 of its standard deviation.
    for level in HandLevel::ALL {
        let (mut sucks, mut tapped, mut unsteady) = (0, 0, Vec::new());
        for seed in 0..20 {
            let it = simulate(Baby::Established, level.hand(), seed, 10);
            if it.taps.iter().any(|tap| tap.what == TapWhat::Unwatched) {
                continue;
            }
            let seen = hand_seen(&it.truth, &it.taps, At::ms(600_000));
            sucks += seen.sucks;
            tapped += seen.tapped;
            unsteady.push(seen.unsteady_ms.unwrap());
        }
        let missed = 1.0 - f64::from(tapped) / f64::from(sucks);
        assert!(
            (missed - level.hand().missed_suck).abs() < 0.04,
            "{level:?} {missed}"
        );
        unsteady.sort_unstable();
        let median = unsteady[unsteady.len() / 2] as f64;
        assert!(
            (median - 0.6745 * level.hand().jitter_ms).abs() < 6.0,
            "{level:?} {median}"
        );
    }
}

proptest! {
    #[test]
    fn matches_never_outnumber_sucks_or_taps(times in prop::collection::vec(0u64..360_000, 0..200)) {
        let mut times = times;
        times.sort_unstable();
        let taps: Vec<_> = times.iter().map(|ms| Tap::new(*ms, TapWhat::Suck)).collect();
        let seen = hand_seen(&truth(), &taps, END);
        prop_assert!(seen.tapped <= seen.sucks);
        prop_assert_eq!((seen.tapped + seen.extra) as usize, taps.len());
    }

    #[test]
    fn kappa_does_not_ask_who_came_first(pairs in prop::collection::vec((0u8..4, 0u8..4), 1..60)) {
        let turned: Vec<_> = pairs.iter().map(|(a, b)| (*b, *a)).collect();
        let (one, other) = (kappa(&pairs).unwrap(), kappa(&turned).unwrap());
        prop_assert!((one.by_chance - other.by_chance).abs() < 1e-12);
        prop_assert!(one.kappa.is_none_or(|it| (-1.0..=1.0 + 1e-12).contains(&it)));
    }
}
