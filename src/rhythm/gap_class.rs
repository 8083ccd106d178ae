//! Gaps in classes of so many milliseconds, for what is worked out once for all of a class. Knows nothing
//! of how gaps fit.

use super::parameter::REST_MS_CEILING;

/// Classes that are so many milliseconds wide, of all gaps within runs.
pub(super) struct GapClass<const WIDTH_MS: u64>;

impl<const WIDTH_MS: u64> GapClass<WIDTH_MS> {
    /// How many there are.
    pub(super) const COUNT: usize = (REST_MS_CEILING / WIDTH_MS) as usize + 1;

    /// The class of a gap.
    pub(super) fn of(gap_ms: f64) -> usize {
        ((gap_ms / WIDTH_MS as f64) as usize).min(Self::COUNT - 1)
    }

    /// The middle of a class, in milliseconds.
    pub(super) fn middle_ms(class: usize) -> f64 {
        (class as f64 + 0.5) * WIDTH_MS as f64
    }
}

/// As fine as a gap is told when every suck is judged.
pub(super) type Fine = GapClass<10>;
