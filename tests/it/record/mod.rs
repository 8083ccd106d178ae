//! Tests of the room `record`.
