//! What the rules said: one observation about the baby and one about the mother, each with a
//! component for every finding, for its numbers, and for every rule that could not be judged.
//!
//! One observation, not one for each finding, so that an amendment leaves no old finding behind.

use super::{Observed, Why, X, ours};
use crate::findings::{CallWhom, Finding};
use crate::report::form::in_ucum;

pub(super) fn add(all: &mut Observed<'_>) {
    let (mother, baby): (Vec<&Finding>, Vec<&Finding>) = all
        .facts
        .judged
        .findings
        .iter()
        .partition(|it| it.call == CallWhom::MotherDoctor || is_of_mother(&it.rule));
    panel(all, "findings-baby", &baby, false);
    panel(all, "findings-mother", &mother, true);
}

/// Whether a rule is about the mother, by the family that its id begins with.
fn is_of_mother(rule: &str) -> bool {
    ["mother-", "pain-", "nipple-", "breast-"]
        .iter()
        .any(|family| rule.starts_with(family))
}

fn panel(all: &mut Observed<'_>, code: &str, findings: &[&Finding], of_mother: bool) {
    let facts = all.facts;
    let count = u64::try_from(findings.len()).unwrap_or(u64::MAX);
    let mut out = all
        .observation(code, code)
        .at(facts.until)
        .value(X::count(count, "{count}"));
    out.caution = true;
    if of_mother {
        out = out.of_mother();
    }
    for it in findings {
        let code = ours("finding", &it.rule);
        out.part(&code, X::Coded(ours("level", it.level.as_word())));
        for number in &it.numbers {
            let (value, unit, decimals) = in_ucum(number);
            let value = X::decimal(value, decimals, unit);
            out.part(&format!("{code}-number-{}", number.name), value);
        }
        out.part(
            &format!("{code}-source"),
            X::Coded(ours("source", &it.source)),
        );
        for ack in facts.acknowledged.iter().filter(|ack| ack.rule == it.rule) {
            out.part(&format!("{code}-acknowledged"), X::Time(ack.wall));
            let by = X::Text(ack.by.as_str().to_owned());
            out.part(&format!("{code}-acknowledged-by"), by);
        }
    }
    for it in &facts.judged.unjudged {
        if is_of_mother(&it.rule) == of_mother {
            let missing = format!("missing: {}", it.missing.join(", "));
            out.part(
                &ours("finding", &it.rule),
                X::AbsentFor(Why::Unknown, missing),
            );
        }
    }
    out.part(
        "rule-version",
        X::Text(facts.rule_versions.findings.clone()),
    );
    all.observe(out);
}
