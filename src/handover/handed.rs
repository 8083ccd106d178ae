//! What is handed over, as checked values: the pair, the visit, and the numbers computed from it,
//! each with the version of the rule that made it.
//!
//! Computed numbers are plain rows here: this room knows no rhythm and no rules.

use std::collections::BTreeSet;

use super::shapes;
use crate::record::{At, Coded, Entry, Journal, Pair, PolicyMark, RecordError, Visit, WallTime};

/// One phase of a feed as computed on the tablet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhaseRow {
    /// Start.
    pub from: At,
    /// End.
    pub to: At,
    /// The phase's stored word.
    pub phase: String,
    /// Probability in whole per cent, 0 to 100.
    pub percent: u8,
}

/// One run of a feed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunRow {
    /// First suck.
    pub from: At,
    /// Just after the last.
    pub to: At,
    /// Jaw movements.
    pub sucks: u32,
    /// Swallows.
    pub swallows: u32,
}

/// One rate with its 95 % interval, in hundredths.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RateRow {
    /// The phase's stored word; `None` for the whole feed.
    pub phase: Option<String>,
    /// True for sucks per minute, false for sucks per swallow.
    pub per_min: bool,
    /// Value, low, high, each times 100 and rounded.
    pub hundredths: [u32; 3],
}

/// The table of one feed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FeedTable {
    /// Time watched.
    pub watched_ms: u64,
    /// Jaw movements.
    pub sucks: u32,
    /// Swallows.
    pub swallows: u32,
    /// First flow.
    pub first_flow: Option<At>,
    /// Phases in order.
    pub phases: Vec<PhaseRow>,
    /// Runs in order.
    pub runs: Vec<RunRow>,
    /// Rates.
    pub rates: Vec<RateRow>,
    /// Doubts, as stored words.
    pub doubts: Vec<String>,
}

/// One number of a finding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NumberRow {
    /// Its name.
    pub name: String,
    /// Its value.
    pub value: i64,
    /// Its unit's stored word.
    pub unit: String,
}

/// One finding as computed on the tablet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FindingRow {
    /// The rule's id.
    pub rule: String,
    /// The level's stored word.
    pub level: String,
    /// The numbers it used.
    pub numbers: Vec<NumberRow>,
    /// The source's id.
    pub source: String,
    /// What is usually tried, as stored words.
    pub tries: Vec<Coded<crate::record::Adjustment>>,
    /// What is usually agreed, as stored words.
    pub plan: Vec<Coded<crate::record::PlanWhat>>,
    /// Whom to call, as a stored word.
    pub call: String,
}

/// Everything that goes to the desk.
#[derive(Debug, Clone, PartialEq)]
pub struct Handed {
    /// Whom it is about.
    pub pair: Pair,
    /// The visit with its journal. Without single taps when `taps` is false.
    pub visit: Visit,
    /// Whether the journal holds the single taps.
    pub taps: bool,
    /// One table for each feed of the visit, in order.
    pub feeds: Vec<FeedTable>,
    /// The findings, gravest first.
    pub findings: Vec<FindingRow>,
    /// Rules that could not be judged: id and what was missing.
    pub unjudged: Vec<(String, Vec<String>)>,
    /// The ward policy that judged it.
    pub policy: PolicyMark,
    /// The versions of the rules: rhythm, growth, findings.
    pub rule_versions: [String; 3],
}

/// What numbers are rounded to in a record without single taps: finer than a hand and an eye can
/// tell, and half to scan. Times of entries.
const ENTRY_STEP_MS: u64 = 1_000;
/// Times of all entries and tables in a record with single taps: a hand is unsteady by 30 to 60 ms,
/// and a touch is told to about 10.
const TAP_STEP_MS: u64 = 10;
/// Times of runs and phases.
const TABLE_STEP_MS: u64 = 200;
/// Probabilities of phases, in per cent.
const PERCENT_STEP: u8 = 5;
/// Rates a minute, in hundredths: whole sucks.
const PER_MIN_STEP: u32 = 100;
/// Sucks a swallow, in hundredths: tenths.
const PER_SWALLOW_STEP: u32 = 10;
/// The two clocks are read one after the other; a difference so small between them says nothing.
const CLOCKS_APART_MS: u64 = 50;

fn rounded(at: At, step_ms: u64) -> At {
    At::ms(at.as_ms().saturating_add(step_ms / 2) / step_ms * step_ms)
}

impl FeedTable {
    /// The same table with its times rounded as those of taps are. A run ends one millisecond
    /// behind its last suck, and stays so.
    fn rounded_with_taps(&self) -> Self {
        let ends: BTreeSet<At> = self.runs.iter().map(|row| row.to).collect();
        let round = |at: At| {
            if ends.contains(&at) {
                rounded(at.minus_ms(1), TAP_STEP_MS).plus_ms(1)
            } else {
                rounded(at, TAP_STEP_MS)
            }
        };
        let mut less = self.clone();
        less.first_flow = less.first_flow.map(round);
        for row in &mut less.phases {
            (row.from, row.to) = (round(row.from), round(row.to));
        }
        for row in &mut less.runs {
            (row.from, row.to) = (round(row.from), round(row.to));
        }
        less
    }

    /// The same table with its times, probabilities and rates rounded. Counts stay.
    fn rounded(&self) -> Self {
        let round = |at| rounded(at, TABLE_STEP_MS);
        let mut less = self.clone();
        less.watched_ms = round(At::ms(less.watched_ms)).as_ms();
        less.first_flow = less.first_flow.map(round);
        for row in &mut less.phases {
            (row.from, row.to) = (round(row.from), round(row.to));
            row.percent =
                row.percent.saturating_add(PERCENT_STEP / 2) / PERCENT_STEP * PERCENT_STEP;
        }
        for row in &mut less.runs {
            (row.from, row.to) = (round(row.from), round(row.to));
        }
        for row in &mut less.rates {
            let step = if row.per_min {
                PER_MIN_STEP
            } else {
                PER_SWALLOW_STEP
            };
            let round = |it: u32| it.saturating_add(step / 2) / step * step;
            row.hundredths = row.hundredths.map(round);
        }
        less
    }
}

/// Brings the wall times of entries to one distance from the visit's own clock, as long as they
/// are nearly there. A clock that was set in between stays told.
struct Walls {
    began: WallTime,
    apart_ms: i64,
    offset_min: i16,
}

impl Walls {
    const fn of(began: WallTime) -> Self {
        Self {
            began,
            apart_ms: 0,
            offset_min: began.offset_min(),
        }
    }

    fn settle(&mut self, entry: &mut Entry, at: At) -> Result<(), RecordError> {
        let own = |at: At| self.began.utc_ms().saturating_add_unsigned(at.as_ms());
        let apart_ms = entry.wall.utc_ms().saturating_sub(own(entry.at));
        if CLOCKS_APART_MS < apart_ms.abs_diff(self.apart_ms)
            || entry.wall.offset_min() != self.offset_min
        {
            (self.apart_ms, self.offset_min) = (apart_ms, entry.wall.offset_min());
        }
        let utc_ms = own(at).saturating_add(self.apart_ms);
        (entry.at, entry.wall) = (at, WallTime::new(utc_ms, self.offset_min)?);
        Ok(())
    }
}

impl Handed {
    /// What goes into the codes of this record: without the single taps unless they are wanted,
    /// and without what only tells of showing and receipts. Numbers stay. Differences between the
    /// two clocks that say nothing are taken out. With the taps, times are rounded to hundredths of
    /// a second; without, times of entries are rounded to
    /// seconds, those of runs and phases to fifths of a second, probabilities to fives and rates to
    /// whole sucks a minute: the whole clinical record, in the fewest codes. What could not be
    /// judged comes in the order of the list of rules: its own says nothing.
    ///
    /// # Errors
    /// Never for a journal that was checked.
    pub fn for_codes(&self, taps: bool) -> Result<Self, RecordError> {
        let mut walls = Walls::of(self.visit.began);
        let picked = self
            .visit
            .journal
            .entries()
            .iter()
            .filter(|entry| !entry.what.is_after_signing() && (taps || !entry.what.is_tap()))
            .map(|entry| {
                let mut entry = entry.clone();
                let at = rounded(entry.at, if taps { TAP_STEP_MS } else { ENTRY_STEP_MS });
                walls.settle(&mut entry, at)?;
                Ok(entry)
            })
            .collect::<Result<Vec<_>, RecordError>>()?;
        let mut less = self.clone();
        less.visit.journal = Journal::picked(picked)?;
        less.taps = taps && self.taps;
        less.feeds = self
            .feeds
            .iter()
            .map(|table| {
                if taps {
                    table.rounded_with_taps()
                } else {
                    table.rounded()
                }
            })
            .collect();
        // In the order of the list of rules, in which they travel in the fewest bytes.
        less.unjudged
            .sort_by_key(|(rule, _)| shapes::first_number(rule).unwrap_or(usize::MAX));
        Ok(less)
    }
}
