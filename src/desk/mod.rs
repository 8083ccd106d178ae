//! The receiver on the ward's computer: scans in, inbox, receipts, exports.
//!
//! Uses every room but `app`; knows no Slint. The functions here know no clock and no randomness:
//! both come in from the program. What is refused leaves what is stored untouched.

mod big;
pub mod command;
#[allow(clippy::module_inception)]
mod desk;
mod error;
mod export;
pub mod inbox;
pub mod listen;
pub mod read;
mod said;
pub mod send;
pub mod table;
pub mod tell;

pub use desk::Desk;
pub use error::DeskError;
pub use export::{As, facts};
pub use inbox::{Kept, RecordHead};
pub use said::Said;
pub use tell::tell;
