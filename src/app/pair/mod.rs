//! The Pair screen: the story so far, and the form that makes or mends a pair.

mod effect;
mod event;
mod form;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::{Event, Field, Group};
pub use form::{Form, FormTrouble};
pub use model::Model;
pub use render::render;
pub use update::update;
