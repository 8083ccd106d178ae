//! Hand over: the record's codes, the receipt typed back, the note code.
//!
//! Shows only codes that were read back; takes only the one receipt that fits.

mod effect;
mod event;
mod model;
pub mod pack;
mod render;
pub mod table;
mod update;

pub use effect::Effect;
pub use event::Event;
pub use model::{Kind, Model, Shown, Told};
pub use render::{image_of, modules, render};
pub use update::update;
