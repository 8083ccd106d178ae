//! How gaps of a run fit a beat: the hand's unsteadiness belongs to both gaps about a tap.
//!
//! The values are scipy 1.17.1's, on numpy 2.4.6, of the same gaps as one normal vector whose
//! neighbours share the tap between them:
//!
//! ```text
//! def ln(mean, spread, hand, gaps):
//!     variance = np.eye(len(gaps)) * spread**2
//!     for i in range(len(gaps) - 1):
//!         variance[i, i + 1] = variance[i + 1, i] = -0.5 * hand * spread**2
//!     return multivariate_normal(np.full(len(gaps), mean), variance).logpdf(gaps)
//! ```

use feedside::record::{Tap, TapWhat};
use feedside::rhythm::{Beat, Phase, of, run_ln};

fn beat(gap_ms: f64, spread_ms: f64, hand_share: f64) -> Beat {
    Beat {
        gap_ms,
        spread_ms,
        hand_share,
        missed: 0.0,
    }
}

#[test]
fn gaps_of_a_run_fit_as_a_normal_vector_does() {
    // After five gaps a gap is taken as one long after: that is the tolerance.
    let cases: [(Beat, &[f64], f64, f64); 4] = [
        (
            beat(560.0, 60.0, 0.5),
            &[585.0, 520.0, 610.0, 540.0, 560.0, 530.0, 600.0, 555.0],
            -40.676_932_212_615_455,
            1e-5,
        ),
        (
            beat(667.0, 55.0, 0.8),
            &[690.0, 640.0, 700.0, 630.0, 668.0],
            -24.644_198_351_889_685,
            1e-9,
        ),
        (
            beat(560.0, 60.0, 0.0),
            &[585.0, 520.0, 610.0, 540.0],
            -20.764_937_937_262_65,
            1e-9,
        ),
        (
            beat(600.0, 80.0, 0.3),
            &[
                500.0, 700.0, 610.0, 590.0, 640.0, 560.0, 580.0, 640.0, 555.0, 610.0, 600.0, 590.0,
            ],
            -65.391_222_788_398_82,
            1e-6,
        ),
    ];
    for (beat, gaps_ms, ln, tolerance) in cases {
        let given = run_ln(beat, gaps_ms);
        assert!((given - ln).abs() < tolerance, "{given} for {ln}: {beat:?}");
    }
}

#[test]
fn a_long_gap_followed_by_a_short_one_fits_better_than_two_long_ones() {
    let hand = beat(560.0, 60.0, 0.6);
    assert!(run_ln(hand, &[640.0, 640.0]) < run_ln(hand, &[640.0, 480.0]));
    // Without a hand it is all the same.
    let jaw = beat(560.0, 60.0, 0.0);
    assert_eq!(run_ln(jaw, &[640.0, 640.0]), run_ln(jaw, &[640.0, 480.0]));
}

#[test]
fn a_gap_of_two_beats_is_one_suck_missed() {
    // log(0.93 * 0.07 * norm(1120, 60 * sqrt(2)).pdf(1150)); that it may fit nothing adds a little.
    let missed = Beat {
        missed: 0.07,
        ..beat(560.0, 60.0, 0.0)
    };
    let ln = -8.154_187_4;
    let given = run_ln(missed, &[1_150.0]);
    assert!(ln < given && given < ln + 0.02, "{given}");
}

#[test]
fn a_gap_that_fits_nothing_costs_no_more_than_an_odd_one() {
    // One gap in a hundred may be anything up to 4 s: see the room's numbers.
    let least = (0.01_f64 / 4_000.0).ln();
    for gap_ms in [160.0, 300.0, 860.0, 1_400.0, 3_900.0] {
        let given = run_ln(beat(560.0, 30.0, 0.5), &[gap_ms]);
        assert!(least <= given && given < least + 3.0, "{gap_ms}: {given}");
    }
}

/// Runs of twelve sucks, every other one slower by a quarter; a swallow at each sixth suck.
fn two_paces() -> Vec<Tap> {
    let mut taps = Vec::new();
    let mut at_ms = 0;
    for run in 0..40 {
        // A hand departs by up to 30 ms, to and fro.
        let gap_ms = if run % 2 == 0 { 520 } else { 650 };
        for suck in 0..12_u64 {
            let late_ms = (suck * 7 + run * 3) % 31;
            let what = if suck % 6 == 3 {
                TapWhat::SuckSwallow
            } else {
                TapWhat::Suck
            };
            taps.push(Tap::new(at_ms + late_ms, what));
            at_ms += gap_ms;
        }
        at_ms += 4_000;
    }
    taps
}

#[test]
fn a_run_slower_than_the_next_is_no_other_phase() {
    let summary = of(&two_paces());
    let sucking = summary.phases.iter().map(|it| it.phase);
    let sucking: Vec<Phase> = sucking.filter(|it| *it != Phase::Rest).collect();
    let changes = sucking.windows(2).filter(|it| it[0] != it[1]).count();
    assert!(changes <= 2, "{changes} changes of phase in 40 runs");
}
