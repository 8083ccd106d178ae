//! The facts as a FHIR R4 bundle: a transaction for a server, or a document to be filed.
//!
//! Importing it twice is harmless: every resource has an identifier of ours, and is made only if
//! none with it exists. An amendment has the same identifiers and puts itself over what was sent
//! before, with the status `amended`; what was taken back is sent again as `entered-in-error`.
//! What is unknown says so (`dataAbsentReason`); no absence means "no".
//! The mother's pain, nipple and breast have the mother as subject and the baby as focus.

mod build;
mod document;
mod observations;
mod people;
mod plan;
mod provenance;

use serde_json::Value;

use super::Facts;
use super::codes::Codes;
use crate::words::Words;
use build::{Bundle, Kind};

/// The transaction bundle with the built-in codes.
pub fn bundle(facts: &Facts) -> Value {
    bundle_with(facts, &Codes::built_in())
}

/// The transaction bundle with a site's own table of codes.
pub fn bundle_with(facts: &Facts, codes: &Codes) -> Value {
    let mut bundle = resources(facts, codes, Kind::Transaction);
    provenance::add(&mut bundle);
    bundle.finish()
}

/// The document: the same resources behind a composition that carries the page to be read.
pub fn document(facts: &Facts, codes: &Codes, words: &Words) -> Value {
    let mut bundle = resources(facts, codes, Kind::Document);
    document::add(&mut bundle, words);
    provenance::add(&mut bundle);
    bundle.finish()
}

fn resources<'a>(facts: &'a Facts, codes: &'a Codes, kind: Kind) -> Bundle<'a> {
    let mut bundle = Bundle::new(facts, codes, kind);
    people::add(&mut bundle);
    observations::add(&mut bundle);
    plan::add(&mut bundle);
    bundle
}
