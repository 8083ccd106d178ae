//! Usual volumes of one feed in the first days, as ranges. Average intakes that were reported;
//! a ceiling for the eye, never a prescription.

use super::Age;
use crate::record::Gestation;

/// A range of volumes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct VolumeRange {
    /// Its lower end, in millilitres.
    pub low_ml: i64,
    /// Its upper end.
    pub high_ml: i64,
}

const fn range(low_ml: i64, high_ml: i64) -> VolumeRange {
    VolumeRange { low_ml, high_ml }
}

/// Term babies, by the hours up to which the range is for.
///
/// Source: Academy of Breastfeeding Medicine, Clinical Protocol 3, revised 2017 (Kellams A, et
/// al. Breastfeed Med 2017;12:188-198), table of reported intakes.
const TERM: [(i64, VolumeRange); 4] = [
    (24, range(2, 10)),
    (48, range(5, 15)),
    (72, range(15, 30)),
    (96, range(30, 60)),
];

/// Babies of 34 to 36 whole weeks.
///
/// Source: Academy of Breastfeeding Medicine, Clinical Protocol 10, second revision 2016
/// (Boies EG, Vaucher YE. Breastfeed Med 2016;11:494-500).
const LATE_PRETERM: [(i64, VolumeRange); 2] = [(24, range(5, 10)), (72, range(10, 30))];

/// The days of gestation from which the late-preterm ranges are for: 34 weeks.
const LATE_PRETERM_FROM_DAYS: u16 = 34 * 7;
/// The days of gestation from which a baby is at term: 37 weeks.
pub(super) const TERM_FROM_DAYS: u16 = 37 * 7;

/// The usual range at an age; `None` past the tables and before 34 weeks. With no gestation known
/// the ranges for term are given.
pub fn usual_feed_volume(age: Age, gestation: Option<Gestation>) -> Option<VolumeRange> {
    let days = gestation.map_or(TERM_FROM_DAYS, Gestation::days);
    let table: &[(i64, VolumeRange)] = if TERM_FROM_DAYS <= days {
        &TERM
    } else if LATE_PRETERM_FROM_DAYS <= days {
        &LATE_PRETERM
    } else {
        return None;
    };
    table
        .iter()
        .find(|(up_to, _)| age.hours() <= *up_to)
        .map(|(_, range)| *range)
}
