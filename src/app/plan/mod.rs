//! The plan: what is agreed, notes, when to look again; and the signature that closes the visit.

mod effect;
mod event;
mod model;
mod render;
mod sheet;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::{CALLS, Model, NEXT_LOOK_HOURS, SignTrouble};
pub use render::render;
pub use update::{sign_trouble, update};
