//! What a hand caught of a feed whose truth is known: misses, doubles, lag and unsteadiness.
//!
//! A steady lag is no fault: it cancels in every gap. It is found first, then each tap is matched
//! with the jaw movement nearest to it.

use crate::practice::Truth;
use crate::record::{At, Tap};

/// A tap belongs to a jaw movement no further away than this once the steady lag is taken off, in
/// milliseconds: half of the usual gap of about 560 ms (Hartmann and others 2011, FASEB J 25 suppl
/// 589.1). Common practice.
pub const MATCH_MS_MOST: u64 = 280;
/// Lags that are tried, in milliseconds: a hand leads a beat a little and follows what it cannot
/// foresee by a quarter of a second (from memory). Common practice.
const LAGS_MS: std::ops::RangeInclusive<i64> = -200..=500;
/// Their step, in milliseconds.
const LAG_STEP_MS: usize = 20;

/// What a hand caught.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HandSeen {
    /// Jaw movements while the hand was there.
    pub sucks: u32,
    /// Those tapped.
    pub tapped: u32,
    /// Taps that belong to no jaw movement.
    pub extra: u32,
    /// Swallows that came with the jaw movements that were tapped.
    pub swallows: u32,
    /// Those marked.
    pub swallows_marked: u32,
    /// Swallows marked where there was none.
    pub swallows_extra: u32,
    /// How much later than the jaw the hand came, median, in milliseconds; `None` with no match.
    pub lag_ms: Option<i64>,
    /// Half of the taps lie within so many milliseconds of that lag.
    pub unsteady_ms: Option<u64>,
}

/// A tap and the jaw movement that it belongs to.
struct Pair {
    tap: usize,
    suck: usize,
    late_ms: i64,
}

/// Compares the taps of a hand with the truth, up to `end`.
pub fn hand_seen(truth: &Truth, taps: &[Tap], end: At) -> HandSeen {
    let sucks: Vec<_> = truth.sucks.iter().filter(|(at, _)| *at < end).collect();
    let hits: Vec<_> = taps.iter().filter(|tap| tap.what.is_suck()).collect();
    let times: Vec<i64> = sucks.iter().map(|(at, _)| at.as_ms() as i64).collect();
    let tapped: Vec<i64> = hits.iter().map(|tap| tap.at.as_ms() as i64).collect();
    let steady = steady_lag_ms(&times, &tapped);
    let pairs = pair(&times, &tapped, steady);
    let mut late: Vec<i64> = pairs.iter().map(|it| it.late_ms).collect();
    let lag_ms = median(&mut late);
    let mut off: Vec<i64> = pairs
        .iter()
        .map(|it| (it.late_ms - lag_ms.unwrap_or(0)).abs())
        .collect();
    let swallowed = |it: &&Pair| sucks[it.suck].1;
    let marked = |it: &&Pair| hits[it.tap].what.is_swallow();
    HandSeen {
        sucks: sucks.len() as u32,
        tapped: pairs.len() as u32,
        extra: (hits.len() - pairs.len()) as u32,
        swallows: pairs.iter().filter(swallowed).count() as u32,
        swallows_marked: pairs
            .iter()
            .filter(|it| swallowed(it) && marked(it))
            .count() as u32,
        swallows_extra: pairs
            .iter()
            .filter(|it| !swallowed(it) && marked(it))
            .count() as u32,
        lag_ms,
        unsteady_ms: median(&mut off).map(i64::unsigned_abs),
    }
}

/// The lag under which most taps find a jaw movement, and those the nearest.
fn steady_lag_ms(times: &[i64], tapped: &[i64]) -> i64 {
    let (mut least, mut best_ms) = (i64::MAX, 0_i64);
    for lag_ms in LAGS_MS.step_by(LAG_STEP_MS) {
        let pairs = pair(times, tapped, lag_ms);
        let off = pairs
            .iter()
            .map(|it| (it.late_ms - lag_ms).abs())
            .sum::<i64>();
        // Each unmatched tap costs as much as one at the edge.
        let lacking = (tapped.len() - pairs.len()) as i64;
        let cost = off + lacking * MATCH_MS_MOST as i64;
        if cost < least || cost == least && lag_ms.abs() < best_ms.abs() {
            (least, best_ms) = (cost, lag_ms);
        }
    }
    best_ms
}

/// Matches taps with jaw movements in order, each at most once, the nearest first where two taps
/// want the same.
fn pair(times: &[i64], tapped: &[i64], lag_ms: i64) -> Vec<Pair> {
    let mut pairs: Vec<Pair> = Vec::new();
    for (tap, at) in tapped.iter().enumerate() {
        let about = at - lag_ms;
        let next = times.partition_point(|it| *it < about);
        let Some(suck) = [next.checked_sub(1), Some(next)]
            .into_iter()
            .flatten()
            .filter(|it| *it < times.len())
            .min_by_key(|it| (times[*it] - about).abs())
        else {
            continue;
        };
        let off = (times[suck] - about).abs();
        if MATCH_MS_MOST as i64 <= off {
            continue;
        }
        let new = Pair {
            tap,
            suck,
            late_ms: at - times[suck],
        };
        match pairs.last_mut() {
            Some(last) if last.suck == suck => {
                if off < (last.late_ms - lag_ms).abs() {
                    *last = new;
                }
            }
            Some(last) if suck < last.suck => {}
            _ => pairs.push(new),
        }
    }
    pairs
}

/// The middle value; `None` of nothing. Reorders them.
fn median(values: &mut [i64]) -> Option<i64> {
    values.sort_unstable();
    values.get(values.len() / 2).copied()
}
