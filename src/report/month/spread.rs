//! The middle of some values and the range that half of them lie in. Knows no words, and nothing of
//! what was measured.

/// The fewest values of which a spread is told (common practice: of fewer, quartiles say nothing
/// and may point to a person).
pub const SPREAD_LEAST: usize = 5;

/// Half of the values lie between `low` and `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quartiles {
    /// The lower quartile.
    pub low: f64,
    /// The median.
    pub median: f64,
    /// The upper quartile.
    pub high: f64,
}

impl Quartiles {
    /// Of values in any order, each a number; `None` of none. Between two neighbours by linear
    /// interpolation: the quantile `q` of `n` values stands at place `(n - 1) q`, counted from 0.
    /// (Hyndman and Fan 1996, Am Stat 50:361, definition 7; what `numpy.percentile` does unasked.)
    pub fn of(values: &[f64]) -> Option<Self> {
        let mut rising = values.to_vec();
        rising.sort_by(f64::total_cmp);
        Some(Self {
            low: at_quarter(&rising, 1)?,
            median: at_quarter(&rising, 2)?,
            high: at_quarter(&rising, 3)?,
        })
    }
}

/// The value at so many quarters of the way through.
fn at_quarter(rising: &[f64], quarters: usize) -> Option<f64> {
    let place = rising.len().checked_sub(1)? * quarters;
    let below = *rising.get(place / 4)?;
    let above = *rising.get(place.div_ceil(4))?;
    let part = [0.0, 0.25, 0.5, 0.75][place % 4];
    Some(below + (above - below) * part)
}

/// How many values there are, and how they spread if they are enough to be told of.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Spread {
    /// How many.
    pub count: usize,
    /// Quartiles and median; `None` of fewer than [`SPREAD_LEAST`].
    pub quartiles: Option<Quartiles>,
}

impl Spread {
    pub(super) fn of(values: &[f64]) -> Self {
        let count = values.len();
        Self {
            count,
            quartiles: Quartiles::of(values).filter(|_| SPREAD_LEAST <= count),
        }
    }
}
