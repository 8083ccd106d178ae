//! Tests of the room `record`.

mod checked;
mod folding;
mod journal;
mod make;
mod no_person;
mod property;
mod stored;
mod time;
mod visit;
mod words;
