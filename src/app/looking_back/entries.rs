//! What was told in the visit, entry by entry, to be corrected: which entries are shown, and what
//! taking one back leads to. Taps have the strip for that.

use crate::app::open_visit::OpenVisit;
use crate::record::{Entry, What};

use super::Effect;

/// The entries that can be taken back here, the newest first.
pub fn told(open: &OpenVisit) -> Vec<&Entry> {
    let last_end = last_end(open);
    let told = open.visit.journal.to_take_back();
    told.filter(|entry| match entry.what {
        // Later feeds stand on the ends of earlier ones, and taps on a feed's start.
        What::FeedEnded { .. } => last_end == Some(entry.seq),
        What::FeedStarted { .. } | What::TapAdded { .. } | What::TouchUnresolved => false,
        _ => !entry.what.is_tap(),
    })
    .collect()
}

/// The end of the last feed, if none runs.
fn last_end(open: &OpenVisit) -> Option<u32> {
    if open.folded.running().is_some() {
        return None;
    }
    let mut told = open.visit.journal.to_take_back();
    told.find(|entry| matches!(entry.what, What::FeedEnded { .. }))
        .map(|entry| entry.seq)
}

/// What taking one of them back leads to. Where it is the end of the feed, the feed goes on, and
/// nobody watched since.
pub(super) fn struck(open: &OpenVisit, index: usize) -> Vec<Effect> {
    if open.folded.signed.is_some() {
        return vec![];
    }
    let told = told(open);
    let Some(entry) = told.get(index) else {
        return vec![];
    };
    let mut effects = vec![Effect::Note(What::Struck { entry: entry.seq })];
    if matches!(entry.what, What::FeedEnded { .. }) {
        effects.push(Effect::Note(What::UnwatchedFrom { from: entry.at }));
        effects.push(Effect::Bedside);
    }
    effects
}
