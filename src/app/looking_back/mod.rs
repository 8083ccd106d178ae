//! Looking back: the whole feed, what it comes to, what was found after it, and the findings.

mod effect;
pub mod entries;
mod event;
mod model;
mod render;
pub mod strip;
mod update;

pub use effect::Effect;
pub use event::{After, Event};
pub use model::{Model, Picked};
pub use render::{finding_rows, render};
pub use update::update;
