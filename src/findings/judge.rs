//! Judging a visit by every rule.

use super::rule::Verdict;
use super::scene::Scene;
use super::{Judged, Policy, Unjudged, catalogue};
use crate::growth::Growth;
use crate::record::{Folded, Pair, WallTime};
use crate::rhythm::Summary;

/// Judges a visit. `rhythms` has one summary for each feed, in order; `growth` was computed as of
/// `now`. Findings come gravest first and then in the order of the catalogue.
pub fn judge(
    pair: &Pair,
    visit: &Folded,
    rhythms: &[Summary],
    growth: &Growth,
    policy: &Policy,
    now: WallTime,
) -> Judged {
    let scene = Scene {
        pair,
        visit,
        rhythms,
        growth,
        policy,
        now,
    };
    let mut judged = Judged::default();
    for rule in catalogue() {
        match (rule.judge)(&scene) {
            Verdict::Held(values) => judged.findings.push(rule.finding(&values)),
            Verdict::Lacks(missing) => judged.unjudged.push(Unjudged {
                rule: rule.id.to_owned(),
                missing: missing.iter().map(|it| it.as_word().to_owned()).collect(),
            }),
            Verdict::NotHeld | Verdict::NotForThis => {}
        }
    }
    judged.findings.sort_by_key(|it| it.level);
    judged
}
