//! The single taps on the wire: a coding id, then its columns.
//!
//! Coding 1 (usual): jaw movements by the time since the last one, in the journal's unit, and beside
//! each whether a swallow came with it; swallows alone by the time since the last one. Order and numbers
//! follow from the times and from the numbers of the other entries.
//! Coding 0 (always possible): kind, step of the number and step of the time of each tap, in order.

use std::collections::BTreeSet;

use super::super::HandoverError;
use super::super::cbor::Item;
use super::super::limit::ENTRIES_MOST;
use super::field::{ints, list};

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
    /// In the journal's unit.
    pub(super) at: u64,
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
    let [coding, first, second, third] = item.array()?;
    let columns = [first.ints()?, second.ints()?, third.ints()?];
    if columns
        .iter()
        .any(|column| ENTRIES_MOST < column.len() as u64)
    {
        return Err(HandoverError::TooLarge);
    }
    match coding.int()? {
        IN_ORDER => read_in_order(&columns),
        BY_JAW => read_by_jaw(&columns, others),
        _ => Err(HandoverError::NotReadable),
    }
}

/// `None` where the times go back.
fn by_jaw(taps: &[WireTap]) -> Option<Item> {
    let (mut steps, mut swallows, mut alone) = (Vec::new(), Vec::new(), Vec::new());
    let (mut last_jaw, mut last_alone) = (0, 0);
    for tap in taps {
        if tap.kind == SWALLOW {
            alone.push(tap.at.checked_sub(last_alone)? as i64);
            last_alone = tap.at;
        } else {
            steps.push(tap.at.checked_sub(last_jaw)? as i64);
            last_jaw = tap.at;
            swallows.push(i64::from(tap.kind == SUCK_SWALLOW));
        }
    }
    Some(list([
        Item::Int(BY_JAW),
        ints(steps),
        ints(swallows),
        ints(alone),
    ]))
}

fn read_by_jaw(
    [steps, swallows, alone]: &[Vec<i64>; 3],
    others: &BTreeSet<u32>,
) -> Result<Vec<WireTap>, HandoverError> {
    if steps.len() != swallows.len() {
        return Err(HandoverError::NotReadable);
    }
    let later = |at: u64, step: i64| {
        u64::try_from(step)
            .ok()
            .and_then(|step| at.checked_add(step))
            .ok_or(HandoverError::NotReadable)
    };
    let mut timed = Vec::new();
    let mut at = 0;
    for (step, swallow) in steps.iter().zip(swallows) {
        at = later(at, *step)?;
        timed.push((
            at,
            match swallow {
                0 => SUCK,
                1 => SUCK_SWALLOW,
                _ => return Err(HandoverError::NotReadable),
            },
        ));
    }
    at = 0;
    for step in alone {
        at = later(at, *step)?;
        timed.push((at, SWALLOW));
    }
    timed.sort_by_key(|(at, _)| *at);
    let mut free = (1u32..).filter(|seq| !others.contains(seq));
    timed
        .into_iter()
        .map(|(at, kind)| {
            let seq = free.next().ok_or(HandoverError::TooLarge)?;
            Ok(WireTap { seq, at, kind })
        })
        .collect()
}

fn in_order(taps: &[WireTap]) -> Item {
    let mut last = (0u32, 0u64);
    let (mut kinds, mut seqs, mut times) = (Vec::new(), Vec::new(), Vec::new());
    for tap in taps {
        kinds.push(tap.kind as i64);
        seqs.push(i64::from(tap.seq) - i64::from(last.0));
        times.push(tap.at.wrapping_sub(last.1) as i64);
        last = (tap.seq, tap.at);
    }
    list([Item::Int(IN_ORDER), ints(kinds), ints(seqs), ints(times)])
}

fn read_in_order([kinds, seqs, times]: &[Vec<i64>; 3]) -> Result<Vec<WireTap>, HandoverError> {
    if kinds.len() != seqs.len() || kinds.len() != times.len() {
        return Err(HandoverError::NotReadable);
    }
    let mut last = (0u32, 0u64);
    let rows = kinds.iter().zip(seqs).zip(times);
    rows.map(|((kind, seq), time)| {
        let kind = usize::try_from(*kind)
            .ok()
            .filter(|kind| *kind < KINDS.len())
            .ok_or(HandoverError::NotReadable)?;
        let seq = i64::from(last.0)
            .checked_add(*seq)
            .and_then(|seq| u32::try_from(seq).ok())
            .ok_or(HandoverError::NotReadable)?;
        last = (seq, last.1.wrapping_add(*time as u64));
        Ok(WireTap {
            seq,
            at: last.1,
            kind,
        })
    })
    .collect()
}
