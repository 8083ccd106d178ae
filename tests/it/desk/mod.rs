//! Tests of the room `desk`.
