//! The tablet: joins the screens to every room below. The only room that names Slint.
//!
//! One folder a screen, the same file names in each: model, event, update (pure, all decisions),
//! effect, render. No SQL, no arithmetic of the trade.

pub mod around;
pub mod bedside;
pub mod before;
pub mod clock;
pub mod command;
pub mod compared;
pub mod connect;
pub mod deed;
pub mod demo;
pub mod desk_key_file;
pub mod entry_line;
pub mod event;
pub mod front;
pub mod handover;
pub mod idle;
pub mod inside;
pub mod keeper;
pub mod lists;
pub mod look;
pub mod looking_back;
pub mod month;
pub mod open_visit;
pub mod pair;
pub mod picture;
pub mod pin;
pub mod plan;
pub mod practice;
pub mod preferences;
pub mod route;
pub mod say;
pub mod settings;
pub mod shell;
pub mod start;
pub mod touch;
pub mod ward;
pub mod ward_policy;

/// The generated screens, fenced so that our lints stay strict everywhere else.
#[allow(
    missing_docs,
    unreachable_pub,
    unsafe_code,
    clippy::all,
    clippy::pedantic,
    clippy::restriction
)]
pub mod ui {
    include!(concat!(env!("OUT_DIR"), "/app.rs"));
}

/// The generated join from messages to the screens' words.
pub mod strings {
    use super::ui;

    include!(concat!(env!("OUT_DIR"), "/strings_fill.rs"));
}
