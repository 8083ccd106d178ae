//! What is shown while the feed runs.

use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Phase, Rhythm};

use super::sucks;

fn fed(taps: &[Tap]) -> Rhythm {
    let mut rhythm = Rhythm::new();
    for tap in taps {
        rhythm.push(*tap);
    }
    rhythm
}

#[test]
fn on_the_clock_sucking_turns_into_rest_once_and_for_all() {
    let rhythm = fed(&sucks(0, 600, 30, 3));
    let last = 29 * 600;
    let mut rested = None;
    for ms in (0..60_000).step_by(50) {
        let live = rhythm.live(At::ms(last + ms));
        match (rested, live.phase) {
            (None, Phase::Rest) => rested = Some(ms),
            (Some(_), phase) => assert_eq!(phase, Phase::Rest, "back from rest with no tap"),
            (None, phase) => assert!(phase.is_sucking()),
        }
        if live.phase == Phase::Rest {
            assert_eq!((live.since, live.rest_ms), (At::ms(last + 1), ms - 1));
        }
    }
    // 3.4 usual gaps of about 600 ms.
    assert!((1_950..2_250).contains(&rested.unwrap()), "{rested:?}");
}

#[test]
fn quick_sucks_turn_into_flow_when_swallows_come() {
    // 107 a minute with a swallow in 7, then 90 a minute with one in 2: Hartmann and others 2011.
    let mut taps = sucks(0, 560, 60, 7);
    let from = taps[59].at.as_ms() + 667;
    taps.extend(sucks(from, 667, 60, 2));
    let mut rhythm = Rhythm::new();
    let mut changes = Vec::new();
    let mut shown = None;
    for tap in &taps {
        rhythm.push(*tap);
        let phase = rhythm.live(tap.at).phase;
        if shown.replace(phase) != Some(phase) {
            changes.push((tap.at, phase));
        }
    }
    assert_eq!(
        changes.iter().map(|it| it.1).collect::<Vec<_>>(),
        [Phase::Quick, Phase::Flow]
    );
    let late_ms = changes[1].0.as_ms() as i64 - from as i64;
    assert!((-3_000..12_000).contains(&late_ms), "{late_ms}");
    // Looking back tells it sooner.
    let told_ms = rhythm.so_far().first_flow.unwrap().as_ms() as i64 - from as i64;
    assert!(told_ms.abs() < 3_000, "{told_ms}");
}

#[test]
fn the_live_rates_are_those_of_the_last_sucks() {
    let live = fed(&sucks(0, 600, 60, 3)).live(At::ms(59 * 600));
    assert!((live.sucks_per_min.unwrap() - 100.0).abs() < 0.1);
    assert!((live.sucks_per_swallow.unwrap() - 3.0).abs() < 0.01);
    assert_eq!((live.run_sucks, live.sucks, live.swallows), (60, 60, 20));
}

#[test]
fn marks_are_shown_as_they_are_made() {
    let mut taps = sucks(0, 600, 10, 2);
    taps.push(Tap::new(6_000, TapWhat::Off));
    let off = fed(&taps).live(At::ms(9_000));
    assert_eq!(
        (off.phase, off.since, off.probability),
        (Phase::Off, At::ms(6_000), 1.0)
    );
    taps.push(Tap::new(10_000, TapWhat::On));
    assert_eq!(fed(&taps).live(At::ms(11_000)).phase, Phase::Rest);
    taps.push(Tap::new(12_000, TapWhat::Unwatched));
    let away = fed(&taps).live(At::ms(90_000));
    assert_eq!(
        (away.phase, away.since, away.rest_ms),
        (Phase::Unwatched, At::ms(12_000), 0)
    );
}

#[test]
fn the_phase_shown_does_not_flap() {
    // At most one change of sucking phase a minute on average, over hands of all levels.
    for level in HandLevel::ALL {
        let (mut changes, mut minutes) = (0, 0.0);
        for (seed, baby) in (40..52).zip(Baby::ALL.iter().cycle()) {
            let feed = simulate(*baby, level.hand(), seed, 15);
            let mut rhythm = Rhythm::new();
            let mut shown = None;
            for tap in &feed.taps {
                rhythm.push(*tap);
                let phase = rhythm.live(tap.at).phase;
                if phase.is_sucking() && shown.replace(phase).is_some_and(|it| it != phase) {
                    changes += 1;
                }
            }
            minutes += 15.0;
        }
        assert!(
            f64::from(changes) < minutes,
            "{level:?}: {changes} in {minutes} min"
        );
    }
}

#[test]
fn the_last_minutes_looked_back_over_alone_are_nearly_those_of_the_whole_feed() {
    let (mut same_ms, mut all_ms) = (0, 0);
    for seed in 0..12 {
        let feed = simulate(Baby::FirstDays, HandLevel::Usual.hand(), seed, 10);
        let rhythm = fed(&feed.taps);
        let end = rhythm.taps().last().unwrap().at;
        let whole = rhythm.so_far();
        let recent = rhythm.recent(end.minus_ms(180_000));
        for at in (end.as_ms() - 120_000..end.as_ms()).step_by(100) {
            let at = At::ms(at);
            let told = recent.iter().find(|it| it.from <= at && at < it.to);
            all_ms += 100;
            same_ms += 100 * u64::from(told.map(|it| it.phase) == super::phase_at(&whole, at));
        }
    }
    // The whole feed's own numbers are taken in rounds; here they are those of the live pass.
    assert!(
        0.9 * all_ms as f64 <= same_ms as f64,
        "{same_ms} of {all_ms}"
    );
}

#[test]
fn the_last_minutes_begin_with_the_state_that_held() {
    let mut taps = sucks(0, 600, 10, 2);
    taps.push(Tap::new(6_000, TapWhat::Unwatched));
    taps.push(Tap::new(100_000, TapWhat::Watched));
    taps.extend(sucks(100_500, 600, 10, 2));
    let recent = fed(&taps).recent(At::ms(50_000));
    assert_eq!(recent[0].from, At::ms(100_000));
    taps.push(Tap::new(120_000, TapWhat::Off));
    taps.push(Tap::new(130_000, TapWhat::On));
    let recent = fed(&taps).recent(At::ms(125_000));
    assert_eq!(recent, []);
    assert_eq!(fed(&taps).recent(At::ms(500_000)), []);
}
