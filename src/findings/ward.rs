//! What the ward list needs of a visit, kept small, and a pair's place in the list.
//!
//! A mark is made when a visit changes, from what the rules said of it then; the list reads marks
//! and judges nothing. Marks are of one version of the rules, one ward policy and one state of the
//! pair: whoever keeps them makes them anew when one of these changes.

use serde::{Deserialize, Serialize};

use super::{Judged, Level, Policy, RULE_VERSION};
use crate::growth::Growth;
use crate::record::{Folded, WallTime};

/// The last visits in which a medical review that was not acknowledged still counts: what was said
/// of the one before still counts while a new one is open.
pub const REVIEW_VISITS: usize = 2;

const HOUR_MS: i64 = 3_600_000;

/// What a visit leaves behind for the ward list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitMark {
    /// When it began.
    pub began: WallTime,
    /// The gravest level that was found.
    pub level: Option<Level>,
    /// The first rule that was found at that level; empty with no finding.
    pub gravest: String,
    /// Medical review now was found and not acknowledged.
    pub review: bool,
    /// The rules that asked for that and were not acknowledged, in their order.
    pub reviews: Vec<String>,
    /// It is signed.
    pub signed: bool,
    /// The desk's receipt was taken.
    pub receipt: bool,
    /// When to look again.
    pub next_look: Option<WallTime>,
    /// The version of the rules that said so.
    pub rules: String,
    /// The hash of the policy that they went by.
    pub policy: String,
}

impl VisitMark {
    /// The mark of a visit, as it was judged.
    pub fn of(began: WallTime, visit: &Folded, judged: &Judged, policy: &Policy) -> Self {
        let acknowledged = |rule: &str| visit.acknowledged.iter().any(|it| it.rule == rule);
        let findings = judged.findings.iter();
        let reviews: Vec<String> = findings
            .filter(|it| it.level == Level::MedicalReviewNow && !acknowledged(&it.rule))
            .map(|it| it.rule.clone())
            .collect();
        // Of equal ones the first.
        let gravest = judged.findings.iter().min_by_key(|it| it.level);
        Self {
            began,
            level: gravest.map(|it| it.level),
            gravest: gravest.map_or_else(String::new, |it| it.rule.clone()),
            review: !reviews.is_empty(),
            reviews,
            signed: visit.signed.is_some(),
            receipt: visit.receipt.is_some(),
            next_look: visit.next_look,
            rules: RULE_VERSION.to_owned(),
            policy: policy.mark().hash,
        }
    }

    /// Whether it still holds under a policy and these rules.
    pub fn holds_under(&self, policy: &Policy) -> bool {
        self.rules == RULE_VERSION && self.policy == policy.mark().hash
    }
}

/// What was found of a pair last, as its line in the list says it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WardFound {
    /// The level.
    pub level: Level,
    /// The rule: of medical review now, the first that was not acknowledged.
    pub rule: String,
    /// How many other rules ask for medical review now and were not acknowledged.
    pub others: usize,
    /// The level of the visit before, where that was less grave.
    pub worse_than: Option<Level>,
}

impl WardFound {
    /// What was found, by the marks of the last visits, oldest first; `None` where nothing was. A
    /// visit in which nothing was found yet leaves what the one before it says.
    pub fn of(marks: &[VisitMark]) -> Option<Self> {
        let recent = &marks[marks.len().saturating_sub(REVIEW_VISITS)..];
        let mut leveled = recent.iter().rev().filter(|it| it.level.is_some());
        let (last, before) = (leveled.next(), leveled.next());
        let worse_than = match (last.and_then(|it| it.level), before.and_then(|it| it.level)) {
            (Some(now), Some(then)) if now < then => Some(then),
            _ => None,
        };
        if let Some(asks) = recent.iter().rev().find(|it| it.review) {
            return Some(Self {
                level: Level::MedicalReviewNow,
                rule: asks.reviews.first().cloned().unwrap_or_default(),
                others: asks.reviews.len().saturating_sub(1),
                worse_than,
            });
        }
        Some(Self {
            level: last?.level?,
            rule: last?.gravest.clone(),
            others: 0,
            worse_than,
        })
    }
}

/// From which age of the later weight on a fall is told, in hours: the first loss usually stops
/// by about day 3 to 4 (NICE NG75, 2017).
pub const FALL_TOLD_FROM_H: i64 = 72;

/// A fall in weight that scale and handling do not explain, at an age at which the first loss should
/// be over: grams, below zero, and the hours between the two weighings.
pub fn weight_falls(growth: &Growth) -> Option<(i64, i64)> {
    let gain = growth.gain.filter(|it| it.high < 0)?;
    let since_ms = growth.at.since_ms(gain.to);
    let later_ms = growth.age?.as_ms() - since_ms;
    (FALL_TOLD_FROM_H * HOUR_MS <= later_ms).then_some((gain.grams, gain.hours))
}

/// Why a pair stands where it stands, most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WardWhy {
    /// A medical review was asked for and not acknowledged.
    Review,
    /// A visit is open.
    Open,
    /// The next look is due.
    Due,
    /// Nobody has looked yet.
    NotSeen,
    /// A signed visit waits for the desk's receipt.
    Waiting,
    /// The next look comes later.
    Later,
    /// No next look is planned.
    NoNextLook,
}

/// A pair's place in the list; sorts by why, then what is due by level and then by when, and what
/// comes later by when and then by level.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct WardPlace {
    /// Why.
    pub why: WardWhy,
    level_of_due: Option<Level>,
    due_utc_ms: i64,
    level: Level,
}

impl WardPlace {
    /// The place of a pair by the marks of its last visits, oldest first; `waits` if any of its
    /// signed visits waits for the desk's receipt.
    pub fn of(marks: &[VisitMark], waits: bool, now: WallTime) -> Self {
        let last = marks.last();
        let recent = &marks[marks.len().saturating_sub(REVIEW_VISITS)..];
        let due = last.and_then(|it| it.next_look).map(WallTime::utc_ms);
        let why = match last {
            _ if recent.iter().any(|it| it.review) => WardWhy::Review,
            None => WardWhy::NotSeen,
            Some(last) if !last.signed => WardWhy::Open,
            Some(_) if due.is_some_and(|due| due <= now.utc_ms()) => WardWhy::Due,
            Some(_) if waits => WardWhy::Waiting,
            Some(_) if due.is_some() => WardWhy::Later,
            Some(_) => WardWhy::NoNextLook,
        };
        let level = last.and_then(|it| it.level).unwrap_or(Level::GoingWell);
        Self {
            why,
            level_of_due: (why == WardWhy::Due).then_some(level),
            due_utc_ms: due.unwrap_or(i64::MAX),
            level,
        }
    }
}
