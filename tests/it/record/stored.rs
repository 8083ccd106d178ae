//! Entries to plain columns and back; kinds of newer versions are kept whole.

use feedside::record::{RecordError, StoredEntry, What, from_stored, to_stored};

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
