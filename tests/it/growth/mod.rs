//! Tests of the room `growth`.
