//! Entries to plain columns and back; kinds of newer versions are kept whole.

use feedside::record::{BabyDanger, Coded, RecordError, StoredEntry, What, from_stored, to_stored};

use serde_json::{Value, json};

use super::make::{entry, one_of_each};

#[test]
fn one_of_each_kind_comes_back_as_it_was() {
    for (seq, what) in (1..).zip(one_of_each()) {
        let entry = entry(seq, what);
        let stored = to_stored(&entry).unwrap();
        assert_eq!(from_stored(&stored).unwrap(), entry);
        assert_eq!(stored.offset_min, 60);
    }
}

fn stored(kind: &str, body: &str) -> StoredEntry {
    StoredEntry {
        seq: 1,
        at_ms: 5,
        utc_ms: 1_773_021_600_000,
        offset_min: -210,
        kind: kind.to_owned(),
        body: body.to_owned(),
    }
}

fn unknown(kind: &str, body: &str) {
    let stored = stored(kind, body);
    let entry = from_stored(&stored).unwrap();
    assert!(
        matches!(&entry.what, What::Unknown { kind: k, body: b } if k == kind && b == body),
        "{kind}"
    );
    assert_eq!(to_stored(&entry).unwrap(), stored);
}

#[test]
fn the_feed_that_is_named_is_stored_and_none_is_stored_where_none_is() {
    let value = |stored: StoredEntry| -> Value { serde_json::from_str(&stored.body).unwrap() };
    let nipple = feedside::record::NippleAfter::Creased;
    let body = |feed| to_stored(&entry(1, What::NippleAfter { nipple, feed })).unwrap();
    assert_eq!(body(None).body, r#"{"nipple":"creased"}"#);
    assert_eq!(
        value(body(Some(0))),
        json!({"nipple": "creased", "feed": 0})
    );
    let score = feedside::record::Pain::CannotSay;
    let body = |feed| to_stored(&entry(1, What::Pain { score, feed })).unwrap();
    assert_eq!(body(None).body, r#"{"score":null}"#);
    assert_eq!(value(body(Some(2))), json!({"score": null, "feed": 2}));
}

#[test]
fn a_kind_of_a_newer_version_is_kept_as_it_was_stored() {
    unknown(
        "tongue_looked_at",
        r#"{"from":"newer","list":[1,2.50,null]}"#,
    );
    unknown("tongue_looked_at", "null");
}

#[test]
fn a_known_kind_with_a_word_or_a_body_of_a_newer_version_is_kept_too() {
    unknown(
        "sign_changed",
        r#"{"sign":"tongue_forward","state":"seen"}"#,
    );
    unknown("pain", r#"{"score":11}"#);
    unknown("note", r#"{"text":""}"#);
    unknown("suck", r#"{"strength":3}"#);
}

#[test]
fn a_field_of_a_newer_version_is_kept_and_what_is_known_is_still_read() {
    for (kind, body) in [
        (
            "last_day",
            r#"{"feeds":7,"baby_danger":["fit"],"cup_feeds": 2}"#,
        ),
        (
            "weighed",
            r#"{"grams":3100,"clothed":false,"moment":"routine","scale":{"id":"b"}}"#,
        ),
        ("plan_item", r#"{"what":"feed_often","by":["night team"]}"#),
        ("pain", r#"{"score":null,"where":"left"}"#),
    ] {
        let stored = stored(kind, body);
        let entry = from_stored(&stored).unwrap();
        assert!(!matches!(entry.what, What::Unknown { .. }), "{kind}");
        assert!(entry.newer.is_some(), "{kind}");
        assert_eq!(to_stored(&entry).unwrap(), stored);
        assert!(!format!("{entry:?}").contains("night team"), "{kind}");
    }
}

#[test]
fn a_word_of_a_newer_version_in_one_answer_does_not_hide_the_danger_in_another() {
    let body = r#"{"stool":"orange","baby_danger":["fit"],"feeds":999,"wet":3}"#;
    let stored = stored("last_day", body);
    let entry = from_stored(&stored).unwrap();
    let What::LastDay(day) = &entry.what else {
        panic!("not read");
    };
    assert_eq!((day.stool, day.feeds, day.wet), (None, None, Some(3)));
    assert_eq!(day.baby_danger, Some(vec![Coded::Known(BabyDanger::Fit)]));
    assert_eq!(to_stored(&entry).unwrap(), stored);
    // Nothing of it understood: nothing was asked.
    unknown("last_day", r#"{"stool":"orange"}"#);
}

#[test]
fn a_field_that_is_empty_or_left_out_is_nothing_newer() {
    for body in [
        r#"{"grams":3100,"step":null,"clothed":false,"moment":"routine"}"#,
        r#"{"moment":"routine","clothed":false,"grams":3100}"#,
        r#"{"grams":3100,"clothed":false,"moment":"routine","taken":"2026-03-01T04:30:00.000+00:00"}"#,
    ] {
        assert_eq!(from_stored(&stored("weighed", body)).unwrap().newer, None);
    }
    let nappy = stored("nappy", r#"{"wet":true}"#);
    assert_eq!(from_stored(&nappy).unwrap().newer, None);
}

#[test]
fn a_stored_entry_that_is_no_json_or_lies_outside_of_time_is_an_error() {
    assert_eq!(
        from_stored(&stored("suck", "{")),
        Err(RecordError::Unreadable {
            kind: "suck".to_owned()
        })
    );
    let mut late = stored("suck", "null");
    late.utc_ms = i64::MAX;
    assert!(matches!(
        from_stored(&late),
        Err(RecordError::OutOfRange { .. })
    ));
}
