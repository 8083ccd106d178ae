//! Benches of the room `desk`: records opened and stored, each durable, on a real disk; and a search
//! among many.

use std::sync::atomic::{AtomicU32, Ordering};

use feedside::desk::{Desk, Said};
use feedside::handover::{
    DeskPublic, FeedTable, Fresh, Handed, RunRow, TabletKey, VersionCap, pack,
};
use feedside::record::{
    At, Hold, Label, Pair, PairId, PolicyMark, Sex, Side, Visit, VisitId, WallTime, What,
};
use uuid::Uuid;

fn main() {
    divan::main();
}

fn wall(ms: i64) -> WallTime {
    WallTime::new(1_772_613_000_000 + ms, 60).expect("a time of this century")
}

fn label(text: &str) -> Label {
    Label::new(text).expect("a short label")
}

/// A visit of one feed with so many sucks at about 95 a minute, every fourth with a swallow.
fn handed(sucks: u32, taps: bool) -> Handed {
    let pair = Pair {
        id: PairId::of(Uuid::from_u128(1)),
        mother_id: None,
        bed: label("Bay 2 bed 4"),
        initials: label("Q. Z."),
        mother_number: None,
        baby_number: None,
        birth: wall(-100_000_000),
        sex: Sex::Female,
        gestation: None,
        birth_weight: None,
        way_of_birth: None,
        babies: 1,
        risk_notes: vec![],
        reasons: vec![],
        language: None,
    };
    let id = VisitId::of(Uuid::from_u128(2));
    let mut visit = Visit::new(id, pair.id, wall(0), label("kb"));
    let mut add = |at_ms: u64, what: What| {
        let at_wall = wall(i64::try_from(at_ms).unwrap_or(0));
        let entry = visit.journal.next(At::ms(at_ms), at_wall, what);
        visit.journal.push(entry).expect("an entry");
    };
    add(
        1_000,
        What::FeedStarted {
            side: Side::Left,
            hold: Hold::Cradle,
        },
    );
    let mut at_ms = 2_000;
    if taps {
        for suck in 0..sucks {
            at_ms += 560 + u64::from(suck * 7_919 % 140);
            let what = if suck % 4 == 3 {
                What::SuckSwallow
            } else {
                What::Suck
            };
            add(at_ms, what);
        }
    }
    add(at_ms + 5_000, What::Signed { by: label("kb") });
    let runs = (0..30)
        .map(|run: u32| RunRow {
            from: At::ms(2_000 + u64::from(run) * 30_000),
            to: At::ms(20_000 + u64::from(run) * 30_000),
            sucks: sucks / 30,
            swallows: sucks / 120,
        })
        .collect();
    Handed {
        pair,
        visit,
        taps,
        feeds: vec![FeedTable {
            watched_ms: at_ms,
            sucks,
            swallows: sucks / 4,
            runs,
            ..FeedTable::default()
        }],
        findings: vec![],
        unjudged: vec![],
        policy: PolicyMark {
            name: "published defaults".to_owned(),
            version: "1".to_owned(),
            hash: "00".repeat(32),
        },
        rule_versions: ["rhythm-1", "growth-1", "findings-1"].map(str::to_owned),
    }
}

fn desk(tablet: &TabletKey) -> (Desk, DeskPublic) {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    let folder = std::env::temp_dir().join(format!(
        "feedside-bench-desk-{}-{}",
        std::process::id(),
        NEXT.fetch_add(1, Ordering::Relaxed)
    ));
    let mut desk = Desk::open(&folder).expect("a desk");
    let public = desk.new_key([5; 32], wall(0)).expect("a key");
    desk.enrol(tablet.public(), &label("Tablet 1"), wall(0))
        .expect("enrolled");
    (desk, public)
}

/// One record: all its scans taken, opened, its signature proved, stored, receipt given. `taps` of
/// nought is the record in one code without single taps.
#[divan::bench(args = [0, 1_200], sample_count = 200, sample_size = 1)]
fn record_opened_and_stored(bencher: divan::Bencher, taps: u32) {
    let tablet = TabletKey::from_random([7; 32]);
    let (mut desk, public) = desk(&tablet);
    let handed = handed(1_200, 0 < taps);
    let mut seed = 0_u32;
    bencher
        .with_inputs(|| {
            seed += 1;
            let mut random = [0; 64];
            random[..4].copy_from_slice(&seed.to_be_bytes());
            random[20..24].copy_from_slice(&seed.to_be_bytes());
            let fresh = Fresh::from_random(random);
            pack(&handed, &tablet, &public, &fresh, VersionCap::V20)
                .expect("a record")
                .pieces
        })
        .bench_local_refs(|pieces| {
            let said: Vec<Said> = pieces
                .iter()
                .flat_map(|piece| desk.take(piece, wall(0)))
                .collect();
            assert!(matches!(said.last(), Some(Said::Kept(_))));
        });
}

/// How many records a large hospital's inbox may hold.
const MANY: u32 = 100_000;

/// An inbox with many records: one that is real, and copies of its row in other beds.
fn full() -> Desk {
    let tablet = TabletKey::from_random([7; 32]);
    let folder = std::env::temp_dir().join(format!("feedside-bench-full-{}", std::process::id()));
    let mut desk = Desk::open(&folder).expect("a desk");
    let public = desk.new_key([5; 32], wall(0)).expect("a key");
    desk.enrol(tablet.public(), &label("Tablet 1"), wall(0))
        .expect("enrolled");
    let fresh = Fresh::from_random([3; 64]);
    let packed = pack(
        &handed(1_200, false),
        &tablet,
        &public,
        &fresh,
        VersionCap::V20,
    );
    for piece in packed.expect("a record").pieces {
        desk.take(&piece, wall(0));
    }
    let connection = rusqlite::Connection::open(folder.join("desk.sqlite")).expect("the file");
    connection
        .execute_batch(&format!(
            "BEGIN;
             WITH RECURSIVE n (n) AS (SELECT 2 UNION ALL SELECT n + 1 FROM n WHERE n < {MANY})
             INSERT INTO record
             SELECT n, randomblob(32), transfer, sealed, opened,
                 substr('0000000000' || abs(random()), -10), tablet, desk, arrived_utc_ms,
                 arrived_offset_min, randomblob(16), NULL, began_utc_ms + n * 60000,
                 began_offset_min, 'Bay ' || (n % 40) || ' bed ' || (n % 7),
                 char(65 + n % 26) || '. ' || char(65 + n / 26 % 26) || '.', specialist, is_signed,
                 reviews_now
             FROM n, record AS r WHERE r.number = 1;
             INSERT INTO record_words
             SELECT number, ' ' || number || ' ' || lower(bed) || ' ' || lower(initials) || ' '
                 || specialist || ' ' || receipt || ' '
                 || date(began_utc_ms / 1000, 'unixepoch')
             FROM record WHERE 1 < number;
             COMMIT;"
        ))
        .expect("many records");
    desk
}

/// What a clerk types into the search among 100,000 records: nothing (the newest), a bed and
/// initials, a day, the beginning of a receipt, and something that is not there.
#[divan::bench(
    args = ["", "bay 12 q. z.", "2026-03-20", "0421", "nobody"],
    sample_count = 30,
    sample_size = 1
)]
fn search_among_100_000(bencher: divan::Bencher, text: &str) {
    static FULL: std::sync::OnceLock<std::sync::Mutex<Desk>> = std::sync::OnceLock::new();
    let desk = FULL.get_or_init(|| std::sync::Mutex::new(full()));
    let desk = desk.lock().expect("the desk");
    bencher.bench_local(|| {
        desk.inbox()
            .search(divan::black_box(text), 50)
            .expect("a search")
    });
}
