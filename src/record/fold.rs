//! Folding a journal into what the visit knows. Pure: the same journal gives the same visit.
//!
//! Folding never fails. What does not fit (a tap with no feed running, say) is kept in the journal
//! and told in `odd`.

use super::{
    AdjustmentTried, At, BreastBefore, Entry, Feed, FeedEnd, Journal, Label, LastDay, Nappy,
    PainAt, PlanItem, Sign, SignChange, SignState, Tap, TapWhat, Text, WallTime, Weighing, What,
};

/// The state of a sign and since when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignNow {
    /// Its state.
    pub state: SignState,
    /// Since when.
    pub at: At,
}

/// An entry that does not fit where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Odd {
    /// It needs a running feed and there is none.
    NoFeed(u32),
    /// It needs a feed, running or ended, and there is none, or none of the place that it names.
    NothingFed(u32),
    /// This version does not know its kind.
    Unknown(u32),
    /// It holds more than this version knows.
    Newer(u32),
}

/// A finding that was acknowledged.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Acknowledged {
    /// The rule's id.
    pub rule: String,
    /// By whom.
    pub by: Label,
    /// When.
    pub wall: WallTime,
}

/// Who signed, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Signed {
    /// By whom.
    pub by: Label,
    /// When.
    pub wall: WallTime,
}

/// What a journal says, taken together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Folded {
    /// The last 24 hours, later answers over earlier ones; `None` if never asked.
    pub last_day: Option<LastDay>,
    /// Weights in the order in which they were taken, each with when that was.
    pub weighings: Vec<(WallTime, Weighing)>,
    /// Nappies changed during the visit.
    pub nappies: Vec<(WallTime, Nappy)>,
    /// Breast and nipple before, the last word for each side.
    pub breasts_before: Vec<BreastBefore>,
    /// The feeds in order; only the last can still run.
    pub feeds: Vec<Feed>,
    /// Each sign's state in the feed that runs or ran last, by [`Sign::index`]; before the first
    /// feed, as told so far. `None` is "not looked yet", as all are when a feed begins: position and
    /// attachment at one breast say nothing of the other.
    pub signs: [Option<SignNow>; Sign::ALL.len()],
    /// Notes in order.
    pub notes: Vec<(WallTime, Text)>,
    /// Findings acknowledged.
    pub acknowledged: Vec<Acknowledged>,
    /// What was agreed.
    pub plan: Vec<PlanItem>,
    /// When to look again.
    pub next_look: Option<WallTime>,
    /// The signature.
    pub signed: Option<Signed>,
    /// When it was last shown as codes, and the transfer's number.
    pub shown: Option<(WallTime, u32)>,
    /// The receipt that was taken.
    pub receipt: Option<String>,
    /// Entries that do not fit.
    pub odd: Vec<Odd>,
}

impl Folded {
    /// The feed that runs now.
    pub fn running(&self) -> Option<&Feed> {
        self.feeds.last().filter(|feed| feed.is_running())
    }

    /// A sign's state now.
    pub fn sign(&self, sign: Sign) -> Option<SignNow> {
        self.signs[sign.index()]
    }

    /// A sign's state in each feed, in order; without a feed, as told so far.
    pub fn sign_in_each(&self, sign: Sign) -> Vec<Option<SignState>> {
        let state = |now: Option<SignNow>| now.map(|now| now.state);
        if self.feeds.is_empty() {
            return vec![state(self.sign(sign))];
        }
        let feeds = self.feeds.iter();
        feeds.map(|feed| state(feed.sign(sign))).collect()
    }

    /// The gravest state in which a feed left a sign: not seen before unclear before seen; `None`
    /// where it was looked for in none.
    pub fn sign_at_worst(&self, sign: Sign) -> Option<SignState> {
        let states = self.sign_in_each(sign).into_iter().flatten();
        states.max_by_key(|state| match state {
            SignState::Seen => 0,
            SignState::Unclear => 1,
            SignState::NotSeen => 2,
        })
    }

    /// The last pain told in the visit.
    pub fn last_pain(&self) -> Option<PainAt> {
        self.feeds
            .iter()
            .rev()
            .find_map(|feed| feed.pains.last())
            .copied()
    }
}

/// Folds a journal; struck entries count as never made.
pub fn fold(journal: &Journal) -> Folded {
    let mut folded = Folded::default();
    for entry in journal.standing_entries() {
        step(&mut folded, entry);
    }
    folded
}

/// Takes one more entry into what was folded so far.
///
/// For an entry that takes another back the whole journal has to be folded again.
pub fn fold_on(folded: &mut Folded, entry: &Entry) {
    step(folded, entry);
}

fn step(folded: &mut Folded, entry: &Entry) {
    let (at, wall) = (entry.at, entry.wall);
    if entry.newer.is_some() {
        folded.odd.push(Odd::Newer(entry.seq));
    }
    match &entry.what {
        What::LastDay(day) => {
            let before = folded.last_day.take().unwrap_or_default();
            folded.last_day = Some(before.overlaid(day));
        }
        What::Weighed(weighing) => weighed(folded, weighing.taken_at(wall), *weighing),
        What::Nappy(nappy) => folded.nappies.push((wall, *nappy)),
        What::BreastBefore(breast) => {
            match folded
                .breasts_before
                .iter_mut()
                .find(|it| it.side == breast.side)
            {
                Some(told) => {
                    told.breast = breast.breast.or(told.breast);
                    told.nipple = breast.nipple.or(told.nipple);
                }
                None => folded.breasts_before.push(*breast),
            }
        }
        What::FeedStarted { side, hold } => {
            end_running(folded, at, super::EndedBy::Specialist);
            let mut feed = Feed::starting(at, *side, *hold);
            if folded.feeds.is_empty() {
                feed.signs = told_so_far(&folded.signs);
            } else {
                folded.signs = Default::default();
            }
            folded.feeds.push(feed);
        }
        What::FeedEnded { by } => {
            if !end_running(folded, at, *by) {
                folded.odd.push(Odd::NoFeed(entry.seq));
            }
        }
        What::SignChanged { sign, state } => {
            folded.signs[sign.index()] = state.map(|state| SignNow { state, at });
            if let Some(feed) = folded.feeds.last_mut() {
                feed.signs.push(SignChange {
                    at,
                    sign: *sign,
                    state: *state,
                });
            }
        }
        What::Note { text } => folded.notes.push((wall, text.clone())),
        What::FindingAcknowledged { rule, by } => folded.acknowledged.push(Acknowledged {
            rule: rule.clone(),
            by: by.clone(),
            wall,
        }),
        What::PlanItem(item) => folded.plan.push(item.clone()),
        What::NextLook { due } => folded.next_look = Some(*due),
        What::Signed { by } => {
            folded.signed = Some(Signed {
                by: by.clone(),
                wall,
            });
        }
        What::ShownAsCode { transfer, .. } => folded.shown = Some((wall, *transfer)),
        What::ReceiptTaken { receipt } => folded.receipt = Some(receipt.clone()),
        What::TapAdded { at, what } if what.is_suck() || what.is_swallow() => {
            match feed_at(folded, *at) {
                Some(feed) => put(feed, *at, *what),
                None => folded.odd.push(Odd::NothingFed(entry.seq)),
            }
        }
        What::BoundaryMoved(moved) => match feed_at(folded, moved.was) {
            Some(feed) => feed.boundaries.push(*moved),
            None => folded.odd.push(Odd::NothingFed(entry.seq)),
        },
        What::NippleAfter { .. } | What::BreastAfter { .. } | What::BabyState { .. } => {
            if !after_feed(folded, &entry.what) {
                folded.odd.push(Odd::NothingFed(entry.seq));
            }
        }
        What::Pain { score, feed } => {
            let pain = PainAt { at, pain: *score };
            match of_place(folded, *feed) {
                Some(feed) if feed.is_running() => feed.pains.push(pain),
                Some(feed) => feed.pains_after.push(pain),
                None if feed.is_some() => folded.odd.push(Odd::NothingFed(entry.seq)),
                None => folded.odd.push(Odd::NoFeed(entry.seq)),
            }
        }
        What::Struck { .. } => {}
        What::Unknown { .. } => folded.odd.push(Odd::Unknown(entry.seq)),
        within => {
            if !within_feed(folded, at, within) {
                folded.odd.push(Odd::NoFeed(entry.seq));
            }
        }
    }
}

/// Puts a weight where its time belongs, after all of the same time. Those taken as they were noted
/// stay in the order of the journal, whatever the wall clock did.
fn weighed(folded: &mut Folded, wall: WallTime, weighing: Weighing) {
    let all = &mut folded.weighings;
    let place = if weighing.taken.is_some() {
        all.iter().position(|(at, _)| wall.utc_ms() < at.utc_ms())
    } else {
        None
    };
    all.insert(place.unwrap_or(all.len()), (wall, weighing));
}

/// What was told of signs before any feed, by time: it is of the first one.
fn told_so_far(signs: &[Option<SignNow>]) -> Vec<SignChange> {
    let told = Sign::ALL.iter().zip(signs);
    let mut told: Vec<SignChange> = told
        .filter_map(|(sign, now)| {
            now.map(|now| SignChange {
                at: now.at,
                sign: *sign,
                state: Some(now.state),
            })
        })
        .collect();
    told.sort_by_key(|change| change.at);
    told
}

fn running(folded: &mut Folded) -> Option<&mut Feed> {
    folded.feeds.last_mut().filter(|feed| feed.is_running())
}

/// The feed that a time lies in; where one feed ends as the next begins, the later.
fn feed_at(folded: &mut Folded, at: At) -> Option<&mut Feed> {
    let feed = folded
        .feeds
        .iter_mut()
        .rev()
        .find(|feed| feed.started <= at)?;
    feed.ended.is_none_or(|end| at <= end.at).then_some(feed)
}

fn end_running(folded: &mut Folded, at: At, by: super::EndedBy) -> bool {
    running(folded).is_some_and(|feed| {
        feed.ended = Some(FeedEnd { at, by });
        put(feed, at, TapWhat::End);
        true
    })
}

/// Takes what can only happen while a feed runs; false if none does.
fn within_feed(folded: &mut Folded, at: At, what: &What) -> bool {
    let Some(feed) = running(folded) else {
        return false;
    };
    match what {
        What::Suck => put(feed, at, TapWhat::Suck),
        What::SuckSwallow => put(feed, at, TapWhat::SuckSwallow),
        What::Swallow => put(feed, at, TapWhat::Swallow),
        What::UnwatchedFrom { from } => put(feed, (*from).min(at), TapWhat::Unwatched),
        What::UnwatchedTo => put(feed, at, TapWhat::Watched),
        What::BabyOff => put(feed, at, TapWhat::Off),
        What::BabyOn => put(feed, at, TapWhat::On),
        What::HoldChanged { hold } => feed.holds.push((at, *hold)),
        What::AdjustmentTried { what } => {
            feed.adjustments.push(AdjustmentTried { at, what: *what });
        }
        What::TouchUnresolved => feed.unresolved_touches += 1,
        _ => return false,
    }
    true
}

/// Puts a tap where its time belongs, after all of the same time: late answers are back-dated.
fn put(feed: &mut Feed, at: At, what: TapWhat) {
    let at = at.max(feed.started);
    let place = feed.taps.partition_point(|tap| tap.at <= at);
    feed.taps.insert(place, Tap { at, what });
}

/// The feed of a place; the last one where none is named.
fn of_place(folded: &mut Folded, place: Option<u32>) -> Option<&mut Feed> {
    match place {
        Some(place) => folded.feeds.get_mut(usize::try_from(place).ok()?),
        None => folded.feeds.last_mut(),
    }
}

/// Takes what is found after a feed; false if that feed is not there.
fn after_feed(folded: &mut Folded, what: &What) -> bool {
    let place = match what {
        What::NippleAfter { feed, .. }
        | What::BreastAfter { feed, .. }
        | What::BabyState { feed, .. } => *feed,
        _ => return false,
    };
    let Some(feed) = of_place(folded, place) else {
        return false;
    };
    match what {
        What::NippleAfter { nipple, .. } => feed.nipple_after = Some(*nipple),
        What::BreastAfter { breast, .. } => feed.breast_after = Some(*breast),
        What::BabyState { state, .. } => feed.baby_state = Some(*state),
        _ => {}
    }
    true
}
