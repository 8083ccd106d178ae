//! A count and what it is out of. Knows no words, and nothing of what is counted.

use std::cmp::Ordering;

/// The fewest of which a share is told in per cent (common practice: below it, one more or less
/// moves the per cent by more than ten).
pub const PERCENT_LEAST: u32 = 10;

/// So many of so many. What was not told is in neither.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Share {
    /// How many.
    pub of: u32,
    /// Out of how many.
    pub out_of: u32,
}

impl Share {
    /// How many of those that were told are so.
    pub(super) fn of_told(told: impl IntoIterator<Item = bool>) -> Self {
        let mut share = Self::default();
        for is_so in told {
            share.out_of += 1;
            share.of += u32::from(is_so);
        }
        share
    }

    /// In per cent; `None` if it is out of too few to be told so.
    pub fn percent(self) -> Option<f64> {
        (PERCENT_LEAST <= self.out_of).then(|| f64::from(self.of) * 100.0 / f64::from(self.out_of))
    }

    /// Which of two is the larger share, exactly; one out of none is like one of none.
    pub(super) fn larger(self, other: Self) -> Ordering {
        let crosswise = |a: Self, b: Self| u64::from(a.of) * u64::from(b.out_of.max(1));
        crosswise(self, other).cmp(&crosswise(other, self))
    }
}
