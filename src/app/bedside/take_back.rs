//! What "take back" at the bedside takes back: what was last told in the running feed, and at its
//! very beginning what began it. Never what was told before the feed.

use crate::app::open_visit::OpenVisit;
use crate::record::{Entry, What};

/// What would be taken back.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TakenBack<'a> {
    /// One entry.
    Told(&'a Entry),
    /// The change to the other breast: the end of the feed before and the start of this one, which go
    /// back together.
    OtherBreast {
        /// This feed's start.
        started: &'a Entry,
        /// The end of the feed before.
        ended: &'a Entry,
    },
    /// The feed's start: it was not begun.
    Start(&'a Entry),
}

/// What "take back" would take back now; nothing where no feed runs.
pub fn last(open: &OpenVisit) -> Option<TakenBack<'_>> {
    open.folded.running()?;
    let mut back = open.visit.journal.to_take_back();
    let told = back.next()?;
    if !matches!(told.what, What::FeedStarted { .. }) {
        return Some(TakenBack::Told(told));
    }
    // Both were made by one touch.
    let ended = back.next().filter(|before| {
        matches!(before.what, What::FeedEnded { .. }) && before.seq + 1 == told.seq
    });
    Some(
        ended.map_or(TakenBack::Start(told), |ended| TakenBack::OtherBreast {
            started: told,
            ended,
        }),
    )
}
