//! The facts as observations: what was seen, asked, measured and computed, each with its code, time,
//! subject, value and parts. FHIR and HL7 version 2 are written from this one list.
//!
//! What is unknown says why (`Why`); no absence means "no". The mother's pain, nipple and breast
//! have the mother as subject. Knows neither format.

mod feed;
mod findings;
mod seen;

use std::collections::HashSet;

use super::Facts;
use crate::record::WallTime;

/// Why there is no value. The words are those of the HL7 code system data-absent-reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Why {
    /// Nobody asked.
    NotAsked,
    /// Nobody looked.
    NotPerformed,
    /// The one who was asked could not say.
    AskedUnknown,
    /// The record does not tell.
    Unknown,
    /// There can be no value.
    NotApplicable,
    /// What was sent before was wrong.
    Error,
}

impl Why {
    pub const fn as_word(self) -> &'static str {
        match self {
            Self::NotAsked => "not-asked",
            Self::NotPerformed => "not-performed",
            Self::AskedUnknown => "asked-unknown",
            Self::Unknown => "unknown",
            Self::NotApplicable => "not-applicable",
            Self::Error => "error",
        }
    }
}

/// A value as observations carry it.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum X {
    /// A number as it is written, in a UCUM unit.
    Quantity(String, &'static str),
    /// A code of ours.
    Coded(String),
    Yes(bool),
    Text(String),
    Time(WallTime),
    Absent(Why),
    /// Absent, with what was missing.
    AbsentFor(Why, String),
}

impl X {
    /// A whole number in a UCUM unit.
    pub fn count(value: impl Into<u64>, unit: &'static str) -> Self {
        Self::Quantity(value.into().to_string(), unit)
    }

    /// A number in a UCUM unit, rounded to so many decimals.
    pub fn decimal(value: f64, decimals: usize, unit: &'static str) -> Self {
        let text = format!("{value:.decimals$}");
        // What is rounded to nought has no sign.
        let is_nought = !text.contains(|sign: char| ('1'..='9').contains(&sign));
        let text = if is_nought {
            text.trim_start_matches('-').to_owned()
        } else {
            text
        };
        Self::Quantity(text, unit)
    }

    /// A value, or the reason why there is none.
    pub fn or_absent<T>(value: Option<T>, absent: Why, as_x: impl FnOnce(T) -> Self) -> Self {
        value.map_or(Self::Absent(absent), as_x)
    }
}

/// A message-like code of ours from a stored word: `seen`, `not_seen` to `sign-state-not-seen`.
pub(super) fn ours(thing: &str, word: &str) -> String {
    format!("{thing}-{}", word.replace('_', "-"))
}

/// When something was observed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum When {
    At(WallTime),
    /// From, and to unless it goes on.
    Over(WallTime, Option<WallTime>),
}

/// One observation.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Observation {
    /// Its name within the visit: the same in an amendment.
    pub key: String,
    /// Our code.
    pub code: String,
    /// A code of the HL7 code system observation-category.
    pub category: &'static str,
    /// Whether the mother is its subject; otherwise the baby.
    pub of_mother: bool,
    /// Shared by all visits of the pair: of birth, not of the visit.
    pub of_birth: bool,
    pub when: When,
    pub value: Option<X>,
    /// Codes and values of its parts.
    pub parts: Vec<(String, X)>,
    /// Our code of the side of the body.
    pub side: Option<String>,
    /// Whether it was counted with taps on the tablet.
    pub by_hand: bool,
    /// Keys of what it was computed from.
    pub from: Vec<String>,
    /// Whether the caution has to stand beside it.
    pub caution: bool,
    /// Whether it only says that what was sent before was wrong.
    pub is_wrong: bool,
}

/// All observations of one visit.
pub(super) struct Observed<'a> {
    pub facts: &'a Facts,
    pub all: Vec<Observation>,
    keys: HashSet<String>,
}

impl<'a> Observed<'a> {
    /// Lists what the facts hold.
    pub fn of(facts: &'a Facts) -> Self {
        let mut all = Self {
            facts,
            all: Vec::new(),
            keys: HashSet::new(),
        };
        seen::add(&mut all);
        feed::add(&mut all);
        findings::add(&mut all);
        all
    }

    /// Whether it puts itself over what was sent before.
    const fn is_amendment(&self) -> bool {
        self.facts.replaces.is_some()
    }

    /// Starts an observation about the baby, of category `exam`.
    fn observation(&self, key: &str, code: &str) -> Observation {
        Observation {
            key: key.to_owned(),
            code: code.to_owned(),
            category: "exam",
            of_mother: false,
            of_birth: false,
            when: When::At(self.facts.began),
            value: None,
            parts: Vec::new(),
            side: None,
            by_hand: false,
            from: Vec::new(),
            caution: false,
            is_wrong: false,
        }
    }

    /// Adds an observation; two of the same key get different ones. Gives the key it got.
    fn observe(&mut self, mut observation: Observation) -> String {
        let mut key = observation.key.clone();
        let mut again = 2;
        while self.keys.contains(&key) {
            key = format!("{} {again}", observation.key);
            again += 1;
        }
        self.keys.insert(key.clone());
        observation.key.clone_from(&key);
        self.all.push(observation);
        key
    }

    /// Says of an observation that may have been sent before that it was wrong.
    fn take_back(&mut self, key: &str, code: &str, of_mother: bool) {
        if self.keys.contains(key) {
            return;
        }
        let mut observation = self.observation(key, code).value(X::Absent(Why::Error));
        observation.of_mother = of_mother;
        observation.is_wrong = true;
        self.observe(observation);
    }
}

impl Observation {
    /// About the mother, seen at the feeding of the baby.
    fn of_mother(mut self) -> Self {
        self.of_mother = true;
        self
    }

    /// Of birth: shared by all visits of the pair, not of this one.
    fn of_birth(mut self, birth: WallTime) -> Self {
        self.of_birth = true;
        self.at(birth)
    }

    const fn category(mut self, code: &'static str) -> Self {
        self.category = code;
        self
    }

    fn at(mut self, wall: WallTime) -> Self {
        self.when = When::At(wall);
        self
    }

    fn over(mut self, from: WallTime, to: Option<WallTime>) -> Self {
        self.when = When::Over(from, to);
        self
    }

    fn value(mut self, value: X) -> Self {
        self.value = Some(value);
        self
    }

    fn side(mut self, code: String) -> Self {
        self.side = Some(code);
        self
    }

    fn from(mut self, keys: Vec<String>) -> Self {
        self.from = keys;
        self
    }

    /// Adds a part.
    fn part(&mut self, code: &str, value: X) {
        self.parts.push((code.to_owned(), value));
    }
}
