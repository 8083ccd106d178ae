//! `visit.json`.

use feedside::report::visit_json;
use serde_json::Value;

use crate::support::{bare_visit, facts_of, sample_facts};

#[test]
fn the_keys_stand_in_one_order_with_the_findings_before_the_details() {
    let json = visit_json(&sample_facts());
    let keys: Vec<&str> = json
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    assert_eq!(
        keys,
        [
            "app_version",
            "rule_versions",
            "policy",
            "pair",
            "visit",
            "findings",
            "unjudged",
            "acknowledged",
            "last_day",
            "weighings",
            "growth",
            "nappies",
            "breasts_before",
            "signs",
            "feeds",
            "notes",
            "plan",
            "next_look",
            "handover",
        ]
    );
}

#[test]
fn the_same_keys_are_there_when_nothing_was_asked() {
    let (full, bare) = (
        visit_json(&sample_facts()),
        visit_json(&facts_of(&bare_visit())),
    );
    let keys =
        |value: &Value| -> Vec<String> { value.as_object().unwrap().keys().cloned().collect() };
    assert_eq!(keys(&full), keys(&bare));
    assert_eq!(bare["last_day"], Value::Null);
    assert_eq!(bare["signs"]["chin_in"], Value::Null);
}

#[test]
fn what_was_seen_and_computed_is_there_as_coded_words_and_numbers() {
    let json = visit_json(&sample_facts());
    for (pointer, expected) in [
        ("/visit/signed/by", "kb".into()),
        ("/visit/began", "2026-03-04T09:30:00.000+01:00".into()),
        ("/pair/gestation", 277.into()),
        ("/last_day/feeds", 7.into()),
        ("/last_day/dirty", Value::Null),
        ("/last_day/mother_danger", Value::Array(Vec::new())),
        ("/last_day/baby_danger", Value::Null),
        ("/weighings/0/grams", 3049.into()),
        ("/growth/figures/0/name", "age".into()),
        ("/growth/figures/0/value", 55.0.into()),
        ("/growth/missing/0", "second_weight".into()),
        ("/signs/chin_in/state", "not_seen".into()),
        ("/feeds/0/taps", 40.into()),
        ("/feeds/0/side", "left".into()),
        ("/feeds/0/pains/2/score", Value::Null),
        ("/feeds/0/nipple_after", "creased".into()),
        ("/feeds/0/rhythm/first_flow_ms", 142_000.into()),
        ("/feeds/0/rhythm/rates/0/sucks_per_swallow/high", 5.2.into()),
        ("/feeds/0/rhythm/doubts/0", "few_swallows".into()),
        ("/findings/0/rule", "weight-loss-over-ten".into()),
        ("/unjudged/0/missing/0", "temperature".into()),
        ("/plan/0/what", "weigh_again".into()),
        ("/policy/version", "3".into()),
        ("/rule_versions/rhythm", "rhythm-1".into()),
    ] {
        assert_eq!(json.pointer(pointer), Some(&expected), "{pointer}");
    }
}
