//! Practice: a simulated feed is played, the observer taps along, and sees what she caught.
//!
//! Nothing of it is kept: it belongs to no pair, and grades nobody.

mod compare;
mod effect;
mod event;
mod model;
mod motion;
mod render;
mod update;

pub use compare::{Between, Compared, compare, compare_observers};
pub use effect::Effect;
pub use event::Event;
pub use model::{Minutes, Model, Observer, Speed, Stage, Told, Watched};
pub use motion::{jaw, throat};
pub use render::{render, render_clock};
pub use update::update;
