//! The HL7 version 2 message: what it holds, asserted here; that it is HL7, by an independent strict
//! validator in `tests/outside`, for which one test writes the messages when it is told where.
//!
//! Source of the rules: HL7 v2.5.1, chapters 2 (encoding), 3 (PID) and 7 (OBR, OBX); from memory.

use feedside::record::{Label, Text};
use feedside::report::codes::Codes;
use feedside::report::hl7::{Message, messages};
use feedside::report::{Facts, Handover};

use crate::support::{
    bare_visit, empty_visit, facts_of, pain_after_visit, sample_amendment, sample_began,
    sample_facts,
};

fn handed() -> Facts {
    sample_facts().with_handover(Handover {
        transfer: Some("2718281828".to_owned()),
        sealed_sha256: Some([0xab; 32]),
        tablet_key: Some("0011223344556677".to_owned()),
        cose_sign1: None,
    })
}

fn all_samples() -> Vec<(&'static str, Facts)> {
    vec![
        ("visit", handed()),
        ("bare", facts_of(&bare_visit())),
        ("unsigned", facts_of(&empty_visit())),
        ("amendment", facts_of(&sample_amendment())),
    ]
}

/// The baby's message and the mother's.
fn both(facts: &Facts) -> [Message; 2] {
    let Ok(both) = messages(facts, &Codes::built_in()).try_into() else {
        panic!("two messages")
    };
    both
}

/// The baby's message.
fn written(facts: &Facts) -> String {
    both(facts)[0].text.clone()
}

/// Segments as fields; the number of a field is its place, but one less in `MSH`.
fn segments(message: &str) -> Vec<Vec<&str>> {
    let lines = message.split_terminator('\r');
    lines.map(|line| line.split('|').collect()).collect()
}

/// The `OBX`s whose code, ours or a public one, is this.
fn results<'a>(message: &'a str, code: &str) -> Vec<Vec<&'a str>> {
    let mut all = segments(message);
    all.retain(|it| it[0] == "OBX" && it[3].split('^').any(|part| part == code));
    all
}

#[test]
fn the_header_says_what_it_is_and_carries_the_visits_own_id() {
    let facts = handed();
    let message = written(&facts);
    let header = &segments(&message)[0];
    assert_eq!(header[..2], ["MSH", "^~\\&"]);
    assert_eq!(header[8], "ORU^R01^ORU_R01");
    assert_eq!(header[9], both(&facts)[0].control_id);
    assert_eq!(header[9].len(), 20);
    assert_eq!(
        (header[10], header[11], header[17]),
        ("P", "2.5.1", "UNICODE UTF-8")
    );
    assert_eq!(message, written(&facts), "the same each time");
    let ids: std::collections::HashSet<String> = all_samples()
        .iter()
        .flat_map(|(_, facts)| both(facts))
        .map(|it| it.control_id)
        .collect();
    // Two of the samples are the same visit; an amendment, and a visit not signed, are others.
    assert_eq!(ids.len(), 2 * 3);
}

#[test]
fn segments_end_in_a_carriage_return_and_stand_in_the_order_of_the_standard() {
    for (name, message) in all_samples()
        .iter()
        .flat_map(|(name, facts)| both(facts).map(|it| (*name, it.text)))
    {
        assert!(message.ends_with('\r') && !message.contains('\n'), "{name}");
        let names: Vec<&str> = segments(&message).iter().map(|it| it[0]).collect();
        assert_eq!(names[..4], ["MSH", "PID", "NK1", "PV1"], "{name}");
        for pair in names.windows(2) {
            let may_follow: &[&str] = match pair[0] {
                "MSH" => &["PID"],
                "PID" => &["NK1", "PV1"],
                "NK1" => &["PV1"],
                "PV1" => &["OBR"],
                "OBR" | "OBX" | "NTE" => &["OBX", "NTE", "OBR"],
                other => panic!("{name}: {other}"),
            };
            assert!(may_follow.contains(&pair[1]), "{name}: {pair:?}");
        }
    }
}

#[test]
fn a_weight_has_its_loinc_code_ours_grams_and_time() {
    let message = written(&handed());
    let weight = &results(&message, "body-weight")[0];
    assert_eq!(weight[2], "NM");
    assert_eq!(
        weight[3],
        "29463-7^Body weight^LN^body-weight^Body weight^99FSD"
    );
    assert_eq!(
        (weight[5], weight[6], weight[11]),
        ("3049", "g^g^UCUM", "F")
    );
    assert_eq!(weight[14], "20260304093100.000+0100");
    assert_eq!(weight[16], "kb");
}

#[test]
fn the_mothers_pain_stands_under_her_own_pid() {
    let [baby, mother] = both(&handed()).map(|it| it.text);
    assert_eq!(results(&baby, "72514-3").len(), 0);
    let pains = results(&mother, "72514-3");
    let values: Vec<&str> = pains.iter().map(|it| it[5]).collect();
    assert_eq!(values, ["6", "2", ""]);
    assert_eq!(pains[2][11], "X", "she was asked and could not say");
    assert!(mother.contains("\rNTE|1||asked-unknown\r"));
    assert_eq!(results(&mother, "body-weight").len(), 0);
}

#[test]
fn pain_told_only_after_a_feed_is_told_and_is_not_said_to_be_unasked() {
    let [_, mother] = both(&facts_of(&pain_after_visit())).map(|it| it.text);
    let pains = results(&mother, "72514-3");
    let values: Vec<_> = pains.iter().map(|it| (it[5], it[11])).collect();
    // Preliminary: the visit is not signed.
    assert_eq!(values, [("3", "P")]);
}

#[test]
fn what_is_unknown_says_why_and_never_reads_as_no() {
    let message = written(&facts_of(&bare_visit()));
    let wet = &results(&message, "last-day-wet")[0];
    assert_eq!((wet[5], wet[11]), ("", "N"));
    for it in segments(&message).iter().filter(|it| it[0] == "OBX") {
        assert_eq!(
            it[5].is_empty(),
            matches!(it[11], "N" | "X" | "D"),
            "{it:?}"
        );
    }
}

#[test]
fn an_amendment_corrects_under_the_same_filler_numbers_and_deletes_what_was_taken_back() {
    let fillers = |facts: &Facts| -> Vec<String> {
        let message = both(facts).map(|it| it.text).concat();
        let all = segments(&message).into_iter();
        let orders = all.filter(|it| it[0] == "OBR");
        orders.map(|it| it[3].to_owned()).collect()
    };
    let (first, second) = (fillers(&handed()), fillers(&facts_of(&sample_amendment())));
    assert!(
        first.iter().all(|it| second.contains(it)),
        "{first:?} {second:?}"
    );
    let unique: std::collections::HashSet<&String> = second.iter().collect();
    assert_eq!(unique.len(), second.len());
    let message = written(&facts_of(&sample_amendment()));
    assert!(
        segments(&message)
            .iter()
            .any(|it| it[0] == "OBR" && it[25] == "C")
    );
}

#[test]
fn signs_of_the_format_in_what_was_typed_mean_themselves() {
    let mut facts = handed();
    let typed = Text::new("a|b^c&d~e\\f").unwrap();
    facts.notes = vec![(sample_began(), typed)];
    facts.pair.bed = Label::new("Bay|2^3").unwrap();
    let message = written(&facts);
    let note = &results(&message, "note")[0];
    assert_eq!(note[5], "a\\F\\b\\S\\c\\T\\d\\R\\e\\E\\f");
    assert!(message.contains("\rPV1|1|I|Bay\\F\\2\\S\\3\r"));
}

#[test]
fn a_sites_code_goes_first_where_hl7_has_a_name_for_its_system() {
    let header = "ours,display,system,code,system_display\n";
    let table = format!("{header}sucks,Sucks,urn:x,9,\nsucks,Sucks,99LAB,S1,Jaw movements\n");
    let messages = messages(&handed(), &Codes::with_site(&table).unwrap());
    let sucks = &results(&messages[0].text, "sucks")[0];
    assert_eq!(sucks[3], "S1^Jaw movements^99LAB^sucks^Sucks^99FSD");
}

/// With `FEEDSIDE_MESSAGES=DIR` the messages are written there for the checkers in `tests/outside`.
#[test]
fn the_messages_are_written_for_the_checkers_outside() {
    let Some(folder) = std::env::var_os("FEEDSIDE_MESSAGES") else {
        return;
    };
    for (name, facts) in all_samples() {
        let path = std::path::Path::new(&folder).join(format!("{name}.hl7"));
        std::fs::write(path, both(&facts).map(|it| it.text).concat()).unwrap();
    }
}
