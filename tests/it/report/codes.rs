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
    let table = |lines: &str| Codes::with_site(&format!("{HEADER}{lines}")).map(|_| ());
    assert_eq!(Codes::with_site("").map(|_| ()), Err(CodesError::Header));
    assert_eq!(table("pain,Pain,,,\n"), Ok(()));
    assert_eq!(table("hold-cradle,Cradle,urn:x,7,\n\n"), Ok(()));
    assert_eq!(
        table("pain,Pain,L,7,\"Pain, of the \"\"nipple\"\"\"\n"),
        Ok(())
    );
    for (lines, line) in [
        ("pain,Pain,,,\nnote,Note\n", 3),
        ("pain,,,,\n", 2),
        ("pain,Pain,,7,\n", 2),
        ("pain,Pain,urn:x,,\n", 2),
        ("pain,Pain,,,\n\npain,\"Pain,,,\n", 4),
        ("pain,Pa\"in\",,,\n", 2),
        ("pain,Pain,,,\"x\"y\n", 2),
        ("pain,Pa\u{7}in,,,\n", 2),
    ] {
        assert_eq!(table(lines), Err(CodesError::Line { line }), "{lines}");
    }
    // What is misspelt would silently do nothing.
    assert_eq!(
        table("note,Note,,,\npian,Pain,,,\n"),
        Err(CodesError::NotOurs { line: 3 })
    );
    for again in [
        "pain,Pain,,,\n",
        "pain,Ache,urn:y,8,\n",
        "pain,Pain,urn:x,7,\n",
    ] {
        let lines = format!("pain,Pain,urn:x,7,\n{again}");
        assert_eq!(table(&lines), Err(CodesError::Twice { line: 3 }), "{again}");
    }
    assert_eq!(
        Codes::with_site(&"x".repeat(2_000_000)).map(|_| ()),
        Err(CodesError::TooLong)
    );
}

#[test]
fn a_sites_codes_stand_in_place_of_the_built_in_ones_and_the_rest_stays() {
    let codes = Codes::with_site(&format!(
        "\u{feff}{HEADER}pain,Sore,urn:site,P1,Sore nipple\npain,Sore,L,P2,\n"
    ))
    .unwrap();
    let concept = codes.concept("pain");
    assert_eq!(concept["coding"][0]["code"], "P1");
    // `L` names a coding system of HL7 version 2 alone: no address, so not for FHIR.
    assert_eq!(concept["coding"].as_array().unwrap().len(), 2);
    assert_eq!(concept["text"], "Sore");
    let hl7: Vec<_> = codes
        .others("pain")
        .iter()
        .filter_map(|it| it.hl7_system())
        .collect();
    assert_eq!(hl7, ["L"]);
    assert_eq!(
        codes.concept("body-weight"),
        Codes::built_in().concept("body-weight")
    );
}
