//! The frozen list of rules of today: what each finding says beside its numbers' values. Position
//! in the file is the number by which a rule travels.
//!
//! A line is one shape: id, level, source, call, numbers with their units, what is tried, what is
//! agreed; `-` for none. The list belongs to wire version 2 like the words: once records are out,
//! lines are only added. A finding that is not exactly a shape of this list travels in full, so
//! that a newer rule can be written before the list knows it. Knows nothing of what a rule means.

use std::collections::HashMap;
use std::sync::OnceLock;

const LIST: &str = include_str!("rules_2.txt");

/// What every finding of a rule has in common.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shape {
    /// The rule's id.
    pub rule: &'static str,
    /// The level's stored word.
    pub level: &'static str,
    /// The source's id.
    pub source: &'static str,
    /// Whom to call.
    pub call: &'static str,
    /// The numbers' names and units.
    pub numbers: Vec<(&'static str, &'static str)>,
    /// What is usually tried.
    pub tries: Vec<&'static str>,
    /// What is usually agreed.
    pub plan: Vec<&'static str>,
}

fn many(field: &'static str) -> Vec<&'static str> {
    field.split(',').filter(|it| *it != "-").collect()
}

impl Shape {
    fn of(line: &'static str) -> Option<Self> {
        let mut fields = line.split_whitespace();
        let mut next = || fields.next();
        Some(Self {
            rule: next()?,
            level: next()?,
            source: next()?,
            call: next()?,
            numbers: many(next()?)
                .into_iter()
                .filter_map(|it| it.split_once(':'))
                .collect(),
            tries: many(next()?),
            plan: many(next()?),
        })
    }

    /// The line of the list that stands for this shape.
    pub fn line(&self) -> String {
        let joined = |all: &[&str]| {
            if all.is_empty() {
                "-".to_owned()
            } else {
                all.join(",")
            }
        };
        let numbers = self.numbers.iter();
        let numbers: Vec<String> = numbers
            .map(|(name, unit)| format!("{name}:{unit}"))
            .collect();
        let numbers: Vec<&str> = numbers.iter().map(String::as_str).collect();
        [
            self.rule,
            self.level,
            self.source,
            self.call,
            &joined(&numbers),
            &joined(&self.tries),
            &joined(&self.plan),
        ]
        .join(" ")
    }
}

/// All shapes in their order.
pub fn all() -> &'static [Shape] {
    static ALL: OnceLock<Vec<Shape>> = OnceLock::new();
    ALL.get_or_init(|| LIST.lines().filter_map(Shape::of).collect())
}

/// The shape of a number.
pub fn shape(number: usize) -> Option<&'static Shape> {
    all().get(number)
}

/// The first number of a rule.
pub fn first_number(rule: &str) -> Option<usize> {
    of_rule(rule).last().map(|(number, _)| number)
}

/// The shapes of a rule with their numbers, the newest first.
pub fn of_rule(rule: &str) -> impl Iterator<Item = (usize, &'static Shape)> {
    static NUMBERS: OnceLock<HashMap<&'static str, Vec<usize>>> = OnceLock::new();
    let numbers = NUMBERS.get_or_init(|| {
        let mut numbers = HashMap::<_, Vec<usize>>::new();
        for (number, shape) in all().iter().enumerate() {
            numbers.entry(shape.rule).or_default().push(number);
        }
        numbers
    });
    let numbers = numbers.get(rule).map_or(&[][..], Vec::as_slice);
    numbers
        .iter()
        .rev()
        .map(|number| (*number, &all()[*number]))
}
