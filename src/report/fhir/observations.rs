//! Observations as FHIR writes them. Those of the mother have the baby as focus.

use serde_json::{Map, Value, json};
use uuid::Uuid;

use super::build::{Bundle, key, period};
use crate::report::codes::Codes;
use crate::report::form::iso;
use crate::report::observed::{Observation, Observed, When, Why, X};

pub(super) fn add(bundle: &mut Bundle<'_>) {
    for observation in Observed::of(bundle.facts).all {
        let resource = written(bundle, &observation);
        bundle.add("Observation", &observation.key, resource);
    }
}

fn written(bundle: &Bundle<'_>, it: &Observation) -> Value {
    let mut map = Map::new();
    let mut put = |name: &str, value: Value| map.insert(name.to_owned(), value);
    let base = if it.of_birth {
        bundle.facts.pair.id.uuid()
    } else {
        bundle.occasion()
    };
    put(
        "identifier",
        json!([{
            "system": "urn:feedside:observation",
            "value": Uuid::new_v5(&base, it.key.as_bytes()).to_string(),
        }]),
    );
    put("status", status(bundle, it).into());
    put("category", category(it.category));
    put("code", bundle.codes.concept(&it.code));
    if it.of_mother {
        put("subject", bundle.reference(key::MOTHER));
        put("focus", json!([bundle.reference(key::BABY)]));
    } else {
        put("subject", bundle.reference(key::BABY));
    }
    if !it.of_birth {
        put("encounter", bundle.reference(key::ENCOUNTER));
    }
    match it.when {
        When::At(wall) => put("effectiveDateTime", iso(wall).into()),
        When::Over(from, to) => put("effectivePeriod", period(from, to)),
    };
    put("issued", iso(bundle.facts.until).into());
    put("performer", json!([bundle.reference(key::PRACTITIONER)]));
    if let Some(value) = &it.value {
        let (name, value) = value_of(bundle.codes, value);
        put(name, value);
    }
    if let Some(side) = &it.side {
        put("bodySite", bundle.codes.concept(side));
    }
    if it.by_hand {
        put("method", bundle.codes.concept("counted-by-hand"));
        put("device", bundle.reference(key::DEVICE));
    }
    if !it.from.is_empty() {
        let from: Vec<Value> = it.from.iter().map(|key| bundle.reference(key)).collect();
        put("derivedFrom", from.into());
    }
    if it.caution {
        put("note", json!([{ "text": bundle.codes.display("caution") }]));
    }
    if !it.parts.is_empty() {
        let part = |(code, value): &(String, X)| {
            let (name, value) = value_of(bundle.codes, value);
            json!({ "code": bundle.codes.concept(code), name: value })
        };
        put("component", it.parts.iter().map(part).collect());
    }
    map.into()
}

const fn status(bundle: &Bundle<'_>, it: &Observation) -> &'static str {
    if it.is_wrong {
        return "entered-in-error";
    }
    match (&bundle.facts.signed, bundle.facts.replaces) {
        (None, _) => "preliminary",
        (Some(_), None) => "final",
        (Some(_), Some(_)) => "amended",
    }
}

fn value_of(codes: &Codes, value: &X) -> (&'static str, Value) {
    match value {
        X::Quantity(number, unit) => (
            "valueQuantity",
            json!({
                "value": number_of(number),
                "unit": unit,
                "system": "http://unitsofmeasure.org",
                "code": unit,
            }),
        ),
        X::Coded(ours) => ("valueCodeableConcept", codes.concept(ours)),
        X::Yes(yes) => ("valueBoolean", (*yes).into()),
        X::Text(text) => ("valueString", text.as_str().into()),
        X::Time(wall) => ("valueDateTime", iso(*wall).into()),
        X::Absent(why) => ("dataAbsentReason", absent(*why, None)),
        X::AbsentFor(why, missing) => ("dataAbsentReason", absent(*why, Some(missing))),
    }
}

/// A number as JSON, whole where it has no decimals.
fn number_of(text: &str) -> Value {
    match text.parse::<i64>() {
        Ok(whole) => whole.into(),
        Err(_) => text.parse::<f64>().map_or(Value::Null, Value::from),
    }
}

fn absent(why: Why, text: Option<&str>) -> Value {
    let mut concept = json!({ "coding": [{
        "system": "http://terminology.hl7.org/CodeSystem/data-absent-reason",
        "code": why.as_word(),
    }]});
    if let Some(text) = text {
        concept["text"] = text.into();
    }
    concept
}

fn category(code: &str) -> Value {
    json!([{ "coding": [{
        "system": "http://terminology.hl7.org/CodeSystem/observation-category",
        "code": code,
    }]}])
}
