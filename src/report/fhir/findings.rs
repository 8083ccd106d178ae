//! What the rules said: one observation about the baby and one about the mother, each with a
//! component for every finding, for its numbers, and for every rule that could not be judged.
//!
//! One observation, not one for each finding, so that an amendment leaves no old finding behind.

use serde_json::json;

use super::build::{Bundle, UNKNOWN, X, ours, rounded};
use crate::findings::{CallWhom, Finding};
use crate::report::form::in_ucum;

pub(super) fn add(bundle: &mut Bundle<'_>) {
    let (mother, baby): (Vec<&Finding>, Vec<&Finding>) = bundle
        .facts
        .judged
        .findings
        .iter()
        .partition(|it| it.call == CallWhom::MotherDoctor || is_of_mother(&it.rule));
    panel(bundle, "findings-baby", &baby, false);
    panel(bundle, "findings-mother", &mother, true);
}

/// Whether a rule is about the mother, by the family that its id begins with.
fn is_of_mother(rule: &str) -> bool {
    ["mother-", "pain-", "nipple-", "breast-"]
        .iter()
        .any(|family| rule.starts_with(family))
}

fn panel(bundle: &mut Bundle<'_>, code: &str, findings: &[&Finding], of_mother: bool) {
    let facts = bundle.facts;
    let count = u64::try_from(findings.len()).unwrap_or(u64::MAX);
    let mut out = bundle
        .observation(code, code)
        .at(facts.until)
        .value(bundle, X::count(count, "{count}"))
        .with("note", json!([{ "text": bundle.codes.display("caution") }]));
    if of_mother {
        out = out.of_mother(bundle);
    }
    for it in findings {
        let code = ours("finding", &it.rule);
        out.part(bundle, &code, X::Coded(ours("level", it.level.as_word())));
        for number in &it.numbers {
            let (value, unit, decimals) = in_ucum(number);
            let value = X::Quantity(rounded(value, decimals), unit);
            out.part(bundle, &format!("{code}-number-{}", number.name), value);
        }
        out.part(
            bundle,
            &format!("{code}-source"),
            X::Coded(ours("source", &it.source)),
        );
        for ack in facts.acknowledged.iter().filter(|ack| ack.rule == it.rule) {
            out.part(bundle, &format!("{code}-acknowledged"), X::Time(ack.wall));
            let by = X::Text(ack.by.as_str().to_owned());
            out.part(bundle, &format!("{code}-acknowledged-by"), by);
        }
    }
    for it in &facts.judged.unjudged {
        if is_of_mother(&it.rule) == of_mother {
            let missing = format!("missing: {}", it.missing.join(", "));
            out.part(
                bundle,
                &ours("finding", &it.rule),
                X::AbsentFor(UNKNOWN, missing),
            );
        }
    }
    out.part(
        bundle,
        "rule-version",
        X::Text(facts.rule_versions.findings.clone()),
    );
    bundle.observe(out);
}
