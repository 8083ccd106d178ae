//! What must hold whatever is tapped.

use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{At, Tap, TapWhat};
use feedside::rhythm::{Phase, Rhythm, Summary, json, of, read_taps, write_taps};
use proptest::prelude::*;
use serde_json::Value;

use super::holds;

/// Taps as no hand would make them: any words, gaps from none to minutes.
fn any_taps() -> impl Strategy<Value = Vec<Tap>> {
    let what = proptest::sample::select(TapWhat::ALL.to_vec());
    let what = prop_oneof![3 => Just(TapWhat::Suck), 2 => Just(TapWhat::SuckSwallow), 2 => what];
    let gap_ms =
        prop_oneof![6 => 300_u64..900, 1 => 0_u64..160, 2 => 900_u64..6_000, 1 => 0_u64..120_000];
    (
        0_u64..100_000,
        proptest::collection::vec((gap_ms, what), 0..90),
    )
        .prop_map(|(from, rows)| {
            let mut at = from;
            rows.into_iter()
                .map(|(gap_ms, what)| {
                    at += gap_ms;
                    Tap::new(at, what)
                })
                .collect()
        })
}

fn shifted(summary: &Summary, ms: u64) -> Summary {
    let mut summary = summary.clone();
    summary.first_flow = summary.first_flow.map(|at| at.plus_ms(ms));
    for span in &mut summary.phases {
        (span.from, span.to) = (span.from.plus_ms(ms), span.to.plus_ms(ms));
    }
    for run in &mut summary.runs {
        (run.from, run.to) = (run.from.plus_ms(ms), run.to.plus_ms(ms));
    }
    summary
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn phases_tile_the_feed_and_sucks_lie_in_sucking_phases(taps in any_taps()) {
        holds(&taps, &of(&taps));
    }

    #[test]
    fn looking_in_between_changes_nothing(taps in any_taps(), every in 1_usize..20) {
        let mut rhythm = Rhythm::new();
        for (index, tap) in taps.iter().enumerate() {
            rhythm.push(*tap);
            if index % every == 0 {
                rhythm.so_far();
                rhythm.live(tap.at.plus_ms(700));
            }
        }
        prop_assert_eq!(rhythm.so_far(), of(&taps));
    }

    #[test]
    fn shifting_all_times_shifts_nothing_else(taps in any_taps(), ms in 0_u64..10_000_000) {
        let later: Vec<Tap> = taps.iter().map(|it| Tap { at: it.at.plus_ms(ms), ..*it }).collect();
        prop_assert_eq!(of(&later), shifted(&of(&taps), ms));
    }

    #[test]
    fn looking_away_never_adds_rest(taps in any_taps(), from in 0.0_f64..1.0, length in 0_u64..60_000) {
        // Only taps with no looking away of their own: another pair of marks could end theirs.
        let taps: Vec<Tap> = taps
            .into_iter()
            .filter(|it| !matches!(it.what, TapWhat::Unwatched | TapWhat::Watched))
            .collect();
        prop_assume!(2 <= taps.len());
        let (first, last) = (taps[0].at.as_ms(), taps[taps.len() - 1].at.as_ms());
        let from_ms = first + ((last - first) as f64 * from) as u64;
        let to_ms = (from_ms + length).min(last);
        let mut away = taps.clone();
        for (ms, what) in [(from_ms, TapWhat::Unwatched), (to_ms, TapWhat::Watched)] {
            let place = away.partition_point(|it| it.at <= At::ms(ms));
            away.insert(place, Tap::new(ms, what));
        }
        let (with, without) = (of(&away), of(&taps));
        prop_assert!(with.totals_ms.rest <= without.totals_ms.rest);
        // Nor is there any rest inside the time that nobody looked.
        for span in with.phases.iter().filter(|it| it.phase == Phase::Rest) {
            prop_assert!(span.to <= At::ms(from_ms) || At::ms(to_ms) <= span.from);
        }
        holds(&away, &with);
    }

    #[test]
    fn an_extra_suck_never_lowers_the_count(taps in any_taps(), ms in 0_u64..2_000_000) {
        let mut more = taps.clone();
        let place = more.partition_point(|it| it.at <= At::ms(ms));
        more.insert(place, Tap::new(ms, TapWhat::Suck));
        prop_assert_eq!(of(&more).sucks, of(&taps).sucks + 1);
    }

    #[test]
    fn taps_out_of_order_are_put_where_they_belong(taps in any_taps(), seed in any::<u64>()) {
        let mut distinct = taps;
        distinct.dedup_by_key(|it| it.at);
        let mut shuffled = distinct.clone();
        // A fixed shuffle by a linear congruence is enough here.
        let mut state = seed;
        for index in (1..shuffled.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            shuffled.swap(index, (state >> 33) as usize % (index + 1));
        }
        let (mut told, expected) = (of(&shuffled), of(&distinct));
        told.doubts.retain(|it| *it != feedside::rhythm::Doubt::OutOfOrder);
        prop_assert_eq!(told, expected);
    }

    #[test]
    fn live_is_sensible_at_any_time(taps in any_taps(), after_ms in 0_u64..400_000) {
        let mut rhythm = Rhythm::new();
        for tap in &taps {
            rhythm.push(*tap);
            let live = rhythm.live(tap.at.plus_ms(after_ms));
            prop_assert!((0.0..=1.0).contains(&live.probability));
            prop_assert!(live.since <= tap.at.plus_ms(after_ms.max(1)));
            prop_assert_eq!(0 < live.rest_ms && live.phase != Phase::Rest, false);
        }
    }
}

/// What `feedside rhythm --json` promises of its object, held by the object alone and the rows of the
/// file. Source: the command's own contract.
fn printed_holds(taps: &[Tap]) {
    let mut file = Vec::new();
    write_taps(taps, &mut file).unwrap();
    let read = read_taps(file.as_slice()).unwrap();
    let printed = json(&of(&read));
    let number = |value: &Value, name: &str| value[name].as_u64().unwrap();
    let word = |span: &Value| span["phase"].as_str().unwrap().to_owned();
    let sucks = |from_ms, to_ms| {
        let within = from_ms..to_ms;
        let sucks = taps.iter().filter(|tap| tap.what.is_suck());
        sucks
            .map(|tap| tap.at.as_ms())
            .filter(move |ms| within.contains(ms))
    };
    let (first_ms, last_ms) = (taps[0].at.as_ms(), taps[taps.len() - 1].at.as_ms());
    let phases = printed["phases"].as_array().unwrap();
    let mut at_ms = first_ms;
    let mut totals = std::collections::BTreeMap::new();
    let mut in_sucking = 0;
    for (place, span) in phases.iter().enumerate() {
        let (from_ms, to_ms, phase) = (number(span, "from_ms"), number(span, "to_ms"), word(span));
        assert_eq!(from_ms, at_ms, "a gap or an overlap before {span}");
        assert!(from_ms < to_ms, "{span}");
        at_ms = to_ms;
        *totals.entry(phase.clone()).or_insert(0) += to_ms - from_ms;
        if ["quick", "flow", "flutter"].contains(&phase.as_str()) {
            in_sucking += sucks(from_ms, to_ms).count();
        } else if phase == "rest" && 0 < place && word(&phases[place - 1]) != "unwatched" {
            let before = sucks(0, from_ms).next_back();
            let marked = taps
                .iter()
                .any(|tap| !tap.what.is_suck() && tap.at.as_ms() == from_ms);
            assert!(
                marked || before == Some(from_ms - 1),
                "{span} is not just after a run"
            );
        }
    }
    // A suck in the last row has a millisecond of its own.
    let is_suck_last = sucks(last_ms, last_ms + 1).next().is_some();
    assert_eq!(at_ms, last_ms + u64::from(is_suck_last));
    assert_eq!(
        in_sucking,
        sucks(0, u64::MAX).count(),
        "each suck lies in a sucking phase"
    );
    for (phase, total) in printed["totals_ms"].as_object().unwrap() {
        assert_eq!(total.as_u64(), totals.remove(phase).or(Some(0)), "{phase}");
    }
    assert!(totals.is_empty(), "{totals:?}");
    let unwatched_ms = number(&printed["totals_ms"], "unwatched");
    assert_eq!(
        number(&printed, "watched_ms"),
        at_ms - first_ms - unwatched_ms
    );
    let first_flow = phases.iter().find(|span| word(span) == "flow");
    let first_flow = first_flow.map_or(Value::Null, |span| span["from_ms"].clone());
    assert_eq!(printed["first_flow_ms"], first_flow);
    let mut in_runs = 0;
    for run in printed["runs"].as_array().unwrap() {
        let (from_ms, to_ms) = (number(run, "from_ms"), number(run, "to_ms"));
        let mut within = sucks(from_ms, to_ms).peekable();
        assert_eq!(
            within.peek(),
            Some(&from_ms),
            "a run begins with a suck: {run}"
        );
        let (count, last) = within.fold((0, 0), |(count, _), ms| (count + 1, ms + 1));
        assert_eq!((count, last), (number(run, "sucks"), to_ms), "{run}");
        in_runs += count;
    }
    assert_eq!(
        in_runs,
        number(&printed, "sucks"),
        "each suck is in one run"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(192))]

    #[test]
    fn the_printed_object_keeps_what_the_command_promises(taps in any_taps()) {
        prop_assume!(!taps.is_empty());
        printed_holds(&taps);
    }
}

#[test]
fn it_all_holds_of_simulated_feeds() {
    for (seed, baby) in (0..12).zip(Baby::ALL.iter().cycle()) {
        for level in HandLevel::ALL {
            let feed = simulate(*baby, level.hand(), seed, 12);
            holds(&feed.taps, &of(&feed.taps));
            printed_holds(&feed.taps);
        }
    }
}
