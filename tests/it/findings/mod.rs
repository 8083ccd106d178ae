//! Tests of the room `findings`.
