//! What leaves the tablet for people and other systems: facts first, then pages.
//!
//! [`Facts`] gathers one visit as numbers and coded words; every page and file is made from it
//! alone: `visit.json`, the FHIR bundle, the table, the note for a scanner, the plain page.
//! Knows no screen, no disk, no clock, and none of the sealing: what proves a handover comes in as
//! plain bytes ([`Handover`]). It computes no clinical number of its own.

pub mod catalogue;
pub mod codes;
pub mod csv;
mod facts;
pub mod fhir;
mod figures;
mod form;
pub mod hl7;
mod json;
pub mod month;
pub mod note;
mod observed;
#[cfg(feature = "pdf")]
pub mod pdf;
pub mod phrase;
pub mod plain;
pub mod printed;
pub mod sheet;

pub use facts::{
    Computed, Facts, FeedFacts, Figure, Figures, Handover, Look, RuleVersions, TakenBack, occasion,
};
pub use form::{base64, hex};
pub use json::visit_json;
