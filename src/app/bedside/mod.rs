//! The bedside screen: taps, signs, pain and acts while the baby feeds.
//!
//! Never scrolls, never blocks a tap on the disk, and never ends a feed by being left.

mod effect;
mod event;
pub mod flag;
mod model;
mod render;
pub mod strip;
pub mod take_back;
mod update;

pub use effect::Effect;
pub use event::{Act, Event, PadKind};
pub use model::{Model, Question, SILENT_ASK_MS, Sheet};
pub use render::{Lists, render, render_clock};
pub use update::update;
