//! Tests of the room `findings`.

mod catalogue;
mod comparing;
mod edges;
mod policy;
mod property;
mod scene;
mod table;
mod visits;
mod ward;
mod words;
