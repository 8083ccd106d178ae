//! What fills a place in a message: text, or a whole number that may choose a plural.

use fluent::FluentValue;

/// An argument of a message. A number with a fraction comes as text from [`super::Words::number`],
/// so that its decimals are the caller's decision.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Arg {
    /// Text, put in as it stands.
    Text(String),
    /// A whole number; a message may choose its plural by it.
    Whole(i64),
}

impl Arg {
    pub(super) fn as_fluent(&self) -> FluentValue<'_> {
        match self {
            Self::Text(text) => text.as_str().into(),
            Self::Whole(number) => (*number).into(),
        }
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<i64> for Arg {
    fn from(number: i64) -> Self {
        Self::Whole(number)
    }
}

impl From<u32> for Arg {
    fn from(number: u32) -> Self {
        Self::Whole(number.into())
    }
}

/// A count above `i64::MAX` is shown as `i64::MAX`.
impl From<usize> for Arg {
    fn from(number: usize) -> Self {
        Self::Whole(i64::try_from(number).unwrap_or(i64::MAX))
    }
}
