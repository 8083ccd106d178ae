//! Tests of the room `practice`.

mod agreement;
mod feeds;
mod published;
