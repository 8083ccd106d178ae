//! Change from birth weight, in exact whole-number arithmetic: the edge of ten per cent must not
//! hang on a rounding.

use crate::record::Grams;

/// A weight against the birth weight. Signed: a loss is negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Change {
    birth_g: i64,
    /// Now less birth, in grams.
    pub grams: i64,
}

impl Change {
    /// The change from a birth weight to a weight.
    pub fn of(birth: Grams, now: Grams) -> Self {
        let birth_g = i64::from(birth);
        Self {
            birth_g,
            grams: i64::from(now) - birth_g,
        }
    }

    /// The change in tenths of a per cent of the birth weight, rounded, halves away from zero.
    pub const fn tenths_percent(self) -> i64 {
        rounded_ratio(self.grams * 1000, self.birth_g)
    }

    /// The loss in tenths of a per cent, rounded, halves away from zero; zero if nothing is lost.
    pub const fn loss_tenths_percent(self) -> i64 {
        let change = self.tenths_percent();
        if change < 0 { -change } else { 0 }
    }

    /// Whether more was lost than so many tenths of a per cent. Exact: not of the rounded value.
    /// A loss of exactly the limit is not more than it.
    pub const fn lost_more_than_tenths(self, limit: i64) -> bool {
        limit * self.birth_g < -self.grams * 1000
    }

    /// Whether the birth weight is reached again.
    pub const fn is_at_birth_weight(self) -> bool {
        0 <= self.grams
    }
}

/// `top / bottom` rounded to a whole number, halves away from zero; `bottom` above zero.
pub(crate) const fn rounded_ratio(top: i64, bottom: i64) -> i64 {
    let twice = 2 * top;
    if top < 0 {
        (twice - bottom) / (2 * bottom)
    } else {
        (twice + bottom) / (2 * bottom)
    }
}
