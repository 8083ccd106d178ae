//! The table of one feed on the wire: columns of whole numbers, so that what is alike stands
//! together, each number as its distance from what the ones before foretell.
//!
//! Times travel in the largest of six units that divides them all. With the single taps in the
//! record, a run travels as places among the jaw movements; without, as a rest and a length.
//! Phases mostly end where the next run begins or ends; others travel with their length.

use super::super::cbor::Item;
use super::super::limit::ROWS_MOST;
use super::super::{FeedTable, HandoverError, PhaseRow, RateRow, RunRow};
use super::field::{ints, list, word, words};
use crate::record::{At, Entry, What};

/// Milliseconds of the units that times may travel in.
const UNITS_MS: [u64; 6] = [1_000, 500, 200, 100, 10, 1];
/// Units of rates, in hundredths.
const RATE_UNITS: [u32; 3] = [100, 10, 1];

/// Where the first flow begins: nowhere, with the first phase of that name, or at a time.
const NO_FLOW: i64 = 0;
const FLOW_PHASE: i64 = 1;
const FLOW_TIME: i64 = 2;
const FLOW: &str = "flow";

/// How a phase ends: where it is foretold, or after a length.
const AS_FORETOLD: i64 = 0;
const AFTER_LENGTH: i64 = 1;

/// The jaw movements of a record, in order of their times.
pub(super) struct Jaws(Vec<(u64, bool)>);

impl Jaws {
    pub(super) fn of(entries: &[Entry]) -> Self {
        let mut jaws: Vec<(u64, bool)> = entries
            .iter()
            .filter_map(|entry| match entry.what {
                What::Suck => Some((entry.at.as_ms(), false)),
                What::SuckSwallow => Some((entry.at.as_ms(), true)),
                _ => None,
            })
            .collect();
        jaws.sort_by_key(|(at_ms, _)| *at_ms);
        Self(jaws)
    }

    /// The first one at a time or after it.
    fn place(&self, at_ms: u64) -> usize {
        self.0.partition_point(|(it, _)| *it < at_ms)
    }

    /// The time of the one at a place.
    fn at(&self, place: i64) -> Result<u64, HandoverError> {
        usize::try_from(place)
            .ok()
            .and_then(|place| self.0.get(place))
            .map(|(at_ms, _)| *at_ms)
            .ok_or(HandoverError::NotReadable)
    }

    fn swallows(&self, from: u64, to: u64) -> i64 {
        let within = self.0.get(self.place(from)..self.place(to)).unwrap_or(&[]);
        within.iter().filter(|(_, swallow)| *swallow).count() as i64
    }
}

pub(super) fn to_wire(table: &FeedTable, jaws: &Jaws) -> Item {
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
    let times = phases.iter().flat_map(|row| [row.from, row.to]);
    let times = times.chain(runs.iter().flat_map(|row| [row.from, row.to]));
    let unwatched_ms = phases_ms(phases).wrapping_sub(*watched_ms) as i64;
    let times = times.map(At::as_ms).chain([unwatched_ms.unsigned_abs()]);
    let unit_ms = unit_of(UNITS_MS, times);
    let flow_start = phases
        .iter()
        .find(|row| row.phase == FLOW)
        .map(|row| row.from);
    let flow = match first_flow {
        None => ints([NO_FLOW]),
        Some(at) if flow_start == Some(*at) => ints([FLOW_PHASE]),
        Some(at) => ints([FLOW_TIME, at.as_ms() as i64]),
    };
    let runs_item = by_jaw(runs, jaws).unwrap_or_else(|| by_length(runs, unit_ms));
    list([
        Item::Int(unit_ms as i64),
        runs_item,
        put_phases(phases, runs, unit_ms),
        flow,
        ints([
            i64::from(*sucks) - sum(runs, |row| row.sucks),
            i64::from(*swallows) - sum(runs, |row| row.swallows),
            unwatched_ms / unit_ms as i64,
        ]),
        put_rates(rates),
        words(doubts.iter().map(String::as_str)),
    ])
}

pub(super) fn of_wire(item: Item, jaws: &Jaws) -> Result<FeedTable, HandoverError> {
    let [unit, runs, phases, flow, counts, rates, doubts] = item.array()?;
    let unit_ms = unit.small()?;
    if !UNITS_MS.contains(&unit_ms) {
        return Err(HandoverError::NotReadable);
    }
    let runs = match runs.array()? {
        [Item::Bool(true), parts] => of_jaw(parts, jaws)?,
        [Item::Bool(false), parts] => of_length(parts, unit_ms)?,
        _ => return Err(HandoverError::NotReadable),
    };
    let phases = take_phases(phases, &runs, unit_ms)?;
    let first_flow = match flow.ints()?.as_slice() {
        [NO_FLOW] => None,
        [FLOW_PHASE] => Some(
            phases
                .iter()
                .find(|row| row.phase == FLOW)
                .ok_or(HandoverError::NotReadable)?
                .from,
        ),
        [FLOW_TIME, at] => Some(At::ms(*at as u64)),
        _ => return Err(HandoverError::NotReadable),
    };
    let [sucks, swallows, unwatched] = counts.array()?;
    let count = |item: Item, foretold: i64| {
        item.int()?
            .checked_add(foretold)
            .and_then(|count| u32::try_from(count).ok())
            .ok_or(HandoverError::NotReadable)
    };
    Ok(FeedTable {
        watched_ms: phases_ms(&phases)
            .wrapping_sub(unwatched.int()?.wrapping_mul(unit_ms as i64) as u64),
        sucks: count(sucks, sum(&runs, |row| row.sucks))?,
        swallows: count(swallows, sum(&runs, |row| row.swallows))?,
        first_flow,
        phases,
        runs,
        rates: take_rates(rates)?,
        doubts: doubts.each(Item::word)?,
    })
}

fn sum(runs: &[RunRow], of: impl Fn(&RunRow) -> u32) -> i64 {
    runs.iter().map(|row| i64::from(of(row))).sum()
}

/// Time in phases that somebody watched.
fn phases_ms(phases: &[PhaseRow]) -> u64 {
    phases
        .iter()
        .filter(|row| row.phase != "unwatched")
        .map(|row| row.to.as_ms().wrapping_sub(row.from.as_ms()))
        .fold(0, u64::wrapping_add)
}

/// The largest unit that divides all.
fn unit_of<const N: usize, T: Copy + Into<u64>>(
    units: [T; N],
    values: impl Iterator<Item = u64> + Clone,
) -> T {
    let divides = |unit: &T| values.clone().all(|value| value % (*unit).into() == 0);
    units.into_iter().find(divides).unwrap_or(units[N - 1])
}

/// Units from one time to another, both whole.
fn step(from: At, to: At, unit_ms: u64) -> i64 {
    (to.as_ms() / unit_ms).wrapping_sub(from.as_ms() / unit_ms) as i64
}

fn stepped(from: At, step: i64, unit_ms: u64) -> At {
    let units = (from.as_ms() / unit_ms).wrapping_add(step as u64);
    At::ms(units.wrapping_mul(unit_ms))
}

/// Runs as places among the jaw movements; `None` where a run does not begin and end with one.
fn by_jaw(runs: &[RunRow], jaws: &Jaws) -> Option<Item> {
    let (mut skipped, mut held) = (Vec::new(), Vec::new());
    let (mut sucks, mut swallows) = (Vec::new(), Vec::new());
    let mut next = 0;
    for row in runs {
        let (from_ms, last_ms) = (row.from.as_ms(), row.to.as_ms().checked_sub(1)?);
        let (first, last) = (jaws.place(from_ms), jaws.place(last_ms));
        let matches = jaws.at(first as i64) == Ok(from_ms) && jaws.at(last as i64) == Ok(last_ms);
        (matches && next <= first && first <= last).then_some(())?;
        skipped.push((first - next) as i64);
        held.push((last - first) as i64);
        sucks.push((last - first) as i64 + 1 - i64::from(row.sucks));
        swallows.push(i64::from(row.swallows) - jaws.swallows(from_ms, last_ms + 1));
        next = last + 1;
    }
    let columns = list([ints(held), ints(skipped), ints(sucks), ints(swallows)]);
    (!runs.is_empty()).then(|| list([Item::Bool(true), columns]))
}

fn of_jaw(item: Item, jaws: &Jaws) -> Result<Vec<RunRow>, HandoverError> {
    let [held, skipped, sucks, swallows] = item.array()?;
    let held = rows(held)?;
    let rows = held.len();
    let (skipped, sucks) = (skipped.column(rows)?, sucks.column(rows)?);
    let swallows = swallows.column(rows)?;
    let count = |value: Option<i64>| {
        value
            .and_then(|value| u32::try_from(value).ok())
            .ok_or(HandoverError::NotReadable)
    };
    let mut next = 0i64;
    let mut runs = Vec::new();
    for row in 0..rows {
        let first = next
            .checked_add(skipped[row])
            .filter(|first| next <= *first);
        let first = first.ok_or(HandoverError::NotReadable)?;
        let last = first.checked_add(held[row]).filter(|last| first <= *last);
        let last = last.ok_or(HandoverError::NotReadable)?;
        let (from_ms, to_ms) = (jaws.at(first)?, jaws.at(last)?.saturating_add(1));
        next = last + 1;
        runs.push(RunRow {
            from: At::ms(from_ms),
            to: At::ms(to_ms),
            sucks: count((last - first + 1).checked_sub(sucks[row]))?,
            swallows: count(jaws.swallows(from_ms, to_ms).checked_add(swallows[row]))?,
        });
    }
    Ok(runs)
}

/// The mean units from one suck to the next over all runs, from which a run's length is foretold.
fn mean_units(runs: &[RunRow], unit_ms: u64) -> i64 {
    let units = runs
        .iter()
        .map(|row| step(row.from, row.to, unit_ms))
        .fold(0, i64::saturating_add);
    let gaps = sum(runs, |row| row.sucks.saturating_sub(1));
    units / gaps.max(1)
}

fn foretold(sucks: u32, mean_units: i64) -> i64 {
    i64::from(sucks.saturating_sub(1)).wrapping_mul(mean_units)
}

fn by_length(runs: &[RunRow], unit_ms: u64) -> Item {
    let mean_units = mean_units(runs, unit_ms);
    let mut last = At::START;
    let rests = runs.iter().map(|row| {
        let rest = step(last, row.from, unit_ms);
        last = row.to;
        rest
    });
    let rests = ints(rests.collect::<Vec<_>>());
    let lengths = runs.iter().map(|row| {
        let length = step(row.from, row.to, unit_ms);
        length.wrapping_sub(foretold(row.sucks, mean_units))
    });
    let columns = list([
        Item::Int(mean_units),
        ints(runs.iter().map(|row| row.sucks.into())),
        ints(runs.iter().map(|row| row.swallows.into())),
        ints(lengths),
        rests,
    ]);
    list([Item::Bool(false), columns])
}

fn of_length(item: Item, unit_ms: u64) -> Result<Vec<RunRow>, HandoverError> {
    let [mean_units, sucks, swallows, lengths, rests] = item.array()?;
    let mean_units = mean_units.int()?;
    let sucks = rows(sucks)?;
    let rows = sucks.len();
    let (lengths, swallows) = (lengths.column(rows)?, swallows.column(rows)?);
    let rests = rests.column(rows)?;
    let count = |value: i64| u32::try_from(value).map_err(|_| HandoverError::NotReadable);
    let mut last = At::START;
    let mut runs = Vec::new();
    for row in 0..rows {
        let sucks = count(sucks[row])?;
        let from = stepped(last, rests[row], unit_ms);
        let length = lengths[row].wrapping_add(foretold(sucks, mean_units));
        last = stepped(from, length, unit_ms);
        runs.push(RunRow {
            from,
            to: last,
            sucks,
            swallows: count(swallows[row])?,
        });
    }
    Ok(runs)
}

/// The first column of a table, which says how many rows there are.
fn rows(item: Item) -> Result<Vec<i64>, HandoverError> {
    let column = item.ints()?;
    if ROWS_MOST < column.len() as u64 {
        return Err(HandoverError::TooLarge);
    }
    Ok(column)
}

/// The beginnings and ends of runs as they follow each other, and how many were passed.
struct Edges {
    all: Vec<At>,
    passed: usize,
}

impl Edges {
    fn of(runs: &[RunRow]) -> Self {
        Self {
            all: runs.iter().flat_map(|row| [row.from, row.to]).collect(),
            passed: 0,
        }
    }

    /// Where a phase that begins here is foretold to end: with the run that it lies in, or where
    /// the next one begins.
    fn foretold(&mut self, from: At) -> Option<At> {
        while self.passed.is_multiple_of(2)
            && self.all.get(self.passed).is_some_and(|it| *it <= from)
        {
            self.passed += 1;
        }
        self.all.get(self.passed).copied()
    }

    /// A phase ended elsewhere.
    fn pass(&mut self, to: At) {
        while self.all.get(self.passed).is_some_and(|it| *it < to) {
            self.passed += 1;
        }
    }
}

fn put_phases(phases: &[PhaseRow], runs: &[RunRow], unit_ms: u64) -> Item {
    let mut edges = Edges::of(runs);
    let (mut starts, mut ends, mut lengths) = (Vec::new(), Vec::new(), Vec::new());
    let mut last = At::START;
    for row in phases {
        starts.push(step(last, row.from, unit_ms));
        if edges.foretold(row.from) == Some(row.to) {
            edges.passed += 1;
            ends.push(AS_FORETOLD);
        } else {
            edges.pass(row.to);
            ends.push(AFTER_LENGTH);
            lengths.push(step(row.from, row.to, unit_ms));
        }
        last = row.to;
    }
    list([
        ints(ends),
        words(phases.iter().map(|row| row.phase.as_str())),
        ints(phases.iter().map(|row| i64::from(row.percent))),
        ints(starts),
        ints(lengths),
    ])
}

fn take_phases(item: Item, runs: &[RunRow], unit_ms: u64) -> Result<Vec<PhaseRow>, HandoverError> {
    let [ends, names, percents, starts, lengths] = item.array()?;
    let ends = rows(ends)?;
    let rows = ends.len();
    let names = names.each(Item::word)?;
    let (percents, starts) = (percents.column(rows)?, starts.column(rows)?);
    if names.len() != rows {
        return Err(HandoverError::NotReadable);
    }
    let mut lengths = lengths.ints()?.into_iter();
    let mut edges = Edges::of(runs);
    let mut last = At::START;
    let mut phases = Vec::new();
    for (row, phase) in names.into_iter().enumerate() {
        let from = stepped(last, starts[row], unit_ms);
        let foretold = edges.foretold(from);
        last = match ends[row] {
            AS_FORETOLD => {
                edges.passed += 1;
                foretold.ok_or(HandoverError::NotReadable)?
            }
            AFTER_LENGTH => {
                let length = lengths.next().ok_or(HandoverError::NotReadable)?;
                let to = stepped(from, length, unit_ms);
                edges.pass(to);
                to
            }
            _ => return Err(HandoverError::NotReadable),
        };
        let percent = u8::try_from(percents[row]).ok().filter(|it| *it <= 100);
        phases.push(PhaseRow {
            from,
            to: last,
            phase,
            percent: percent.ok_or(HandoverError::NotReadable)?,
        });
    }
    if lengths.next().is_some() {
        return Err(HandoverError::NotReadable);
    }
    Ok(phases)
}

/// Rates: value, how far the interval reaches below, and how much further above than below.
fn put_rates(rates: &[RateRow]) -> Item {
    let numbers = |per_min: bool| {
        let rows = rates.iter().filter(move |row| row.per_min == per_min);
        rows.flat_map(|row| row.hundredths).map(u64::from)
    };
    let units = [true, false].map(|per_min| unit_of(RATE_UNITS, numbers(per_min)));
    let rows = || {
        rates.iter().map(|row| {
            let unit = i64::from(units[usize::from(!row.per_min)]);
            row.hundredths.map(|it| i64::from(it) / unit)
        })
    };
    list([
        ints(units.map(i64::from)),
        list(
            rates
                .iter()
                .map(|row| row.phase.as_deref().map_or(Item::Null, word)),
        ),
        ints(rates.iter().map(|row| row.per_min.into())),
        ints(rows().map(|[value, _, _]| value)),
        ints(rows().map(|[value, low, _]| value - low)),
        ints(rows().map(|[value, low, high]| high - value - (value - low))),
    ])
}

fn take_rates(item: Item) -> Result<Vec<RateRow>, HandoverError> {
    let [units, names, per_min, values, below, further] = item.array()?;
    let units = units.column(2)?;
    if units
        .iter()
        .any(|unit| !RATE_UNITS.iter().any(|it| i64::from(*it) == *unit))
    {
        return Err(HandoverError::NotReadable);
    }
    let per_min = rows(per_min)?;
    let rows = per_min.len();
    let (values, below) = (values.column(rows)?, below.column(rows)?);
    let further = further.column(rows)?;
    let names = names.each(|name| match name {
        Item::Null => Ok(None),
        name => name.word().map(Some),
    })?;
    if names.len() != rows {
        return Err(HandoverError::NotReadable);
    }
    let mut rates = Vec::new();
    for (row, phase) in names.into_iter().enumerate() {
        let per_min = match per_min[row] {
            0 => false,
            1 => true,
            _ => return Err(HandoverError::NotReadable),
        };
        let hundredths = |value: Option<i64>| {
            value
                .and_then(|value| value.checked_mul(units[usize::from(!per_min)]))
                .and_then(|value| u32::try_from(value).ok())
                .ok_or(HandoverError::NotReadable)
        };
        let value = values[row];
        let above = below[row].checked_add(further[row]);
        rates.push(RateRow {
            phase,
            per_min,
            hundredths: [
                hundredths(Some(value))?,
                hundredths(value.checked_sub(below[row]))?,
                hundredths(above.and_then(|above| value.checked_add(above)))?,
            ],
        });
    }
    Ok(rates)
}
