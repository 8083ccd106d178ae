//! Which record of a visit stands, in whatever order they arrived.
//!
//! Records of one occasion are put in the order in which they were made: an amendment behind what
//! it amends, a showing behind an earlier one. Of an amendment whose visit never came it is still
//! known that the first version is older. What was never signed stands for nothing that was.

use std::collections::HashSet;

use super::base::Value;
use super::{Inbox, RecordHead};
use crate::desk::DeskError;
use crate::handover::Handed;
use crate::record::{VisitId, What};
use crate::report::occasion;

/// A record among those of its occasion.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Version {
    pub number: i64,
    visit: VisitId,
    replaces: Option<VisitId>,
    /// When it was signed, in UTC milliseconds by the tablet's clock.
    signed_ms: Option<i64>,
    /// When its last entry was made, in milliseconds of the visit.
    last_ms: i64,
}

/// Puts the records of one occasion in the order in which they were made.
fn in_order(mut records: Vec<Version>) -> Vec<Version> {
    // Two showings of one visit: signed is later than not signed, more entries later than fewer.
    let showing = |it: &Version| (it.signed_ms.is_some(), it.last_ms, it.number);
    // Two versions of which neither names the other: the first one, then by when they were signed.
    let version = |it: &Version| {
        let signed_ms = it.signed_ms.unwrap_or(i64::MAX);
        (it.replaces.is_some(), signed_ms, it.visit.uuid())
    };
    let mut ordered = Vec::with_capacity(records.len());
    while !records.is_empty() {
        let left: HashSet<VisitId> = records.iter().map(|it| it.visit).collect();
        let is_free = |it: &&Version| it.replaces.is_none_or(|amended| !left.contains(&amended));
        // Records that amend each other in a ring: no tablet makes them.
        let next = (records.iter().filter(is_free).min_by_key(|it| version(it)))
            .or_else(|| records.iter().min_by_key(|it| version(it)));
        let Some(next) = next.map(|it| it.visit) else {
            break;
        };
        let (mut taken, rest): (Vec<_>, Vec<_>) =
            records.into_iter().partition(|it| it.visit == next);
        taken.sort_by_key(showing);
        ordered.extend(taken);
        records = rest;
    }
    ordered
}

/// The record that stands for one, of those of its occasion in their order.
fn stands_for(number: i64, ordered: &[Version]) -> Option<i64> {
    let place = ordered.iter().position(|it| it.number == number)?;
    let (own, later) = ordered[place..].split_first()?;
    let signed = later.iter().rfind(|it| it.signed_ms.is_some());
    let other = later.last().filter(|_| own.signed_ms.is_none());
    signed.or(other).map(|it| it.number)
}

impl Inbox {
    /// Writes down which version of its visit a record holds.
    pub(super) fn keep_version(&self, number: i64, handed: &Handed) -> Result<(), DeskError> {
        let Handed { pair, visit, .. } = handed;
        let entries = visit.journal.entries();
        let signed = entries
            .iter()
            .rfind(|it| matches!(it.what, What::Signed { .. }));
        let signed = signed.filter(|_| visit.journal.is_signed());
        let last = entries.last().map_or(0, |it| it.at.as_ms());
        let values = [
            number.into(),
            occasion(pair.id, visit.began).as_bytes().into(),
            signed.map_or(Value::Null, |it| it.wall.utc_ms().into()),
            i64::try_from(last).unwrap_or(i64::MAX).into(),
        ];
        self.base
            .change(include_str!("keep_version.sql"), &values)?;
        Ok(())
    }

    /// Writes it down for records that were kept before that was done. One that cannot be read any
    /// more stands by itself.
    pub(super) fn find_versions(&self) -> Result<(), DeskError> {
        let rows = self.base.rows(include_str!("versions_missing.sql"), &[])?;
        for mut row in rows {
            let number = row.whole()?;
            match self.record(number) {
                Ok(record) => self.keep_version(number, &record.handed)?,
                Err(error @ (DeskError::Store(_) | DeskError::ServerUnreachable)) => {
                    return Err(error);
                }
                Err(_) => {}
            }
        }
        Ok(())
    }

    /// Marks what a later record stands for. Beside each line, its occasion and how many records
    /// that has.
    pub(super) fn mark_replaced(
        &self,
        found: Vec<(RecordHead, Option<[u8; 16]>, u32)>,
    ) -> Result<Vec<RecordHead>, DeskError> {
        let mut heads = Vec::with_capacity(found.len());
        for (mut head, occasion, count) in found {
            if let Some(occasion) = occasion
                && 1 < count
            {
                head.replaced_by = stands_for(head.number, &self.of_occasion(&occasion)?);
            }
            heads.push(head);
        }
        Ok(heads)
    }

    /// The records made before and behind one, each in the order in which they were made.
    pub(super) fn around(&self, number: i64) -> Result<(Vec<Version>, Vec<Version>), DeskError> {
        let row = self
            .base
            .row(include_str!("occasion.sql"), &[number.into()])?;
        let Some(occasion) = row.map(|mut row| row.array::<16>()).transpose()? else {
            return Ok((vec![], vec![]));
        };
        let mut before = self.of_occasion(&occasion)?;
        let place = before.iter().position(|it| it.number == number);
        let behind = place.map_or(vec![], |place| before.split_off(place));
        Ok((before, behind.into_iter().skip(1).collect()))
    }

    fn of_occasion(&self, occasion: &[u8; 16]) -> Result<Vec<Version>, DeskError> {
        let rows = self
            .base
            .rows(include_str!("versions.sql"), &[occasion.into()])?;
        let records = rows.into_iter().map(|mut row| {
            Ok(Version {
                number: row.whole()?,
                visit: VisitId::of(row.uuid()?),
                replaces: row.uuid_or_none()?.map(VisitId::of),
                signed_ms: row.whole_or_none()?,
                last_ms: row.whole()?,
            })
        });
        Ok(in_order(records.collect::<Result<_, DeskError>>()?))
    }
}
