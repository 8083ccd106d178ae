//! Tests of the room `findings`.

mod catalogue;
mod edges;
mod policy;
mod property;
mod scene;
mod visits;
mod words;
