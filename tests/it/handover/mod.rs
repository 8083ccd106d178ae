//! Tests of the room `handover`.

mod codes;
mod keys;
mod messages;
mod note;
mod primitives;
mod receipt;
mod refusals;
pub mod sample;
mod squeeze;
mod stages;
pub mod today;
mod vectors;
pub mod visits;
mod wedge;
mod wire;
