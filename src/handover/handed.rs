//! What is handed over, as checked values: the pair, the visit, and the numbers computed from it,
//! each with the version of the rule that made it.
//!
//! Computed numbers are plain rows here: this room knows no rhythm and no rules.

use crate::record::{At, Coded, Journal, Pair, PolicyMark, RecordError, Visit};

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

/// Times of tables in a record without single taps are rounded to this: what a hand and an eye can
/// tell, and a third less to scan.
const TABLE_STEP_MS: u64 = 100;

impl FeedTable {
    /// The same table with its times rounded to tenths of a second. Counts and rates stay.
    fn rounded(&self) -> Self {
        let round = |at: At| {
            At::ms(at.as_ms().saturating_add(TABLE_STEP_MS / 2) / TABLE_STEP_MS * TABLE_STEP_MS)
        };
        let mut rounded = self.clone();
        rounded.first_flow = rounded.first_flow.map(round);
        for row in &mut rounded.phases {
            (row.from, row.to) = (round(row.from), round(row.to));
        }
        for row in &mut rounded.runs {
            (row.from, row.to) = (round(row.from), round(row.to));
        }
        rounded
    }
}

impl Handed {
    /// The whole clinical record without the single taps, with the times of its tables rounded to
    /// tenths of a second: what fits the fewest codes. All other entries keep number and time.
    ///
    /// # Errors
    /// Never for a journal that was checked.
    pub fn without_taps(&self) -> Result<Self, RecordError> {
        let others = self
            .visit
            .journal
            .entries()
            .iter()
            .filter(|entry| !entry.what.is_tap());
        let mut less = self.clone();
        less.visit.journal = Journal::picked(others.cloned())?;
        less.taps = false;
        less.feeds = self.feeds.iter().map(FeedTable::rounded).collect();
        Ok(less)
    }
}
