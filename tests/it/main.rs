//! The one integration binary. Every file beside this one is listed here; a test proves it.

#![allow(missing_docs, clippy::unwrap_used)]

mod app;
mod clerk;
mod desk;
mod fault;
mod findings;
mod growth;
mod handover;
mod practice;
mod record;
mod report;
mod rhythm;
mod shape;
mod store;
mod support;
mod words;
