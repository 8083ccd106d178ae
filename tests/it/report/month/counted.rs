//! What counts, and out of what: at each edge, on both sides.

use feedside::findings::Limit;
use feedside::record::{Adjustment, NippleAfter, Sign, SignState, Visit, What, fold};
use feedside::report::month::{DAYS, Month, PAIN_FROM_SCORE, SPREAD_LEAST, Share, VisitSum};

use super::{
    cannot_say, fed, month, now, of_rhythms, put, put_feed, receipt, rhythm, score, sign, signed,
    sum, visit,
};

fn share(of: u32, out_of: u32) -> Share {
    Share { of, out_of }
}

#[test]
fn a_month_without_visits_is_all_noughts() {
    assert_eq!(Month::of(&[], now()), Month::default());
}

#[test]
fn a_visit_begun_exactly_thirty_days_ago_counts_and_a_millisecond_earlier_or_after_now_does_not() {
    let days_ms = DAYS * 86_400_000;
    assert_eq!(days_ms, 2_592_000_000);
    for (began_ms, visits) in [
        (-days_ms - 1, 0),
        (-days_ms, 1),
        (-1, 1),
        (0, 1),
        (1, 0),
        (days_ms, 0),
    ] {
        let mut visit = visit(1);
        visit.began = now().plus_ms(began_ms);
        assert_eq!(sum(&visit).began(), visit.began);
        assert_eq!(month(&[visit]).visits, visits, "{began_ms}");
    }
}

#[test]
fn a_change_of_the_clocks_offset_moves_no_visit_in_or_out() {
    let mut visit = visit(1);
    let began_ms = now().utc_ms() - DAYS * 86_400_000;
    visit.began = feedside::record::WallTime::new(began_ms, 120).unwrap();
    assert_eq!(month(&[visit]).visits, 1);
}

#[test]
fn a_pair_that_was_visited_twice_is_one_pair() {
    let month = month(&[visit(1), visit(2), visit(1)]);
    assert_eq!((month.visits, month.pairs), (3, 2));
}

#[test]
fn a_visit_has_a_sign_not_seen_if_any_feed_left_it_so() {
    let mut visit = crate::support::both_breasts_visit();
    visit.began = now();
    let month = month(&[visit]);
    let of = |sign: Sign| month.not_seen[sign.index()];
    assert_eq!(of(Sign::ChinIn), share(1, 1));
    assert_eq!(of(Sign::MouthWide), share(0, 1));
    // Unclear at one breast is no look that counts.
    assert_eq!(of(Sign::Close), share(0, 0));
}

#[test]
fn a_finding_counts_out_of_the_visits_that_were_judged() {
    let visit = visit(1);
    let reviews = [Some(true), Some(false), None, Some(false), None];
    let sums =
        reviews.map(|review| VisitSum::of(visit.pair, &visit, &fold(&visit.journal), &[], review));
    assert_eq!(Month::of(&sums, now()).review, share(1, 3));
}

#[test]
fn receipts_are_out_of_the_signed_visits() {
    let (open, mut waiting, mut done) = (visit(1), visit(2), visit(3));
    put(&mut waiting, [signed()]);
    put(&mut done, [signed(), receipt()]);
    let month = month(&[open, waiting, done]);
    assert_eq!(month.signed, share(2, 3));
    assert_eq!(month.receipt, share(1, 2));
    assert_eq!(month.waiting, share(1, 2));
}

#[test]
fn exactly_three_minutes_watched_tell_of_milk_flowing_and_a_millisecond_less_does_not() {
    for (watched_ms, flow) in [(179_999, share(0, 0)), (180_000, share(1, 1))] {
        let month = of_rhythms(&[rhythm(watched_ms, Some(60_000), 30_000, Some(0.5))]);
        assert_eq!(month.flow, flow);
        for spread in [month.first_flow_ms, month.flow_ms, month.sucking_percent] {
            assert_eq!(spread.count, usize::try_from(flow.out_of).unwrap());
        }
        assert_eq!(month.watched_ms, watched_ms);
    }
}

#[test]
fn a_feed_whose_rhythm_was_not_worked_out_tells_nothing_of_milk() {
    let month = month(&[fed(Vec::new(), Vec::new())]);
    assert_eq!(
        (month.feeds, month.flow, month.watched_ms),
        (1, share(0, 0), 0)
    );
}

#[test]
fn a_feed_without_flow_counts_with_no_time_of_flow_and_with_no_first_flow() {
    let none = rhythm(200_000, None, 0, None);
    let month = of_rhythms(&[none, rhythm(200_000, Some(90_000), 40_000, Some(0.25))]);
    assert_eq!(month.flow, share(1, 2));
    let counts = [month.first_flow_ms, month.flow_ms, month.sucking_percent].map(|it| it.count);
    assert_eq!(counts, [1, 2, 1]);
}

#[test]
fn first_flow_is_counted_from_the_start_of_its_feed() {
    let mut visit = visit(1);
    put(&mut visit, [sign(Sign::Close, Some(SignState::Seen))]);
    put_feed(&mut visit, Vec::new(), Vec::new());
    let folded = fold(&visit.journal);
    let started_ms = folded.feeds[0].started.as_ms();
    assert!(0 < started_ms);
    let rhythms = [rhythm(200_000, Some(started_ms + 70_000), 1, None)];
    let one = VisitSum::of(visit.pair, &visit, &folded, &rhythms, None);
    let month = Month::of(&vec![one; SPREAD_LEAST], now());
    assert_eq!(month.first_flow_ms.quartiles.unwrap().median, 70_000.0);
}

#[test]
fn five_values_are_a_spread_and_four_are_not() {
    for (count, is_told) in [(0, false), (4, false), (5, true)] {
        let feeds: Vec<_> = (1..=count)
            .map(|n| rhythm(180_000, Some(n * 10_000), n * 1000, Some(n as f64 / 10.0)))
            .collect();
        let month = of_rhythms(&feeds);
        for spread in [month.first_flow_ms, month.flow_ms, month.sucking_percent] {
            assert_eq!(spread.quartiles.is_some(), is_told, "{count}");
            assert_eq!(spread.count as u64, count);
        }
        if let Some(it) = month.sucking_percent.quartiles {
            assert_eq!((it.low, it.median, it.high), (20.0, 30.0, 40.0));
        }
    }
}

#[test]
fn pain_is_counted_from_the_score_that_is_acted_on_at_the_end_of_a_feed() {
    assert_eq!(PAIN_FROM_SCORE, 4);
    assert_eq!(PAIN_FROM_SCORE, Limit::PainEnd.facts().default);
}

#[test]
fn pain_is_told_at_its_first_word_and_at_its_last() {
    // Within the feed, after it; told, first, last.
    let cases: [(Vec<What>, Vec<What>, [Share; 3]); 9] = [
        (vec![], vec![], [share(0, 1), share(0, 0), share(0, 0)]),
        (
            vec![score(3)],
            vec![],
            [share(1, 1), share(0, 1), share(0, 1)],
        ),
        (
            vec![score(4)],
            vec![],
            [share(1, 1), share(1, 1), share(1, 1)],
        ),
        (
            vec![score(6), score(9), score(2)],
            vec![],
            [share(1, 1), share(1, 1), share(0, 1)],
        ),
        (
            vec![score(0)],
            vec![score(5)],
            [share(1, 1), share(0, 1), share(1, 1)],
        ),
        (
            vec![],
            vec![score(4)],
            [share(1, 1), share(1, 1), share(1, 1)],
        ),
        (
            vec![cannot_say()],
            vec![],
            [share(1, 1), share(0, 0), share(0, 0)],
        ),
        (
            vec![cannot_say(), score(7)],
            vec![],
            [share(1, 1), share(0, 0), share(1, 1)],
        ),
        (
            vec![score(7)],
            vec![cannot_say()],
            [share(1, 1), share(1, 1), share(0, 0)],
        ),
    ];
    for (within, after, expected) in cases {
        let said = format!("{within:?} {after:?}");
        let month = month(&[fed(within, after)]);
        let found = [month.pain_told, month.pain_first, month.pain_last];
        assert_eq!(found, expected, "{said}");
    }
}

#[test]
fn what_was_struck_counts_as_never_told() {
    let mut visit = fed(vec![score(8)], vec![]);
    let pain = visit.journal.entries()[1].seq;
    put(&mut visit, [What::Struck { entry: pain }]);
    assert_eq!(month(&[visit]).pain_told, share(0, 1));
}

#[test]
fn a_sign_counts_by_its_last_word_where_that_is_seen_or_not_seen() {
    let (seen, not_seen, unclear) = (
        Some(SignState::Seen),
        Some(SignState::NotSeen),
        Some(SignState::Unclear),
    );
    for (words, expected) in [
        (vec![], share(0, 0)),
        (vec![unclear], share(0, 0)),
        (vec![seen], share(0, 1)),
        (vec![not_seen], share(1, 1)),
        (vec![not_seen, seen], share(0, 1)),
        (vec![seen, not_seen], share(1, 1)),
        (vec![not_seen, unclear], share(0, 0)),
        (vec![not_seen, None], share(0, 0)),
    ] {
        let mut visit = visit(1);
        let said = format!("{words:?}");
        put(
            &mut visit,
            words.into_iter().map(|it| sign(Sign::ChinIn, it)),
        );
        let month = month(&[visit]);
        assert_eq!(month.not_seen[Sign::ChinIn.index()], expected, "{said}");
        let all: u32 = month.not_seen.iter().map(|it| it.out_of).sum();
        assert_eq!(all, expected.out_of);
    }
}

#[test]
fn each_adjustment_counts_as_often_as_it_was_tried() {
    let tried = |all: &[Adjustment]| -> Vec<What> {
        let all = all.iter();
        all.map(|what| What::AdjustmentTried { what: *what })
            .collect()
    };
    let (chin, hold) = (Adjustment::ChinFirst, Adjustment::ChangeHold);
    let mut twice = fed(tried(&[chin, hold, chin]), Vec::new());
    put_feed(&mut twice, tried(&[chin]), Vec::new());
    let month = month(&[twice, fed(tried(&[hold]), Vec::new())]);
    for (index, what) in Adjustment::ALL.iter().enumerate() {
        let times = match *what {
            Adjustment::ChinFirst => 3,
            Adjustment::ChangeHold => 2,
            _ => 0,
        };
        assert_eq!(month.tried[index], times, "{what:?}");
    }
}

#[test]
fn the_nipple_after_counts_out_of_the_feeds_after_which_it_was_told() {
    let after = |nipple: &NippleAfter| {
        fed(
            vec![],
            vec![What::NippleAfter {
                nipple: *nipple,
                feed: None,
            }],
        )
    };
    let mut visits: Vec<Visit> = NippleAfter::ALL.iter().map(after).collect();
    visits.push(fed(vec![], vec![]));
    let month = month(&visits);
    assert_eq!(month.feeds, 6);
    assert_eq!(month.nipple_misshapen, share(2, 5));
    assert_eq!(month.nipple_blanched, share(1, 5));
    assert_eq!(month.nipple_damaged, share(1, 5));
}

#[test]
fn nothing_told_is_out_of_nothing() {
    let month = month(&[fed(Vec::new(), Vec::new())]);
    for (name, share) in super::always::shares(&month) {
        let always_told = ["signed", "pain_told"].contains(&name.as_str());
        assert_eq!(share.out_of == 0, !always_told, "{name}");
        assert_eq!(share.of, 0, "{name}");
    }
}
