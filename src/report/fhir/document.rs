//! The composition that a document begins with: what it is, whose, by whom, and the page to be read.

use serde_json::{Value, json};

use super::build::{Bundle, key};
use crate::report::form::iso;
use crate::report::plain;
use crate::words::Words;

/// The sections in order, with the codes whose observations stand in each.
const SECTIONS: &[(&str, &[&str])] = &[
    ("section-findings", &["findings-baby", "findings-mother"]),
    (
        "section-measured",
        &[
            "birth-weight",
            "gestation",
            "way-of-birth",
            "risk-notes",
            "body-weight",
            "growth",
        ],
    ),
    ("section-last-day", &["last-day", "mother-dangers", "nappy"]),
    (
        "section-feeds",
        &["feed", "pain", "nipple-after", "breast-after", "baby-state"],
    ),
    ("section-signs", &["signs", "breast-before"]),
    ("section-notes", &["note", "unknown-words"]),
];

pub(super) fn add(bundle: &mut Bundle<'_>, words: &Words) {
    let facts = bundle.facts;
    let status = match (&facts.signed, facts.replaces) {
        (None, _) => "preliminary",
        (Some(_), None) => "final",
        (Some(_), Some(_)) => "amended",
    };
    let mut sections: Vec<Value> = Vec::new();
    let mut section = |code: &str, entries: Vec<Value>| {
        if !entries.is_empty() {
            sections.push(json!({
                "title": bundle.codes.display(code),
                "code": bundle.codes.concept(code),
                "entry": entries,
            }));
        }
    };
    for (code, members) in SECTIONS {
        let is_member = |it: &Value| {
            let coding = it["code"]["coding"].as_array();
            let ours = coding.and_then(|all| all.last());
            let ours = ours.and_then(|it| it["code"].as_str()).unwrap_or_default();
            it["resourceType"] == "Observation" && members.contains(&ours)
        };
        section(code, bundle.references(is_member));
    }
    let is_plan = |it: &Value| it["resourceType"] == "CarePlan";
    section("feeding-plan", bundle.references(is_plan));

    let mut composition = json!({
        "identifier": { "system": "urn:feedside:visit", "value": facts.visit.to_string() },
        "status": status,
        "type": bundle.codes.concept("visit-document"),
        "subject": bundle.reference(key::BABY),
        "encounter": bundle.reference(key::ENCOUNTER),
        "date": iso(facts.until),
        "author": [bundle.reference(key::PRACTITIONER), bundle.reference(key::DEVICE)],
        "title": bundle.codes.display("visit-document"),
        "text": { "status": "additional", "div": narrative(&plain::text(facts, words)) },
        "section": sections,
    });
    if let Some(replaced) = facts.replaces {
        composition["relatesTo"] = json!([{
            "code": "replaces",
            "targetIdentifier": { "system": "urn:feedside:visit", "value": replaced.to_string() },
        }]);
    }
    bundle.add_with("Composition", "composition", composition, Value::Null);
    bundle.last_to_front();
}

/// A page of plain text as the XHTML that FHIR asks for (FHIR R4, Narrative).
fn narrative(page: &str) -> String {
    let mut div = String::from("<div xmlns=\"http://www.w3.org/1999/xhtml\"><pre>");
    for sign in page.chars() {
        match sign {
            '&' => div.push_str("&amp;"),
            '<' => div.push_str("&lt;"),
            '>' => div.push_str("&gt;"),
            '"' => div.push_str("&quot;"),
            // XML 1.0 has no other control characters.
            '\n' | '\t' => div.push(sign),
            sign if sign.is_control() => div.push(' '),
            sign => div.push(sign),
        }
    }
    div.push_str("</pre></div>");
    div
}
