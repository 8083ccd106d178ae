//! Tests of the room `clerk`: the desk's window.
#![cfg(all(feature = "window", feature = "app"))]

mod look;
mod place;
mod typing;
mod window;
