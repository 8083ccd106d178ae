//! The table of codes, and Base64.

use feedside::report::base64;
use feedside::report::codes::{Codes, CodesError};

const HEADER: &str = "ours,display,system,code,system_display\n";

/// RFC 4648, section 10.
#[test]
fn base64_gives_the_vectors_of_its_standard() {
    for (bytes, text) in [
        ("", ""),
        ("f", "Zg=="),
        ("fo", "Zm8="),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg=="),
        ("fooba", "Zm9vYmE="),
        ("foobar", "Zm9vYmFy"),
    ] {
        assert_eq!(base64(bytes.as_bytes()), text);
    }
}

/// HL7, value set of body weight (LOINC 2.81): 29463-7 and 3141-9.
#[test]
fn a_weight_has_both_public_codes_and_ours() {
    let concept = Codes::built_in().concept("body-weight");
    let codes: Vec<&str> = concept["coding"]
        .as_array()
        .unwrap()
        .iter()
        .map(|it| it["code"].as_str().unwrap())
        .collect();
    assert_eq!(codes, ["29463-7", "3141-9", "body-weight"]);
    assert_eq!(concept["coding"][0]["system"], "http://loinc.org");
}

#[test]
fn a_thing_that_is_not_in_the_table_has_our_code_alone() {
    let concept = Codes::built_in().concept("hold-cross-cradle");
    assert_eq!(concept["coding"].as_array().unwrap().len(), 1);
    assert_eq!(concept["coding"][0]["system"], "urn:feedside:code");
    assert_eq!(concept["text"], "Cross-cradle");
    assert_eq!(Codes::built_in().display("no-such_thing"), "no such thing");
}

#[test]
fn a_wrong_table_is_refused_with_its_line() {
    let table = |lines: &str| Codes::of_csv(&format!("{HEADER}{lines}")).map(|_| ());
    assert_eq!(Codes::of_csv("").map(|_| ()), Err(CodesError::Header));
    assert_eq!(table("a,A,,,\n"), Ok(()));
    assert_eq!(table("a,A,,,\nb,B\n"), Err(CodesError::Line { line: 3 }));
    assert_eq!(table("a,,,,\n"), Err(CodesError::Line { line: 2 }));
    assert_eq!(table("a,A,,7,\n"), Err(CodesError::Line { line: 2 }));
    assert_eq!(table("a,A,urn:x,,\n"), Err(CodesError::Line { line: 2 }));
}
