//! Tests of the room `rhythm`.
