//! Weight and output against age: change from birth weight, WHO z and centile, daily gain, test
//! weighing, expected nappies, usual volumes.
//!
//! Uses `record` only; no clock, disk or screen. Describes; never prescribes.

/// The version of the rules; goes wherever a computed number goes.
pub const RULE_VERSION: &str = "growth-1";
