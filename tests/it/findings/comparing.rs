//! Before and after an adjustment.

use feedside::findings::{AFTER_LEAST_MS, COMPARED_MS, Shift, compare, shift};
use feedside::record::{Adjustment, At, Feed, Hold, Pain, Side, Sign, SignState, What, fold};
use feedside::rhythm::Rate;

use crate::support::{add, empty_visit};

/// A feed from the start: sucks every 600 ms, each `nth` with a swallow, until the adjustment at
/// `tried_ms`; then every 700 ms, each second one with a swallow, until `to_ms`.
fn feed(tried_ms: u64, to_ms: u64, nth: u64, more: &[(u64, What)]) -> Vec<Feed> {
    let mut rows = vec![(
        0,
        What::FeedStarted {
            side: Side::Left,
            hold: Hold::Cradle,
        },
    )];
    let what = |swallow| {
        if swallow {
            What::SuckSwallow
        } else {
            What::Suck
        }
    };
    rows.extend((1..tried_ms / 600).map(|it| (it * 600, what(it % nth == 0))));
    let tried = What::AdjustmentTried {
        what: Adjustment::FreeHead,
    };
    rows.push((tried_ms, tried));
    rows.extend((1..(to_ms - tried_ms) / 700).map(|it| (tried_ms + it * 700, what(it % 2 == 0))));
    rows.extend_from_slice(more);
    rows.sort_by_key(|row| row.0);
    let mut visit = empty_visit();
    for (at, what) in rows {
        add(&mut visit, at, what);
    }
    fold(&visit.journal).feeds
}

#[test]
fn before_thirty_watched_seconds_it_is_too_early_to_tell() {
    let feeds = feed(100_000, 200_000, 6, &[]);
    for (after_ms, told) in [(0, false), (29_999, false), (AFTER_LEAST_MS, true)] {
        let it = compare(&feeds, 0, 0, At::ms(100_000 + after_ms)).unwrap();
        assert_eq!((it.watched_ms, it.sides.is_some()), (after_ms, told));
    }
    assert_eq!(compare(&feeds, 0, 1, At::ms(200_000)), None);
    assert_eq!(compare(&feeds, 1, 0, At::ms(200_000)), None);
}

#[test]
fn time_that_nobody_watched_does_not_count() {
    let away = [
        (
            110_000,
            What::UnwatchedFrom {
                from: At::ms(105_000),
            },
        ),
        (150_000, What::UnwatchedTo),
    ];
    let feeds = feed(100_000, 400_000, 6, &away);
    let early = compare(&feeds, 0, 0, At::ms(174_000)).unwrap();
    assert_eq!((early.watched_ms, early.sides), (29_000, None));
    let told = compare(&feeds, 0, 0, At::ms(400_000)).unwrap();
    assert_eq!(told.watched_ms, COMPARED_MS);
    let after = told.sides.unwrap().after;
    assert_eq!(after.to, At::ms(100_000 + COMPARED_MS + 45_000));
}

#[test]
fn each_side_has_its_own_rates_and_pain() {
    let pain = |score| What::Pain {
        score: Pain::score(score).unwrap(),
        feed: None,
    };
    let more = [
        (30_000, pain(6)),
        (90_000, pain(5)),
        (240_000, pain(1)),
        (290_000, pain(7)),
    ];
    let feeds = feed(150_000, 300_000, 6, &more);
    let sides = compare(&feeds, 0, 0, At::ms(300_000))
        .unwrap()
        .sides
        .unwrap();
    let (before, after) = (sides.before, sides.after);
    assert_eq!((before.from, before.to), (At::ms(30_000), At::ms(150_000)));
    assert_eq!((after.from, after.to), (At::ms(150_000), At::ms(270_000)));
    assert_eq!(before.pain, Pain::score(5).ok());
    assert_eq!(after.pain, Pain::score(1).ok());
    // Sucks every 600 and 700 ms, a swallow in six and in two.
    assert!((before.sucks_per_min.unwrap().value - 100.0).abs() < 1.0);
    assert!((after.sucks_per_min.unwrap().value - 85.7).abs() < 1.0);
    assert!((before.sucks_per_swallow.unwrap().value - 6.0).abs() < 0.3);
    assert!((after.sucks_per_swallow.unwrap().value - 2.0).abs() < 0.1);
    let fewer = shift(
        before.sucks_per_swallow.unwrap(),
        after.sucks_per_swallow.unwrap(),
    );
    assert_eq!(fewer, Shift::Lower);
}

#[test]
fn only_signs_that_stand_otherwise_are_told() {
    let set = |sign, state| What::SignChanged {
        sign,
        state: Some(state),
    };
    let more = [
        (40_000, set(Sign::HeadFree, SignState::NotSeen)),
        (50_000, set(Sign::Quiet, SignState::Seen)),
        (110_000, set(Sign::HeadFree, SignState::Seen)),
        (120_000, set(Sign::ChinIn, SignState::Unclear)),
    ];
    let feeds = feed(100_000, 200_000, 6, &more);
    let signs = compare(&feeds, 0, 0, At::ms(200_000))
        .unwrap()
        .sides
        .unwrap()
        .signs;
    let told: Vec<_> = signs
        .iter()
        .map(|it| (it.sign, it.before, it.after))
        .collect();
    assert_eq!(
        told,
        [
            (
                Sign::HeadFree,
                Some(SignState::NotSeen),
                Some(SignState::Seen)
            ),
            (Sign::ChinIn, None, Some(SignState::Unclear)),
        ]
    );
}

#[test]
fn an_attachment_tried_anew_is_compared_with_the_one_before() {
    let set = |sign, state| What::SignChanged {
        sign,
        state: Some(state),
    };
    let more = [
        (50_000, set(Sign::ChinIn, SignState::NotSeen)),
        (60_000, set(Sign::Quiet, SignState::Seen)),
        (100_100, What::BabyOff),
        (100_200, What::BabyOn),
        (120_000, set(Sign::ChinIn, SignState::Seen)),
    ];
    let feeds = feed(100_000, 200_000, 6, &more);
    let sides = compare(&feeds, 0, 0, At::ms(200_000)).unwrap().sides;
    let signs = sides.unwrap().signs;
    let [chin] = signs.as_slice() else {
        panic!("one sign stands otherwise");
    };
    assert_eq!(
        (chin.sign, chin.before, chin.after),
        (
            Sign::ChinIn,
            Some(SignState::NotSeen),
            Some(SignState::Seen)
        )
    );
}

#[test]
fn signs_at_the_other_breast_are_no_before() {
    let set = |sign, state| What::SignChanged {
        sign,
        state: Some(state),
    };
    let start = |side| What::FeedStarted {
        side,
        hold: Hold::Cradle,
    };
    let mut visit = empty_visit();
    for (at, what) in [
        (0, start(Side::Left)),
        (1_000, set(Sign::ChinIn, SignState::Seen)),
        (10_000, start(Side::Right)),
        (
            20_000,
            What::AdjustmentTried {
                what: Adjustment::FreeHead,
            },
        ),
        (30_000, set(Sign::ChinIn, SignState::Seen)),
    ] {
        add(&mut visit, at, what);
    }
    let feeds = fold(&visit.journal).feeds;
    let sides = compare(&feeds, 1, 0, At::ms(60_000)).unwrap().sides;
    let signs = sides.unwrap().signs;
    assert_eq!(signs.len(), 1);
    assert_eq!(
        (signs[0].before, signs[0].after),
        (None, Some(SignState::Seen))
    );
}

#[test]
fn the_next_adjustment_ends_the_comparison() {
    let next = What::AdjustmentTried {
        what: Adjustment::ChinFirst,
    };
    let feeds = feed(100_000, 300_000, 6, &[(140_000, next)]);
    let first = compare(&feeds, 0, 0, At::ms(300_000)).unwrap();
    assert_eq!(first.sides.unwrap().after.to, At::ms(140_000));
    let second = compare(&feeds, 0, 1, At::ms(300_000)).unwrap();
    assert_eq!(second.sides.unwrap().before.from, At::ms(100_000));
}

#[test]
fn a_shift_is_told_only_if_the_intervals_do_not_meet() {
    let rate = |low, high| Rate {
        value: f64::midpoint(low, high),
        low,
        high,
    };
    let before = rate(80.0, 90.0);
    for (low, high, expected) in [
        (91.0, 99.0, Shift::Higher),
        (90.0, 99.0, Shift::NotClear),
        (70.0, 80.0, Shift::NotClear),
        (70.0, 79.0, Shift::Lower),
    ] {
        assert_eq!(shift(before, rate(low, high)), expected, "{low}");
    }
}
