//! What leaves the desk. Form: HL7 FHIR R4 4.0.1 (Bundle.type `transaction`), RFC 4180 for the
//! table. The pages themselves are the report room's.

use feedside::desk::{As, DeskError};
use feedside::growth;
use feedside::report::codes::Codes;
use feedside::words::{Lang, Words};
use serde_json::Value;

use super::{packed, set_up, take_all};

#[test]
fn a_record_leaves_in_every_form() {
    let (mut desk, public) = set_up();
    take_all(&mut desk, &packed(&public));

    let bundle: Value = serde_json::from_str(&desk.export(1, As::Fhir).unwrap()).unwrap();
    assert_eq!(bundle["resourceType"], "Bundle");
    assert_eq!(bundle["type"], "transaction");

    let table = desk.export(1, As::Csv).unwrap();
    assert!(table.starts_with("section,at,name,value,unit,low,high,source\r\n"));
    // The weight of the sample visit, seen; and what the tablet computed.
    assert!(table.lines().any(|line| line.contains("3049")));
    assert!(table.contains("rhythm-1"));

    let filed: Value = serde_json::from_str(&desk.export(1, As::FhirDocument).unwrap()).unwrap();
    assert_eq!(filed["type"], "document");
    let messages = desk.export(1, As::Hl7v2).unwrap();
    assert_eq!(messages.matches("MSH|").count(), 2);
    for lang in Lang::ALL {
        let words = Words::new(*lang);
        let pdf = desk
            .export_with(1, As::Pdf, &Codes::built_in(), &words)
            .unwrap();
        // ISO 32000-1, 7.5.2.
        assert!(pdf.starts_with(b"%PDF-"));
    }

    let note = desk.export(1, As::Note).unwrap();
    assert!(note.is_ascii() && note.len() <= 901, "{note}");
    assert_eq!(note.lines().count(), 1);
}

#[test]
fn figures_computed_here_carry_this_programs_version_and_the_tablets_keep_theirs() {
    let (mut desk, public) = set_up();
    take_all(&mut desk, &packed(&public));
    let (facts, unknown) = feedside::desk::facts(&desk.inbox().record(1).unwrap());
    assert!(unknown.is_empty());
    // The sample record says growth-0: what the tablet had.
    assert_eq!(facts.rule_versions.growth, growth::RULE_VERSION);
    assert_eq!(facts.rule_versions.rhythm, "rhythm-1");
    let handover = facts.handover.unwrap();
    assert!(handover.cose_sign1.is_some() && handover.sealed_sha256.is_some());
}

#[test]
fn a_page_can_be_read_in_every_language() {
    let (mut desk, public) = set_up();
    take_all(&mut desk, &packed(&public));
    let pages: Vec<String> = Lang::ALL
        .iter()
        .map(|lang| desk.page(1, &Words::new(*lang)).unwrap().0)
        .collect();
    assert_ne!(pages[0], pages[1]);
    assert!(pages.iter().all(|page| page.contains("Bay 2 bed 4")));
}

#[test]
fn a_record_that_is_not_there_is_told() {
    let (desk, _) = set_up();
    assert!(matches!(
        desk.export(3, As::Csv),
        Err(DeskError::NoSuchRecord { number: 3 })
    ));
}
