//! The rows of a strip, live or whole: phases, sucks and swallows on one time axis in seconds since
//! the visit began. What stands above them, with a flag, is in `flag`.

use crate::app::{say, ui};
use crate::findings::Level;
use crate::record::{At, Feed, Tap, TapWhat};
use crate::rhythm::{Phase, PhaseSpan};
use crate::words::Words;

/// The number under which the strip knows a phase's pattern.
pub const fn kind_of(phase: Phase) -> i32 {
    match phase {
        Phase::Quick => 0,
        Phase::Flow => 1,
        Phase::Flutter => 2,
        Phase::Rest => 3,
        Phase::Off => 4,
        Phase::Unwatched => 5,
    }
}

/// Seconds since the visit began, for the strip.
#[allow(clippy::cast_precision_loss)]
pub fn seconds(at: At) -> f32 {
    (at.as_ms() as f64 / 1000.0) as f32
}

/// The phases that reach past `from`; after the last one the phase `going_on` lasts until `now`.
pub fn band_rows(
    phases: &[PhaseSpan],
    from: At,
    now: At,
    going_on: Option<Phase>,
    words: &Words,
) -> Vec<ui::StripBand> {
    let band = |from: At, to: At, phase: Phase| ui::StripBand {
        from_s: seconds(from),
        to_s: seconds(to),
        kind: kind_of(phase),
        label: say::stored(words, "phase", phase).into(),
    };
    let told = phases
        .iter()
        .filter(|span| from <= span.to)
        .map(|span| band(span.from, span.to, span.phase));
    let last = phases.last().map_or(now, |span| span.to);
    let rest = going_on
        .filter(|_| last < now)
        .map(|phase| band(last, now, phase));
    told.chain(rest).collect()
}

/// Sucks and swallows since `from`, by time.
pub fn mark_rows(feed: &Feed, from: At) -> Vec<ui::StripMark> {
    let since = feed.taps.partition_point(|tap| tap.at < from);
    let kind = |what: &TapWhat| match what {
        TapWhat::Suck => Some(0),
        TapWhat::SuckSwallow => Some(1),
        TapWhat::Swallow => Some(2),
        _ => None,
    };
    let mark = |Tap { at, what }: &Tap| {
        Some(ui::StripMark {
            at_s: seconds(*at),
            kind: kind(what)?,
        })
    };
    feed.taps[since..].iter().filter_map(mark).collect()
}

/// The number under which a page knows a level.
pub const fn level_of(level: Level) -> i32 {
    match level {
        Level::MedicalReviewNow => 0,
        Level::ActToday => 1,
        Level::KeepWatching => 2,
        Level::GoingWell => 3,
    }
}
