//! Settings: language, light, hand, the specialist's sign, the keys, and what this is.

mod effect;
mod event;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::Model;
pub use render::{TabletShown, render};
pub use update::update;
