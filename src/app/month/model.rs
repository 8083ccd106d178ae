//! All that the month's screen remembers.

use crate::report::month::Month;

/// The model.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Model {
    /// The figures as far as they are worked out; none until the store answers.
    pub month: Option<Month>,
    /// How many visits are still to be worked out.
    pub left: u32,
}
