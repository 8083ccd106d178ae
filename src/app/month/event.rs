//! All that can happen on the month's screen.

use crate::report::month::Month;

/// An event.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// The screen is shown.
    Came,
    /// The figures as far as they are worked out, and how many visits are left.
    Told(Box<Month>, u32),
    /// Back.
    BackWanted,
}
