//! How many codes simulated visits take: `cargo run --release --no-default-features --example
//! code_sizes [VISITS]` prints mean, largest and share in one code without single taps, and the
//! codes that all taps take; then where the bytes of a record go.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/visits.rs"]
mod visits;

use std::collections::BTreeMap;

use feedside::handover::cbor::Item;
use feedside::handover::{DeskKeyPair, Handed, TabletKey, coding, qr, seal, sign, squeeze, wire};
use feedside::handover::{VersionCap, cbor};

const FIELDS: [(i64, &str); 10] = [
    (2, "pair"),
    (3, "visit"),
    (4, "journal"),
    (5, "with taps"),
    (6, "feeds"),
    (7, "findings"),
    (8, "not judged"),
    (9, "policy"),
    (10, "rule versions"),
    (0, "version"),
];

fn main() {
    let visits: u64 = std::env::args()
        .nth(1)
        .and_then(|it| it.parse().ok())
        .unwrap_or(500);
    let mut told: Vec<(usize, usize, usize)> = Vec::new();
    let mut fields = [0i64; FIELDS.len()];
    let mut parts = BTreeMap::new();
    for seed in 0..visits {
        let whole = visits::visit(seed, &visits::ORDINARY);
        let less = whole.for_codes(false).unwrap();
        let with = whole.for_codes(true).unwrap();
        let taps = with.visit.journal.entries().len() - less.visit.journal.entries().len();
        told.push((sealed(&less), sealed(&with), taps));
        if seed < 50 {
            each_field(&less, &mut fields);
            each_part(&less, &mut parts);
        }
    }
    let count = told.len() as f64;
    for cap in VersionCap::ALL {
        let most = qr::payload_most(cap.version());
        let codes = |bytes: usize| bytes.div_ceil(most);
        let one = told.iter().filter(|it| codes(it.0) == 1).count();
        let mean = told.iter().map(|it| it.0).sum::<usize>() as f64 / count;
        let largest = told.iter().map(|it| it.0).max().unwrap();
        println!(
            "version {}: {most} bytes a code; sealed mean {mean:.0}, largest {largest}; in one code \
             {:.1} %, most codes {}",
            cap.version(),
            100.0 * one as f64 / count,
            codes(largest),
        );
        let with = told.iter().map(|it| codes(it.1)).max().unwrap();
        let many = told.iter().filter(|it| 1_100 <= it.2 && it.2 <= 1_200);
        let (many, codes_many) = many.fold((0, 0), |(n, most), it| (n + 1, codes(it.1).max(most)));
        let taps = told.iter().map(|it| it.2).max().unwrap();
        println!(
            "  with all taps (at most {taps}): at most {with} codes; of {many} visits with 1,100 to \
             1,200 taps: at most {codes_many}"
        );
    }
    let taps = told.iter().map(|it| it.2).sum::<usize>() as f64;
    let with = told.iter().map(|it| it.1).sum::<usize>() as f64;
    println!(
        "with all taps: sealed mean {:.0}; {:.2} bits a tap more than without, of {:.0} taps in the mean",
        with / count,
        8.0 * (with - told.iter().map(|it| it.0).sum::<usize>() as f64) / taps,
        taps / count,
    );
    let seals = 1 + 8 + 32 + 16 + 8 + 64 + 1;
    println!("bytes of a record: version, key ids, one-time key, tag, signature, coding {seals}");
    for ((_, name), bytes) in FIELDS.iter().zip(fields) {
        println!("  {name}: {:.0}", bytes as f64 / visits.min(50) as f64);
    }
    for (way, bytes) in parts {
        println!("  {way:?}: {:.1}", bytes as f64 / visits.min(50) as f64);
    }
}

fn sealed(handed: &Handed) -> usize {
    let (tablet, desk) = (
        TabletKey::from_random([7; 32]),
        DeskKeyPair::from_random([9; 32]).unwrap(),
    );
    let signed = sign::sign(coding::pack(handed).unwrap(), &tablet, &desk.public().kid()).unwrap();
    let short = sign::shorten(&signed).unwrap();
    seal::seal(&short, &desk.public(), &[3; 32])
        .unwrap()
        .0
        .len()
}

/// What the first feed's and the journal's columns take, by their places on the way down.
fn each_part(handed: &Handed, parts: &mut BTreeMap<Vec<usize>, i64>) {
    fn at<'i>(item: &'i mut Item, way: &[usize]) -> Option<&'i mut Item> {
        let Some((first, rest)) = way.split_first() else {
            return Some(item);
        };
        match item {
            Item::List(items) => at(items.get_mut(*first)?, rest),
            Item::Map(pairs) => {
                let found = pairs
                    .iter_mut()
                    .find(|(it, _)| *it == Item::Int(*first as i64));
                at(&mut found?.1, rest)
            }
            _ => None,
        }
    }
    let content = cbor::to_bytes(&wire::to_wire(handed).unwrap()).unwrap();
    let all = cbor::from_bytes(&content).unwrap();
    let whole = squeeze::squeeze(&all).unwrap().len() as i64;
    let journal = (0..7).map(|column| vec![4, column]);
    let runs = (0..5).map(|column| vec![6, 0, 1, 1, column]);
    let phases = (0..5).map(|column| vec![6, 0, 2, column]);
    let rates = (0..6).map(|column| vec![6, 0, 5, column]);
    let rest = [3, 4, 6].map(|column| vec![6, 0, column]);
    for way in journal.chain(runs).chain(phases).chain(rates).chain(rest) {
        let mut less = all.clone();
        if let Some(part) = at(&mut less, &way) {
            *part = Item::Null;
            let less = squeeze::squeeze(&less).unwrap().len() as i64;
            *parts.entry(way).or_default() += whole - less;
        }
    }
}

/// What a record would take less without each field.
fn each_field(handed: &Handed, fields: &mut [i64; FIELDS.len()]) {
    let content = cbor::to_bytes(&wire::to_wire(handed).unwrap()).unwrap();
    let Item::Map(all) = cbor::from_bytes(&content).unwrap() else {
        return;
    };
    let whole = squeeze::squeeze(&Item::Map(all.clone())).unwrap().len() as i64;
    for (bytes, (key, _)) in fields.iter_mut().zip(FIELDS) {
        let mut less = all.clone();
        for (_, value) in less.iter_mut().filter(|(it, _)| *it == Item::Int(key)) {
            *value = Item::Null;
        }
        *bytes += whole - squeeze::squeeze(&Item::Map(less)).unwrap().len() as i64;
    }
}
