//! Before the feed: the last 24 hours, danger signs, weight, breast and nipple; then the feed starts.

mod effect;
mod event;
mod model;
mod render;
mod told;
mod update;

pub use effect::Effect;
pub use event::{Event, NappyKey, Question};
pub use model::{Count, Earlier, Model, SCALE_STEPS_G, TimePart, WeightTrouble};
pub use render::{Lists, render};
pub use update::update;
