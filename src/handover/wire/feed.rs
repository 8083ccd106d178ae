//! The table of one feed on the wire: columns, so that what is alike stands together.
//!
//! A run's length travels as its distance from what its sucks foretell. Times travel in the largest of three units that divides them all. Phases mostly end where a run begins or ends; such an end travels as the count of run edges
//! passed, others with their length.

use super::super::cbor::Item;
use super::super::limit::ROWS_MOST;
use super::super::stream::{Reader, Writer};
use super::super::{FeedTable, HandoverError, PhaseRow, RateRow, RunRow};
use super::field::{list, words};
use crate::record::At;

/// Milliseconds of the units that times may travel in.
const UNITS_MS: [u64; 3] = [100, 10, 1];

/// In the column of ends: the length follows in a column of its own.
const LENGTH_FOLLOWS: u64 = 0;

pub(super) fn to_wire(table: &FeedTable) -> Item {
    let FeedTable {
        watched_ms,
        sucks,
        swallows,
        first_flow,
        phases,
        runs,
        rates,
        doubts,
    } = table;
    let mut vocabulary: Vec<&str> = Vec::new();
    let named = phases.iter().map(|row| Some(row.phase.as_str()));
    for name in named
        .chain(rates.iter().map(|row| row.phase.as_deref()))
        .flatten()
    {
        if !vocabulary.contains(&name) {
            vocabulary.push(name);
        }
    }
    let times = phases.iter().flat_map(|row| [row.from, row.to]);
    let times = times.chain(runs.iter().flat_map(|row| [row.from, row.to]));
    let unit_ms = unit_of(times);
    let mut head = Writer::default();
    head.number(unit_ms);
    head.number(*watched_ms);
    head.number((*sucks).into());
    head.number((*swallows).into());
    head.number(first_flow.map_or(0, |at| at.as_ms().saturating_add(1)));
    list([
        Item::Bytes(head.finish()),
        Item::Bytes(put_runs(runs, unit_ms)),
        words(vocabulary.iter().copied()),
        Item::Bytes(put_phases(phases, runs, &vocabulary, unit_ms)),
        Item::Bytes(put_rates(rates, &vocabulary)),
        words(doubts.iter().map(String::as_str)),
    ])
}

pub(super) fn of_wire(item: Item) -> Result<FeedTable, HandoverError> {
    let [head, runs, vocabulary, phases, rates, doubts] = item.array()?;
    let vocabulary = vocabulary.each(Item::word)?;
    let head = head.bytes()?;
    let mut head = Reader::new(&head);
    let unit_ms = head.number()?;
    if !UNITS_MS.contains(&unit_ms) {
        return Err(HandoverError::NotReadable);
    }
    let runs = take_runs(&runs.bytes()?, unit_ms)?;
    let table = FeedTable {
        watched_ms: head.number()?,
        sucks: head.small()?,
        swallows: head.small()?,
        first_flow: head.number()?.checked_sub(1).map(At::ms),
        phases: take_phases(&phases.bytes()?, &runs, &vocabulary, unit_ms)?,
        runs,
        rates: take_rates(&rates.bytes()?, &vocabulary)?,
        doubts: doubts.each(Item::word)?,
    };
    head.end()?;
    Ok(table)
}

fn unit_of(times: impl Iterator<Item = At> + Clone) -> u64 {
    UNITS_MS
        .into_iter()
        .find(|unit_ms| times.clone().all(|at| at.as_ms() % unit_ms == 0))
        .unwrap_or(1)
}

/// Units from one time to another, both whole.
fn step(from: At, to: At, unit_ms: u64) -> i64 {
    (to.as_ms() / unit_ms).wrapping_sub(from.as_ms() / unit_ms) as i64
}

fn stepped(from: At, step: i64, unit_ms: u64) -> At {
    let units = (from.as_ms() / unit_ms).wrapping_add(step as u64);
    At::ms(units.wrapping_mul(unit_ms))
}

/// The mean units of one suck over all runs, from which a run's length is foretold.
fn mean_units(runs: &[RunRow], unit_ms: u64) -> u64 {
    let units: i64 = runs
        .iter()
        .map(|row| step(row.from, row.to, unit_ms))
        .fold(0, i64::saturating_add);
    let sucks: i64 = runs.iter().map(|row| i64::from(row.sucks)).sum();
    u64::try_from(units / sucks.max(1)).unwrap_or(0)
}

fn foretold(sucks: u32, mean_units: u64) -> i64 {
    u64::from(sucks).wrapping_mul(mean_units) as i64
}

fn put_runs(runs: &[RunRow], unit_ms: u64) -> Vec<u8> {
    let mean_units = mean_units(runs, unit_ms);
    let mut writer = Writer::default();
    writer.number(runs.len() as u64);
    writer.number(mean_units);
    let mut last = At::START;
    for row in runs {
        writer.signed(step(last, row.from, unit_ms));
        last = row.to;
    }
    for row in runs {
        writer.number(row.sucks.into());
    }
    for RunRow {
        from,
        to,
        sucks,
        swallows: _,
    } in runs
    {
        let length = step(*from, *to, unit_ms);
        writer.signed(length.wrapping_sub(foretold(*sucks, mean_units)));
    }
    for row in runs {
        writer.number(row.swallows.into());
    }
    writer.finish()
}

fn take_runs(bytes: &[u8], unit_ms: u64) -> Result<Vec<RunRow>, HandoverError> {
    let mut reader = Reader::new(bytes);
    let count = reader.count(ROWS_MOST)?;
    let mean_units = reader.number()?;
    let starts = signed_column(&mut reader, count)?;
    let sucks = (0..count)
        .map(|_| reader.small::<u32>())
        .collect::<Result<Vec<_>, _>>()?;
    let lengths = signed_column(&mut reader, count)?;
    let mut last = At::START;
    let mut runs = Vec::new();
    for ((start, sucks), length) in starts.into_iter().zip(sucks).zip(lengths) {
        let from = stepped(last, start, unit_ms);
        let length = length.wrapping_add(foretold(sucks, mean_units));
        last = stepped(from, length, unit_ms);
        runs.push(RunRow {
            from,
            to: last,
            sucks,
            swallows: reader.small()?,
        });
    }
    reader.end()?;
    Ok(runs)
}

fn signed_column(reader: &mut Reader<'_>, count: u64) -> Result<Vec<i64>, HandoverError> {
    (0..count).map(|_| reader.signed()).collect()
}

/// All beginnings and ends of runs, rising.
fn edges(runs: &[RunRow]) -> Vec<At> {
    let mut edges: Vec<At> = runs.iter().flat_map(|row| [row.from, row.to]).collect();
    edges.sort_unstable();
    edges.dedup();
    edges
}

/// The place of the first edge after a time.
fn next_edge(edges: &[At], from: At) -> usize {
    edges.partition_point(|edge| *edge <= from)
}

fn put_phases(phases: &[PhaseRow], runs: &[RunRow], vocabulary: &[&str], unit_ms: u64) -> Vec<u8> {
    let edges = edges(runs);
    let (mut ends, mut lengths) = (Writer::default(), Writer::default());
    let mut writer = Writer::default();
    writer.number(phases.len() as u64);
    let mut last = At::START;
    for PhaseRow {
        from,
        to,
        phase: _,
        percent: _,
    } in phases
    {
        writer.signed(step(last, *from, unit_ms));
        let next = next_edge(&edges, *from);
        match edges.binary_search(to) {
            Ok(place) if next <= place => ends.number((place - next) as u64 + 1),
            _ => {
                ends.number(LENGTH_FOLLOWS);
                lengths.signed(step(*from, *to, unit_ms));
            }
        }
        last = *to;
    }
    for row in phases {
        writer.number(place(vocabulary, &row.phase));
    }
    for row in phases {
        writer.number(row.percent.into());
    }
    let mut bytes = writer.finish();
    bytes.extend(ends.finish());
    bytes.extend(lengths.finish());
    bytes
}

fn take_phases(
    bytes: &[u8],
    runs: &[RunRow],
    vocabulary: &[String],
    unit_ms: u64,
) -> Result<Vec<PhaseRow>, HandoverError> {
    let edges = edges(runs);
    let mut reader = Reader::new(bytes);
    let count = reader.count(ROWS_MOST)?;
    let starts = signed_column(&mut reader, count)?;
    let names = (0..count)
        .map(|_| name(vocabulary, reader.number()?))
        .collect::<Result<Vec<_>, _>>()?;
    let percents = (0..count)
        .map(|_| reader.small::<u8>())
        .collect::<Result<Vec<_>, _>>()?;
    if percents.iter().any(|percent| 100 < *percent) {
        return Err(HandoverError::NotReadable);
    }
    let ends = (0..count)
        .map(|_| reader.number())
        .collect::<Result<Vec<_>, _>>()?;
    let mut last = At::START;
    let mut phases = Vec::new();
    for (((start, phase), percent), end) in starts.into_iter().zip(names).zip(percents).zip(ends) {
        let from = stepped(last, start, unit_ms);
        last = match end {
            LENGTH_FOLLOWS => stepped(from, reader.signed()?, unit_ms),
            passed => usize::try_from(passed - 1)
                .ok()
                .and_then(|passed| next_edge(&edges, from).checked_add(passed))
                .and_then(|place| edges.get(place))
                .copied()
                .ok_or(HandoverError::NotReadable)?,
        };
        phases.push(PhaseRow {
            from,
            to: last,
            phase,
            percent,
        });
    }
    reader.end()?;
    Ok(phases)
}

fn put_rates(rates: &[RateRow], vocabulary: &[&str]) -> Vec<u8> {
    let mut writer = Writer::default();
    writer.number(rates.len() as u64);
    for RateRow {
        phase,
        per_min,
        hundredths: [value, low, high],
    } in rates
    {
        let place = phase
            .as_deref()
            .map_or(0, |phase| place(vocabulary, phase) + 1);
        writer.number(place << 1 | u64::from(*per_min));
        writer.number((*value).into());
        writer.signed(i64::from(*value) - i64::from(*low));
        writer.signed(i64::from(*high) - i64::from(*value));
    }
    writer.finish()
}

fn take_rates(bytes: &[u8], vocabulary: &[String]) -> Result<Vec<RateRow>, HandoverError> {
    let mut reader = Reader::new(bytes);
    let count = reader.count(ROWS_MOST)?;
    let rates = (0..count)
        .map(|_| {
            let head = reader.number()?;
            let value: u32 = reader.small()?;
            let below = reader.signed()?;
            let above = reader.signed()?;
            let near = |step: Option<i64>| {
                step.and_then(|value| u32::try_from(value).ok())
                    .ok_or(HandoverError::NotReadable)
            };
            Ok(RateRow {
                phase: (head >> 1)
                    .checked_sub(1)
                    .map(|place| name(vocabulary, place))
                    .transpose()?,
                per_min: head & 1 == 1,
                hundredths: [
                    value,
                    near(i64::from(value).checked_sub(below))?,
                    near(i64::from(value).checked_add(above))?,
                ],
            })
        })
        .collect::<Result<_, HandoverError>>()?;
    reader.end()?;
    Ok(rates)
}

fn place(vocabulary: &[&str], name: &str) -> u64 {
    vocabulary
        .iter()
        .position(|it| *it == name)
        .unwrap_or_default() as u64
}

fn name(vocabulary: &[String], place: u64) -> Result<String, HandoverError> {
    usize::try_from(place)
        .ok()
        .and_then(|place| vocabulary.get(place))
        .cloned()
        .ok_or(HandoverError::NotReadable)
}
