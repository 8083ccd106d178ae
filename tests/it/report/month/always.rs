//! What holds for any visits, in any order.

use feedside::record::{
    Adjustment, NippleAfter, Pain, Sign, SignState, StoredWord, VisitId, What, fold,
};
use feedside::report::month::{Month, Share, Spread, VisitSum, cards};
use feedside::words::{Lang, Words};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use uuid::Uuid;

use super::{now, put, put_feed, receipt, rhythm, sign, signed, visit};

/// Every share of a month, by name.
pub fn shares(month: &Month) -> Vec<(String, Share)> {
    let named = [
        ("review", month.review),
        ("signed", month.signed),
        ("receipt", month.receipt),
        ("waiting", month.waiting),
        ("flow", month.flow),
        ("pain_told", month.pain_told),
        ("pain_first", month.pain_first),
        ("pain_last", month.pain_last),
        ("nipple_misshapen", month.nipple_misshapen),
        ("nipple_blanched", month.nipple_blanched),
        ("nipple_damaged", month.nipple_damaged),
    ];
    let signs = Sign::ALL.iter().zip(month.not_seen);
    let named = named.map(|(name, share)| (name.to_owned(), share));
    let signs = signs.map(|(sign, share)| (sign.word().to_owned(), share));
    named.into_iter().chain(signs).collect()
}

pub fn spreads(month: &Month) -> [Spread; 3] {
    [month.first_flow_ms, month.flow_ms, month.sucking_percent]
}

/// All that adds up over visits.
fn counts(month: &Month) -> Vec<u64> {
    let mut all = vec![month.visits.into(), month.feeds.into(), month.watched_ms];
    for (_, share) in shares(month) {
        all.extend([u64::from(share.of), share.out_of.into()]);
    }
    all.extend(spreads(month).map(|it| it.count as u64));
    all.extend(month.tried.map(u64::from));
    all
}

fn word_of_pain() -> impl Strategy<Value = What> {
    option::of(0i64..=10).prop_map(|score| What::Pain {
        score: Pain::try_from(score).unwrap(),
        feed: None,
    })
}

fn one_of<T: Copy + std::fmt::Debug + 'static>(all: &'static [T]) -> impl Strategy<Value = T> {
    prop::sample::select(all)
}

type FeedMade = (Vec<What>, Vec<What>, u64, Option<u64>, Option<f64>);

fn feed() -> impl Strategy<Value = FeedMade> {
    let tried = one_of(Adjustment::ALL).prop_map(|what| What::AdjustmentTried { what });
    let nipple =
        one_of(NippleAfter::ALL).prop_map(|nipple| What::NippleAfter { nipple, feed: None });
    (
        vec(prop_oneof![word_of_pain(), tried], 0..4),
        vec(prop_oneof![word_of_pain(), nipple], 0..3),
        170_000u64..190_000,
        option::of(0u64..120_000),
        option::of(0.0..1.0),
    )
}

prop_compose! {
    fn any_sum()(
        pair in 0u128..4,
        hours_ago in -30i64..800,
        review in option::of(any::<bool>()),
        is_signed in any::<bool>(),
        has_receipt in any::<bool>(),
        signs in vec((one_of(Sign::ALL), option::of(one_of(SignState::ALL))), 0..14),
        feeds in vec(feed(), 0..4),
        is_worked_out in any::<bool>(),
    ) -> VisitSum {
        let mut visit = visit(pair);
        visit.id = VisitId::of(Uuid::from_u128(7));
        visit.began = now().plus_ms(-hours_ago * 3_600_000);
        put(&mut visit, signs.into_iter().map(|(it, state)| sign(it, state)));
        let mut rhythms = Vec::new();
        for (within, after, watched_ms, flow_ms, share) in feeds {
            let started_ms = super::next_ms(&visit);
            let first_flow_ms = flow_ms.map(|it| started_ms + it);
            rhythms.push(rhythm(watched_ms, first_flow_ms, flow_ms.unwrap_or(0), share));
            put_feed(&mut visit, within, after);
        }
        if is_signed {
            put(&mut visit, [signed()]);
            if has_receipt {
                put(&mut visit, [receipt()]);
            }
        }
        if !is_worked_out {
            rhythms.clear();
        }
        VisitSum::of(visit.pair, &visit, &fold(&visit.journal), &rhythms, review)
    }
}

proptest! {
    #[test]
    fn no_share_is_more_than_what_it_is_out_of(sums in vec(any_sum(), 0..12)) {
        let month = Month::of(&sums, now());
        for (name, share) in shares(&month) {
            prop_assert!(share.of <= share.out_of, "{name}");
            let all = month.visits.max(month.feeds);
            prop_assert!(share.out_of <= all, "{name}");
        }
        prop_assert_eq!(month.receipt.of + month.waiting.of, month.signed.of);
        prop_assert!(month.pairs <= month.visits);
        for it in spreads(&month).into_iter().filter_map(|it| it.quartiles) {
            prop_assert!(it.low <= it.median && it.median <= it.high);
        }
    }

    #[test]
    fn counts_of_two_parts_add_up_and_pairs_are_no_fewer_and_no_more(
        one in vec(any_sum(), 0..8),
        other in vec(any_sum(), 0..8),
    ) {
        let all: Vec<VisitSum> = one.iter().chain(&other).cloned().collect();
        let (all, one, other) = (
            Month::of(&all, now()),
            Month::of(&one, now()),
            Month::of(&other, now()),
        );
        let added: Vec<u64> = counts(&one).iter().zip(counts(&other)).map(|(a, b)| a + b).collect();
        prop_assert_eq!(counts(&all), added);
        prop_assert!(one.pairs.max(other.pairs) <= all.pairs);
        prop_assert!(all.pairs <= one.pairs + other.pairs);
    }

    #[test]
    fn the_order_of_the_visits_does_not_matter(
        (sums, shuffled) in vec(any_sum(), 0..12)
            .prop_flat_map(|it| (Just(it.clone()), Just(it).prop_shuffle())),
    ) {
        prop_assert_eq!(Month::of(&sums, now()), Month::of(&shuffled, now()));
    }

    #[test]
    fn every_sum_comes_back_from_its_json(sum in any_sum()) {
        let json = serde_json::to_string(&sum).unwrap();
        prop_assert_eq!(serde_json::from_str::<VisitSum>(&json).unwrap(), sum);
    }

    #[test]
    fn cards_have_no_hole_and_no_raw_id(sums in vec(any_sum(), 0..12)) {
        for lang in Lang::ALL {
            let cards = cards(&Month::of(&sums, now()), &Words::new(*lang));
            for (text, may_be_empty) in super::told::texts(&cards) {
                prop_assert!(may_be_empty || !text.trim().is_empty());
                prop_assert!(!text.contains(['{', '}', '$', '_']), "{text}");
                prop_assert!(!text.contains("month-") && !text.contains("level-"), "{text}");
            }
        }
    }
}
