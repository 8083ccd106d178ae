//! The single taps on the wire: a coding id, then its streams.
//!
//! Coding 1 (usual): jaw movements by the time since the last one, low bytes and the rest in
//! streams of their own (the low bytes are noise, the rest hardly changes); how many jaw movements
//! without a swallow stand before each one with a swallow; swallows alone by the time since the last
//! one. Order and numbers follow from the times and from the numbers of the other entries.
//! Coding 0 (always possible): one stream in order, with kind, number and time of each tap.

use std::collections::BTreeSet;

use super::super::HandoverError;
use super::super::cbor::Item;
use super::super::limit::ENTRIES_MOST;
use super::super::stream::{Reader, Writer};
use super::field::list;

const IN_ORDER: i64 = 0;
const BY_JAW: i64 = 1;

/// The kinds of taps by their numbers here.
pub(super) const KINDS: [&str; 3] = ["suck", "suck_swallow", "swallow"];
const SUCK: usize = 0;
const SUCK_SWALLOW: usize = 1;
const SWALLOW: usize = 2;

/// One tap: its number, its time, and its place in [`KINDS`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct WireTap {
    pub(super) seq: u32,
    pub(super) at_ms: u64,
    pub(super) kind: usize,
}

pub(super) fn to_wire(taps: &[WireTap], others: &BTreeSet<u32>) -> Item {
    if taps.is_empty() {
        return Item::Null;
    }
    by_jaw(taps)
        .filter(|item| of_wire(item.clone(), others).is_ok_and(|back| back == taps))
        .unwrap_or_else(|| in_order(taps))
}

pub(super) fn of_wire(item: Item, others: &BTreeSet<u32>) -> Result<Vec<WireTap>, HandoverError> {
    if item == Item::Null {
        return Ok(Vec::new());
    }
    let mut parts = item.list()?.into_iter();
    let mut next = || parts.next().ok_or(HandoverError::NotReadable);
    let taps = match next()?.int()? {
        IN_ORDER => read_in_order(&next()?.bytes()?)?,
        BY_JAW => {
            let streams = [
                next()?.bytes()?,
                next()?.bytes()?,
                next()?.bytes()?,
                next()?.bytes()?,
            ];
            read_by_jaw(&streams, others)?
        }
        _ => return Err(HandoverError::NotReadable),
    };
    if parts.next().is_some() {
        return Err(HandoverError::NotReadable);
    }
    Ok(taps)
}

/// `None` where the times go back.
fn by_jaw(taps: &[WireTap]) -> Option<Item> {
    let mut low = Vec::new();
    let (mut high, mut plain, mut alone) =
        (Writer::default(), Writer::default(), Writer::default());
    let (mut last_jaw_ms, mut last_alone_ms, mut plain_count) = (0, 0, 0);
    for tap in taps {
        if tap.kind == SWALLOW {
            alone.number(tap.at_ms.checked_sub(last_alone_ms)?);
            last_alone_ms = tap.at_ms;
            continue;
        }
        let step_ms = tap.at_ms.checked_sub(last_jaw_ms)?;
        last_jaw_ms = tap.at_ms;
        low.push((step_ms & 0xff) as u8);
        high.number(step_ms >> 8);
        if tap.kind == SUCK_SWALLOW {
            plain.number(plain_count);
            plain_count = 0;
        } else {
            plain_count += 1;
        }
    }
    let (high, plain, alone) = (high.finish(), plain.finish(), alone.finish());
    Some(list(
        [Item::Int(BY_JAW), Item::Bytes(low)]
            .into_iter()
            .chain([high, plain, alone].map(Item::Bytes)),
    ))
}

fn read_by_jaw(
    [low, high, plain, alone]: &[Vec<u8>; 4],
    others: &BTreeSet<u32>,
) -> Result<Vec<WireTap>, HandoverError> {
    let later =
        |at_ms: u64, step_ms: u64| at_ms.checked_add(step_ms).ok_or(HandoverError::NotReadable);
    let mut timed = Vec::new();
    let (mut high, mut at_ms) = (Reader::new(high), 0);
    for low in low {
        let high = high.number()?;
        if u64::MAX >> 8 < high {
            return Err(HandoverError::NotReadable);
        }
        at_ms = later(at_ms, high << 8 | u64::from(*low))?;
        timed.push((at_ms, SUCK));
    }
    high.end()?;
    let (mut plain, mut place) = (Reader::new(plain), 0usize);
    while plain.end().is_err() {
        place = place.saturating_add(plain.small()?);
        timed.get_mut(place).ok_or(HandoverError::NotReadable)?.1 = SUCK_SWALLOW;
        place += 1;
    }
    let (mut alone, mut at_ms) = (Reader::new(alone), 0);
    while alone.end().is_err() {
        at_ms = later(at_ms, alone.number()?)?;
        timed.push((at_ms, SWALLOW));
    }
    if ENTRIES_MOST < timed.len() as u64 {
        return Err(HandoverError::TooLarge);
    }
    timed.sort_by_key(|(at_ms, _)| *at_ms);
    let mut free = (1u32..).filter(|seq| !others.contains(seq));
    timed
        .into_iter()
        .map(|(at_ms, kind)| {
            let seq = free.next().ok_or(HandoverError::TooLarge)?;
            Ok(WireTap { seq, at_ms, kind })
        })
        .collect()
}

fn in_order(taps: &[WireTap]) -> Item {
    let mut writer = Writer::default();
    let mut last = (0u32, 0u64);
    for tap in taps {
        writer.number(tap.kind as u64);
        writer.number(u64::from(tap.seq.wrapping_sub(last.0)));
        writer.signed(tap.at_ms.wrapping_sub(last.1) as i64);
        last = (tap.seq, tap.at_ms);
    }
    list([Item::Int(IN_ORDER), Item::Bytes(writer.finish())])
}

fn read_in_order(stream: &[u8]) -> Result<Vec<WireTap>, HandoverError> {
    let mut reader = Reader::new(stream);
    let mut taps = Vec::new();
    let mut last = (0u32, 0u64);
    while reader.end().is_err() {
        let kind = reader.small::<usize>()?;
        if KINDS.len() <= kind {
            return Err(HandoverError::NotReadable);
        }
        let seq = last.0.wrapping_add(reader.small()?);
        let at_ms = last.1.wrapping_add(reader.signed()? as u64);
        taps.push(WireTap { seq, at_ms, kind });
        last = (seq, at_ms);
        if ENTRIES_MOST < taps.len() as u64 {
            return Err(HandoverError::TooLarge);
        }
    }
    Ok(taps)
}
