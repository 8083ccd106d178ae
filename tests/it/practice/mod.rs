//! Tests of the room `practice`.
