//! Simulated feeds: well formed, the same for the same seed, and as noisy as asked for.

use feedside::practice::{Baby, Hand, HandLevel, MINUTES_MOST, TruthPhase, simulate, truth_json};
use feedside::record::{At, TapWhat};

#[test]
fn the_same_seed_gives_the_same_feed_and_another_seed_another() {
    for baby in Baby::ALL {
        let hand = HandLevel::Usual.hand();
        assert_eq!(simulate(*baby, hand, 5, 10), simulate(*baby, hand, 5, 10));
        assert_ne!(
            simulate(*baby, hand, 5, 10).taps,
            simulate(*baby, hand, 6, 10).taps
        );
    }
}

#[test]
fn two_hands_see_the_same_baby() {
    for seed in 0..6 {
        let truths = HandLevel::ALL
            .iter()
            .map(|it| simulate(Baby::Established, it.hand(), seed, 10).truth);
        let truths: Vec<_> = truths.collect();
        assert!(truths.windows(2).all(|pair| pair[0] == pair[1]));
    }
}

#[test]
fn taps_start_with_on_end_with_end_and_never_go_back() {
    for (seed, baby) in (0..30).zip(Baby::ALL.iter().cycle()) {
        for level in HandLevel::ALL {
            let taps = simulate(*baby, level.hand(), seed, 12).taps;
            assert_eq!(taps.first().map(|it| it.what), Some(TapWhat::On));
            assert_eq!(taps.last().map(|it| it.what), Some(TapWhat::End));
            assert!(taps.windows(2).all(|pair| pair[0].at <= pair[1].at));
        }
    }
}

#[test]
fn true_phases_tile_the_feed_and_true_sucks_lie_in_sucking_ones() {
    for (seed, baby) in (0..30).zip(Baby::ALL.iter().cycle()) {
        let truth = simulate(*baby, HandLevel::Usual.hand(), seed, 14).truth;
        assert_eq!(truth.phases.first().map(|it| it.from), Some(At::START));
        assert!(
            truth
                .phases
                .windows(2)
                .all(|pair| pair[0].to == pair[1].from && pair[0].phase != pair[1].phase)
        );
        for (at, _) in &truth.sucks {
            let phase = truth.phase_at(*at);
            assert!(
                matches!(
                    phase,
                    Some(TruthPhase::Quick | TruthPhase::Flow | TruthPhase::Flutter)
                ),
                "{baby:?} {seed} {at:?} {phase:?}"
            );
        }
        let first = truth
            .phases
            .iter()
            .find(|it| it.phase == TruthPhase::Flow)
            .map(|it| it.from);
        assert_eq!(truth.first_flow.is_some(), first.is_some());
        if let (Some(suck), Some(phase)) = (truth.first_flow, first) {
            assert!(phase <= suck && suck.since_ms(phase) <= 1);
        }
    }
}

#[test]
fn some_feeds_have_a_time_off_and_some_a_time_unwatched() {
    let count = |what: TapWhat| {
        (0..60)
            .filter(|seed| {
                let taps = simulate(Baby::Shallow, HandLevel::Usual.hand(), *seed, 15).taps;
                taps.iter().any(|it| it.what == what)
            })
            .count()
    };
    assert!((20..=58).contains(&count(TapWhat::Off)));
    assert!((8..=35).contains(&count(TapWhat::Unwatched)));
}

#[test]
fn no_suck_is_tapped_while_nobody_looks() {
    for seed in 0..40 {
        let mut away = false;
        for tap in simulate(Baby::Established, HandLevel::Perfect.hand(), seed, 15).taps {
            match tap.what {
                TapWhat::Unwatched => away = true,
                TapWhat::Watched => away = false,
                TapWhat::Suck | TapWhat::SuckSwallow => assert!(!away, "{seed} {:?}", tap.at),
                _ => {}
            }
        }
    }
}

#[test]
fn a_hand_misses_and_doubles_as_often_as_asked() {
    let hand = Hand {
        jitter_ms: 0.0,
        missed_suck: 0.10,
        missed_swallow: 0.20,
        doubled: 0.01,
    };
    let (mut sucks, mut tapped, mut swallows, mut heard, mut doubled) = (0, 0, 0, 0, 0);
    for seed in 0..40 {
        let feed = simulate(Baby::Established, hand, seed, 16);
        if feed.taps.iter().any(|it| it.what == TapWhat::Unwatched) {
            continue;
        }
        sucks += feed.truth.sucks.len();
        swallows += feed.truth.sucks.iter().filter(|it| it.1).count();
        let mut last = None;
        for tap in feed.taps.iter().filter(|it| it.what.is_suck()) {
            // A true gap is never shorter than 200 ms, and there is no jitter here.
            if last.is_some_and(|last: At| tap.at.since_ms(last) < 150) {
                doubled += 1;
                continue;
            }
            tapped += 1;
            last = Some(tap.at);
        }
        heard += feed.taps.iter().filter(|it| it.what.is_swallow()).count();
    }
    let share = |part: usize, all: usize| part as f64 / all as f64;
    assert!((share(tapped, sucks) - 0.90).abs() < 0.01);
    assert!((share(doubled, tapped) - 0.01).abs() < 0.003);
    // A swallow needs its suck tapped and itself heard: 0.9 times 0.8, and 1 % twice.
    assert!((share(heard, swallows) - 0.72 * 1.01).abs() < 0.02);
}

#[test]
fn lengths_outside_the_range_are_held_to_it() {
    let hand = HandLevel::Perfect.hand();
    let end = |minutes| {
        simulate(Baby::Established, hand, 1, minutes)
            .truth
            .phases
            .last()
            .unwrap()
            .to
            .as_ms()
    };
    assert!(end(0) <= 60_000);
    assert!(end(u32::MAX) <= u64::from(MINUTES_MOST) * 60_000);
}

#[test]
fn the_truth_prints_as_one_object() {
    let truth = simulate(Baby::Established, HandLevel::Usual.hand(), 2, 16).truth;
    let printed = truth_json(&truth);
    assert_eq!(
        printed["sucks"].as_array().unwrap().len(),
        truth.sucks.len()
    );
    assert_eq!(
        printed["phases"].as_array().unwrap().len(),
        truth.phases.len()
    );
    assert_eq!(
        printed["first_flow_ms"].as_u64(),
        truth.first_flow.map(At::as_ms)
    );
    assert!(printed["ways"]["flow"]["sucks_per_swallow"].is_f64());
}
