//! What was agreed, as a care plan; the next look is one of its activities.

use serde_json::{Value, json};

use super::build::{Bundle, key, period};
use crate::record::{Coded, PlanItem, PlanWhat};
use crate::report::form::iso;
use crate::report::observed::ours;

/// Its key.
const PLAN: &str = "plan";

pub(super) fn add(bundle: &mut Bundle<'_>) {
    let facts = bundle.facts;
    let mut activity: Vec<Value> = facts.plan.iter().map(|item| agreed(bundle, item)).collect();
    if let Some(due) = facts.next_look {
        activity.push(json!({ "detail": {
            "code": bundle.codes.concept("next-look"),
            "status": "scheduled",
            "scheduledPeriod": period(due, None),
        }}));
    }
    // An amendment that agrees nothing takes back what an earlier version agreed.
    if activity.is_empty() && !bundle.is_amendment() {
        return;
    }
    let status = if activity.is_empty() {
        "revoked"
    } else {
        "active"
    };
    let mut plan = json!({
        "identifier": [{
            "system": "urn:feedside:plan",
            "value": uuid::Uuid::new_v5(&bundle.occasion(), PLAN.as_bytes()).to_string(),
        }],
        "status": status,
        "intent": "plan",
        "category": [bundle.codes.concept("feeding-plan")],
        "subject": bundle.reference(key::BABY),
        "encounter": bundle.reference(key::ENCOUNTER),
        "created": iso(facts.until),
        "author": bundle.reference(key::PRACTITIONER),
    });
    if !activity.is_empty() {
        plan["activity"] = activity.into();
    }
    bundle.add("CarePlan", PLAN, plan);
}

fn agreed(bundle: &Bundle<'_>, item: &PlanItem) -> Value {
    let is_done = item.what == Some(Coded::Known(PlanWhat::MedicalTeamTold));
    let mut detail = json!({ "status": if is_done { "completed" } else { "not-started" } });
    if let Some(what) = &item.what {
        detail["code"] = bundle.codes.concept(&ours("plan", what.word()));
    }
    if let Some(words) = &item.words {
        detail["description"] = words.as_str().into();
    }
    json!({ "detail": detail })
}
