//! Tests of the room `app`.

mod bedside;
mod contrast;
