//! The lock's screen: the PIN or the rescue code typed on a pad of digits, to open the tablet's data;
//! a new PIN typed twice; and the rescue code to be written down.

mod effect;
mod event;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::{Model, Stage, Why};
pub use render::{clear, render};
pub use update::update;
