//! The journal on the wire: columns of numbers, times and kinds, one body an entry, and the taps.
//!
//! Bodies are the stored ones with known words as numbers. An entry that this version does not
//! know, or whose body has something else in it, travels as it is stored.

use std::collections::BTreeSet;

use serde_json::Value;

use super::super::cbor::Item;
use super::super::limit::ENTRIES_MOST;
use super::super::stream::{Reader, Writer};
use super::super::{HandoverError, dictionary};
use super::field::{list, word};
use super::taps::{self, KINDS, WireTap};
use crate::record::{
    At, Entry, Journal, RecordError, StoredEntry, WallTime, What, from_stored, to_stored,
};

/// In the column of kinds: the entry travels as stored, kind and body as text.
const AS_STORED: u64 = 0;

pub(super) fn to_wire(journal: &Journal, began: WallTime) -> Result<Item, HandoverError> {
    let entries = journal.entries();
    if ENTRIES_MOST < entries.len() as u64 {
        return Err(HandoverError::TooLarge);
    }
    let (mut times, mut walls, mut kinds) = Default::default();
    let mut bodies = Vec::new();
    let mut tapped = Vec::new();
    let mut others = BTreeSet::new();
    let mut last = (0u32, 0u64);
    put_walls(&mut walls, entries, began);
    for entry in entries {
        let stored = to_stored(entry)?;
        if entry.what.is_tap()
            && let Some(kind) = KINDS.iter().position(|kind| *kind == stored.kind)
        {
            tapped.push(WireTap {
                seq: stored.seq,
                at_ms: stored.at_ms,
                kind,
            });
            continue;
        }
        others.insert(stored.seq);
        let times: &mut Writer = &mut times;
        times.number(u64::from(stored.seq.wrapping_sub(last.0)));
        times.signed(stored.at_ms.wrapping_sub(last.1) as i64);
        last = (stored.seq, stored.at_ms);
        put_body(&mut kinds, &mut bodies, entry, stored);
    }
    Ok(list([
        Item::Bytes(times.finish()),
        Item::Bytes(walls.finish()),
        Item::Bytes(kinds.finish()),
        Item::List(bodies),
        taps::to_wire(&tapped, &others),
    ]))
}

pub(super) fn of_wire(item: Item, began: WallTime) -> Result<Journal, HandoverError> {
    let [times, walls, kinds, bodies, tapped] = item.array()?;
    let (times, walls, kinds) = (times.bytes()?, walls.bytes()?, kinds.bytes()?);
    let (mut times, mut kinds) = (Reader::new(&times), Reader::new(&kinds));
    let mut bodies = bodies.list()?.into_iter();
    let mut stored = Vec::new();
    let mut others = BTreeSet::new();
    let mut last = (0u32, 0u64);
    while times.end().is_err() {
        let seq = last.0.wrapping_add(times.small()?);
        let at_ms = last.1.wrapping_add(times.signed()? as u64);
        last = (seq, at_ms);
        let (kind, body, as_stored) = take_body(&mut kinds, &mut bodies)?;
        others.insert(seq);
        stored.push((blank(seq, at_ms, kind, body), as_stored));
        if ENTRIES_MOST < stored.len() as u64 {
            return Err(HandoverError::TooLarge);
        }
    }
    kinds.end()?;
    if bodies.next().is_some() {
        return Err(HandoverError::NotReadable);
    }
    for tap in taps::of_wire(tapped, &others)? {
        let kind = KINDS[tap.kind].to_owned();
        stored.push((
            blank(tap.seq, tap.at_ms, kind, Value::Null.to_string()),
            false,
        ));
    }
    stored.sort_by_key(|(entry, _)| entry.seq);
    take_walls(&walls, &mut stored, began)?;
    let entries = stored
        .into_iter()
        .map(|(stored, as_stored)| read(&stored, as_stored))
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

/// Reads one entry; one that travelled as stored stays whole even where its body is odd.
fn read(stored: &StoredEntry, as_stored: bool) -> Result<Entry, HandoverError> {
    match from_stored(stored) {
        Err(RecordError::Unreadable { .. }) if as_stored => Ok(Entry {
            seq: stored.seq,
            at: At::ms(stored.at_ms),
            wall: WallTime::new(stored.utc_ms, stored.offset_min)?,
            what: What::Unknown {
                kind: stored.kind.clone(),
                body: stored.body.clone(),
            },
            newer: None,
        }),
        other => Ok(other?),
    }
}

/// The wall clock as its distance from the visit's own clock, as runs of equal distance.
fn put_walls(writer: &mut Writer, entries: &[Entry], began: WallTime) {
    let mut last = (0i64, i64::from(began.offset_min()));
    let mut rest = entries;
    while let Some(first) = rest.first() {
        let here = distance(first, began);
        let run = rest
            .iter()
            .take_while(|entry| distance(entry, began) == here)
            .count();
        writer.number(run as u64);
        writer.signed(here.0.wrapping_sub(last.0));
        writer.signed(here.1 - last.1);
        last = here;
        rest = &rest[run..];
    }
}

fn distance(entry: &Entry, began: WallTime) -> (i64, i64) {
    let own = began.utc_ms().wrapping_add(entry.at.as_ms() as i64);
    (
        entry.wall.utc_ms().wrapping_sub(own),
        entry.wall.offset_min().into(),
    )
}

fn take_walls(
    bytes: &[u8],
    stored: &mut [(StoredEntry, bool)],
    began: WallTime,
) -> Result<(), HandoverError> {
    let mut reader = Reader::new(bytes);
    let mut last = (0i64, i64::from(began.offset_min()));
    let mut rest = stored;
    while !rest.is_empty() {
        let run: usize = reader.small()?;
        if run == 0 || rest.len() < run {
            return Err(HandoverError::NotReadable);
        }
        last.0 = last.0.wrapping_add(reader.signed()?);
        last.1 = last.1.wrapping_add(reader.signed()?);
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
    reader.end()
}

fn put_body(kinds: &mut Writer, bodies: &mut Vec<Item>, entry: &Entry, stored: StoredEntry) {
    let whole = matches!(entry.what, What::Unknown { .. }) || entry.newer.is_some();
    let compact = dictionary::number(&stored.kind).filter(|_| !whole).zip(
        serde_json::from_str(&stored.body)
            .ok()
            .and_then(|body| to_item(&body)),
    );
    match compact {
        Some((number, body)) => {
            kinds.number(u64::from(number) + 1);
            bodies.push(body);
        }
        None => {
            kinds.number(AS_STORED);
            bodies.push(list([Item::Text(stored.kind), Item::Text(stored.body)]));
        }
    }
}

/// Kind, body as stored, and whether it travelled as stored.
fn take_body(
    kinds: &mut Reader<'_>,
    bodies: &mut impl Iterator<Item = Item>,
) -> Result<(String, String, bool), HandoverError> {
    let body = bodies.next().ok_or(HandoverError::NotReadable)?;
    match kinds.number()? {
        AS_STORED => {
            let [kind, body] = body.array()?;
            Ok((kind.text()?, body.text()?, true))
        }
        number => {
            let kind = u16::try_from(number - 1)
                .ok()
                .and_then(dictionary::word)
                .ok_or(HandoverError::NotReadable)?;
            Ok((kind.to_owned(), to_value(body)?.to_string(), false))
        }
    }
}

/// A stored body as a wire value; `None` where it has a number that is no count.
fn to_item(value: &Value) -> Option<Item> {
    Some(match value {
        Value::Null => Item::Null,
        Value::Bool(value) => Item::Bool(*value),
        Value::Number(number) => Item::Int(i64::try_from(number.as_u64()?).ok()?),
        Value::String(text) => time(text).unwrap_or_else(|| word(text)),
        Value::Array(values) => list(values.iter().map(to_item).collect::<Option<Vec<_>>>()?),
        Value::Object(fields) => Item::Map(
            fields
                .iter()
                .map(|(key, value)| Some((word(key), to_item(value)?)))
                .collect::<Option<_>>()?,
        ),
    })
}

fn to_value(item: Item) -> Result<Value, HandoverError> {
    Ok(match item {
        Item::Null => Value::Null,
        Item::Bool(value) => Value::Bool(value),
        Item::Int(value) if 0 <= value => Value::from(value),
        Item::Bytes(bytes) => Value::String(of_time(&bytes)?),
        Item::List(items) => {
            Value::Array(items.into_iter().map(to_value).collect::<Result<_, _>>()?)
        }
        Item::Map(pairs) => Value::Object(
            pairs
                .into_iter()
                .map(|(key, value)| Ok((key.word()?, to_value(value)?)))
                .collect::<Result<_, HandoverError>>()?,
        ),
        Item::Int(_) | Item::Text(_) => Value::String(item.word()?),
    })
}

/// An instant written as the record stores it, as nine or ten bytes instead of 29 characters.
fn time(text: &str) -> Option<Item> {
    let wall: WallTime = serde_json::from_value(Value::String(text.to_owned())).ok()?;
    (serde_json::to_value(wall).ok()?.as_str()? == text).then(|| {
        let mut writer = Writer::default();
        writer.signed(wall.utc_ms());
        writer.signed(wall.offset_min().into());
        Item::Bytes(writer.finish())
    })
}

fn of_time(bytes: &[u8]) -> Result<String, HandoverError> {
    let mut reader = Reader::new(bytes);
    let utc_ms = reader.signed()?;
    let offset_min = i16::try_from(reader.signed()?).map_err(|_| HandoverError::NotReadable)?;
    reader.end()?;
    match serde_json::to_value(WallTime::new(utc_ms, offset_min)?) {
        Ok(Value::String(text)) => Ok(text),
        _ => Err(HandoverError::NotReadable),
    }
}
