//! Tests of the room `shape`.
