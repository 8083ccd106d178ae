//! Tests of the room `desk`.
#![cfg(feature = "desk")]

mod commands;
mod exports;
mod far;
mod faults;
mod inbox;
mod keys;
mod listening;
mod pictures;
pub(crate) mod place;
mod receiving;
mod sending;
mod several;
mod tables;
mod versions;

use feedside::desk::{Desk, Kept, Said};
use feedside::findings::Level;
use feedside::handover::{
    DeskPublic, FeedTable, FindingRow, Fresh, Handed, NumberRow, Packed, PhaseRow, RateRow, RunRow,
    TabletKey, VersionCap, pack,
};
use feedside::record::{At, Coded, Label, PlanWhat, Visit, WallTime};

use crate::support;

/// An hour after the sample visit began.
pub(crate) fn now() -> WallTime {
    support::sample_began().plus_ms(3_600_000)
}

pub(crate) fn tablet() -> TabletKey {
    TabletKey::from_random([7; 32])
}

/// A table of one feed, invented.
pub(crate) fn table() -> FeedTable {
    let phase = |from, to, phase: &str, percent| PhaseRow {
        from: At::ms(from),
        to: At::ms(to),
        phase: phase.to_owned(),
        percent,
    };
    FeedTable {
        watched_ms: 280_000,
        sucks: 40,
        swallows: 13,
        first_flow: Some(At::ms(140_000)),
        phases: vec![
            phase(100_000, 140_000, "quick", 80),
            phase(140_000, 200_000, "flow", 90),
            phase(200_000, 220_000, "rest", 95),
            phase(220_000, 250_000, "flow", 85),
            phase(250_000, 280_000, "flutter", 70),
            phase(280_000, 300_000, "unwatched", 100),
            phase(300_000, 400_000, "rest", 99),
        ],
        runs: vec![
            RunRow {
                from: At::ms(130_000),
                to: At::ms(200_000),
                sucks: 30,
                swallows: 10,
            },
            RunRow {
                from: At::ms(220_000),
                to: At::ms(280_000),
                sucks: 10,
                swallows: 3,
            },
        ],
        rates: vec![
            RateRow {
                phase: Some("flow".to_owned()),
                per_min: true,
                hundredths: [8_950, 8_000, 9_900],
            },
            RateRow {
                phase: Some("flow".to_owned()),
                per_min: false,
                hundredths: [250, 200, 310],
            },
            RateRow {
                phase: None,
                per_min: true,
                hundredths: [9_100, 8_800, 9_400],
            },
        ],
        doubts: vec!["few_swallows".to_owned()],
    }
}

pub(crate) fn finding(level: &str) -> FindingRow {
    FindingRow {
        rule: "weight-loss-over-ten".to_owned(),
        level: level.to_owned(),
        numbers: vec![NumberRow {
            name: "loss".to_owned(),
            value: 103,
            unit: "tenths_percent".to_owned(),
        }],
        source: "nice-ng194".to_owned(),
        tries: vec![],
        plan: vec![Coded::Known(PlanWhat::WeighAgain)],
        call: "baby_doctor".to_owned(),
    }
}

pub(crate) fn handed_of(visit: Visit) -> Handed {
    Handed {
        pair: support::sample_pair(),
        visit,
        taps: true,
        feeds: vec![table()],
        findings: vec![finding(Level::MedicalReviewNow.as_word())],
        unjudged: vec![("jaundice-early".to_owned(), vec!["jaundice".to_owned()])],
        policy: support::sample_policy(),
        rule_versions: ["rhythm-1", "growth-0", "findings-1"].map(str::to_owned),
    }
}

/// A record for a desk; another seed is another showing.
pub(crate) fn packed_as(handed: &Handed, desk: &DeskPublic, seed: u8) -> Packed {
    let fresh = Fresh::from_random([seed; 64]);
    pack(handed, &tablet(), desk, &fresh, VersionCap::V15).unwrap()
}

pub(crate) fn packed(desk: &DeskPublic) -> Packed {
    packed_as(&handed_of(support::sample_visit()), desk, 3)
}

/// A desk with a key, and the tablet enrolled.
pub(crate) fn set_up() -> (Desk, DeskPublic) {
    let mut desk = place::new_desk();
    let public = desk.new_key([5; 32], now()).unwrap();
    let name = Label::new("Tablet 1").unwrap();
    desk.enrol(tablet().public(), &name, now()).unwrap();
    (desk, public)
}

/// Takes every piece; the last answer must be a kept record.
pub(crate) fn take_all(desk: &mut Desk, packed: &Packed) -> Kept {
    let mut last = None;
    for piece in &packed.pieces {
        last = desk.take(piece, now()).pop();
    }
    match last {
        Some(Said::Kept(kept)) => kept,
        other => panic!("{other:?}"),
    }
}
