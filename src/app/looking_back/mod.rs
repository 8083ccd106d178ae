//! Looking back: the whole feed, what it comes to, what was found after it, and the findings.

mod cards;
mod effect;
pub mod entries;
mod event;
mod model;
mod render;
pub mod strip;
mod update;

pub use cards::finding_rows;
pub use effect::Effect;
pub use event::{After, Event};
pub use model::{Model, Picked};
pub use render::render;
pub use update::update;
