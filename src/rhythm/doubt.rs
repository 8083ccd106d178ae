//! The reasons to trust a feed's numbers less.

use super::smooth::Smoothed;
use super::suck::Sucks;
use super::summary::{Doubt, Phase, Summary};

/// With fewer swallows, sucks per swallow is uncertain by a third or more (one over the root of
/// the count, twice).
pub const FEW_SWALLOWS: u32 = 20;
/// With fewer sucks, a rate says little. Common practice.
pub const FEW_SUCKS: u32 = 30;
/// More than this share unwatched is much. Common practice.
pub const LONG_UNWATCHED_SHARE: f64 = 0.25;
/// A watched rest longer than this may be that nobody tapped, in milliseconds. Common practice.
pub const LONG_SILENCE_MS: u64 = 60_000;
/// More than this share of sucks doubled is more than a hand does now and then (0 to 1 %, common
/// practice).
const DOUBLED_SHARE: f64 = 0.01;
/// With a mean probability of the phases below this they are unsure. Common practice.
const UNSURE_BELOW: f64 = 0.75;
/// Where the most probable course of the whole feed tells more than this share of sucks otherwise
/// than suck by suck, the feed can be read in two ways. Common practice.
const UNSURE_OFF_COURSE: f64 = 0.15;

/// The doubts, in the order of [`Doubt::ALL`].
pub(super) fn of(
    summary: &Summary,
    sucks: &Sucks,
    smoothed: &Smoothed,
    unresolved: u32,
    out_of_order: u32,
) -> Vec<Doubt> {
    let all_ms = summary.watched_ms + summary.totals_ms.unwatched;
    let tapped = sucks.of_tap.len();
    let doubled = tapped - sucks.sucks.len();
    let silent = summary
        .phases
        .iter()
        .any(|span| span.phase == Phase::Rest && LONG_SILENCE_MS < span.to.since_ms(span.from));
    let sure: f64 = smoothed
        .phases
        .iter()
        .map(|it| it.iter().copied().fold(0.0, f64::max))
        .sum();
    Doubt::ALL
        .iter()
        .copied()
        .filter(|doubt| match doubt {
            Doubt::FewSwallows => summary.swallows < FEW_SWALLOWS,
            Doubt::FewSucks => summary.sucks < FEW_SUCKS,
            Doubt::LongUnwatched => {
                LONG_UNWATCHED_SHARE * (all_ms as f64) < summary.totals_ms.unwatched as f64
            }
            Doubt::TooFast => DOUBLED_SHARE * (tapped as f64) < doubled as f64,
            Doubt::OutOfOrder => 0 < out_of_order,
            Doubt::UnresolvedTouches => 0 < unresolved,
            Doubt::LongSilence => silent,
            Doubt::PhasesUnsure => {
                sure < UNSURE_BELOW * smoothed.phases.len() as f64
                    || UNSURE_OFF_COURSE < smoothed.off_course
            }
        })
        .collect()
}
