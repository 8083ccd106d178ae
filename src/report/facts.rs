//! One visit as numbers and coded words, ready to be put on a page.
//!
//! No sentence and no layout here, and no arithmetic beyond putting times on the wall clock.

use uuid::Uuid;

use crate::findings::{CallWhom, Judged};
use crate::growth::Growth;
use crate::record::{
    Acknowledged, At, BreastBefore, Feed, Folded, Label, LastDay, Nappy, Pair, PairId, PlanItem,
    PolicyMark, Sign, SignNow, SignState, Signed, Text, Visit, VisitId, WallTime, Weighing, What,
};
use crate::rhythm::Summary;

/// The versions of the rules that made the computed numbers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RuleVersions {
    /// Of phases, runs and rates.
    pub rhythm: String,
    /// Of weight and output figures.
    pub growth: String,
    /// Of the findings.
    pub findings: String,
}

impl RuleVersions {
    /// Those of this program.
    pub fn current() -> Self {
        Self {
            rhythm: crate::rhythm::RULE_VERSION.to_owned(),
            growth: crate::growth::RULE_VERSION.to_owned(),
            findings: crate::findings::RULE_VERSION.to_owned(),
        }
    }
}

impl From<[String; 3]> for RuleVersions {
    /// Rhythm, growth, findings, in this order.
    fn from([rhythm, growth, findings]: [String; 3]) -> Self {
        Self {
            rhythm,
            growth,
            findings,
        }
    }
}

/// What the rules computed of a visit, wherever they ran.
#[derive(Debug, Clone, Copy)]
pub struct Computed<'a> {
    /// One for each feed, in order.
    pub rhythms: &'a [Summary],
    /// Weight and output figures, if there is anything to compute them from.
    pub growth: Option<&'a Growth>,
    /// What the rules said.
    pub judged: &'a Judged,
    /// The ward policy that judged it.
    pub policy: &'a PolicyMark,
    /// The versions of the rules.
    pub rule_versions: &'a RuleVersions,
}

/// What proves a handover: kept beside the facts, never looked into here.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Handover {
    /// The transfer's id.
    pub transfer: Option<String>,
    /// SHA-256 of the sealed record.
    pub sealed_sha256: Option<[u8; 32]>,
    /// The id of the tablet's signing key, in hex.
    pub tablet_key: Option<String>,
    /// The signed record as it came out of the seal: a `COSE_Sign1`.
    pub cose_sign1: Option<Vec<u8>>,
}

/// One feed with its place on the wall clock and its rhythm.
#[derive(Debug, Clone, PartialEq)]
pub struct FeedFacts {
    /// What was seen.
    pub feed: Feed,
    /// What the taps mean; `None` if that was not computed.
    pub rhythm: Option<Summary>,
    /// When it began.
    pub began: WallTime,
    /// When it ended, if it did.
    pub ended: Option<WallTime>,
}

/// How the signs stood in one feed, or in a visit in which nothing was fed.
#[derive(Debug, Clone)]
pub struct Look<'a> {
    /// Of which feed; `None` where nothing was fed.
    pub feed: Option<&'a FeedFacts>,
    /// Each sign's last state, by [`Sign::index`]; `None` is "not looked yet".
    pub signs: [Option<SignNow>; Sign::ALL.len()],
}

impl Look<'_> {
    /// A sign's state.
    pub fn state(&self, sign: Sign) -> Option<SignState> {
        self.signs[sign.index()].map(|now| now.state)
    }

    /// The signs in a state, in the usual order; those not looked for with `None`.
    pub fn all_in(&self, state: Option<SignState>) -> impl Iterator<Item = Sign> {
        let signs = Sign::ALL.iter().copied();
        signs.filter(move |sign| self.state(*sign) == state)
    }
}

/// One figure of weight or output: a value, or a range that is expected or cannot be told closer.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Its name, a stable word.
    pub name: &'static str,
    /// When it was measured, if at one instant.
    pub at: Option<WallTime>,
    /// Its value in the unit; `None` for a range.
    pub value: Option<f64>,
    /// How many decimals it is shown with.
    pub decimals: usize,
    /// Its unit as UCUM.
    pub unit: &'static str,
    /// Lower end of its interval or range.
    pub low: Option<f64>,
    /// Upper end of its interval or range.
    pub high: Option<f64>,
    /// Why it is told, for a weight that is to be asked about.
    pub why: Option<&'static str>,
}

/// The figures of weight and output, with what has to be said beside them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Figures {
    /// In the order in which they are shown.
    pub numbers: Vec<Figure>,
    /// What has to be said beside them, as stored words.
    pub cautions: Vec<&'static str>,
    /// What was missing for those that are absent, as stored words.
    pub missing: Vec<&'static str>,
}

/// An entry that was taken back and may have been sent before as a value of its own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TakenBack {
    /// A weight, and when it was taken.
    Weight(WallTime, Weighing),
    /// A nappy.
    Nappy(WallTime),
    /// A feed.
    Feed(At),
    /// A pain score.
    Pain(At),
    /// A note.
    Note(WallTime),
}

/// All that is told of one visit.
#[derive(Debug, Clone, PartialEq)]
pub struct Facts {
    /// The program's version.
    pub app_version: String,
    /// The versions of the rules.
    pub rule_versions: RuleVersions,
    /// The ward policy that judged it.
    pub policy: PolicyMark,
    /// Whom it is about.
    pub pair: Pair,
    /// The visit's id.
    pub visit: VisitId,
    /// The visit it replaces, if it is an amendment.
    pub replaces: Option<VisitId>,
    /// When the visit began.
    pub began: WallTime,
    /// When its last entry was made before it was shown or handed over.
    pub until: WallTime,
    /// The specialist's sign.
    pub specialist: Label,
    /// The signature.
    pub signed: Option<Signed>,
    /// The last 24 hours; `None` if never asked.
    pub last_day: Option<LastDay>,
    /// Weights in order.
    pub weighings: Vec<(WallTime, Weighing)>,
    /// Nappies changed during the visit.
    pub nappies: Vec<(WallTime, Nappy)>,
    /// Breast and nipple before, the last word for each side.
    pub breasts_before: Vec<BreastBefore>,
    /// The feeds in order.
    pub feeds: Vec<FeedFacts>,
    /// Each sign's state in the last feed, by [`Sign::index`]; without a feed, as told in the visit.
    /// `None` is "not looked yet". The signs of each feed are in [`Facts::looks`].
    pub signs: [Option<SignNow>; Sign::ALL.len()],
    /// Notes in order.
    pub notes: Vec<(WallTime, Text)>,
    /// What was agreed.
    pub plan: Vec<PlanItem>,
    /// When to look again.
    pub next_look: Option<WallTime>,
    /// Weight and output figures; `None` if there was nothing to compute them from.
    pub growth: Option<Figures>,
    /// What the rules said.
    pub judged: Judged,
    /// Findings acknowledged.
    pub acknowledged: Vec<Acknowledged>,
    /// Entries taken back.
    pub taken_back: Vec<TakenBack>,
    /// How many entries do not fit where they stand.
    pub odd: usize,
    /// What proves the handover.
    pub handover: Option<Handover>,
    /// Words in the record that this version does not know, each with what it is of.
    pub unknown: Vec<(String, String)>,
}

impl Facts {
    /// Gathers the facts of one visit. `folded` is the fold of the visit's journal.
    pub fn of(pair: &Pair, visit: &Visit, folded: &Folded, computed: &Computed<'_>) -> Self {
        let wall = |at: At| wall_of(visit.began, at);
        let feeds = folded
            .feeds
            .iter()
            .enumerate()
            .map(|(index, feed)| FeedFacts {
                began: wall(feed.started),
                ended: feed.ended.map(|end| wall(end.at)),
                rhythm: computed.rhythms.get(index).cloned(),
                feed: feed.clone(),
            })
            .collect();
        let until = visit
            .journal
            .entries()
            .iter()
            .rev()
            .find(|entry| !entry.what.is_after_signing())
            .map_or(visit.began, |entry| wall(entry.at));
        Self {
            app_version: env!("CARGO_PKG_VERSION").to_owned(),
            rule_versions: computed.rule_versions.clone(),
            policy: computed.policy.clone(),
            pair: pair.clone(),
            visit: visit.id,
            replaces: visit.replaces,
            began: visit.began,
            until,
            specialist: visit.specialist.clone(),
            signed: folded.signed.clone(),
            last_day: folded.last_day.clone(),
            weighings: folded.weighings.clone(),
            nappies: folded.nappies.clone(),
            breasts_before: folded.breasts_before.clone(),
            feeds,
            signs: folded.signs,
            notes: folded.notes.clone(),
            plan: folded.plan.clone(),
            next_look: folded.next_look,
            growth: computed.growth.map(super::figures::figures),
            judged: computed.judged.clone(),
            acknowledged: folded.acknowledged.clone(),
            taken_back: taken_back(visit),
            odd: folded.odd.len(),
            handover: None,
            unknown: Vec::new(),
        }
    }

    /// The same, with the words that were left out because this version does not know them.
    #[must_use]
    pub fn with_unknown(mut self, unknown: Vec<(String, String)>) -> Self {
        self.unknown = unknown;
        self
    }

    /// The same, with what proves its handover.
    #[must_use]
    pub fn with_handover(mut self, handover: Handover) -> Self {
        self.handover = Some(handover);
        self
    }

    /// A time within the visit on the wall clock.
    pub fn wall(&self, at: At) -> WallTime {
        wall_of(self.began, at)
    }

    /// The first eight hex digits of the visit's id: for people to tell records apart.
    pub fn short_id(&self) -> String {
        self.visit.uuid().simple().to_string()[..8].to_owned()
    }

    /// An id that the visit and its amendments share: from the pair and the visit's beginning,
    /// which an amendment carries over.
    pub fn occasion(&self) -> Uuid {
        occasion(self.pair.id, self.began)
    }

    /// The ward's own number for whom to call, where it was agreed to call them.
    pub fn number_of(&self, whom: CallWhom) -> Option<&str> {
        let agreed = whom.agreed()?;
        let mut items = self.plan.iter().rev();
        let item = items.find(|it| it.call() == Some(agreed) && it.words.is_some())?;
        item.words.as_ref().map(Text::as_str)
    }

    /// A figure of weight or output by its name.
    pub fn figure(&self, name: &str) -> Option<&Figure> {
        let numbers = self.growth.iter().flat_map(|it| &it.numbers);
        numbers.into_iter().find(|it| it.name == name)
    }

    /// The signs of each feed, in order, by [`Sign::index`]; without a feed, as told in the visit.
    pub fn looks(&self) -> Vec<Look<'_>> {
        if self.feeds.is_empty() {
            let signs = self.signs;
            return vec![Look { feed: None, signs }];
        }
        let looks = self.feeds.iter().map(|it| Look {
            feed: Some(it),
            signs: std::array::from_fn(|index| it.feed.sign(Sign::ALL[index])),
        });
        looks.collect()
    }

    /// A sign's state in the last feed.
    pub fn sign(&self, sign: Sign) -> Option<SignNow> {
        self.signs[sign.index()]
    }
}

/// An id that a visit and its amendments share; see [`Facts::occasion`].
pub fn occasion(pair: PairId, began: WallTime) -> Uuid {
    let name = format!("visit begun at {}", began.utc_ms());
    Uuid::new_v5(&pair.uuid(), name.as_bytes())
}

fn wall_of(began: WallTime, at: At) -> WallTime {
    began.plus_ms(i64::try_from(at.as_ms()).unwrap_or(i64::MAX))
}

fn taken_back(visit: &Visit) -> Vec<TakenBack> {
    let journal = &visit.journal;
    journal
        .entries()
        .iter()
        .zip(journal.standing())
        .filter(|(_, stands)| !stands)
        .filter_map(|(entry, _)| match entry.what {
            What::Weighed(it) => Some(TakenBack::Weight(it.taken_at(entry.wall), it)),
            What::Nappy(_) => Some(TakenBack::Nappy(entry.wall)),
            What::FeedStarted { .. } => Some(TakenBack::Feed(entry.at)),
            What::Pain { .. } => Some(TakenBack::Pain(entry.at)),
            What::Note { .. } => Some(TakenBack::Note(entry.wall)),
            _ => None,
        })
        .collect()
}
