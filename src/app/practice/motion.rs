//! How mouth and throat move at a moment of the feed: a jaw movement goes down and up around its
//! time, and a swallow goes down the throat after it. Only for the eye; nothing is computed from it.

use crate::practice::Truth;
use crate::record::At;

/// A jaw goes down for so long before the lowest point and up for so long after, in milliseconds:
/// together a little less than a usual gap. Common practice.
const JAW_MS: (u64, u64) = (180, 240);
/// A swallow sets out so long after its jaw movement and takes so long, in milliseconds. Common
/// practice.
const THROAT_MS: (u64, u64) = (60, 380);

/// How far the jaw is down, 0 to 1.
pub fn jaw(truth: &Truth, at: At) -> f64 {
    let next = truth.sucks.partition_point(|(suck, _)| *suck < at);
    let after = next
        .checked_sub(1)
        .and_then(|it| truth.sucks.get(it))
        .map_or(0.0, |(suck, _)| {
            1.0 - at.since_ms(*suck) as f64 / JAW_MS.1 as f64
        });
    let before = truth.sucks.get(next).map_or(0.0, |(suck, _)| {
        1.0 - suck.since_ms(at) as f64 / JAW_MS.0 as f64
    });
    after.max(before).max(0.0)
}

/// How far down the throat a swallow is, 0 to 1; `None` where there is none.
pub fn throat(truth: &Truth, at: At) -> Option<f64> {
    let next = truth.sucks.partition_point(|(suck, _)| *suck <= at);
    truth.sucks[..next]
        .iter()
        .rev()
        .take(2)
        .filter(|(_, swallow)| *swallow)
        .map(|(suck, _)| at.since_ms(*suck))
        .find(|since| THROAT_MS.0 <= *since && *since < THROAT_MS.0 + THROAT_MS.1)
        .map(|since| (since - THROAT_MS.0) as f64 / THROAT_MS.1 as f64)
}
