//! The facts as a FHIR R4 transaction bundle.
//!
//! Importing it twice is harmless: every resource has an identifier of ours, and is made only if
//! none with it exists. An amendment has the same identifiers and puts itself over what was sent
//! before, with the status `amended`; what was taken back is sent again as `entered-in-error`.
//! What is unknown says so (`dataAbsentReason`); no absence means "no".
//! The mother's pain, nipple and breast have the mother as subject and the baby as focus.

mod build;
mod feed;
mod findings;
mod people;
mod plan;
mod provenance;
mod seen;

use serde_json::Value;

use super::Facts;
use super::codes::Codes;

/// The bundle with the built-in codes.
pub fn bundle(facts: &Facts) -> Value {
    bundle_with(facts, &Codes::built_in())
}

/// The bundle with a site's own table of codes.
pub fn bundle_with(facts: &Facts, codes: &Codes) -> Value {
    let mut bundle = build::Bundle::new(facts, codes);
    people::add(&mut bundle);
    seen::add(&mut bundle);
    feed::add(&mut bundle);
    findings::add(&mut bundle);
    plan::add(&mut bundle);
    provenance::add(&mut bundle);
    bundle.finish()
}
