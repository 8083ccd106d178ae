//! The Ward screen: pairs by what is due, and why. Never shows a number that was not computed below.

mod effect;
mod event;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::{Line, Model};
pub use render::render;
pub use update::update;
