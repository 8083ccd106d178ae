//! Tests of the room `findings`.

mod catalogue;
mod edges;
mod policy;
mod property;
mod scene;
mod table;
mod visits;
mod words;
