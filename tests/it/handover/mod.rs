//! Tests of the room `handover`.
