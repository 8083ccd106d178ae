//! The rehearsal: the whole job with no display. An invented visit goes through the real screens,
//! journal, rhythm, findings, codes, desk, receipt and exports, and leaves a picture of each screen.
//!
//! Stands above both programs and joins them; decides nothing of its own.

mod album;
mod bedside;
mod error;
mod eye;
mod folder;
mod story;
mod timings;
mod ward;

pub use error::RehearseError;
pub use eye::Eye;
pub use folder::MARK;
pub use story::{Walked, run, walk};
pub use ward::Tablet;
