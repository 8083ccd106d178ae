//! Lines to hold a weight course against: the published medians and the -2.5 SDS line in grams of
//! a baby's own birth weight, the WHO standard by day, and the usual day of regaining birth weight.
//!
//! Context for the eye. Nothing here is a target, and no percentile by the hour is given.

use super::{Age, MEDIAN_LOSSES, MedianLoss, SDS_LINE, SDS_LINE_DAYS};
use crate::record::{Grams, WayOfBirth};

/// A point of a line: an age and a weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LinePoint {
    /// The age.
    pub age: Age,
    /// The weight there.
    pub grams: Grams,
}

/// A share of a birth weight that is left after a loss in tenths of a per cent, rounded up to whole
/// grams: the least weight that has not lost more.
fn left(birth: Grams, loss_tenths: i64) -> Option<Grams> {
    let thousandths = i64::from(birth) * (1000 - loss_tenths);
    Grams::new((thousandths + 999) / 1000).ok()
}

/// The -2.5 SDS line of a baby, one point a day from day 2 to day 11: the least weight that is not
/// below it. It holds from the point's day on until the next.
///
/// Source: as [`SDS_LINE`].
pub fn sds_line(birth: Grams) -> Vec<LinePoint> {
    SDS_LINE_DAYS
        .zip(SDS_LINE)
        .filter_map(|(day, tenths)| {
            Some(LinePoint {
                age: Age::of_hours(u32::try_from(day).ok()? * 24),
                grams: left(birth, tenths)?,
            })
        })
        .collect()
}

/// The published medians for a way of birth, in order of age.
pub fn median_losses(way: WayOfBirth) -> impl Iterator<Item = &'static MedianLoss> {
    let caesarean = way == WayOfBirth::Caesarean;
    MEDIAN_LOSSES
        .iter()
        .filter(move |it| it.caesarean == caesarean)
}

/// The median course of a baby by its way of birth, from birth on.
///
/// Source: as [`MEDIAN_LOSSES`].
pub fn median_line(birth: Grams, way: WayOfBirth) -> Vec<LinePoint> {
    let at_birth = LinePoint {
        age: Age::of_hours(0),
        grams: birth,
    };
    let later = median_losses(way).filter_map(|it| {
        Some(LinePoint {
            age: Age::of_hours(u32::try_from(it.hours).ok()?),
            grams: left(birth, it.tenths)?,
        })
    });
    std::iter::once(at_birth).chain(later).collect()
}

/// The day by which half of breastfed babies are back at birth weight.
///
/// Source: Paul IM, Schaefer EW, et al. Weight change nomograms for the first month after birth.
/// Pediatrics 2016;138:e20162625 (143,889 babies).
pub const fn median_back_day(way: WayOfBirth) -> i64 {
    match way {
        WayOfBirth::Vaginal | WayOfBirth::Assisted => 9,
        WayOfBirth::Caesarean => 10,
    }
}
