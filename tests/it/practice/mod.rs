//! Tests of the room `practice`.

mod feeds;
mod published;
