//! A rule as data: what it is called, how grave it is, where it comes from, what is usually done,
//! and the function that judges it.

use super::scene::Scene;
use super::{CallWhom, Finding, Level, Limit, Missing, Number, Unit};
use crate::record::{Adjustment, Coded, PlanWhat};

/// What a rule says of a visit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Verdict {
    /// It holds, with its numbers in the order that the rule names them.
    Held(Vec<i64>),
    /// It was judged and does not hold.
    NotHeld,
    /// It could not be judged.
    Lacks(Vec<Missing>),
    /// It is not for this baby, age or visit.
    NotForThis,
}

/// A rule of the catalogue.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its id; messages `finding-<id>` and `finding-<id>-reason`.
    pub id: &'static str,
    /// How much it asks for when it holds.
    pub level: Level,
    /// Where it comes from: message `source-<id>`.
    pub source: &'static str,
    /// The numbers that it shows: name and unit.
    pub numbers: &'static [(&'static str, Unit)],
    /// What is usually tried at the breast.
    pub tries: &'static [Adjustment],
    /// What is usually agreed.
    pub plan: &'static [PlanWhat],
    /// Whom to call.
    pub call: CallWhom,
    /// The ward's thresholds that it uses.
    pub limits: &'static [Limit],
    /// The version of the rules in which it last changed.
    pub changed: &'static str,
    pub(super) judge: fn(&Scene<'_>) -> Verdict,
}

impl Rule {
    /// A rule with no numbers, nothing to try or agree, and nobody to call.
    pub(super) const fn new(
        id: &'static str,
        level: Level,
        source: &'static str,
        judge: fn(&Scene<'_>) -> Verdict,
    ) -> Self {
        Self {
            id,
            level,
            source,
            numbers: &[],
            tries: &[],
            plan: &[],
            call: CallWhom::Nobody,
            limits: &[],
            changed: "findings-1",
            judge,
        }
    }

    pub(super) const fn shows(mut self, numbers: &'static [(&'static str, Unit)]) -> Self {
        self.numbers = numbers;
        self
    }

    pub(super) const fn tries(mut self, tries: &'static [Adjustment]) -> Self {
        self.tries = tries;
        self
    }

    pub(super) const fn plans(mut self, plan: &'static [PlanWhat]) -> Self {
        self.plan = plan;
        self
    }

    pub(super) const fn calls(mut self, call: CallWhom) -> Self {
        self.call = call;
        self
    }

    pub(super) const fn limits(mut self, limits: &'static [Limit]) -> Self {
        self.limits = limits;
        self
    }

    pub(super) const fn changed(mut self, version: &'static str) -> Self {
        self.changed = version;
        self
    }

    /// The finding of this rule with its numbers' values.
    pub(super) fn finding(&self, values: &[i64]) -> Finding {
        debug_assert_eq!(self.numbers.len(), values.len(), "numbers of {}", self.id);
        Finding {
            rule: self.id.to_owned(),
            level: self.level,
            numbers: self
                .numbers
                .iter()
                .zip(values)
                .map(|((name, unit), value)| Number::new(name, *value, *unit))
                .collect(),
            source: self.source.to_owned(),
            tries: self.tries.iter().map(|it| Coded::Known(*it)).collect(),
            plan: self.plan.iter().map(|it| Coded::Known(*it)).collect(),
            call: self.call,
        }
    }
}
