//! Tests of the room `store`.
#![cfg(feature = "store")]

mod append_only;
mod damage;
mod frozen;
mod kept;
mod killed;
mod leaving;
mod vault;
mod ward;

use std::path::{Path, PathBuf};

use feedside::record::{
    At, Coded, Entry, Gestation, Grams, Label, Language, Pair, PairId, Reason, RiskNote, Sex,
    Visit, VisitId, WallTime, WayOfBirth, What,
};
use feedside::store::Store;
use uuid::Uuid;

/// A folder of its own for one test; gone when the test ends well.
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new(name: &str) -> Self {
        let path =
            Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}-{}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    pub(crate) fn file(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }

    pub(crate) fn names(&self) -> Vec<String> {
        let mut names: Vec<String> = std::fs::read_dir(&self.0)
            .unwrap()
            .map(|file| file.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        if !std::thread::panicking() {
            let _ = std::fs::remove_dir_all(&self.0);
        }
    }
}

pub(crate) const BEGAN_MS: i64 = 1_772_334_000_000; // 2026-03-01 03:00 UTC

pub(crate) fn wall(after_ms: i64) -> WallTime {
    WallTime::new(BEGAN_MS + after_ms, 60).unwrap()
}

pub(crate) fn label(text: &str) -> Label {
    Label::new(text).unwrap()
}

pub(crate) fn pair(number: u128) -> Pair {
    Pair {
        id: PairId::of(Uuid::from_u128(0x1000 + number)),
        mother_id: Some(Uuid::from_u128(7)),
        bed: label(&format!("Bay 2 bed {number:03}")),
        initials: label("Q. Z."),
        mother_number: Some(label("M-0001")),
        baby_number: None,
        birth: wall(-36 * 3_600_000),
        sex: Sex::Female,
        gestation: Some(Gestation::weeks_days(38, 4).unwrap()),
        birth_weight: Some(Grams::new(3_180).unwrap()),
        way_of_birth: Some(WayOfBirth::Caesarean),
        babies: 1,
        risk_notes: vec![
            Coded::Known(RiskNote::EarlyTerm),
            Coded::Unknown("from_a_later_version".to_owned()),
        ],
        reasons: vec![Coded::Known(Reason::Pain)],
        language: Some(Language::new("pt-BR").unwrap()),
    }
}

pub(crate) fn visit(number: u128, of: u128, began_ms: i64) -> Visit {
    Visit::new(
        VisitId::of(Uuid::from_u128(0x2000 + number)),
        pair(of).id,
        wall(began_ms),
        label("feeding lead"),
    )
}

pub(crate) fn entry(seq: u32, what: What) -> Entry {
    let at_ms = u64::from(seq) * 700;
    Entry {
        seq,
        at: At::ms(at_ms),
        wall: wall(i64::from(seq) * 700),
        what,
        newer: None,
    }
}

/// A store with one pair and one visit begun.
pub(crate) fn begun(store: &Store) -> VisitId {
    store.save_pair(&pair(1)).unwrap();
    let visit = visit(1, 1, 0);
    store.begin_visit(&visit).unwrap();
    visit.id
}
