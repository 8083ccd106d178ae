//! Words: a message's id and its arguments in, a sentence out; numbers and dates in the form of
//! each language.
//!
//! Fluent messages from `translations/<lang>/<area>.ftl`, embedded in the program. This room uses
//! no other room: it deliberately knows nothing of what the messages are about, nor of screens.

mod arg;
mod assets;
mod ids;
mod lang;
mod number;
mod say;
mod time;

pub use arg::Arg;
pub use ids::IDS;
pub use lang::Lang;
pub use say::Words;
