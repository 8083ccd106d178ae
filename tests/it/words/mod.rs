//! Tests of the room `words`.

mod forms;
mod saying;
