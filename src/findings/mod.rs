//! The rules: what held, at which level, with its numbers, reason and source; and what could not
//! be judged because something was missing.
//!
//! Uses `record`, `rhythm`, `growth`; knows no words, clock, disk or screen. A rule's sentences are
//! messages named after its id. Three things hold for every rule: it never holds on missing data,
//! missing data never reads as fine, and a danger that was recorded is never silent.

mod baby;
mod catalogue;
mod compare;
mod feeds;
mod finding;
mod judge;
mod limit;
mod missing;
mod mother;
mod nipple;
mod output;
mod pain;
mod policy;
mod rhythm;
mod risk;
mod rule;
mod scene;
mod signs;
mod ward;
mod weight;

pub use catalogue::{FAMILIES, VERSIONS, catalogue, rule, version_date};
pub use compare::{
    AFTER_LEAST_MS, COMPARED_MS, Comparison, Shift, Sides, SignShift, Stretch, compare, shift,
};
pub use finding::{CallWhom, Finding, Judged, Level, Number, Unit, Unjudged};
pub use judge::judge;
pub use limit::{Limit, LimitFacts};
pub use missing::Missing;
pub use policy::{POLICY_BUILT_IN, Policy, PolicyError, PolicyNeeded, PolicyWrong};
pub use rule::Rule;
pub use ward::{
    FALL_TOLD_FROM_H, REVIEW_VISITS, VisitMark, WardFound, WardPlace, WardWhy, weight_falls,
};

/// The version of the rules; goes wherever a finding goes.
pub const RULE_VERSION: &str = "findings-3";
