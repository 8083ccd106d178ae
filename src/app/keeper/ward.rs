//! The ward's list: each pair with its weights and what the rules said of its last visits.
//!
//! A visit is read and judged once; what came of it is kept beside it and holds until an entry
//! follows, the pair or its weights change, or other rules or another policy count. Knows no order
//! of the list and no screen.

use std::collections::HashMap;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::app::open_visit::summary_of;
use crate::findings::{self, Policy, REVIEW_VISITS, VisitMark};
use crate::growth;
use crate::record::{Folded, Pair, PairId, Visit, VisitId, WallTime, Weighing, fold};
use crate::report::hex;
use crate::rhythm;
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

/// What is kept of a visit.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
struct Body {
    weighings: Vec<(WallTime, Weighing)>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    judged: Option<JudgedAs>,
}

/// What the rules said of a visit, and of what they said it besides its own entries.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct JudgedAs {
    of: String,
    mark: VisitMark,
}

/// One visit on the way to its mark; read from its journal only where what is kept does not do.
struct Looked {
    gist: VisitGist,
    body: Body,
    read: Option<(Visit, Folded)>,
    changed: bool,
}

impl Looked {
    fn at(store: &Store, gist: VisitGist) -> Result<Self, StoreError> {
        let kept = gist.body.as_deref();
        let body = kept.and_then(|body| serde_json::from_str(body).ok());
        let mut it = Self {
            gist,
            changed: body.is_none(),
            body: body.unwrap_or_default(),
            read: None,
        };
        if it.changed {
            it.body.weighings = it.journal(store)?.1.weighings.clone();
        }
        Ok(it)
    }

    fn journal(&mut self, store: &Store) -> Result<&(Visit, Folded), StoreError> {
        let read = match self.read.take() {
            Some(read) => read,
            None => {
                let visit = store.visit(self.gist.visit)?;
                let visit = visit.ok_or(StoreError::NotKept { what: "visit" })?;
                let folded = fold(&visit.journal);
                (visit, folded)
            }
        };
        Ok(self.read.insert(read))
    }

    /// What the rules say of it, as of its last entry.
    fn mark(
        &mut self,
        store: &Store,
        pair: &Pair,
        weighings: &[(WallTime, Weighing)],
        policy: &Policy,
        of: &str,
    ) -> Result<VisitMark, StoreError> {
        let kept = self.body.judged.as_ref();
        if let Some(kept) = kept.filter(|it| it.of == of && it.mark.holds_under(policy)) {
            return Ok(kept.mark.clone());
        }
        let (visit, folded) = self.journal(store)?;
        let last = visit.journal.entries().last();
        let as_of = last.map_or(visit.began, |entry| entry.wall);
        let rhythms: Vec<_> = folded.feeds.iter().map(summary_of).collect();
        let growth = growth::of(pair, weighings, as_of);
        let judged = findings::judge(pair, folded, &rhythms, &growth, policy, as_of);
        let mark = VisitMark::of(visit.began, folded, &judged, policy);
        self.body.judged = Some(JudgedAs {
            of: of.to_owned(),
            mark: mark.clone(),
        });
        self.changed = true;
        Ok(mark)
    }
}

/// The ward's list, in the order in which the store tells it; keeps what it had to work out.
pub(super) fn ward(store: &Store, policy: &Policy) -> Result<Vec<WardLine>, StoreError> {
    let mut of_pair: HashMap<PairId, Vec<VisitGist>> = HashMap::new();
    for gist in store.gists()? {
        of_pair.entry(gist.pair).or_default().push(gist);
    }
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
    let mut looked = Vec::new();
    for gist in gists {
        looked.push(Looked::at(store, gist)?);
    }
    let all = looked.iter().flat_map(|it| &it.body.weighings);
    let mut weighings: Vec<_> = all.copied().collect();
    weighings.sort_by_key(|(wall, _)| wall.utc_ms());
    weighings.dedup();
    let of = digest(&row.pair, &weighings);
    let mut marks = Vec::new();
    let earlier = looked.len().saturating_sub(REVIEW_VISITS);
    for it in &mut looked[earlier..] {
        marks.push(it.mark(store, &row.pair, &weighings, policy, &of)?);
    }
    for it in looked.iter().filter(|it| it.changed) {
        // What cannot be written is worked out again the next time.
        if let Ok(body) = serde_json::to_string(&it.body) {
            to_keep.push((it.gist.visit, it.gist.seq, body));
        }
    }
    Ok(WardLine {
        row,
        marks,
        weighings,
    })
}

/// What a mark depends on besides its visit's own entries, the rules of the findings and the
/// policy: the pair, its weights, and the rules that make figures of them. SHA-256 in hex.
fn digest(pair: &Pair, weighings: &[(WallTime, Weighing)]) -> String {
    let all = (rhythm::RULE_VERSION, growth::RULE_VERSION, pair, weighings);
    let text = serde_json::to_string(&all).unwrap_or_default();
    hex(&Sha256::digest(text.as_bytes()))
}
