//! Where it all comes from: who, which tablet, which sealed record, which policy and rules, which
//! version it replaces, and the tablet's own signature.

use chrono::{DateTime, SecondsFormat};
use serde_json::{Value, json};

use super::build::{Bundle, key};
use crate::report::form::{base64, hex, iso};

pub(super) fn add(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let recorded = facts
        .signed
        .as_ref()
        .map_or(facts.until, |signed| signed.wall);
    let activity = if bundle.is_amendment() {
        "UPDATE"
    } else {
        "CREATE"
    };
    let mut provenance = json!({
        "target": bundle.urls(),
        "occurredPeriod": super::build::period(facts.began, Some(facts.until)),
        "recorded": iso(recorded),
        "activity": { "coding": [{
            "system": "http://terminology.hl7.org/CodeSystem/v3-DataOperation",
            "code": activity,
        }]},
        "agent": [agent(bundle, "author", key::PRACTITIONER), agent(bundle, "assembler", key::DEVICE)],
        "entity": entities(bundle),
    });
    let signed = facts
        .handover
        .as_ref()
        .and_then(|it| it.cose_sign1.as_deref());
    if let Some(cose_sign1) = signed {
        provenance["signature"] = json!([{
            "type": [{
                "system": "urn:iso-astm:E1762-95:2013",
                "code": "1.2.840.10065.1.12.1.14",
                "display": "Source Signature",
            }],
            "when": iso(recorded),
            "who": bundle.reference(key::DEVICE),
            "onBehalfOf": bundle.reference(key::PRACTITIONER),
            "sigFormat": "application/cose",
            "data": base64(cose_sign1),
        }]);
    }
    // A Provenance has no identifier of its own in R4; the millisecond of signing finds it again.
    let utc = DateTime::from_timestamp_millis(recorded.utc_ms()).unwrap_or_default();
    let search = format!(
        "recorded={}",
        utc.to_rfc3339_opts(SecondsFormat::Millis, true)
    );
    let request = json!({ "method": "POST", "url": "Provenance", "ifNoneExist": search });
    bundle.add_with("Provenance", "provenance", provenance, request);
}

fn agent(bundle: &Bundle<'_>, kind: &str, who: &str) -> Value {
    json!({
        "type": { "coding": [{
            "system": "http://terminology.hl7.org/CodeSystem/provenance-participant-type",
            "code": kind,
        }]},
        "who": bundle.reference(who),
    })
}

fn entities(bundle: &Bundle<'_>) -> Value {
    let facts = bundle.facts;
    let entity = |role: &str, system: &str, value: &str| {
        json!({
            "role": role,
            "what": { "identifier": { "system": system, "value": value } },
        })
    };
    let mut all = vec![entity(
        "source",
        "urn:feedside:visit",
        &facts.visit.to_string(),
    )];
    if let Some(replaced) = facts.replaces {
        all.push(entity(
            "revision",
            "urn:feedside:visit",
            &replaced.to_string(),
        ));
    }
    if let Some(it) = &facts.handover {
        if let Some(transfer) = &it.transfer {
            all.push(entity("source", "urn:feedside:transfer", transfer));
        }
        if let Some(hash) = &it.sealed_sha256 {
            all.push(entity("source", "urn:feedside:sealed-sha256", &hex(hash)));
        }
    }
    let policy = &facts.policy;
    let policy = format!("{} {} {}", policy.name, policy.version, policy.hash);
    all.push(entity("quotation", "urn:feedside:policy", policy.trim()));
    let rules = &facts.rule_versions;
    for version in [&rules.rhythm, &rules.growth, &rules.findings] {
        all.push(entity("quotation", "urn:feedside:rules", version));
    }
    all.into()
}
