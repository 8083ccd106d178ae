//! A finding on the wire.

use super::super::cbor::Item;
use super::super::{FindingRow, HandoverError, NumberRow};
use super::field::{list, word, words};
use crate::record::Coded;

pub(super) fn to_wire(finding: &FindingRow) -> Item {
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

pub(super) fn of_wire(item: Item) -> Result<FindingRow, HandoverError> {
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
