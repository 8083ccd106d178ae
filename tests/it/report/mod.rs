//! Tests of the room `report`.

mod catalogue;
mod codes;
mod fhir;
mod hl7;
mod json;
mod month;
mod note;
mod page;
#[cfg(feature = "pdf")]
mod pdf;
mod sheet;
mod table;
