//! From the judgement to the cards of findings, and what could not be judged. Decides nothing.

use crate::app::around::Around;
use crate::app::bedside::strip::level_of;
use crate::app::open_visit::OpenVisit;
use crate::app::{say, ui};
use crate::findings::{Finding, Judged, Level};
use crate::report::phrase;
use crate::words::Words;

/// The findings as cards.
pub fn finding_rows(
    judged: &Judged,
    open: &OpenVisit,
    around: &Around<'_>,
    words: &Words,
) -> Vec<ui::FindingRow> {
    judged
        .findings
        .iter()
        .map(|finding| finding_row(finding, open, around, words))
        .collect()
}

fn finding_row(
    finding: &Finding,
    open: &OpenVisit,
    around: &Around<'_>,
    words: &Words,
) -> ui::FindingRow {
    let acknowledged = open
        .folded
        .acknowledged
        .iter()
        .rev()
        .find(|it| it.rule == finding.rule);
    let needs = finding.level == Level::MedicalReviewNow
        && acknowledged.is_none()
        && open.folded.signed.is_none();
    ui::FindingRow {
        level: level_of(finding.level),
        level_name: say::stored(words, "level", finding.level).into(),
        title: phrase::finding(words, finding).into(),
        reason: phrase::reason(words, finding).into(),
        source: words.say(&format!("source-{}", finding.source)).into(),
        tries: phrase::tries(words, finding).unwrap_or_default().into(),
        call: phrase::call(words, finding, around.policy.call(finding.call))
            .unwrap_or_default()
            .into(),
        acknowledge: if needs {
            words.say_with(
                "looking-back-acknowledge",
                &[("by", around.who(open).as_str().into())],
            )
        } else {
            String::new()
        }
        .into(),
        acknowledged: acknowledged
            .map_or_else(String::new, |it| {
                words.say_with(
                    "looking-back-acknowledged",
                    &[
                        ("by", it.by.as_str().into()),
                        ("time", say::time(words, it.wall, around.now.wall).into()),
                    ],
                )
            })
            .into(),
    }
}

/// What could not be judged, and for want of what.
pub(super) fn unjudged(judged: &Judged, words: &Words) -> String {
    judged
        .unjudged
        .iter()
        .map(|unjudged| {
            let missing = unjudged
                .missing
                .iter()
                .map(|missing| say::coded(words, "missing", missing))
                .collect::<Vec<_>>()
                .join(", ");
            words.say_with(
                "looking-back-unjudged-line",
                &[
                    ("rule", phrase::rule(words, &unjudged.rule).into()),
                    ("missing", missing.into()),
                ],
            )
        })
        .collect::<Vec<_>>()
        .join("\n")
}
