//! A whole simulated month against a plain recount from the journals' entries, which knows neither
//! folding nor sums.

use std::collections::BTreeSet;

use feedside::handover::Handed;
use feedside::record::{Adjustment, NippleAfter, Pain, Sign, SignState, What, fold};
use feedside::report::month::{Month, Share, Spread, VisitSum, cards};
use feedside::rhythm::{self, Summary};
use feedside::words::{Lang, Words};

use super::now;
use crate::handover::visits::{self, Kind, ORDINARY};

const DAY_MS: i64 = 86_400_000;

/// Visits from 33 days before now to a day after it, every fifth to the pair of the one before;
/// the shortest feeds are under three minutes.
fn handed() -> Vec<(Handed, Vec<Summary>)> {
    let mut all: Vec<(Handed, Vec<Summary>)> = Vec::new();
    for seed in 0..35 {
        let minutes = 2 + u32::try_from(seed).unwrap() * 5 % 9;
        let kind = Kind {
            minutes,
            ..ORDINARY
        };
        let mut it = visits::visit(seed, &kind);
        it.visit.began = now().plus_ms((i64::try_from(seed).unwrap() - 33) * DAY_MS);
        if seed % 5 == 4 {
            it.visit.pair = all.last().unwrap().0.visit.pair;
        }
        let folded = fold(&it.visit.journal);
        let rhythms = folded.feeds.iter().map(|feed| rhythm::of(&feed.taps));
        let rhythms = rhythms.collect();
        all.push((it, rhythms));
    }
    all
}

fn review(handed: &Handed) -> bool {
    let level = |it: &feedside::handover::FindingRow| it.level == "medical_review_now";
    handed.findings.iter().any(level)
}

fn tally(share: &mut Share, is_so: bool) {
    share.out_of += 1;
    if is_so {
        share.of += 1;
    }
}

/// Quartiles by the place in the rising order, with a fraction.
fn spread(mut values: Vec<f64>) -> Spread {
    values.sort_by(f64::total_cmp);
    let at = |q: f64| {
        let place = q * (values.len() as f64 - 1.0);
        let (low, high) = (place.floor() as usize, place.ceil() as usize);
        values[low] * (1.0 - place.fract()) + values[high] * place.fract()
    };
    assert!(5 <= values.len());
    Spread {
        count: values.len(),
        quartiles: Some(feedside::report::month::Quartiles {
            low: at(0.25),
            median: at(0.5),
            high: at(0.75),
        }),
    }
}

/// Straight from the journals: one feed a visit, nothing struck.
fn recount(all: &[(Handed, Vec<Summary>)]) -> Month {
    let mut month = Month::default();
    let mut pairs = BTreeSet::new();
    let (mut first_flows, mut flows, mut sucking) = (Vec::new(), Vec::new(), Vec::new());
    for (handed, rhythms) in all {
        let ago_ms = now().since_ms(handed.visit.began);
        if !(0..=30 * DAY_MS).contains(&ago_ms) {
            continue;
        }
        month.visits += 1;
        pairs.insert(handed.visit.pair);
        tally(&mut month.review, review(handed));
        let (mut signed, mut running, mut started_ms) = (false, false, 0);
        let mut signs = [None; Sign::ALL.len()];
        let mut pains: Vec<Pain> = Vec::new();
        for entry in handed.visit.journal.entries() {
            match &entry.what {
                What::Signed { .. } => signed = true,
                What::FeedStarted { .. } => (running, started_ms) = (true, entry.at.as_ms()),
                What::SignChanged { sign, state } => {
                    let place = Sign::ALL.iter().position(|it| it == sign).unwrap();
                    signs[place] = *state;
                }
                What::Pain { score, .. } => pains.push(*score),
                What::FeedEnded { .. } => running = false,
                // Once a feed has ended there is nothing that it could have been tried in.
                What::AdjustmentTried { what } if running => {
                    let place = Adjustment::ALL.iter().position(|it| it == what).unwrap();
                    month.tried[place] += 1;
                }
                What::NippleAfter { nipple, .. } => {
                    use NippleAfter::{Blanched, Creased, Damaged, Flattened};
                    let misshapen = [Flattened, Creased].contains(nipple);
                    tally(&mut month.nipple_misshapen, misshapen);
                    tally(&mut month.nipple_blanched, *nipple == Blanched);
                    tally(&mut month.nipple_damaged, *nipple == Damaged);
                }
                What::Struck { .. } => panic!("the simulator strikes nothing"),
                _ => {}
            }
        }
        tally(&mut month.signed, signed);
        tally(&mut month.receipt, false);
        tally(&mut month.waiting, true);
        for (place, state) in signs.iter().enumerate() {
            if matches!(state, Some(SignState::Seen | SignState::NotSeen)) {
                tally(
                    &mut month.not_seen[place],
                    *state == Some(SignState::NotSeen),
                );
            }
        }
        tally(&mut month.pain_told, !pains.is_empty());
        if let Some(score) = pains.first().and_then(|it| it.value()) {
            tally(&mut month.pain_first, 4 <= score);
        }
        if let Some(score) = pains.last().and_then(|it| it.value()) {
            tally(&mut month.pain_last, 4 <= score);
        }
        assert_eq!(rhythms.len(), 1);
        month.feeds += 1;
        month.watched_ms += rhythms[0].watched_ms;
        if 3 * 60_000 <= rhythms[0].watched_ms {
            tally(&mut month.flow, rhythms[0].first_flow.is_some());
            let flow = rhythms[0].first_flow;
            first_flows.extend(flow.map(|it| (it.as_ms() - started_ms) as f64));
            flows.push(rhythms[0].totals_ms.flow as f64);
            sucking.extend(rhythms[0].share_sucking.map(|it| it * 100.0));
        }
    }
    month.pairs = u32::try_from(pairs.len()).unwrap();
    month.first_flow_ms = spread(first_flows);
    month.flow_ms = spread(flows);
    month.sucking_percent = spread(sucking);
    month
}

/// The spreads taken out and compared: as far as shares are kept, to a tenth of a per cent.
fn assert_near(found: &mut Spread, expected: &mut Spread, off_most: f64) {
    assert_eq!(found.count, expected.count);
    let (one, other) = (found.quartiles.take(), expected.quartiles.take());
    let (one, other) = (one.unwrap(), other.unwrap());
    for (a, b) in [
        (one.low, other.low),
        (one.median, other.median),
        (one.high, other.high),
    ] {
        assert!((a - b).abs() <= off_most, "{a} {b}");
    }
}

#[test]
fn a_simulated_month_is_counted_as_a_plain_recount_counts_it() {
    let all = handed();
    let sums: Vec<VisitSum> = all
        .iter()
        .map(|(it, rhythms)| {
            let folded = fold(&it.visit.journal);
            VisitSum::of(it.visit.pair, &it.visit, &folded, rhythms, Some(review(it)))
        })
        .collect();
    let mut found = Month::of(&sums, now());
    let mut expected = recount(&all);
    // From 30 days ago to now, one a day.
    assert_eq!((found.visits, found.pairs), (31, 25));
    assert!(
        found.flow.out_of < found.feeds,
        "some were watched too short"
    );
    assert!(0 < found.review.of && 0 < found.pain_first.of && 0 < found.nipple_damaged.of);
    for lang in Lang::ALL {
        let cards = cards(&found, &Words::new(*lang));
        assert_eq!(cards.len(), 6);
        for (text, _) in super::told::texts(&cards) {
            assert!(
                !text.contains(['{', '}']) && !text.contains("month-"),
                "{text}"
            );
        }
    }
    assert_near(&mut found.first_flow_ms, &mut expected.first_flow_ms, 1e-6);
    assert_near(&mut found.flow_ms, &mut expected.flow_ms, 1e-6);
    assert_near(
        &mut found.sucking_percent,
        &mut expected.sucking_percent,
        0.051,
    );
    assert_eq!(found, expected);
}
