//! The FHIR bundle: what it holds, asserted here; that it is FHIR, by the checkers in
//! `tests/outside`, for which one test writes the bundles when it is told where.
//!
//! The rules checked are those of HL7 FHIR R4 (4.0.1): Bundle, transaction, Observation.

use std::collections::HashSet;

use feedside::record::{Label, Visit, VisitId, What};
use feedside::report::codes::Codes;
use feedside::report::fhir::{bundle, document};
use feedside::report::{Facts, Handover};
use feedside::words::{Lang, Words};
use serde_json::Value;
use uuid::Uuid;

use crate::support::{
    add, bare_visit, both_breasts_visit, empty_visit, facts_of, pain_after_visit, sample_amendment,
    sample_facts,
};

fn handed() -> Facts {
    sample_facts().with_handover(Handover {
        transfer: Some("2718281828".to_owned()),
        sealed_sha256: Some([0xab; 32]),
        tablet_key: Some("0011223344556677".to_owned()),
        cose_sign1: Some(vec![0xd2, 0x84, 0x43]),
    })
}

fn resources<'a>(bundle: &'a Value, kind: &str) -> Vec<&'a Value> {
    bundle["entry"]
        .as_array()
        .unwrap()
        .iter()
        .map(|entry| &entry["resource"])
        .filter(|it| it["resourceType"] == kind)
        .collect()
}

fn has_code(concept: &Value, code: &str) -> bool {
    concept["coding"]
        .as_array()
        .is_some_and(|all| all.iter().any(|it| it["code"] == code))
}

fn observations<'a>(bundle: &'a Value, code: &str) -> Vec<&'a Value> {
    let mut all = resources(bundle, "Observation");
    all.retain(|it| has_code(&it["code"], code));
    all
}

fn component<'a>(observation: &'a Value, code: &str) -> &'a Value {
    observation["component"]
        .as_array()
        .unwrap()
        .iter()
        .find(|it| has_code(&it["code"], code))
        .unwrap_or_else(|| panic!("no component {code}"))
}

fn url_of(bundle: &Value, kind: &str, at: usize) -> String {
    let mut entries = bundle["entry"].as_array().unwrap().iter();
    let mut of_kind = entries
        .by_ref()
        .filter(|it| it["resource"]["resourceType"] == kind);
    of_kind.nth(at).unwrap()["fullUrl"]
        .as_str()
        .unwrap()
        .to_owned()
}

/// All values under keys of a name, anywhere.
fn everywhere<'a>(value: &'a Value, name: &str, found: &mut Vec<&'a Value>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                if key == name {
                    found.push(value);
                }
                everywhere(value, name, found);
            }
        }
        Value::Array(all) => all.iter().for_each(|it| everywhere(it, name, found)),
        _ => {}
    }
}

fn all_samples() -> Vec<(&'static str, Facts)> {
    vec![
        ("visit", handed()),
        ("bare", facts_of(&bare_visit())),
        ("unsigned", facts_of(&empty_visit())),
        ("amendment", facts_of(&sample_amendment())),
    ]
}

#[test]
fn every_reference_names_an_entry_of_the_bundle() {
    for (name, facts) in all_samples() {
        let bundle = bundle(&facts);
        let urls: HashSet<&str> = bundle["entry"]
            .as_array()
            .unwrap()
            .iter()
            .map(|entry| entry["fullUrl"].as_str().unwrap())
            .collect();
        assert_eq!(
            urls.len(),
            bundle["entry"].as_array().unwrap().len(),
            "{name}"
        );
        let mut references = Vec::new();
        everywhere(&bundle, "reference", &mut references);
        assert!(!references.is_empty());
        for reference in references {
            assert!(
                urls.contains(reference.as_str().unwrap()),
                "{name}: {reference}"
            );
        }
    }
}

/// FHIR R4, JSON: no empty objects, arrays, strings, and no null outside arrays of primitives.
#[test]
fn nothing_in_it_is_empty_or_null() {
    fn check(value: &Value, path: &str) {
        match value {
            Value::Null => panic!("null at {path}"),
            Value::String(text) => assert!(!text.is_empty(), "{path}"),
            Value::Array(all) => {
                assert!(!all.is_empty(), "{path}");
                for (index, value) in all.iter().enumerate() {
                    check(value, &format!("{path}/{index}"));
                }
            }
            Value::Object(map) => {
                assert!(!map.is_empty(), "{path}");
                for (key, value) in map {
                    check(value, &format!("{path}/{key}"));
                }
            }
            _ => {}
        }
    }
    for (name, facts) in all_samples() {
        check(&bundle(&facts), name);
    }
}

/// FHIR R4, Observation: obs-6 (no value beside a reason for its absence); and each observation and
/// component of ours tells one or the other, or has components or members.
#[test]
fn every_observation_has_a_value_or_says_why_there_is_none() {
    let tells = |it: &Value| {
        let values = it
            .as_object()
            .unwrap()
            .keys()
            .filter(|key| key.starts_with("value"));
        (values.count(), it["dataAbsentReason"].is_object())
    };
    for (name, facts) in all_samples() {
        for it in resources(&bundle(&facts), "Observation") {
            let (values, absent) = tells(it);
            assert!(values + usize::from(absent) <= 1, "{name}: {it}");
            let parts = it["component"].as_array();
            assert!(values == 1 || absent || parts.is_some(), "{name}: {it}");
            for part in parts.into_iter().flatten() {
                let (values, absent) = tells(part);
                assert_eq!(values + usize::from(absent), 1, "{name}: {part}");
            }
        }
    }
}

#[test]
fn a_second_import_makes_nothing_new() {
    let bundle = bundle(&handed());
    let mut seen = HashSet::new();
    for entry in bundle["entry"].as_array().unwrap() {
        let request = &entry["request"];
        assert_eq!(request["method"], "POST");
        let kind = entry["resource"]["resourceType"].as_str().unwrap();
        assert_eq!(request["url"], kind);
        let search = request["ifNoneExist"].as_str().unwrap();
        assert!(seen.insert((kind, search)), "{kind} {search} twice");
        if kind != "Provenance" {
            let first = &entry["resource"]["identifier"][0];
            let value = first["value"].as_str().unwrap();
            assert!(search.starts_with(&format!(
                "identifier={}|",
                first["system"].as_str().unwrap()
            )));
            assert!(
                value.contains('/') || search.ends_with(value),
                "{search} {value}"
            );
        }
    }
    assert_eq!(bundle, feedside::report::fhir::bundle(&handed()));
}

#[test]
fn a_search_value_is_escaped_where_it_would_be_read_as_something_else() {
    let mut facts = sample_facts();
    facts.specialist = Label::new("K, B|&é").unwrap();
    let bundle = bundle(&facts);
    let entry = bundle["entry"]
        .as_array()
        .unwrap()
        .iter()
        .find(|it| it["resource"]["resourceType"] == "Practitioner")
        .unwrap();
    assert_eq!(
        entry["request"]["ifNoneExist"],
        "identifier=urn:feedside:specialist|K%5C%2C%20B%5C%7C%26%C3%A9"
    );
}

#[test]
fn weights_have_loinc_codes_grams_moment_and_step() {
    let bundle = bundle(&handed());
    let weights = observations(&bundle, "29463-7");
    assert_eq!(weights.len(), 1);
    let weight = weights[0];
    assert!(has_code(&weight["code"], "3141-9"));
    assert_eq!(weight["valueQuantity"]["value"], 3049);
    assert_eq!(weight["valueQuantity"]["code"], "g");
    assert_eq!(weight["effectiveDateTime"], "2026-03-04T09:31:00.000+01:00");
    assert!(has_code(
        &component(weight, "weighing-moment")["valueCodeableConcept"],
        "weighing-routine"
    ));
    assert_eq!(component(weight, "clothed")["valueBoolean"], false);
    assert_eq!(component(weight, "scale-step")["valueQuantity"]["value"], 5);
    let birth = observations(&bundle, "8339-4")[0];
    assert_eq!(birth["valueQuantity"]["value"], 3400);
    assert_eq!(birth["effectiveDateTime"], "2026-03-02T02:30:00.000+01:00");
    let gestation = observations(&bundle, "11884-4")[0];
    assert_eq!(gestation["valueQuantity"]["value"], 39.57);
    assert_eq!(
        component(gestation, "gestation-days")["valueQuantity"]["value"],
        277
    );
}

#[test]
fn figures_name_their_weights_unit_and_what_was_missing() {
    let bundle = bundle(&handed());
    let growth = observations(&bundle, "growth")[0];
    let change = &component(growth, "figure-weight-change")["valueQuantity"];
    assert_eq!(
        (&change["value"], &change["code"]),
        (&Value::from(-10.3), &Value::from("%"))
    );
    assert_eq!(growth["derivedFrom"].as_array().unwrap().len(), 1);
    let missing = component(growth, "figure-missing");
    assert!(has_code(
        &missing["valueCodeableConcept"],
        "missing-second-weight"
    ));
    assert!(has_code(
        &component(growth, "figure-caution")["valueCodeableConcept"],
        "caution-uk-early-days"
    ));
}

#[test]
fn pain_is_the_mothers_with_the_baby_in_focus() {
    let bundle = bundle(&handed());
    let (mother, baby) = (url_of(&bundle, "Patient", 0), url_of(&bundle, "Patient", 1));
    let pains = observations(&bundle, "72514-3");
    assert_eq!(pains.len(), 3);
    for pain in &pains {
        assert_eq!(pain["subject"]["reference"], *mother);
        assert_eq!(pain["focus"][0]["reference"], *baby);
    }
    assert_eq!(pains[0]["valueQuantity"]["value"], 6);
    assert_eq!(pains[1]["valueQuantity"]["value"], 2);
    assert!(has_code(&pains[2]["dataAbsentReason"], "asked-unknown"));
}

#[test]
fn pain_told_only_after_a_feed_is_told_and_is_not_said_to_be_unasked() {
    let bundle = bundle(&facts_of(&pain_after_visit()));
    let pains = observations(&bundle, "72514-3");
    assert_eq!(pains.len(), 1);
    assert_eq!(pains[0]["valueQuantity"]["value"], 3);
    assert!(pains[0].get("dataAbsentReason").is_none());
}

#[test]
fn a_feed_has_its_period_side_counts_phases_and_rates() {
    let bundle = bundle(&handed());
    let feed = observations(&bundle, "feed")[0];
    assert_eq!(
        feed["effectivePeriod"]["start"],
        "2026-03-04T09:31:40.000+01:00"
    );
    assert_eq!(
        feed["effectivePeriod"]["end"],
        "2026-03-04T09:36:40.000+01:00"
    );
    assert!(has_code(&feed["bodySite"], "side-left"));
    for (code, value, unit) in [
        ("sucks", 40.into(), "{count}"),
        ("swallows", 13.into(), "{count}"),
        ("watched", 4.0.into(), "min"),
        ("phase-quick", 0.7.into(), "min"),
        ("phase-flow", 0.27.into(), "min"),
        ("phase-flutter", 0.0.into(), "min"),
        ("first-flow", 42.0.into(), "s"),
        ("sucks-per-swallow-flow", 3.08.into(), "1"),
        ("sucks-per-swallow-flow-low", 1.9.into(), "1"),
        ("sucks-per-min-flow-high", 91.5.into(), "/min"),
        ("adjustment-chin-first", 25.0.into(), "s"),
    ] {
        let value: Value = value;
        let quantity = &component(feed, code)["valueQuantity"];
        assert_eq!(quantity["value"], value, "{code}");
        assert_eq!(quantity["code"], unit, "{code}");
        assert_eq!(quantity["system"], "http://unitsofmeasure.org");
    }
    assert!(component(feed, "sucks-per-swallow-feed")["dataAbsentReason"].is_object());
    assert!(has_code(
        &component(feed, "doubt")["valueCodeableConcept"],
        "doubt-few-swallows"
    ));
    let nipple = observations(&bundle, "nipple-after")[0];
    assert!(has_code(
        &nipple["valueCodeableConcept"],
        "nipple-after-creased"
    ));
}

#[test]
fn what_was_not_asked_or_looked_at_says_so() {
    let bundle = bundle(&handed());
    let day = observations(&bundle, "last-day")[0];
    assert_eq!(
        component(day, "last-day-feeds")["valueQuantity"]["value"],
        7
    );
    assert!(has_code(
        &component(day, "last-day-dirty")["dataAbsentReason"],
        "unknown"
    ));
    assert!(has_code(
        &component(day, "baby-danger-fit")["dataAbsentReason"],
        "not-asked"
    ));
    let mother = observations(&bundle, "mother-dangers")[0];
    assert_eq!(
        component(mother, "mother-danger-chest")["valueBoolean"],
        false
    );
    let signs = observations(&bundle, "signs")[0];
    assert_eq!(signs["component"].as_array().unwrap().len(), 12);
    assert!(has_code(
        &component(signs, "sign-chin-in")["valueCodeableConcept"],
        "state-not-seen"
    ));
    assert!(has_code(
        &component(signs, "sign-quiet")["dataAbsentReason"],
        "not-performed"
    ));

    let bare = feedside::report::fhir::bundle(&facts_of(&bare_visit()));
    let day = observations(&bare, "last-day")[0];
    assert!(has_code(
        &component(day, "last-day-feeds")["dataAbsentReason"],
        "not-asked"
    ));
}

#[test]
fn findings_stand_with_level_numbers_and_acknowledgement_at_whom_they_concern() {
    let bundle = bundle(&handed());
    let baby = observations(&bundle, "findings-baby")[0];
    assert_eq!(baby["valueQuantity"]["value"], 3);
    let loss = component(baby, "finding-weight-loss-over-ten");
    assert!(has_code(
        &loss["valueCodeableConcept"],
        "level-medical-review-now"
    ));
    let number = component(baby, "finding-weight-loss-over-ten-number-loss");
    assert_eq!(number["valueQuantity"]["value"], 10.3);
    assert_eq!(number["valueQuantity"]["code"], "%");
    let by = component(baby, "finding-weight-loss-over-ten-acknowledged-by");
    assert_eq!(by["valueString"], "kb");
    let unjudged = component(baby, "finding-sample-temperature-rule");
    assert_eq!(unjudged["dataAbsentReason"]["text"], "missing: temperature");
    let mother = observations(&bundle, "findings-mother")[0];
    assert_eq!(
        mother["subject"]["reference"],
        *url_of(&bundle, "Patient", 0)
    );
    assert_eq!(mother["valueQuantity"]["value"], 1);
}

#[test]
fn the_plan_and_the_next_look_are_a_care_plan() {
    let bundle = bundle(&handed());
    let plans = resources(&bundle, "CarePlan");
    assert_eq!(plans.len(), 1);
    let activities = plans[0]["activity"].as_array().unwrap();
    assert_eq!(activities.len(), 3);
    assert!(has_code(
        &activities[0]["detail"]["code"],
        "plan-weigh-again"
    ));
    assert_eq!(
        activities[1]["detail"]["description"],
        "Ask Tamsin Wrenfold's sister to stay"
    );
    assert_eq!(
        activities[2]["detail"]["scheduledPeriod"]["start"],
        "2026-03-04T15:30:00.000+01:00"
    );
    let bare = feedside::report::fhir::bundle(&facts_of(&bare_visit()));
    assert!(resources(&bare, "CarePlan").is_empty());
}

#[test]
fn provenance_carries_the_sealed_record_and_the_tablets_signature() {
    let bundle = bundle(&handed());
    let provenance = resources(&bundle, "Provenance")[0];
    assert_eq!(provenance["signature"][0]["sigFormat"], "application/cose");
    assert_eq!(provenance["signature"][0]["data"], "0oRD");
    assert_eq!(
        provenance["target"].as_array().unwrap().len() + 1,
        bundle["entry"].as_array().unwrap().len()
    );
    let entity = |system: &str| {
        provenance["entity"]
            .as_array()
            .unwrap()
            .iter()
            .find(|it| it["what"]["identifier"]["system"] == system)
            .map(|it| {
                (
                    it["role"].clone(),
                    it["what"]["identifier"]["value"].clone(),
                )
            })
    };
    let source = Value::from("source");
    assert_eq!(
        entity("urn:feedside:transfer"),
        Some((source.clone(), "2718281828".into()))
    );
    assert_eq!(
        entity("urn:feedside:sealed-sha256"),
        Some((source, "ab".repeat(32).into()))
    );
    let without = feedside::report::fhir::bundle(&sample_facts());
    assert!(
        resources(&without, "Provenance")[0]
            .get("signature")
            .is_none()
    );
}

#[test]
fn an_amendment_goes_over_what_was_sent_and_takes_back_what_was_wrong() {
    let (first, second) = (
        bundle(&sample_facts()),
        bundle(&facts_of(&sample_amendment())),
    );
    let identifier = |it: &Value| it["identifier"][0]["value"].clone();
    let (old, new) = (
        observations(&first, "29463-7"),
        observations(&second, "29463-7"),
    );
    assert_eq!((old.len(), new.len()), (1, 1));
    assert_eq!(identifier(old[0]), identifier(new[0]));
    assert_eq!(
        (&old[0]["status"], &new[0]["status"]),
        (&"final".into(), &"entered-in-error".into())
    );
    assert!(new[0].get("valueQuantity").is_none());

    for code in [
        "feed",
        "pain",
        "signs",
        "last-day",
        "findings-baby",
        "nipple-after",
    ] {
        let (old, new) = (
            observations(&first, code)[0],
            observations(&second, code)[0],
        );
        assert_eq!(identifier(old), identifier(new), "{code}");
        assert_eq!(new["status"], "amended", "{code}");
    }
    let entry = second["entry"]
        .as_array()
        .unwrap()
        .iter()
        .find(|it| it["resource"]["resourceType"] == "Observation")
        .unwrap();
    assert_eq!(entry["request"]["method"], "PUT");
    let encounters = (
        &resources(&first, "Encounter")[0],
        &resources(&second, "Encounter")[0],
    );
    assert_eq!(identifier(encounters.0), identifier(encounters.1));

    let provenance = resources(&second, "Provenance")[0];
    let revision = provenance["entity"]
        .as_array()
        .unwrap()
        .iter()
        .find(|it| it["role"] == "revision")
        .unwrap();
    assert_eq!(
        revision["what"]["identifier"]["value"],
        "abcdef01-2345-4678-89ab-cdef01234567"
    );
}

#[test]
fn a_visit_that_is_not_signed_does_not_stand_in_the_way_of_the_signed_one() {
    let unsigned = bundle(&facts_of(&empty_visit()));
    let signed = bundle(&facts_of(&bare_visit()));
    let day = |bundle: &Value| observations(bundle, "last-day")[0].clone();
    assert_eq!(day(&unsigned)["status"], "preliminary");
    assert_ne!(day(&unsigned)["identifier"], day(&signed)["identifier"]);
    assert_eq!(
        resources(&unsigned, "Encounter")[0]["status"],
        "in-progress"
    );
}

/// With `FEEDSIDE_BUNDLES=DIR` the bundles are written there for the checkers in `tests/outside`.
#[test]
fn the_bundles_are_written_for_the_checkers_outside() {
    let Some(folder) = std::env::var_os("FEEDSIDE_BUNDLES") else {
        return;
    };
    for (name, facts) in all_samples() {
        let path = std::path::Path::new(&folder).join(format!("{name}.fhir.json"));
        std::fs::write(path, serde_json::to_string_pretty(&bundle(&facts)).unwrap()).unwrap();
        let path = std::path::Path::new(&folder).join(format!("{name}.document.json"));
        std::fs::write(path, serde_json::to_string_pretty(&filed(&facts)).unwrap()).unwrap();
    }
}

fn filed(facts: &Facts) -> Value {
    document(facts, &Codes::built_in(), &Words::new(Lang::En))
}

/// FHIR R4, Documents: the composition first, an identifier, a timestamp; no requests; every
/// resource of the bundle reachable from the composition or pointing at one that is.
#[test]
fn a_document_begins_with_its_composition_and_refers_only_to_itself() {
    for (name, facts) in all_samples() {
        let filed = filed(&facts);
        assert_eq!(filed["type"], "document");
        assert!(filed["identifier"]["value"].is_string() && filed["timestamp"].is_string());
        let entries = filed["entry"].as_array().unwrap();
        assert_eq!(entries[0]["resource"]["resourceType"], "Composition");
        assert!(entries.iter().all(|entry| entry["request"].is_null()));
        let urls: HashSet<&Value> = entries.iter().map(|entry| &entry["fullUrl"]).collect();
        let mut references = Vec::new();
        everywhere(&filed, "reference", &mut references);
        assert!(references.iter().all(|it| urls.contains(it)), "{name}");
        let mut in_sections = Vec::new();
        everywhere(
            &entries[0]["resource"]["section"],
            "reference",
            &mut in_sections,
        );
        let told: HashSet<&Value> = in_sections.iter().copied().collect();
        assert_eq!(told.len(), in_sections.len(), "{name}: each once");
        for entry in entries {
            let kind = entry["resource"]["resourceType"].as_str().unwrap();
            if matches!(kind, "Observation" | "CarePlan") {
                assert!(
                    told.contains(&entry["fullUrl"]),
                    "{name}: {}",
                    entry["resource"]["code"]
                );
            }
        }
    }
}

#[test]
fn a_document_of_an_amendment_names_what_it_replaces_and_carries_the_page() {
    let filed = filed(&facts_of(&sample_amendment()));
    let composition = &filed["entry"][0]["resource"];
    assert_eq!(composition["status"], "amended");
    assert_eq!(composition["relatesTo"][0]["code"], "replaces");
    let div = composition["text"]["div"].as_str().unwrap();
    assert!(div.contains("Bay 2 bed 4"));
    // What was typed cannot become a tag: FHIR R4, Narrative.
    assert_eq!(div.matches('<').count(), 4, "{div}");
}

#[test]
fn words_that_were_left_out_are_told_in_the_bundle() {
    let unknown = vec![("phase".to_owned(), "dozing".to_owned())];
    let bundle = bundle(&handed().with_unknown(unknown));
    let doubt = observations(&bundle, "unknown-words")[0];
    assert_eq!(doubt["valueString"], "phase dozing");
}

#[test]
fn at_both_breasts_each_feed_has_its_panel_of_signs() {
    let mut visit = both_breasts_visit();
    let panels = |visit: &Visit| -> Vec<(Value, Value, Value)> {
        let bundle = feedside::report::fhir::bundle(&facts_of(visit));
        let signs = observations(&bundle, "signs").into_iter();
        signs
            .map(|it| {
                let chin = component_or_null(it, "sign-chin-in");
                (it["identifier"].clone(), it["status"].clone(), chin)
            })
            .collect()
    };
    let by = Label::new("kb").unwrap();
    add(&mut visit, 800_000, What::Signed { by: by.clone() });
    let before = panels(&visit);
    assert_eq!(before.len(), 2);
    assert!(has_code(&before[0].2, "state-not-seen"));
    assert!(has_code(&before[1].2, "state-seen"));
    assert_ne!(before[0].0, before[1].0);
    // The first feed is taken back: the other one is the first, and what was sent of it as the
    // second was wrong.
    let id = VisitId::of(Uuid::from_u128(0x0a0b_0c0d_0e0f_4001_8002_0304_0506_0709));
    let mut visit = visit.amendment(id, by.clone()).unwrap();
    add(&mut visit, 810_000, What::Struck { entry: 1 });
    add(&mut visit, 820_000, What::Signed { by });
    let after = panels(&visit);
    assert_eq!(after.len(), 2);
    assert_eq!(after[0].0, before[0].0);
    assert!(has_code(&after[0].2, "state-seen"));
    assert_eq!(after[1].0, before[1].0);
    assert_eq!(after[1].1, "entered-in-error");
}

fn component_or_null(observation: &Value, code: &str) -> Value {
    match observation.get("component") {
        Some(_) => component(observation, code)["valueCodeableConcept"].clone(),
        None => Value::Null,
    }
}
