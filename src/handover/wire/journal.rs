//! The journal on the wire: columns of kinds, bodies, times, numbers and wall times, and the taps.
//!
//! Bodies are the stored ones with known words as numbers. An entry that this version does not
//! know, or whose body has something else in it, travels as it is stored. Times travel in the
//! largest of four units that divides them all.

use std::collections::BTreeSet;

use serde_json::Value;

use super::super::cbor::Item;
use super::super::limit::ENTRIES_MOST;
use super::super::{HandoverError, dictionary};
use super::field::{ints, list, word};
use super::taps::{self, KINDS, WireTap};
use crate::record::{
    At, Entry, Journal, RecordError, StoredEntry, WallTime, What, from_stored, to_stored,
};

/// In the column of kinds: the entry travels as stored, kind and body as text.
const AS_STORED: i64 = 0;
/// The key of an instant in a body; other keys are words, which are text or below zero.
const INSTANT: i64 = 0;
/// Milliseconds of the units that times may travel in.
const UNITS_MS: [u64; 4] = [1_000, 100, 10, 1];

pub(super) fn to_wire(journal: &Journal, began: WallTime) -> Result<Item, HandoverError> {
    let entries = journal.entries();
    if ENTRIES_MOST < entries.len() as u64 {
        return Err(HandoverError::TooLarge);
    }
    let divides = |unit_ms: &u64| entries.iter().all(|it| it.at.as_ms() % unit_ms == 0);
    let unit_ms = UNITS_MS.into_iter().find(divides).unwrap_or(1);
    let (mut kinds, mut bodies, mut times, mut seqs) =
        <(Vec<_>, Vec<_>, Vec<_>, Vec<_>)>::default();
    let mut tapped = Vec::new();
    let mut untapped = BTreeSet::new();
    let mut last = (0u32, 0u64);
    for entry in entries {
        let stored = to_stored(entry)?;
        if entry.what.is_tap()
            && let Some(kind) = KINDS.iter().position(|kind| *kind == stored.kind)
        {
            tapped.push(WireTap {
                seq: stored.seq,
                at: stored.at_ms / unit_ms,
                kind,
            });
            continue;
        }
        untapped.insert(stored.seq);
        seqs.push(i64::from(stored.seq) - i64::from(last.0) - 1);
        times.push((stored.at_ms / unit_ms).wrapping_sub(last.1) as i64);
        last = (stored.seq, stored.at_ms / unit_ms);
        let (kind, body) = to_body(entry, stored);
        kinds.push(kind);
        bodies.push(body);
    }
    Ok(list([
        Item::Int(unit_ms as i64),
        ints(kinds),
        Item::List(bodies),
        ints(times),
        ints(seqs),
        put_walls(entries, began),
        taps::to_wire(&tapped, &untapped),
    ]))
}

pub(super) fn of_wire(item: Item, began: WallTime) -> Result<Journal, HandoverError> {
    let [unit, kinds, bodies, times, seqs, walls, tapped] = item.array()?;
    let unit_ms = unit.small()?;
    if !UNITS_MS.contains(&unit_ms) {
        return Err(HandoverError::NotReadable);
    }
    let kinds = kinds.ints()?;
    let rows = kinds.len();
    if ENTRIES_MOST < rows as u64 {
        return Err(HandoverError::TooLarge);
    }
    let (times, seqs, bodies) = (times.column(rows)?, seqs.column(rows)?, bodies.list()?);
    if bodies.len() != rows {
        return Err(HandoverError::NotReadable);
    }
    let mut stored = Vec::new();
    let mut others = BTreeSet::new();
    let mut last = (0i64, 0u64);
    for (row, body) in bodies.into_iter().enumerate() {
        let seq = seqs[row]
            .checked_add(1)
            .and_then(|it| it.checked_add(last.0));
        let seq = seq.ok_or(HandoverError::NotReadable)?;
        last = (seq, last.1.wrapping_add(times[row] as u64));
        let seq = u32::try_from(seq).map_err(|_| HandoverError::NotReadable)?;
        others.insert(seq);
        let at_ms = last.1.wrapping_mul(unit_ms);
        stored.push((
            blank(seq, at_ms, String::new(), String::new()),
            Some((kinds[row], body)),
        ));
    }
    for tap in taps::of_wire(tapped, &others)? {
        let kind = KINDS[tap.kind].to_owned();
        let at_ms = tap.at.wrapping_mul(unit_ms);
        stored.push((blank(tap.seq, at_ms, kind, Value::Null.to_string()), None));
    }
    stored.sort_by_key(|(entry, _)| entry.seq);
    take_walls(walls, &mut stored, began)?;
    let entries = stored
        .into_iter()
        .map(|(stored, told)| match told {
            Some((kind, body)) => of_body(stored, kind, body),
            None => Ok(from_stored(&stored)?),
        })
        .collect::<Result<Vec<_>, _>>()?;
    Ok(Journal::picked(entries)?)
}

/// An entry without its wall time, which comes from a column of its own.
fn blank(seq: u32, at_ms: u64, kind: String, body: String) -> StoredEntry {
    StoredEntry {
        seq,
        at_ms,
        utc_ms: 0,
        offset_min: 0,
        kind,
        body,
    }
}

/// The wall clock as its distance from the visit's own clock: for each run of equal distance how
/// many entries, the change of the distance, and the change of the offset.
fn put_walls(entries: &[Entry], began: WallTime) -> Item {
    let mut last = (0i64, i64::from(began.offset_min()));
    let mut column = Vec::new();
    let mut rest = entries;
    while let Some(first) = rest.first() {
        let here = distance(first, began);
        let run = rest
            .iter()
            .take_while(|entry| distance(entry, began) == here)
            .count();
        column.extend([run as i64, here.0.wrapping_sub(last.0), here.1 - last.1]);
        last = here;
        rest = &rest[run..];
    }
    ints(column)
}

fn distance(entry: &Entry, began: WallTime) -> (i64, i64) {
    let own = began.utc_ms().wrapping_add(entry.at.as_ms() as i64);
    (
        entry.wall.utc_ms().wrapping_sub(own),
        entry.wall.offset_min().into(),
    )
}

fn take_walls<T>(
    item: Item,
    stored: &mut [(StoredEntry, T)],
    began: WallTime,
) -> Result<(), HandoverError> {
    let column = item.ints()?;
    let mut last = (0i64, i64::from(began.offset_min()));
    let mut rest = stored;
    let (runs, odd) = column.as_chunks::<3>();
    for [run, step_ms, step_min] in runs {
        let run = usize::try_from(*run).unwrap_or(0);
        if run == 0 || rest.len() < run {
            return Err(HandoverError::NotReadable);
        }
        last.0 = last.0.wrapping_add(*step_ms);
        last.1 = last.1.wrapping_add(*step_min);
        let (now, later) = rest.split_at_mut(run);
        for (entry, _) in now {
            entry.utc_ms = began
                .utc_ms()
                .wrapping_add(entry.at_ms as i64)
                .wrapping_add(last.0);
            entry.offset_min = i16::try_from(last.1).map_err(|_| HandoverError::NotReadable)?;
        }
        rest = later;
    }
    if rest.is_empty() && odd.is_empty() {
        Ok(())
    } else {
        Err(HandoverError::NotReadable)
    }
}

/// The number of a kind and its body.
fn to_body(entry: &Entry, stored: StoredEntry) -> (i64, Item) {
    let whole = matches!(entry.what, What::Unknown { .. }) || entry.newer.is_some();
    let compact = dictionary::number(&stored.kind).filter(|_| !whole).zip(
        serde_json::from_str(&stored.body)
            .ok()
            .and_then(|body| to_item(&body, entry.wall)),
    );
    match compact {
        Some((number, body)) => (i64::from(number) + 1, body),
        None => (
            AS_STORED,
            list([Item::Text(stored.kind), Item::Text(stored.body)]),
        ),
    }
}

/// Reads one entry; one that travelled as stored stays whole even where its body is odd.
fn of_body(mut stored: StoredEntry, kind: i64, body: Item) -> Result<Entry, HandoverError> {
    let wall = WallTime::new(stored.utc_ms, stored.offset_min)?;
    if kind != AS_STORED {
        let kind = u16::try_from(kind - 1).ok().and_then(dictionary::word);
        stored.kind = kind.ok_or(HandoverError::NotReadable)?.to_owned();
        stored.body = to_value(body, wall)?.to_string();
        return Ok(from_stored(&stored)?);
    }
    let [kind, body] = body.array()?;
    (stored.kind, stored.body) = (kind.text()?, body.text()?);
    match from_stored(&stored) {
        Err(RecordError::Unreadable { .. }) => Ok(Entry {
            seq: stored.seq,
            at: At::ms(stored.at_ms),
            wall,
            what: What::Unknown {
                kind: stored.kind,
                body: stored.body,
            },
            newer: None,
        }),
        other => Ok(other?),
    }
}

/// A stored body as a wire value; `None` where it has a number that is no count.
fn to_item(value: &Value, wall: WallTime) -> Option<Item> {
    Some(match value {
        Value::Null => Item::Null,
        Value::Bool(value) => Item::Bool(*value),
        Value::Number(number) => Item::Int(i64::try_from(number.as_u64()?).ok()?),
        Value::String(text) => instant(text, wall).unwrap_or_else(|| word(text)),
        Value::Array(values) => list(
            values
                .iter()
                .map(|value| to_item(value, wall))
                .collect::<Option<Vec<_>>>()?,
        ),
        Value::Object(fields) => Item::Map(
            fields
                .iter()
                .map(|(key, value)| Some((word(key), to_item(value, wall)?)))
                .collect::<Option<_>>()?,
        ),
    })
}

fn to_value(item: Item, wall: WallTime) -> Result<Value, HandoverError> {
    Ok(match item {
        Item::Null => Value::Null,
        Item::Bool(value) => Value::Bool(value),
        Item::Int(value) if 0 <= value => Value::from(value),
        Item::Bytes(_) => return Err(HandoverError::NotReadable),
        Item::List(items) => Value::Array(
            items
                .into_iter()
                .map(|item| to_value(item, wall))
                .collect::<Result<_, _>>()?,
        ),
        Item::Map(mut pairs) => match pairs.as_mut_slice() {
            [(Item::Int(INSTANT), told)] => {
                Value::String(of_instant(std::mem::replace(told, Item::Null), wall)?)
            }
            _ => Value::Object(
                pairs
                    .into_iter()
                    .map(|(key, value)| Ok((key.word()?, to_value(value, wall)?)))
                    .collect::<Result<_, HandoverError>>()?,
            ),
        },
        Item::Int(_) | Item::Text(_) => Value::String(item.word()?),
    })
}

/// An instant written as the record stores it, by its distance from the entry's own wall time.
fn instant(text: &str, wall: WallTime) -> Option<Item> {
    let told: WallTime = serde_json::from_value(Value::String(text.to_owned())).ok()?;
    (serde_json::to_value(told).ok()?.as_str()? == text).then(|| {
        let distance = ints([
            told.utc_ms().wrapping_sub(wall.utc_ms()),
            i64::from(told.offset_min()) - i64::from(wall.offset_min()),
        ]);
        Item::Map(vec![(Item::Int(INSTANT), distance)])
    })
}

fn of_instant(item: Item, wall: WallTime) -> Result<String, HandoverError> {
    let [ms, min] = item.array()?;
    let utc_ms = wall.utc_ms().wrapping_add(ms.int()?);
    let offset_min = i64::from(wall.offset_min()).wrapping_add(min.int()?);
    let offset_min = i16::try_from(offset_min).map_err(|_| HandoverError::NotReadable)?;
    match serde_json::to_value(WallTime::new(utc_ms, offset_min)?) {
        Ok(Value::String(text)) => Ok(text),
        _ => Err(HandoverError::NotReadable),
    }
}
