//! Findings on the wire, and the rules that could not be judged.
//!
//! A finding travels as the number of its rule in the frozen list and its numbers' values. One
//! that differs from its rule there, or whose rule the list does not know, travels in full.

use super::super::cbor::Item;
use super::super::limit::ROWS_MOST;
use super::super::shapes::{self, Shape};
use super::super::{FindingRow, HandoverError, NumberRow};
use super::field::{ints, list, word, words};
use crate::record::{Coded, StoredWord};

/// In the column of rules: the finding travels in full.
const IN_FULL: i64 = -1;

fn are<T: StoredWord>(coded: &[Coded<T>], words: &[&str]) -> bool {
    coded.iter().map(Coded::word).eq(words.iter().copied())
}

fn is_of(finding: &FindingRow, shape: &Shape) -> bool {
    let numbers = finding.numbers.iter();
    finding.level == shape.level
        && finding.source == shape.source
        && finding.call == shape.call
        && numbers
            .map(|row| (row.name.as_str(), row.unit.as_str()))
            .eq(shape.numbers.iter().copied())
        && are(&finding.tries, &shape.tries)
        && are(&finding.plan, &shape.plan)
}

/// Columns: rules, values, and what travels in full.
pub(super) fn to_wire(findings: &[FindingRow]) -> Item {
    let (mut rules, mut values, mut full) = (Vec::new(), Vec::new(), Vec::new());
    for finding in findings {
        match shapes::of_rule(&finding.rule).find(|(_, shape)| is_of(finding, shape)) {
            Some((number, _)) => {
                rules.push(number as i64);
                values.push(match finding.numbers.as_slice() {
                    [] => Item::Null,
                    rows => ints(rows.iter().map(|row| row.value)),
                });
            }
            None => {
                rules.push(IN_FULL);
                values.push(Item::Null);
                full.push(in_full(finding));
            }
        }
    }
    list([ints(rules), Item::List(values), Item::List(full)])
}

pub(super) fn of_wire(item: Item) -> Result<Vec<FindingRow>, HandoverError> {
    let [rules, values, full] = item.array()?;
    let (rules, values) = (rules.ints()?, values.list()?);
    if rules.len() != values.len() {
        return Err(HandoverError::NotReadable);
    }
    if ROWS_MOST < rules.len() as u64 {
        return Err(HandoverError::TooLarge);
    }
    let mut full = full.list()?.into_iter();
    let findings = rules
        .into_iter()
        .zip(values)
        .map(|(rule, values)| match (rule, values) {
            (IN_FULL, Item::Null) => of_full(full.next().ok_or(HandoverError::NotReadable)?),
            (rule, values) => of_shape(number(rule)?, values),
        })
        .collect::<Result<Vec<_>, _>>()?;
    match full.next() {
        None => Ok(findings),
        Some(_) => Err(HandoverError::NotReadable),
    }
}

fn number(rule: i64) -> Result<&'static Shape, HandoverError> {
    usize::try_from(rule)
        .ok()
        .and_then(shapes::shape)
        .ok_or(HandoverError::NotReadable)
}

fn of_shape(shape: &Shape, values: Item) -> Result<FindingRow, HandoverError> {
    let values = match values {
        Item::Null => Vec::new(),
        values => values.column(shape.numbers.len())?,
    };
    if values.len() != shape.numbers.len() {
        return Err(HandoverError::NotReadable);
    }
    let numbers = shape.numbers.iter().zip(values);
    Ok(FindingRow {
        rule: shape.rule.to_owned(),
        level: shape.level.to_owned(),
        numbers: numbers
            .map(|((name, unit), value)| NumberRow {
                name: (*name).to_owned(),
                value,
                unit: (*unit).to_owned(),
            })
            .collect(),
        source: shape.source.to_owned(),
        tries: shape.tries.iter().map(|it| Coded::of_word(it)).collect(),
        plan: shape.plan.iter().map(|it| Coded::of_word(it)).collect(),
        call: shape.call.to_owned(),
    })
}

fn in_full(finding: &FindingRow) -> Item {
    let FindingRow {
        rule,
        level,
        numbers,
        source,
        tries,
        plan,
        call,
    } = finding;
    let numbers = numbers.iter().map(|row| {
        let NumberRow { name, value, unit } = row;
        list([word(name), Item::Int(*value), word(unit)])
    });
    list([
        word(rule),
        word(level),
        list(numbers),
        word(source),
        words(tries.iter().map(Coded::word)),
        words(plan.iter().map(Coded::word)),
        word(call),
    ])
}

fn of_full(item: Item) -> Result<FindingRow, HandoverError> {
    let [rule, level, numbers, source, tries, plan, call] = item.array()?;
    Ok(FindingRow {
        rule: rule.word()?,
        level: level.word()?,
        numbers: numbers.each(|row| {
            let [name, value, unit] = row.array()?;
            Ok(NumberRow {
                name: name.word()?,
                value: value.int()?,
                unit: unit.word()?,
            })
        })?,
        source: source.word()?,
        tries: tries.each(Item::coded)?,
        plan: plan.each(Item::coded)?,
        call: call.word()?,
    })
}

/// Rules that could not be judged: a map by the rules' numbers where these go up, as they do for
/// rules of the list; otherwise rows. What one rule lacks is one word, or a list.
pub(super) fn unjudged_to_wire(unjudged: &[(String, Vec<String>)]) -> Item {
    let numbers = unjudged
        .iter()
        .map(|(rule, _)| Some(shapes::first_number(rule)? as i64));
    let numbers: Option<Vec<i64>> = numbers.collect();
    let lacks = |missing: &[String]| match missing {
        [one] => word(one),
        all => words(all.iter().map(String::as_str)),
    };
    match numbers.filter(|numbers| numbers.is_sorted_by(|a, b| a < b)) {
        Some(numbers) => Item::Map(
            numbers
                .into_iter()
                .zip(unjudged)
                .map(|(number, (_, missing))| (Item::Int(number), lacks(missing)))
                .collect(),
        ),
        None => list(
            unjudged
                .iter()
                .map(|(rule, missing)| list([word(rule), lacks(missing)])),
        ),
    }
}

pub(super) fn unjudged_of_wire(item: Item) -> Result<Vec<(String, Vec<String>)>, HandoverError> {
    let lacks = |item: Item| match item {
        Item::List(words) => words.into_iter().map(Item::word).collect(),
        one => Ok(vec![one.word()?]),
    };
    match item {
        Item::Map(pairs) => pairs
            .into_iter()
            .map(|(rule, missing)| {
                let shape = number(rule.int()?)?;
                Ok((shape.rule.to_owned(), lacks(missing)?))
            })
            .collect(),
        rows => rows.each(|row| {
            let [rule, missing] = row.array()?;
            Ok((rule.word()?, lacks(missing)?))
        }),
    }
}
