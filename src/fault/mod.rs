//! Every room's error as two sentences: what happened, and what to do now.
//!
//! The same words on the tablet and at the desk. Each match names every variant, so that a new
//! error forces a decision about its words. Knows messages by id; no screen, no disk.

mod growth;
mod handover;
mod policy;
mod record;
#[cfg(feature = "store")]
mod store;
#[cfg(feature = "store")]
mod vault;

pub use growth::pair_file;
pub use handover::handover;
pub use policy::policy;
pub use record::record;
#[cfg(feature = "store")]
pub use store::store;
#[cfg(feature = "store")]
pub use vault::vault;

use crate::words::{Arg, Words};

/// An error in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Explained {
    /// What happened.
    pub happened: String,
    /// What to do now.
    pub now_do: String,
}

impl Explained {
    /// The sentences `err-<name>` and `rec-<name>`, both filled with the same arguments.
    pub fn of(name: &str, args: &[(&str, Arg)], words: &Words) -> Self {
        Self {
            happened: words.say_with(&format!("err-{name}"), args),
            now_do: words.say_with(&format!("rec-{name}"), args),
        }
    }
}

impl std::fmt::Display for Explained {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.happened, self.now_do)
    }
}
