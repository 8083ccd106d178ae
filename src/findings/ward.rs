//! What the ward list needs of a visit, kept small, and a pair's place in the list.
//!
//! A mark is made when a visit changes, from what the rules said of it then; the list reads marks
//! and judges nothing. Marks are of one version of the rules, one ward policy and one state of the
//! pair: whoever keeps them makes them anew when one of these changes.

use serde::{Deserialize, Serialize};

use super::{Judged, Level, Policy, RULE_VERSION};
use crate::record::{Folded, WallTime};

/// The last visits in which a medical review that was not acknowledged still counts: what was said
/// of the one before still counts while a new one is open.
pub const REVIEW_VISITS: usize = 2;

/// What a visit leaves behind for the ward list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitMark {
    /// When it began.
    pub began: WallTime,
    /// The gravest level that was found.
    pub level: Option<Level>,
    /// Medical review now was found and not acknowledged.
    pub review: bool,
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
        let review = judged
            .findings
            .iter()
            .filter(|it| it.level == Level::MedicalReviewNow)
            .any(|it| !acknowledged(&it.rule));
        Self {
            began,
            level: judged.findings.iter().map(|it| it.level).min(),
            review,
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

/// Why a pair stands where it stands, most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum WardWhy {
    /// A medical review was asked for and not acknowledged.
    Review,
    /// A visit is open.
    Open,
    /// The next look is due.
    Due,
    /// A signed visit waits for the desk's receipt.
    Waiting,
    /// Nobody has looked yet.
    NotSeen,
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
