//! From what was computed to the rows that are handed over, each a plain value.

use crate::app::open_visit::OpenVisit;
use crate::findings::{self, Judged};
use crate::growth;
use crate::handover::{FeedTable, FindingRow, Handed, NumberRow, PhaseRow, RateRow, RunRow};
use crate::record::PolicyMark;
use crate::rhythm::{self, Rate, Summary};

/// All that goes to the desk.
pub fn handed(open: &OpenVisit, judged: &Judged, policy: PolicyMark) -> Handed {
    Handed {
        pair: open.pair.clone(),
        visit: open.visit.clone(),
        taps: true,
        feeds: open.summaries().iter().map(feed_table).collect(),
        findings: judged.findings.iter().map(finding_row).collect(),
        unjudged: judged
            .unjudged
            .iter()
            .map(|unjudged| (unjudged.rule.clone(), unjudged.missing.clone()))
            .collect(),
        policy,
        rule_versions: [
            rhythm::RULE_VERSION.to_owned(),
            growth::RULE_VERSION.to_owned(),
            findings::RULE_VERSION.to_owned(),
        ],
    }
}

fn feed_table(summary: &Summary) -> FeedTable {
    FeedTable {
        watched_ms: summary.watched_ms,
        sucks: summary.sucks,
        swallows: summary.swallows,
        first_flow: summary.first_flow,
        phases: summary
            .phases
            .iter()
            .map(|span| PhaseRow {
                from: span.from,
                to: span.to,
                phase: span.phase.as_word().to_owned(),
                percent: hundredths(span.probability).min(100) as u8,
            })
            .collect(),
        runs: summary
            .runs
            .iter()
            .map(|run| RunRow {
                from: run.from,
                to: run.to,
                sucks: run.sucks,
                swallows: run.swallows,
            })
            .collect(),
        rates: summary
            .rates
            .iter()
            .flat_map(|rates| {
                let phase = rates.phase.map(|phase| phase.as_word().to_owned());
                let row = move |rate: Rate, per_min: bool, phase: Option<String>| RateRow {
                    phase,
                    per_min,
                    hundredths: [rate.value, rate.low, rate.high].map(hundredths),
                };
                let per_min = rates
                    .sucks_per_min
                    .map(|rate| row(rate, true, phase.clone()));
                let per_swallow = rates.sucks_per_swallow.map(|rate| row(rate, false, phase));
                per_min.into_iter().chain(per_swallow)
            })
            .collect(),
        doubts: summary
            .doubts
            .iter()
            .map(|doubt| doubt.as_word().to_owned())
            .collect(),
    }
}

/// A number times a hundred, rounded, not below zero.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn hundredths(value: f64) -> u32 {
    (value * 100.0).round().clamp(0.0, f64::from(u32::MAX)) as u32
}

fn finding_row(finding: &findings::Finding) -> FindingRow {
    FindingRow {
        rule: finding.rule.clone(),
        level: finding.level.as_word().to_owned(),
        numbers: finding
            .numbers
            .iter()
            .map(|number| NumberRow {
                name: number.name.clone(),
                value: number.value,
                unit: number.unit.as_word().to_owned(),
            })
            .collect(),
        source: finding.source.clone(),
        tries: finding.tries.clone(),
        plan: finding.plan.clone(),
        call: finding.call.as_word().to_owned(),
    }
}
