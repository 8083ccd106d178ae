//! Tests of the room `app`.
