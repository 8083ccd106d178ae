//! The visit that is open on the tablet: its journal, what it folds to, its rhythms and judgement.
//!
//! Knows no screen and no disk; the time comes in. A feed's rhythm is looked back over once and kept
//! until its taps change.

use std::cell::RefCell;
use std::rc::Rc;

use crate::findings::{self, Finding, Judged, Level, Policy};
use crate::growth::{self, Checked, Growth};
use crate::record::{
    Acknowledged, At, BoundaryMoved, Entry, Feed, Folded, Journal, LastDay, Pair, RecordError, Tap,
    Visit, WallTime, Weighing, What, fold, fold_on,
};
use crate::rhythm::{self, PhaseSpan, Rhythm, Summary};

use super::clock::Now;

/// The open visit.
#[derive(Debug, Clone)]
pub struct OpenVisit {
    /// Whom it is about.
    pub pair: Pair,
    /// The visit with its journal.
    pub visit: Visit,
    /// What the journal says.
    pub folded: Folded,
    /// What other visits know of its pair.
    pub others: Others,
    /// The number of the last entry that is on disk.
    pub safe_seq: u32,
    live: Rhythm,
    zero_boot_ms: u64,
    known: RefCell<Vec<Known>>,
    /// Entries besides single taps, so far.
    told: u32,
    reviews: RefCell<Option<Reviews>>,
}

/// What is called for and not acknowledged, and what that was taken from.
#[derive(Debug, Clone)]
struct Reviews {
    told: u32,
    minute: i64,
    findings: Rc<[Finding]>,
}

/// Milliseconds in a minute.
const MINUTE_MS: i64 = 60_000;

/// What a pair's other visits know.
#[derive(Debug, Clone, Default)]
pub struct Others {
    /// Their weights, oldest first.
    pub weighings: Vec<Weighed>,
    /// What was acknowledged in them.
    pub acknowledged: Vec<Acknowledged>,
    /// Whether one of them amends this one, so that this one stands no more.
    pub amends: bool,
}

impl Others {
    /// What was known of them at a time: what is learnt later changes no record that was signed.
    fn known_at(&mut self, wall: WallTime) {
        self.weighings.retain(|it| 0 <= wall.since_ms(it.told));
        self.acknowledged.retain(|it| 0 <= wall.since_ms(it.wall));
    }
}

/// A weight, when it was told and when it was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weighed {
    /// When it was told.
    pub told: WallTime,
    /// When it was taken.
    pub at: WallTime,
    /// The weight.
    pub weighing: Weighing,
}

impl Weighed {
    /// All weights that a journal tells and has not taken back.
    pub fn all_of(journal: &Journal) -> impl Iterator<Item = Self> + '_ {
        let entries = journal.standing_entries();
        entries.filter_map(|entry| match entry.what {
            What::Weighed(weighing) => Some(Self {
                told: entry.wall,
                at: weighing.taken_at(entry.wall),
                weighing,
            }),
            _ => None,
        })
    }
}

/// A feed's rhythm, and what it was taken from.
#[derive(Debug, Clone)]
struct Known {
    taps: Vec<Tap>,
    unresolved: u32,
    boundaries: Vec<BoundaryMoved>,
    summary: Rc<Summary>,
}

impl Known {
    fn of(feed: &Feed) -> Self {
        Self {
            taps: feed.taps.clone(),
            unresolved: feed.unresolved_touches,
            boundaries: feed.boundaries.clone(),
            summary: Rc::new(summary_of(feed)),
        }
    }

    fn is_of(&self, feed: &Feed) -> bool {
        self.unresolved == feed.unresolved_touches
            && self.taps == feed.taps
            && self.boundaries == feed.boundaries
    }
}

impl OpenVisit {
    /// A visit taken up: new, or again after the app was closed. Time goes on from its last entry
    /// by the wall clock, never backwards.
    pub fn take_up(pair: Pair, visit: Visit, mut others: Others, now: Now) -> Self {
        let (last_at, last_wall) = visit
            .journal
            .entries()
            .last()
            .map_or((At::START, visit.began), |entry| (entry.at, entry.wall));
        let gone_ms = u64::try_from(now.wall.since_ms(last_wall)).unwrap_or(0);
        let at_ms = last_at.plus_ms(gone_ms).as_ms();
        let folded = fold(&visit.journal);
        if let Some(signed) = &folded.signed {
            others.known_at(signed.wall);
        }
        let mut open = Self {
            pair,
            safe_seq: visit.journal.next_seq() - 1,
            visit,
            folded,
            others,
            live: Rhythm::new(),
            // Wraps on purpose: a device started after the visit began.
            zero_boot_ms: now.boot_ms.wrapping_sub(at_ms),
            known: RefCell::default(),
            told: 0,
            reviews: RefCell::default(),
        };
        open.rebuild_live();
        open
    }

    /// The time since the visit began.
    pub const fn at(&self, now: Now) -> At {
        At::ms(now.boot_ms.wrapping_sub(self.zero_boot_ms))
    }

    /// Adds an entry; it is not safe until the disk says so.
    ///
    /// # Errors
    /// As the journal: signed, or nothing to take back.
    pub fn note(&mut self, now: Now, what: What) -> Result<Entry, RecordError> {
        let at = self.at(now).max(
            self.visit
                .journal
                .entries()
                .last()
                .map_or(At::START, |entry| entry.at),
        );
        let entry = self.visit.journal.next(at, now.wall, what);
        self.visit.journal.push(entry.clone())?;
        self.take_in(&entry);
        Ok(entry)
    }

    fn take_in(&mut self, entry: &Entry) {
        if !entry.what.is_tap() {
            self.told = self.told.wrapping_add(1);
        }
        let taps_before = self.folded.running().map_or(0, |feed| feed.taps.len());
        if matches!(entry.what, What::Struck { .. }) {
            self.folded = fold(&self.visit.journal);
            self.rebuild_live();
            return;
        }
        fold_on(&mut self.folded, entry);
        match &entry.what {
            What::FeedStarted { .. }
            | What::UnwatchedFrom { .. }
            | What::FeedEnded { .. }
            | What::TapAdded { .. } => self.rebuild_live(),
            What::BoundaryMoved(moved) => {
                let lies_in_it = |feed: &Feed| feed.boundaries.last() == Some(moved);
                if self.folded.running().is_some_and(lies_in_it) {
                    self.live.note_boundary(*moved);
                }
            }
            What::TouchUnresolved => self.live.note_unresolved(1),
            _ => {
                if let Some(feed) = self.folded.running()
                    && taps_before < feed.taps.len()
                    && let Some(tap) = feed.taps.last()
                {
                    self.live.push(*tap);
                }
            }
        }
    }

    fn rebuild_live(&mut self) {
        self.live = Rhythm::new();
        if let Some(feed) = self.folded.running() {
            for tap in &feed.taps {
                self.live.push(*tap);
            }
            self.live.note_unresolved(feed.unresolved_touches);
            for moved in &feed.boundaries {
                self.live.note_boundary(*moved);
            }
        }
    }

    /// The running feed's rhythm as it is now.
    pub fn live(&self, now: Now) -> Option<rhythm::Live> {
        self.folded.running().map(|_| self.live.live(self.at(now)))
    }

    /// The running feed's phases from about a time on.
    pub fn recent_phases(&self, from: At) -> Vec<PhaseSpan> {
        self.live.recent(from)
    }

    /// The rhythm of one feed by its place.
    pub fn summary(&self, place: usize) -> Option<Rc<Summary>> {
        let feed = self.folded.feeds.get(place)?;
        let mut known = self.known.borrow_mut();
        match known.get_mut(place) {
            Some(it) if it.is_of(feed) => {}
            Some(it) => *it = Known::of(feed),
            None => {
                let rest = &self.folded.feeds[known.len()..=place];
                known.extend(rest.iter().map(Known::of));
            }
        }
        known.get(place).map(|it| Rc::clone(&it.summary))
    }

    /// The rhythm of each feed, in order.
    pub fn summaries(&self) -> Vec<Summary> {
        (0..self.folded.feeds.len())
            .filter_map(|place| self.summary(place))
            .map(|summary| (*summary).clone())
            .collect()
    }

    /// All weights, other visits' too, each once: an amendment carries over those of what it amends.
    pub fn weighings(&self) -> Vec<(WallTime, Weighing)> {
        let own = &self.folded.weighings;
        let others = self.others.weighings.iter().map(|it| (it.at, it.weighing));
        let others = others.filter(|it| !own.contains(it));
        others.chain(own.iter().copied()).collect()
    }

    /// Weight and output against age.
    pub fn growth(&self, wall: WallTime) -> Growth {
        let acknowledged = self.folded.acknowledged.iter();
        let checked = Checked::of(acknowledged.chain(&self.others.acknowledged));
        growth::of_checked(&self.pair, &self.weighings(), &checked, wall)
    }

    /// What the rules say.
    pub fn judged(&self, policy: &Policy, wall: WallTime) -> Judged {
        findings::judge(
            &self.pair,
            &self.folded,
            &self.summaries(),
            &self.growth(wall),
            policy,
            wall,
        )
    }

    /// The findings that call for medical review now and that nobody has acknowledged; none once the
    /// visit is signed, as it cannot be signed before.
    pub fn unacknowledged(&self, policy: &Policy, wall: WallTime) -> Vec<Finding> {
        if self.folded.signed.is_some() {
            return vec![];
        }
        let mut findings = self.judged(policy, wall).findings;
        findings.retain(|it| {
            it.level == Level::MedicalReviewNow
                && !self.folded.acknowledged.iter().any(|of| of.rule == it.rule)
        });
        findings
    }

    /// As [`Self::unacknowledged`], for what is drawn with every touch: judged anew when more was told
    /// than a tap, and each minute.
    pub fn reviews(&self, policy: &Policy, wall: WallTime) -> Rc<[Finding]> {
        let minute = wall.utc_ms().div_euclid(MINUTE_MS);
        let mut reviews = self.reviews.borrow_mut();
        match &*reviews {
            Some(it) if it.told == self.told && it.minute == minute => Rc::clone(&it.findings),
            _ => {
                let findings: Rc<[Finding]> = self.unacknowledged(policy, wall).into();
                *reviews = Some(Reviews {
                    told: self.told,
                    minute,
                    findings: Rc::clone(&findings),
                });
                findings
            }
        }
    }

    /// The answers about the last 24 hours so far.
    pub fn last_day(&self) -> LastDay {
        self.folded.last_day.clone().unwrap_or_default()
    }

    /// Whether everything is on disk.
    pub fn is_all_safe(&self) -> bool {
        self.visit.journal.next_seq() - 1 <= self.safe_seq
    }
}

/// The rhythm of one feed, with the doubt for touches that could not be resolved.
pub fn summary_of(feed: &Feed) -> Summary {
    let mut rhythm = Rhythm::new();
    for tap in &feed.taps {
        rhythm.push(*tap);
    }
    rhythm.note_unresolved(feed.unresolved_touches);
    for moved in &feed.boundaries {
        rhythm.note_boundary(*moved);
    }
    rhythm.so_far()
}
