//! Feedside: the tool of the infant-feeding specialist at the bedside.
//!
//! The rooms in reading order; imports go only downwards, and a test proves it. Each room's own
//! page says what it is for and what it deliberately does not know.

pub mod record;

pub mod growth;
pub mod practice;
pub mod rhythm;
pub mod words;

pub mod findings;
pub mod handover;
#[cfg(feature = "store")]
pub mod store;

pub mod report;

pub mod fault;

#[cfg(feature = "app")]
pub mod app;
#[cfg(feature = "desk")]
pub mod desk;

#[cfg(feature = "window")]
pub mod clerk;

#[cfg(all(feature = "app", feature = "desk"))]
pub mod rehearse;
