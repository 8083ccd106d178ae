//! The mother's pain: 0 to 10, or "cannot say".

use serde::{Deserialize, Serialize};

use super::RecordError;
use super::error::in_range;

/// A pain score, 0 (none) to 10 (worst), or that she cannot say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "Option<i64>", into = "Option<i64>")]
pub enum Pain {
    /// She was asked and could not say.
    CannotSay,
    /// 0 to 10; made by [`Pain::score`].
    Score(PainScore),
}

/// A whole number from 0 to 10.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct PainScore(u8);

impl PainScore {
    /// The number.
    pub const fn value(self) -> u8 {
        self.0
    }
}

impl Pain {
    /// A score from 0 to 10.
    ///
    /// # Errors
    /// Outside that range.
    pub fn score(value: i64) -> Result<Self, RecordError> {
        in_range("pain", value, 0, 10)?;
        Ok(Self::Score(PainScore(u8::try_from(value).unwrap_or(10))))
    }

    /// What a row of keys tells: 0 to 10, below 0 "cannot say"; nothing above.
    pub fn told(key: i32) -> Option<Self> {
        if key < 0 {
            Some(Self::CannotSay)
        } else {
            Self::score(key.into()).ok()
        }
    }

    /// The number, if she could say.
    pub const fn value(self) -> Option<u8> {
        match self {
            Self::CannotSay => None,
            Self::Score(score) => Some(score.0),
        }
    }
}

impl TryFrom<Option<i64>> for Pain {
    type Error = RecordError;
    fn try_from(value: Option<i64>) -> Result<Self, RecordError> {
        value.map_or(Ok(Self::CannotSay), Self::score)
    }
}

impl From<Pain> for Option<i64> {
    fn from(pain: Pain) -> Self {
        pain.value().map(i64::from)
    }
}
