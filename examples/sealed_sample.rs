//! Writes one sealed sample record with everything that is needed to open it elsewhere, as JSON on
//! standard output. Keys, names and numbers are invented.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;

use feedside::handover::{VersionCap, cbor, coding, pack, wire};

fn main() {
    let (tablet, desk, fresh) = (sample::tablet(), sample::desk(), sample::fresh(1));
    let handed = sample::ordinary(4, true);
    let packed = pack(&handed, &tablet, &desk.public(), &fresh, VersionCap::V20).unwrap();
    let content = cbor::to_bytes(&wire::to_wire(&handed).unwrap()).unwrap();
    let item = cbor::from_bytes(&content).unwrap();
    let deflated = coding::packed_as(coding::DEFLATED, &item).unwrap();
    let entries = handed.visit.journal.entries();
    let taps = entries.iter().filter(|entry| entry.what.is_tap()).count();
    let sample = serde_json::json!({
        "desk_secret": sample::hex(&*desk.secret_bytes()),
        "desk_kid": desk.public().kid().to_string(),
        "tablet_public": sample::hex(&tablet.public().to_bytes()),
        "tablet_kid": tablet.public().kid().to_string(),
        "transfer": packed.transfer,
        "pieces": packed.pieces,
        "sealed": sample::hex(&packed.sealed),
        "content": sample::hex(&content),
        "deflated": sample::hex(&deflated),
        "receipt": packed.receipt.digits(),
        "taps": taps,
        "entries": entries.len(),
        "specialist": handed.visit.specialist.as_str(),
    });
    println!("{sample:#}");
}
