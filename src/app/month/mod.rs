//! The ward's last days in figures: what was written down of its visits and feeds.

mod effect;
mod event;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::Model;
pub use render::render;
pub use update::update;
