//! All that Looking back remembers besides the visit itself: which feed, which part of it, and what
//! is picked out.

use crate::record::At;

/// How much of a feed is shown at the most, by zooming in: a part of so many milliseconds.
pub const SHOWN_LEAST_MS: u64 = 15_000;

/// What is picked out on the strip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picked {
    /// A tap, by its entry's number and time.
    Tap(u32, At),
    /// A moment without one.
    Moment(At),
}

/// The model.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Model {
    /// Which feed is shown, counted from the first; the last one if there are fewer.
    pub feed: Option<usize>,
    /// The part of it that is shown, in time since the visit began; all of it if none.
    pub part: Option<(At, At)>,
    /// What is picked out.
    pub picked: Option<Picked>,
    /// Whether all that was told is shown.
    pub entries: bool,
}

impl Model {
    /// The place of the feed that is shown, of so many.
    pub fn shown(&self, feeds: usize) -> usize {
        self.feed.unwrap_or(usize::MAX).min(feeds.saturating_sub(1))
    }
}
