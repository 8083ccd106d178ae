//! The desk's window: what the clerk sees and touches on the ward's computer.
//!
//! A face on the room `desk`, which does the work: it holds no rule of handing over, of storing or
//! of exporting. Made like a screen of the tablet: model, event, update (pure, all decisions),
//! effect, render. `typing` says which key goes where; `worker` does what is asked of the desk on a
//! thread of its own, so that no key waits for a disk.

pub mod connect;
pub mod effect;
pub mod event;
pub mod model;
pub mod render;
pub mod sound;
pub mod start;
pub mod system;
pub mod typing;
pub mod update;
pub mod worker;

/// The generated window, fenced so that our lints stay strict everywhere else.
#[allow(
    missing_docs,
    unreachable_pub,
    unsafe_code,
    clippy::all,
    clippy::pedantic,
    clippy::restriction
)]
pub mod ui {
    include!(concat!(env!("OUT_DIR"), "/clerk.rs"));
}

/// The generated join from messages to the window's words.
pub mod strings {
    use super::ui;

    include!(concat!(env!("OUT_DIR"), "/clerk_strings_fill.rs"));
}
