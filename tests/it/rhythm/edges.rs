//! Feeds at the edges: sensible output, the right doubts, no panic.

use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Doubt, Phase, Rhythm, Summary, of};

use super::{holds, phase_at, sucks, taps};

fn told(taps: &[Tap]) -> Summary {
    let summary = of(taps);
    holds(taps, &summary);
    summary
}

#[test]
fn no_tap_gives_nothing_and_says_so() {
    let summary = told(&[]);
    assert_eq!(summary.doubts, [Doubt::FewSwallows, Doubt::FewSucks]);
    assert_eq!(
        (summary.sucks, summary.first_flow, summary.share_sucking),
        (0, None, None)
    );
    assert_eq!(summary.runs, []);
    let live = Rhythm::new().live(At::ms(5_000));
    assert_eq!((live.phase, live.sucks, live.rest_ms), (Phase::Rest, 0, 0));
}

#[test]
fn one_tap_of_each_kind_is_taken() {
    for what in TapWhat::ALL {
        let summary = told(&[Tap::new(1_000, *what)]);
        assert_eq!(summary.sucks, u32::from(what.is_suck()));
        assert_eq!(summary.runs.len(), usize::from(what.is_suck()));
        assert!(summary.doubts.contains(&Doubt::FewSucks));
    }
}

#[test]
fn swallows_alone_make_no_suck_and_no_rate() {
    let only: Vec<Tap> = (0..40)
        .map(|it| Tap::new(it * 1_000, TapWhat::Swallow))
        .collect();
    let summary = told(&only);
    assert_eq!((summary.sucks, summary.swallows), (0, 40));
    assert_eq!(summary.totals_ms.rest, 39_000);
    assert!(summary.doubts.contains(&Doubt::FewSucks));
    assert!(
        summary
            .rates
            .iter()
            .all(|it| it.sucks_per_min.is_none() && it.sucks_per_swallow.is_none())
    );
}

#[test]
fn forty_taps_a_second_are_counted_and_doubted() {
    let summary = told(&sucks(0, 25, 800, 0));
    assert_eq!(summary.sucks, 800);
    assert!(summary.doubts.contains(&Doubt::TooFast));
    // One jaw movement is counted once in the rate: no two are closer than 150 ms.
    let rate = summary.rates.last().unwrap().sucks_per_min.unwrap();
    assert!(rate.value <= 400.0 + 1e-6, "{rate:?}");
}

#[test]
fn one_doubled_tap_in_three_hundred_is_no_doubt_and_five_are() {
    let mut feed = sucks(0, 600, 300, 3);
    feed.insert(11, Tap::new(6_080, TapWhat::Suck));
    assert!(!told(&feed).doubts.contains(&Doubt::TooFast));
    for index in [50, 100, 150, 200] {
        let at_ms = feed[index].at.as_ms() + 90;
        feed.insert(index + 1, Tap::new(at_ms, TapWhat::Suck));
    }
    assert!(told(&feed).doubts.contains(&Doubt::TooFast));
}

#[test]
fn twelve_sucks_without_a_swallow_give_no_flow_and_both_doubts() {
    let mut feed = taps(&[(0, TapWhat::On)]);
    feed.extend(sucks(2_000, 560, 12, 0));
    feed.push(Tap::new(20_000, TapWhat::End));
    let summary = told(&feed);
    assert_eq!(
        (summary.sucks, summary.swallows, summary.first_flow),
        (12, 0, None)
    );
    assert!(
        summary
            .doubts
            .starts_with(&[Doubt::FewSwallows, Doubt::FewSucks])
    );
    assert_eq!(phase_at(&summary, At::ms(3_000)), Some(Phase::Quick));
    assert_eq!(phase_at(&summary, At::ms(15_000)), Some(Phase::Rest));
}

#[test]
fn a_feed_of_six_hours_is_taken() {
    let mut feed = taps(&[(0, TapWhat::On)]);
    for run in 0..720 {
        feed.extend(sucks(run * 30_000 + 1_000, 600, 25, 3));
    }
    feed.push(Tap::new(6 * 3_600_000, TapWhat::End));
    let summary = told(&feed);
    assert_eq!((summary.sucks, summary.runs.len()), (18_000, 720));
    assert_eq!(summary.doubts, []);
}

#[test]
fn a_suck_when_the_baby_was_off_says_that_it_is_on() {
    let mut feed = taps(&[(0, TapWhat::On)]);
    feed.extend(sucks(1_000, 600, 10, 2));
    feed.push(Tap::new(7_000, TapWhat::Off));
    feed.extend(sucks(30_000, 600, 10, 2));
    let summary = told(&feed);
    assert_eq!(summary.totals_ms.off, 23_000);
    assert_eq!(summary.runs.len(), 2);
    assert_eq!(summary.rest_statistics.count, 0);
}

#[test]
fn a_suck_in_unwatched_time_is_kept_and_the_rest_stays_unwatched() {
    let mut feed = taps(&[(0, TapWhat::On)]);
    feed.extend(sucks(1_000, 600, 10, 2));
    feed.push(Tap::new(7_000, TapWhat::Unwatched));
    feed.extend(sucks(30_000, 600, 3, 0));
    feed.push(Tap::new(60_000, TapWhat::Watched));
    feed.push(Tap::new(61_000, TapWhat::End));
    let summary = told(&feed);
    assert_eq!(summary.sucks, 13);
    // Looked at from the first of them to the last, and no longer.
    assert_eq!(summary.totals_ms.unwatched, 53_000 - 1_201);
    assert_eq!(phase_at(&summary, At::ms(29_999)), Some(Phase::Unwatched));
    assert_eq!(phase_at(&summary, At::ms(31_201)), Some(Phase::Unwatched));
    assert!(summary.doubts.contains(&Doubt::LongUnwatched));
}

#[test]
fn touches_that_were_not_resolved_are_told() {
    let mut rhythm = Rhythm::new();
    for tap in sucks(0, 600, 100, 2) {
        rhythm.push(tap);
    }
    rhythm.note_unresolved(0);
    assert!(!rhythm.so_far().doubts.contains(&Doubt::UnresolvedTouches));
    rhythm.note_unresolved(2);
    assert!(rhythm.so_far().doubts.contains(&Doubt::UnresolvedTouches));
}

#[test]
fn a_minute_without_a_tap_is_no_doubt_and_more_is() {
    for (silent_ms, doubted) in [(60_000, false), (60_002, true)] {
        let mut feed = sucks(0, 600, 50, 3);
        let last = feed[49].at.as_ms();
        feed.extend(sucks(last + silent_ms, 600, 50, 3));
        assert_eq!(
            told(&feed).doubts.contains(&Doubt::LongSilence),
            doubted,
            "{silent_ms}"
        );
    }
}
