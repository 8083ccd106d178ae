//! Feeds as lines of JSON, so that a program that is not ours can be told what the informed pass is
//! told and be held against what the rhythm makes of the same taps.

use feedside::rhythm::{Phase, of};
use serde_json::{Value, json};

use crate::informed;
use crate::score::nearest;
use crate::told::Feed;

/// A suck is the gap before it in milliseconds (none at the first and where nobody looked), whether
/// a swallow was tapped with it, its true phase and the phase told looking back.
fn of_feed(simulator: &str, hand: &str, feed: &Feed) -> Value {
    let told = &feed.told;
    let summary = of(&feed.simulated.taps);
    let sucks: Vec<Value> = informed::sucks(&feed.simulated)
        .iter()
        .map(|suck| {
            let truth = nearest(&feed.simulated.truth, suck.at).map(Phase::as_word);
            let told = summary.phase_at(suck.at).map(Phase::as_word);
            json!([suck.gap_ms, suck.swallow, truth, told])
        })
        .collect();
    let own: Vec<Value> = told
        .own
        .iter()
        .zip(told.gap_spread)
        .map(|(it, gap_spread)| {
            json!({
                "gap_spread": gap_spread,
                "sucks_per_min": it.sucks_per_min,
                "sucks_per_swallow": it.sucks_per_swallow,
                "run_sucks": it.run_sucks,
                "rest_ms": it.rest_ms,
            })
        })
        .collect();
    let flutter_ms = told.flutter_ms.0 + told.flutter_ms.1;
    json!({
        "simulator": simulator,
        "hand": hand,
        "own": own,
        "rate_spread": told.rate_spread,
        "rest_spread": told.rest_spread,
        "jitter_ms": told.hand.jitter_ms,
        "missed_suck": told.hand.missed_suck,
        "missed_swallow": told.hand.missed_swallow,
        "first_ms": told.first_ms,
        "flow_ms": told.flow_ms,
        "between_ms": told.between_ms,
        "none": told.none,
        "again": told.again,
        "tires": told.tires,
        // None where flutter follows the milk alone.
        "flutter_ms": flutter_ms.is_finite().then_some(flutter_ms),
        "wakes_ms": told.wakes.0,
        "wakes_to_flow": told.wakes.1,
        "sucks": sucks,
    })
}

/// Prints a line for each feed.
pub fn print(simulator: &str, hand: &str, feeds: impl Iterator<Item = Feed>) {
    for feed in feeds {
        println!("{}", of_feed(simulator, hand, &feed));
    }
}
