//! The single taps on the wire: a coding id, then its streams.
//!
//! Coding 1 (usual): one stream for each kind of tap, each with the time since the last tap of the
//! same kind; order and numbers follow from the times and from the numbers of the other entries.
//! Coding 0 (always possible): one stream in order, with kind, number and time of each tap.

use std::collections::BTreeSet;

use super::super::HandoverError;
use super::super::cbor::Item;
use super::super::limit::ENTRIES_MOST;
use super::super::stream::{Reader, Writer};
use super::field::list;

const IN_ORDER: i64 = 0;
const BY_KIND: i64 = 1;

/// The kinds of taps by their place in the streams.
pub(super) const KINDS: [&str; 3] = ["suck", "suck_swallow", "swallow"];

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
    by_kind(taps)
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
        BY_KIND => {
            let streams = [next()?.bytes()?, next()?.bytes()?, next()?.bytes()?];
            read_by_kind(&streams, others)?
        }
        _ => return Err(HandoverError::NotReadable),
    };
    if parts.next().is_some() {
        return Err(HandoverError::NotReadable);
    }
    Ok(taps)
}

/// `None` where the times go back.
fn by_kind(taps: &[WireTap]) -> Option<Item> {
    let mut parts = vec![Item::Int(BY_KIND)];
    for kind in 0..KINDS.len() {
        let mut writer = Writer::default();
        let mut last_ms = 0;
        for tap in taps.iter().filter(|tap| tap.kind == kind) {
            writer.number(tap.at_ms.checked_sub(last_ms)?);
            last_ms = tap.at_ms;
        }
        parts.push(Item::Bytes(writer.finish()));
    }
    Some(Item::List(parts))
}

fn read_by_kind(
    streams: &[Vec<u8>; KINDS.len()],
    others: &BTreeSet<u32>,
) -> Result<Vec<WireTap>, HandoverError> {
    let mut timed = Vec::new();
    for (kind, stream) in streams.iter().enumerate() {
        let mut reader = Reader::new(stream);
        let mut at_ms = 0u64;
        while reader.end().is_err() {
            at_ms = at_ms
                .checked_add(reader.number()?)
                .ok_or(HandoverError::NotReadable)?;
            timed.push((at_ms, kind));
            if ENTRIES_MOST < timed.len() as u64 {
                return Err(HandoverError::TooLarge);
            }
        }
    }
    timed.sort_unstable();
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
