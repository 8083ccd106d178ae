//! Tests of the room `practice`.

mod agreement;
mod counted;
mod directions;
mod feeds;
mod published;
mod told;
