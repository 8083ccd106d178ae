//! What is worked out from visits and kept beside them: a visit is read and judged once; what came of
//! it holds until an entry follows, the pair or its weights change, or other rules or another policy
//! count. Knows no order of any list and no screen.

use std::cell::OnceCell;
use std::collections::HashMap;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::app::open_visit::summary_of;
use crate::findings::{self, Level, Policy, VisitMark};
use crate::growth::{self, Checked};
use crate::record::{Folded, Pair, PairId, Visit, VisitId, WallTime, Weighing, fold};
use crate::report::hex;
use crate::report::month::VisitSum;
use crate::rhythm::{self, Summary};
use crate::store::{Store, StoreError, VisitGist};

/// What is kept of a visit.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
struct Body {
    weighings: Vec<(WallTime, Weighing)>,
    /// When the weights were taken that it says are right, in milliseconds of UTC.
    checked: Vec<i64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    judged: Option<JudgedAs>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sum: Option<SumAs>,
}

/// What a visit adds to a month, and what it was worked out from besides its own entries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct SumAs {
    of: String,
    sum: VisitSum,
}

/// What the rules said of a visit, and of what they said it besides its own entries.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct JudgedAs {
    of: String,
    mark: VisitMark,
}

/// A visit as it was read.
struct Read {
    visit: Visit,
    folded: Folded,
    rhythms: OnceCell<Vec<Summary>>,
}

impl Read {
    /// One for each feed, worked out once.
    fn rhythms(&self) -> &[Summary] {
        self.rhythms
            .get_or_init(|| self.folded.feeds.iter().map(summary_of).collect())
    }
}

/// One visit on the way to its mark; read from its journal only where what is kept does not do.
pub(super) struct Looked {
    gist: VisitGist,
    body: Body,
    read: Option<Read>,
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
            let folded = &it.journal(store)?.folded;
            let weighings = folded.weighings.clone();
            let checked = Checked::of(&folded.acknowledged).times_ms().collect();
            (it.body.weighings, it.body.checked) = (weighings, checked);
        }
        Ok(it)
    }

    fn journal(&mut self, store: &Store) -> Result<&Read, StoreError> {
        let read = match self.read.take() {
            Some(read) => read,
            None => {
                let visit = store.visit(self.gist.visit)?;
                let visit = visit.ok_or(StoreError::NotKept { what: "visit" })?;
                Read {
                    folded: fold(&visit.journal),
                    visit,
                    rhythms: OnceCell::new(),
                }
            }
        };
        Ok(self.read.insert(read))
    }

    /// What the rules say of it, as of its last entry.
    pub(super) fn mark(
        &mut self,
        store: &Store,
        about: &About<'_>,
        policy: &Policy,
    ) -> Result<VisitMark, StoreError> {
        let kept = self.body.judged.as_ref();
        if let Some(kept) = kept.filter(|it| it.of == about.of && it.mark.holds_under(policy)) {
            return Ok(kept.mark.clone());
        }
        let read = self.journal(store)?;
        let (visit, folded) = (&read.visit, &read.folded);
        let last = visit.journal.entries().last();
        let as_of = last.map_or(visit.began, |entry| entry.wall);
        // What was weighed since is not what this visit knew.
        let known = about
            .weighings
            .iter()
            .filter(|(wall, _)| 0 <= as_of.since_ms(*wall));
        let known: Vec<_> = known.copied().collect();
        let growth = growth::of_checked(about.pair, &known, &about.checked, as_of);
        let judged = findings::judge(about.pair, folded, read.rhythms(), &growth, policy, as_of);
        let mark = VisitMark::of(visit.began, folded, &judged, policy);
        self.body.judged = Some(JudgedAs {
            of: about.of.clone(),
            mark: mark.clone(),
        });
        self.changed = true;
        Ok(mark)
    }

    /// What it adds to a month, if that is kept and still holds; nothing is worked out.
    pub(super) fn kept_sum(&self, about: &About<'_>, policy: &Policy) -> Option<&VisitSum> {
        let judged = self.body.judged.as_ref();
        let mark = &judged
            .filter(|it| it.of == about.of && it.mark.holds_under(policy))?
            .mark;
        let sum = self.body.sum.as_ref();
        sum.filter(|it| it.of == sum_of(&about.of, mark))
            .map(|it| &it.sum)
    }

    /// What it adds to a month.
    pub(super) fn sum(
        &mut self,
        store: &Store,
        about: &About<'_>,
        policy: &Policy,
    ) -> Result<VisitSum, StoreError> {
        if let Some(kept) = self.kept_sum(about, policy) {
            return Ok(kept.clone());
        }
        let mark = self.mark(store, about, policy)?;
        let read = self.journal(store)?;
        let sum = VisitSum::of(
            about.pair.id,
            &read.visit,
            &read.folded,
            read.rhythms(),
            Some(was_for_review(&mark)),
        );
        self.body.sum = Some(SumAs {
            of: sum_of(&about.of, &mark),
            sum: sum.clone(),
        });
        self.changed = true;
        Ok(sum)
    }

    /// The weights that it has.
    pub(super) fn weighings(&self) -> &[(WallTime, Weighing)] {
        &self.body.weighings
    }

    /// The visit.
    pub(super) const fn id(&self) -> VisitId {
        self.gist.visit
    }

    /// What is to be kept of it, where it changed.
    pub(super) fn to_keep(&self) -> Option<(VisitId, u32, String)> {
        // What cannot be written is worked out again the next time.
        let body = serde_json::to_string(&self.body).ok();
        let body = body.filter(|_| self.changed)?;
        Some((self.gist.visit, self.gist.seq, body))
    }
}

/// The pair of a visit.
pub(super) struct About<'a> {
    pair: &'a Pair,
    weighings: &'a [(WallTime, Weighing)],
    checked: Checked,
    /// The digest of all three.
    of: String,
}

impl<'a> About<'a> {
    /// A pair with its weights of all visits, oldest first, and what these visits say of them.
    pub(super) fn of(
        pair: &'a Pair,
        weighings: &'a [(WallTime, Weighing)],
        looked: &[Looked],
    ) -> Self {
        let checked = looked.iter().flat_map(|it| it.body.checked.iter().copied());
        let checked = Checked::at(checked);
        Self {
            of: digest(pair, weighings, &checked),
            pair,
            weighings,
            checked,
        }
    }
}

/// The visits of a pair, each with what is kept of it.
pub(super) fn looked_at(store: &Store, gists: Vec<VisitGist>) -> Result<Vec<Looked>, StoreError> {
    let looked = gists.into_iter().map(|gist| Looked::at(store, gist));
    looked.collect()
}

/// All visits that no amendment replaces, by their pair.
pub(super) fn by_pair(store: &Store) -> Result<HashMap<PairId, Vec<VisitGist>>, StoreError> {
    let mut of_pair: HashMap<PairId, Vec<VisitGist>> = HashMap::new();
    for gist in store.gists()? {
        of_pair.entry(gist.pair).or_default().push(gist);
    }
    Ok(of_pair)
}

/// The weights of all visits of a pair, oldest first, each once.
pub(super) fn weighings_of(looked: &[Looked]) -> Vec<(WallTime, Weighing)> {
    let all = looked.iter().flat_map(Looked::weighings);
    let mut weighings: Vec<_> = all.copied().collect();
    weighings.sort_by_key(|(wall, _)| wall.utc_ms());
    weighings.dedup();
    weighings
}

/// Whether a finding for medical review now was made, acknowledged or not.
fn was_for_review(mark: &VisitMark) -> bool {
    mark.level == Some(Level::MedicalReviewNow)
}

/// What a sum depends on besides its visit's own entries and the rules of the rhythm.
fn sum_of(of: &str, mark: &VisitMark) -> String {
    format!("{of} {}", was_for_review(mark))
}

/// What a mark depends on besides its visit's own entries, the rules of the findings and the
/// policy: the pair, its weights, which of them were said to be right, and the rules that make figures of
/// them. SHA-256 in hex.
fn digest(pair: &Pair, weighings: &[(WallTime, Weighing)], checked: &Checked) -> String {
    let rules = (rhythm::RULE_VERSION, growth::RULE_VERSION);
    let all = (
        rules,
        pair,
        weighings,
        checked.times_ms().collect::<Vec<_>>(),
    );
    let text = serde_json::to_string(&all).unwrap_or_default();
    hex(&Sha256::digest(text.as_bytes()))
}
