//! The ward's list: each pair with its weights and what the rules said of its last visits.
//!
//! Knows no order of the list and no screen.

use super::looked::{About, Looked, by_pair, looked_at, weighings_of};
use crate::findings::{Policy, REVIEW_VISITS, VisitMark};
use crate::record::{VisitId, WallTime, Weighing};
use crate::store::{Store, StoreError, VisitGist, WardRow};

/// One line of the ward's list.
#[derive(Debug, Clone)]
pub struct WardLine {
    /// The pair and its last visit.
    pub row: WardRow,
    /// What the last visits left behind, newest last: what the rules said of the one before still
    /// counts while a new one is open.
    pub marks: Vec<VisitMark>,
    /// Weights of all visits, oldest first.
    pub weighings: Vec<(WallTime, Weighing)>,
}

/// The ward's list, in the order in which the store tells it; keeps what it had to work out.
pub(super) fn ward(store: &Store, policy: &Policy) -> Result<Vec<WardLine>, StoreError> {
    let mut of_pair = by_pair(store)?;
    let mut to_keep = Vec::new();
    let mut lines = Vec::new();
    for row in store.ward()? {
        let gists = of_pair.remove(&row.pair.id).unwrap_or_default();
        lines.push(line(store, policy, row, gists, &mut to_keep)?);
    }
    store.keep_gists(&to_keep)?;
    Ok(lines)
}

fn line(
    store: &Store,
    policy: &Policy,
    row: WardRow,
    gists: Vec<VisitGist>,
    to_keep: &mut Vec<(VisitId, u32, String)>,
) -> Result<WardLine, StoreError> {
    let mut looked = looked_at(store, gists)?;
    let weighings = weighings_of(&looked);
    let about = About::of(&row.pair, &weighings, &looked);
    let mut marks = Vec::new();
    let earlier = looked.len().saturating_sub(REVIEW_VISITS);
    for it in &mut looked[earlier..] {
        marks.push(it.mark(store, &about, policy)?);
    }
    to_keep.extend(looked.iter().filter_map(Looked::to_keep));
    Ok(WardLine {
        row,
        marks,
        weighings,
    })
}
