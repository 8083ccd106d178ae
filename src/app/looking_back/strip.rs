//! The whole feed on the strip: what part is shown, what a touch picks out, which boundaries can be
//! moved. Times only; the screen lays them out.

use crate::record::{At, BoundaryMoved, Feed, Journal, SuckPhase, TapWhat, What};
use crate::rhythm::{Phase, Summary};

use super::model::{Model, Picked, SHOWN_LEAST_MS};

/// A touch picks out a tap that lies within this share of what is shown.
const PICK_SHARE: f64 = 0.02;

/// From when to when a feed lies; one that runs ends now.
pub fn whole(feed: &Feed, now: At) -> (At, At) {
    let end = feed.ended.map_or(now, |end| end.at);
    (feed.started, end.max(feed.started.plus_ms(1000)))
}

/// The part that is shown.
pub fn part(model: &Model, feed: &Feed, now: At) -> (At, At) {
    let (start, end) = whole(feed, now);
    match model.part {
        Some((from, to)) if from < to && start <= from && to <= end => (from, to),
        _ => (start, end),
    }
}

/// The part after zooming by a factor about a time, in seconds; all of it if nothing is left out.
pub fn zoomed(model: &Model, feed: &Feed, now: At, factor: f64, about_s: f64) -> Option<(At, At)> {
    let (from, to) = part(model, feed, now);
    let (start, end) = whole(feed, now);
    let all = end.since_ms(start) as f64;
    let before = to.since_ms(from) as f64;
    let shown = (before / factor.clamp(0.01, 100.0)).clamp(all.min(SHOWN_LEAST_MS as f64), all);
    let about = about_s * 1000.0;
    let share = ((about - from.as_ms() as f64) / before).clamp(0.0, 1.0);
    held(about - share * shown, shown, start, end)
}

/// The part after moving by a share of what is shown.
pub fn panned(model: &Model, feed: &Feed, now: At, share: f64) -> Option<(At, At)> {
    let (from, to) = part(model, feed, now);
    let (start, end) = whole(feed, now);
    let shown = to.since_ms(from) as f64;
    held(from.as_ms() as f64 + share * shown, shown, start, end)
}

/// A part of a length, moved inside the feed.
fn held(from_ms: f64, shown_ms: f64, start: At, end: At) -> Option<(At, At)> {
    let shown = shown_ms.round().max(1.0) as u64;
    if end.since_ms(start) <= shown {
        return None;
    }
    let last = end.minus_ms(shown);
    let from = At::ms(from_ms.max(0.0).round() as u64).clamp(start, last);
    Some((from, from.plus_ms(shown)))
}

/// The taps of a feed that stand, each with its entry's number.
fn taps<'a>(journal: &'a Journal, feed: &'a Feed) -> impl Iterator<Item = (u32, At, TapWhat)> + 'a {
    let end = feed.ended.map(|end| end.at);
    journal
        .standing_entries()
        .filter_map(|entry| match entry.what {
            What::Suck => Some((entry.seq, entry.at, TapWhat::Suck)),
            What::SuckSwallow => Some((entry.seq, entry.at, TapWhat::SuckSwallow)),
            What::Swallow => Some((entry.seq, entry.at, TapWhat::Swallow)),
            What::TapAdded { at, what } => Some((entry.seq, at, what)),
            _ => None,
        })
        .filter(move |(_, at, _)| feed.started <= *at && end.is_none_or(|end| *at <= end))
}

/// What a tap that is picked out was.
pub fn what(journal: &Journal, feed: &Feed, seq: u32) -> Option<TapWhat> {
    taps(journal, feed)
        .find(|tap| tap.0 == seq)
        .map(|tap| tap.2)
}

/// What a touch at a time, in seconds, picks out.
pub fn pick(journal: &Journal, feed: &Feed, shown: (At, At), at_s: f64) -> Picked {
    let at = At::ms((at_s * 1000.0).max(0.0).round() as u64).clamp(shown.0, shown.1);
    let near_ms = shown.1.since_ms(shown.0) as f64 * PICK_SHARE;
    taps(journal, feed)
        .min_by_key(|(_, tap, _)| tap.as_ms().abs_diff(at.as_ms()))
        .filter(|(_, tap, _)| tap.as_ms().abs_diff(at.as_ms()) as f64 <= near_ms)
        .map_or(Picked::Moment(at), |(seq, tap, _)| Picked::Tap(seq, tap))
}

/// A boundary between two phases of sucking, whatever rests lie between.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Movable {
    /// Where it is told to be.
    pub at: At,
    /// The phase before it.
    pub before: SuckPhase,
    /// The phase after it.
    pub after: SuckPhase,
}

const fn suck_phase(phase: Phase) -> Option<SuckPhase> {
    match phase {
        Phase::Quick => Some(SuckPhase::Quick),
        Phase::Flow => Some(SuckPhase::Flow),
        Phase::Flutter => Some(SuckPhase::Flutter),
        Phase::Rest | Phase::Off | Phase::Unwatched => None,
    }
}

/// The boundaries that can be moved.
pub fn movable(summary: &Summary) -> Vec<Movable> {
    let sucking: Vec<(At, SuckPhase)> = summary
        .phases
        .iter()
        .filter_map(|span| Some((span.from, suck_phase(span.phase)?)))
        .collect();
    sucking
        .windows(2)
        .filter(|pair| pair[0].1 != pair[1].1)
        .map(|pair| Movable {
            at: pair[1].0,
            before: pair[0].1,
            after: pair[1].1,
        })
        .collect()
}

/// How much of the whole feed lies between the two boundaries that are next to each other: 0 to 1,
/// and 1 where there are not two.
pub fn closest_share(movable: &[Movable], start: At, end: At) -> f32 {
    let closest_ms = movable
        .windows(2)
        .map(|pair| pair[1].at.since_ms(pair[0].at))
        .min();
    let whole_ms = end.since_ms(start).max(1);
    closest_ms.map_or(1.0, |ms| (ms as f64 / whole_ms as f64).min(1.0) as f32)
}

/// The entry for a boundary put at a time, in seconds: never past the boundaries beside it, nor out
/// of the feed.
pub fn moved(
    all: &[Movable],
    index: usize,
    at_s: f64,
    (start, end): (At, At),
) -> Option<BoundaryMoved> {
    let it = all.get(index)?;
    let least = index.checked_sub(1).map_or(start, |before| all[before].at);
    let most = all.get(index + 1).map_or(end, |after| after.at);
    let now = At::ms((at_s * 1000.0).max(0.0).round() as u64).clamp(least, most.max(least));
    (now != it.at).then_some(BoundaryMoved {
        was: it.at,
        now,
        before: it.before,
        after: it.after,
    })
}
