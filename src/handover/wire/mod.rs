//! Checked values to the wire form and back. The version comes first and rules everything after it.
//!
//! Values are taken apart without `..`, so that a new field cannot be forgotten; what comes back
//! goes through the same checked constructors as what is typed. Known words travel by their number
//! in the frozen list, others as text, so that nothing a newer version wrote is lost.

mod feed;
mod field;
mod finding;
mod journal;
mod pair;
mod taps;

use super::cbor::Item;
use super::{Handed, HandoverError};
use crate::record::{PolicyMark, Visit, VisitId};
use feed::Jaws;
use field::{Fields, list, map, wall, words};

/// The version of the wire form.
pub const WIRE_VERSION: u8 = 2;

const VERSION: i64 = 0;
const PAIR: i64 = 2;
const VISIT: i64 = 3;
const JOURNAL: i64 = 4;
const TAPS: i64 = 5;
const FEEDS: i64 = 6;
const FINDINGS: i64 = 7;
const UNJUDGED: i64 = 8;
const POLICY: i64 = 9;
const RULE_VERSIONS: i64 = 10;

const VISIT_ID: i64 = 0;
const VISIT_PAIR: i64 = 1;
const VISIT_BEGAN: i64 = 2;
const VISIT_SPECIALIST: i64 = 3;
const VISIT_REPLACES: i64 = 4;

/// Lays a record out.
///
/// # Errors
/// [`HandoverError::TooLarge`] for more entries than a record may have.
pub fn to_wire(handed: &Handed) -> Result<Item, HandoverError> {
    let Handed {
        pair,
        visit,
        taps,
        feeds,
        findings,
        unjudged,
        policy,
        rule_versions,
    } = handed;
    let Visit {
        id,
        pair: visit_pair,
        began,
        specialist,
        replaces,
        journal,
    } = visit;
    let visit_item = map([
        (VISIT_ID, Some(uuid(id.uuid()))),
        (
            VISIT_PAIR,
            (*visit_pair != pair.id).then(|| uuid(visit_pair.uuid())),
        ),
        (VISIT_BEGAN, Some(wall(*began))),
        (
            VISIT_SPECIALIST,
            Some(Item::Text(specialist.as_str().to_owned())),
        ),
        (VISIT_REPLACES, replaces.map(|id| uuid(id.uuid()))),
    ]);
    let jaws = Jaws::of(journal.entries());
    Ok(map([
        (VERSION, Some(Item::Int(WIRE_VERSION.into()))),
        (PAIR, Some(pair::to_wire(pair, *began))),
        (VISIT, Some(visit_item)),
        (JOURNAL, Some(journal::to_wire(journal, *began)?)),
        (TAPS, Some(Item::Bool(*taps))),
        (
            FEEDS,
            Some(list(feeds.iter().map(|table| feed::to_wire(table, &jaws)))),
        ),
        (FINDINGS, Some(finding::to_wire(findings))),
        (UNJUDGED, Some(finding::unjudged_to_wire(unjudged))),
        (POLICY, Some(policy_to_wire(policy))),
        (
            RULE_VERSIONS,
            Some(words(rule_versions.iter().map(String::as_str))),
        ),
    ]))
}

/// Reads a record.
///
/// # Errors
/// [`HandoverError::UnknownVersion`] before anything else is looked at;
/// [`HandoverError::NotReadable`] for another layout; [`HandoverError::NotPossible`] for values
/// that the record refuses.
pub fn of_wire(item: Item) -> Result<Handed, HandoverError> {
    let mut fields = Fields::of(item)?;
    match fields.take(VERSION)?.small::<u8>()? {
        WIRE_VERSION => {}
        found => return Err(HandoverError::UnknownVersion { found }),
    }
    let mut visit = Fields::of(fields.take(VISIT)?)?;
    let began = visit.take(VISIT_BEGAN)?.wall()?;
    let pair = pair::of_wire(fields.take(PAIR)?, began)?;
    let id = VisitId::of(visit.take(VISIT_ID)?.uuid()?);
    let visit_pair = match visit.maybe(VISIT_PAIR) {
        Some(item) => crate::record::PairId::of(item.uuid()?),
        None => pair.id,
    };
    let specialist = visit.take(VISIT_SPECIALIST)?.label()?;
    let replaces = visit
        .maybe(VISIT_REPLACES)
        .map(|item| item.uuid().map(VisitId::of))
        .transpose()?;
    visit.end()?;
    let journal = journal::of_wire(fields.take(JOURNAL)?, began)?;

    let jaws = Jaws::of(journal.entries());

    let handed = Handed {
        visit: Visit {
            id,
            pair: visit_pair,
            began,
            specialist,
            replaces,
            journal,
        },
        pair,
        taps: fields.take(TAPS)?.bool()?,
        feeds: fields
            .take(FEEDS)?
            .each(|table| feed::of_wire(table, &jaws))?,
        findings: finding::of_wire(fields.take(FINDINGS)?)?,
        unjudged: finding::unjudged_of_wire(fields.take(UNJUDGED)?)?,
        policy: policy_of_wire(fields.take(POLICY)?)?,
        rule_versions: {
            let [rhythm, growth, findings] = fields.take(RULE_VERSIONS)?.array()?;
            [rhythm.word()?, growth.word()?, findings.word()?]
        },
    };
    fields.end()?;
    Ok(handed)
}

fn uuid(uuid: uuid::Uuid) -> Item {
    Item::Bytes(uuid.as_bytes().to_vec())
}

fn policy_to_wire(policy: &PolicyMark) -> Item {
    let PolicyMark {
        name,
        version,
        hash,
    } = policy;
    let hash = field::bytes_of_hex(hash).map_or_else(|| Item::Text(hash.clone()), Item::Bytes);
    list([Item::Text(name.clone()), Item::Text(version.clone()), hash])
}

fn policy_of_wire(item: Item) -> Result<PolicyMark, HandoverError> {
    let [name, version, hash] = item.array()?;
    Ok(PolicyMark {
        name: name.text()?,
        version: version.text()?,
        hash: match hash {
            Item::Bytes(bytes) => field::hex(&bytes),
            other => other.text()?,
        },
    })
}
