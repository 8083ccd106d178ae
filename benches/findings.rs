//! Benches of the room `findings`.

#![allow(missing_docs, clippy::unwrap_used)]

use divan::{Bencher, black_box};
use feedside::findings::{POLICY_BUILT_IN, Policy, VisitMark, WardPlace, judge};
use feedside::growth::{of, pair_file};
use feedside::record::{Folded, Grams, WallTime};

fn main() {
    divan::main();
}

const PAIR: &str = r#"{
  "pair": { "birth": "2026-03-01T12:00:00+00:00", "sex": "female", "birth_weight": 3500 },
  "weighings": [
    { "at": "2026-03-02T12:00:00+00:00", "grams": 3360, "step": 5 },
    { "at": "2026-03-04T12:00:00+00:00", "grams": 3120, "step": 5 }
  ],
  "last_day": { "feeds": 6, "wet": 2, "dirty": 2, "stool": "green", "sleepy": true,
                "baby_danger": [], "mother_danger": ["headache"] }
}"#;

#[divan::bench]
fn judging_one_visit(bencher: Bencher<'_, '_>) {
    let now = WallTime::new(1_772_650_000_000, 0).unwrap();
    let file = pair_file::read(PAIR.as_bytes(), now).unwrap();
    let visit = Folded {
        last_day: file.last_day.clone(),
        ..Folded::default()
    };
    let growth = of(&file.pair, &file.weighings, now);
    let policy = Policy::built_in();
    bencher.bench_local(|| judge(&file.pair, black_box(&visit), &[], &growth, &policy, now));
}

/// The ward's list of 2,000 pairs with 40 visits and 40 weights each: figures for the line of each
/// pair, its place by the marks of its visits, and the order.
#[divan::bench]
fn ward_list_of_2000_pairs_with_40_visits(bencher: Bencher<'_, '_>) {
    let now = WallTime::new(1_772_650_000_000 + 40 * 86_400_000, 0).unwrap();
    let file = pair_file::read(PAIR.as_bytes(), now).unwrap();
    let policy = Policy::built_in();
    let visit = Folded {
        last_day: file.last_day.clone(),
        ..Folded::default()
    };
    let growth = of(&file.pair, &file.weighings, now);
    let judged = judge(&file.pair, &visit, &[], &growth, &policy, now);
    let ward: Vec<_> = (0..2_000_i64)
        .map(|pair| {
            let marks: Vec<VisitMark> = (0..40_i64)
                .map(|visit_number| {
                    let began = file.pair.birth.plus_ms(visit_number * 86_400_000);
                    VisitMark {
                        next_look: Some(began.plus_ms(pair * 7_919_000 % 90_000_000)),
                        review: pair % 9 == 0,
                        signed: true,
                        receipt: pair % 5 != 0,
                        ..VisitMark::of(began, &visit, &judged, &policy)
                    }
                })
                .collect();
            let weighings: Vec<_> = (0..40_i64)
                .map(|day| {
                    let (_, mut weighing) = file.weighings[0];
                    weighing.grams = Grams::new(3300 + day * 28 + pair % 50).unwrap();
                    (file.pair.birth.plus_ms(day * 86_400_000), weighing)
                })
                .collect();
            (file.pair.clone(), marks, weighings)
        })
        .collect();
    bencher.bench_local(|| {
        let mut lines: Vec<_> = black_box(&ward)
            .iter()
            .map(|(pair, marks, weighings)| {
                let waits = marks.iter().any(|it| it.signed && !it.receipt);
                (WardPlace::of(marks, waits, now), of(pair, weighings, now))
            })
            .collect();
        lines.sort_by_key(|(place, _)| *place);
        lines
    });
}

#[divan::bench]
fn reading_a_policy() -> String {
    Policy::from_toml(black_box(POLICY_BUILT_IN)).unwrap().name
}
