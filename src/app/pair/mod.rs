//! The Pair screen: the story so far, and the form that makes or mends a pair.

pub mod chart;
mod drawn;
mod effect;
mod event;
mod form;
mod form_render;
pub mod labels;
mod model;
mod render;
mod update;

pub use effect::Effect;
pub use event::{Event, Field, Group};
pub use form::{BABIES_MOST, Form, FormTrouble, LANGUAGES};
pub use model::Model;
pub use render::render;
pub use update::update;
