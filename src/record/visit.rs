//! A visit: one specialist, one pair, one stretch of time at the bedside, and its journal.

use serde::{Deserialize, Serialize};

use super::{Entry, Journal, Label, PairId, RecordError, VisitId, WallTime, What};

/// Which ward policy judged a visit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PolicyMark {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
    /// SHA-256 of its file, in hex.
    pub hash: String,
}

/// One visit with its journal.
#[derive(Debug, Clone, PartialEq)]
pub struct Visit {
    /// Its id.
    pub id: VisitId,
    /// Whom it is about.
    pub pair: PairId,
    /// When it began.
    pub began: WallTime,
    /// Who is at the bedside.
    pub specialist: Label,
    /// The visit that this one replaces, if it is an amendment.
    pub replaces: Option<VisitId>,
    /// Its entries.
    pub journal: Journal,
}

impl Visit {
    /// A visit that begins.
    pub const fn new(id: VisitId, pair: PairId, began: WallTime, specialist: Label) -> Self {
        Self {
            id,
            pair,
            began,
            specialist,
            replaces: None,
            journal: Journal::new(),
        }
    }

    /// A new version of a signed visit, which names the one it replaces and carries over all that
    /// was seen; signature, codes and receipt stay with the old one.
    ///
    /// # Errors
    /// Never for a journal that was checked.
    pub fn amendment(&self, id: VisitId, specialist: Label) -> Result<Self, RecordError> {
        let mut seen: Vec<Entry> = self
            .journal
            .entries()
            .iter()
            .filter(|entry| {
                !matches!(entry.what, What::Signed { .. }) && !entry.what.is_after_signing()
            })
            .cloned()
            .collect();
        for (seq, entry) in (1..).zip(&mut seen) {
            entry.seq = seq;
        }
        Ok(Self {
            id,
            pair: self.pair,
            began: self.began,
            specialist,
            replaces: Some(self.id),
            journal: Journal::of(seen)?,
        })
    }
}
