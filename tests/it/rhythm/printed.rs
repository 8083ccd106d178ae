//! The JSON object of `feedside rhythm --json`: names and types as the command promises.

use feedside::practice::{Baby, HandLevel, simulate};
use feedside::rhythm::{Doubt, Phase, json, of};
use serde_json::{Value, json as value};

fn names(value: &Value) -> Vec<&str> {
    value
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect()
}

#[test]
fn a_feed_prints_with_every_field_and_its_type() {
    let feed = simulate(Baby::Established, HandLevel::Usual.hand(), 3, 16);
    let printed = json(&of(&feed.taps));
    assert_eq!(
        names(&printed),
        [
            "watched_ms",
            "sucks",
            "swallows",
            "first_flow_ms",
            "phases",
            "runs",
            "totals_ms",
            "rates",
            "doubts"
        ]
    );
    for count in ["watched_ms", "sucks", "swallows", "first_flow_ms"] {
        assert!(printed[count].is_u64(), "{count}");
    }
    let words: Vec<&str> = Phase::ALL.iter().map(|it| it.as_word()).collect();
    assert_eq!(
        words,
        ["quick", "flow", "flutter", "rest", "off", "unwatched"]
    );
    for phase in printed["phases"].as_array().unwrap() {
        assert_eq!(names(phase), ["from_ms", "to_ms", "phase", "probability"]);
        assert!(words.contains(&phase["phase"].as_str().unwrap()));
        assert!(phase["probability"].is_f64());
    }
    for run in printed["runs"].as_array().unwrap() {
        assert_eq!(names(run), ["from_ms", "to_ms", "sucks", "swallows"]);
    }
    assert_eq!(names(&printed["totals_ms"]), words);
    assert_eq!(
        names(&printed["rates"]),
        ["quick", "flow", "flutter", "feed"]
    );
    for (_, rates) in printed["rates"].as_object().unwrap() {
        assert_eq!(names(rates), ["sucks_per_min", "sucks_per_swallow"]);
        for rate in ["sucks_per_min", "sucks_per_swallow"] {
            assert!(rates[rate].is_null() || names(&rates[rate]) == ["value", "low", "high"]);
        }
    }
    for doubt in printed["doubts"].as_array().unwrap() {
        assert!(Doubt::from_word(doubt.as_str().unwrap()).is_some());
    }
}

#[test]
fn nothing_tapped_prints_nulls_and_empty_lists() {
    let printed = json(&of(&[]));
    assert_eq!(printed["first_flow_ms"], Value::Null);
    assert_eq!(printed["phases"], value!([]));
    assert_eq!(
        printed["rates"]["flow"],
        value!({"sucks_per_min": null, "sucks_per_swallow": null})
    );
    assert_eq!(printed["doubts"], value!(["few_swallows", "few_sucks"]));
}
