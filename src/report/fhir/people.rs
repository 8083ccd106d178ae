//! Mother, baby, their relation, the specialist, the tablet, and the encounter.

use serde_json::{Value, json};
use uuid::Uuid;

use super::build::{Bundle, key, period};
use crate::record::{Label, Sex};
use crate::report::form::iso;
use crate::report::observed::ours;

pub(super) fn add(bundle: &mut Bundle<'_>) {
    mother(bundle);
    baby(bundle);
    related(bundle);
    practitioner(bundle);
    device(bundle);
    encounter(bundle);
}

fn mother_identifier(bundle: &Bundle<'_>) -> Value {
    let pair = &bundle.facts.pair;
    let id = pair
        .mother_id
        .unwrap_or_else(|| Uuid::new_v5(&pair.id.uuid(), b"mother"));
    json!({ "system": "urn:feedside:mother", "value": id.to_string() })
}

/// Our identifier and the ward's own number, if there is one.
fn identifiers(first: Value, number: Option<&Label>) -> Value {
    let number = number.map(|number| {
        json!({
            "type": { "coding": [{
                "system": "http://terminology.hl7.org/CodeSystem/v2-0203",
                "code": "MR",
            }]},
            "system": "urn:feedside:ward-number",
            "value": number.as_str(),
        })
    });
    [first].into_iter().chain(number).collect::<Vec<_>>().into()
}

fn mother(bundle: &mut Bundle<'_>) {
    let pair = &bundle.facts.pair;
    let mut patient = json!({
        "identifier": identifiers(mother_identifier(bundle), pair.mother_number.as_ref()),
        "active": true,
        "name": [{ "text": pair.initials.as_str() }],
        "link": [{ "other": bundle.reference(key::RELATED), "type": "seealso" }],
    });
    if let Some(language) = &pair.language {
        patient["communication"] = json!([{
            "language": { "coding": [{ "system": "urn:ietf:bcp:47", "code": language.tag() }] },
            "preferred": true,
        }]);
    }
    bundle.add("Patient", key::MOTHER, patient);
}

fn baby(bundle: &mut Bundle<'_>) {
    let pair = &bundle.facts.pair;
    let ours = json!({ "system": "urn:feedside:baby", "value": pair.id.to_string() });
    let gender = match pair.sex {
        Sex::Female => "female",
        Sex::Male => "male",
        Sex::NotStated => "unknown",
    };
    let patient = json!({
        "identifier": identifiers(ours, pair.baby_number.as_ref()),
        "active": true,
        "gender": gender,
        "birthDate": pair.birth.local().format("%Y-%m-%d").to_string(),
        "_birthDate": { "extension": [{
            "url": "http://hl7.org/fhir/StructureDefinition/patient-birthTime",
            "valueDateTime": iso(pair.birth),
        }]},
        "multipleBirthBoolean": 1 < pair.babies,
    });
    bundle.add("Patient", key::BABY, patient);
}

fn related(bundle: &mut Bundle<'_>) {
    let pair = bundle.facts.pair.id.to_string();
    let person = json!({
        "identifier": [
            { "system": "urn:feedside:mother-of", "value": pair },
            mother_identifier(bundle),
        ],
        "active": true,
        "patient": bundle.reference(key::BABY),
        "relationship": [{ "coding": [{
            "system": "http://terminology.hl7.org/CodeSystem/v3-RoleCode",
            "code": "MTH",
            "display": "mother",
        }]}],
    });
    bundle.add("RelatedPerson", key::RELATED, person);
}

fn practitioner(bundle: &mut Bundle<'_>) {
    let sign = bundle.facts.specialist.as_str();
    let person = json!({
        "identifier": [{ "system": "urn:feedside:specialist", "value": sign }],
    });
    bundle.add("Practitioner", key::PRACTITIONER, person);
}

fn device(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let tablet = facts
        .handover
        .as_ref()
        .and_then(|it| it.tablet_key.as_deref());
    let value = format!("{}/{}", tablet.unwrap_or("tablet"), facts.app_version);
    let device = json!({
        "identifier": [{ "system": "urn:feedside:tablet", "value": value }],
        "status": "active",
        "deviceName": [{ "name": "Feedside", "type": "user-friendly-name" }],
        "version": [{ "value": facts.app_version }],
    });
    bundle.add("Device", key::DEVICE, device);
}

fn encounter(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let status = if facts.signed.is_some() {
        "finished"
    } else {
        "in-progress"
    };
    let end = facts.signed.as_ref().map(|signed| signed.wall);
    let mut encounter = json!({
        "identifier": [
            { "system": "urn:feedside:occasion", "value": bundle.occasion().to_string() },
            { "system": "urn:feedside:visit", "value": facts.visit.to_string() },
        ],
        "status": status,
        "class": {
            "system": "http://terminology.hl7.org/CodeSystem/v3-ActCode",
            "code": "IMP",
            "display": "inpatient encounter",
        },
        "serviceType": bundle.codes.concept("breastfeeding-visit"),
        "subject": bundle.reference(key::BABY),
        "participant": [
            { "individual": bundle.reference(key::PRACTITIONER) },
            { "individual": bundle.reference(key::RELATED) },
        ],
        "period": period(facts.began, end),
    });
    let reasons: Vec<Value> = facts
        .pair
        .reasons
        .iter()
        .map(|reason| bundle.codes.concept(&ours("reason", reason.word())))
        .collect();
    if !reasons.is_empty() {
        encounter["reasonCode"] = reasons.into();
    }
    bundle.add("Encounter", key::ENCOUNTER, encounter);
}
