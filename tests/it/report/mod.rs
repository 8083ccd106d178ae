//! Tests of the room `report`.

mod codes;
mod fhir;
mod json;
mod note;
mod page;
mod table;
