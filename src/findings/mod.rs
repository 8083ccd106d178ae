//! The rules: what held, at which level, with its numbers, reason and source; and what could not
//! be judged because something was missing.
//!
//! Uses `record`, `rhythm`, `growth`; knows no words, clock, disk or screen. A rule's sentences are
//! messages named after its id.

mod finding;

pub use finding::{CallWhom, Finding, Judged, Level, Number, Unit, Unjudged};

/// The version of the rules; goes wherever a finding goes.
pub const RULE_VERSION: &str = "findings-1";
