//! What splits a run and what does not.
//!
//! The edges are worked out from the rule in the room's page: 3.4 of the feed's usual gaps, at
//! least 2 s (a pause is a gap of more than 2 s: from memory, the usual definition in work on
//! nutritive sucking), at most 4 s. Rule: `rest-gap`.

use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Phase, REST_MS_CEILING, REST_MS_FLOOR, of};

use super::{holds, phase_at, sucks};

/// Two stretches of sucks with a gap between them.
fn two(gap_ms: u64, between_ms: u64) -> Vec<Tap> {
    let mut taps = sucks(0, gap_ms, 40, 3);
    let last = taps[39].at.as_ms();
    taps.extend(sucks(last + between_ms, gap_ms, 40, 3));
    taps
}

#[test]
fn runs_by_the_gap_between_them() {
    // Usual gap, gap between, runs: gaps are told to 20 ms, so the edges keep clear of that.
    let cases = [
        (667, 1_334, 1), // one suck missed at 90 a minute
        (667, 2_001, 1), // two missed
        (667, 2_100, 1),
        (667, 2_500, 2),
        (560, 1_680, 1), // two missed at 107 a minute
        (560, 2_000, 1), // exactly the floor is no rest
        (560, 2_100, 2),
        (1_000, 3_000, 1), // two missed at 60 a minute
        (1_000, 3_300, 1),
        (1_000, 3_600, 2),
        (1_500, 4_000, 1), // exactly the ceiling is no rest
        (1_500, 4_001, 2),
    ];
    for (gap_ms, between_ms, runs) in cases {
        let taps = two(gap_ms, between_ms);
        let summary = of(&taps);
        holds(&taps, &summary);
        assert_eq!(summary.runs.len(), runs, "{gap_ms} {between_ms}");
        assert_eq!(summary.rest_statistics.count as usize, runs - 1);
    }
    assert_eq!((REST_MS_FLOOR, REST_MS_CEILING), (2_000, 4_000));
}

#[test]
fn a_rest_begins_just_after_the_last_suck_of_its_run() {
    let taps = two(600, 8_000);
    let summary = of(&taps);
    let last = taps[39].at;
    assert_eq!(summary.runs[0].to, last.plus_ms(1));
    assert_eq!(phase_at(&summary, last.plus_ms(1)), Some(Phase::Rest));
    assert_ne!(phase_at(&summary, last), Some(Phase::Rest));
    assert_eq!(phase_at(&summary, last.plus_ms(7_999)), Some(Phase::Rest));
    assert_eq!(summary.totals_ms.rest, 7_999);
}

#[test]
fn every_seventh_suck_missed_changes_the_rate_by_less_than_two_percent() {
    let all = sucks(0, 650, 300, 0);
    let some: Vec<Tap> = all
        .iter()
        .enumerate()
        .filter(|(index, _)| index % 7 != 3)
        .map(|(_, tap)| *tap)
        .collect();
    let rate = |taps: &[Tap]| of(taps).rates.last().unwrap().sucks_per_min.unwrap();
    // 650 ms apart is 92.3 a minute: arithmetic.
    let told = rate(&some);
    assert!(
        (told.value / (60_000.0 / 650.0) - 1.0).abs() < 0.02,
        "{told:?}"
    );
    assert!(told.low < 60_000.0 / 650.0 && 60_000.0 / 650.0 < told.high);
    assert_eq!(of(&some).runs.len(), 1);
}

#[test]
fn looking_away_for_a_moment_within_a_run_splits_nothing() {
    let mut taps = sucks(0, 600, 20, 2);
    taps.insert(10, Tap::new(5_500, TapWhat::Unwatched));
    taps.insert(11, Tap::new(5_700, TapWhat::Watched));
    let summary = of(&taps);
    holds(&taps, &summary);
    assert_eq!(
        (
            summary.runs.len(),
            summary.totals_ms.rest,
            summary.totals_ms.unwatched
        ),
        (1, 0, 200)
    );
    assert_eq!(phase_at(&summary, At::ms(5_600)), Some(Phase::Unwatched));
}

#[test]
fn coming_off_splits_a_run_however_short() {
    let mut taps = sucks(0, 600, 20, 2);
    taps.insert(10, Tap::new(5_500, TapWhat::Off));
    taps.insert(11, Tap::new(5_800, TapWhat::On));
    let summary = of(&taps);
    holds(&taps, &summary);
    assert_eq!(
        (
            summary.runs.len(),
            summary.totals_ms.off,
            summary.totals_ms.rest
        ),
        (2, 300, 0)
    );
}
