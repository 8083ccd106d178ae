//! Published weight loss after birth: the -2.5 SDS line by day, and the median by way of birth.
//!
//! Context for the eye of the specialist. No percentile by the hour is given: the published
//! curves are not ours to rebuild.

use super::{Age, Change};
use crate::record::WayOfBirth;

/// The days that [`SDS_LINE`] covers, birth being day 0.
pub const SDS_LINE_DAYS: std::ops::RangeInclusive<i64> = 2..=11;

/// The 0.6th centile (-2.5 SDS) of relative weight change of breastfed babies on days 2 to 11, in
/// tenths of a per cent, as a loss.
///
/// Source: van Dommelen P, van Wouwe JP, et al. Reference chart for relative weight change to
/// detect hypernatraemic dehydration. Arch Dis Child 2007;92:490-494.
pub const SDS_LINE: [i64; 10] = [111, 119, 118, 113, 110, 106, 102, 98, 96, 95];

/// The line at an age, as a loss in tenths of a per cent; `None` outside its days.
pub fn sds_line_tenths(age: Age) -> Option<i64> {
    let place = age.days() - SDS_LINE_DAYS.start();
    SDS_LINE.get(usize::try_from(place).ok()?).copied()
}

/// A change held against the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LineAgainst {
    /// Whole days of age at the weighing.
    pub day: i64,
    /// The line, as a loss in tenths of a per cent.
    pub line_tenths: i64,
    /// Whether more was lost than the line says.
    pub below: bool,
}

impl LineAgainst {
    /// A change at an age held against the line; `None` outside its days.
    pub fn of(change: Change, age: Age) -> Option<Self> {
        sds_line_tenths(age).map(|line_tenths| Self {
            day: age.days(),
            line_tenths,
            below: change.lost_more_than_tenths(line_tenths),
        })
    }
}

/// A published median loss.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MedianLoss {
    /// Whether for babies born by caesarean (the others: vaginally, with or without instruments).
    pub caesarean: bool,
    /// Hours after birth.
    pub hours: i64,
    /// The median loss in tenths of a per cent.
    pub tenths: i64,
}

/// Median loss of exclusively breastfed newborns.
///
/// Source: Flaherman VJ, Schaefer EW, Kuzniewicz MW, et al. Early weight loss nomograms for
/// exclusively breastfed newborns. Pediatrics 2015;135:e16-e23.
pub const MEDIAN_LOSSES: [MedianLoss; 7] = [
    median(false, 24, 42),
    median(false, 48, 71),
    median(false, 72, 64),
    median(true, 24, 49),
    median(true, 48, 80),
    median(true, 72, 86),
    median(true, 96, 58),
];

const fn median(caesarean: bool, hours: i64, tenths: i64) -> MedianLoss {
    MedianLoss {
        caesarean,
        hours,
        tenths,
    }
}

/// How far from a published hour its median is still shown, in hours.
const MEDIAN_REACH_H: i64 = 12;

/// The published median nearest in age, the later of two equally near; `None` more than 12 hours
/// from any.
pub fn median_loss(way: WayOfBirth, age: Age) -> Option<MedianLoss> {
    let caesarean = way == WayOfBirth::Caesarean;
    MEDIAN_LOSSES
        .iter()
        .rev()
        .filter(|it| it.caesarean == caesarean)
        .map(|it| ((it.hours - age.hours()).abs(), *it))
        .filter(|(apart, _)| *apart <= MEDIAN_REACH_H)
        .min_by_key(|(apart, _)| *apart)
        .map(|(_, it)| it)
}
