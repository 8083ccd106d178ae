//! Tests of the room `words`.
