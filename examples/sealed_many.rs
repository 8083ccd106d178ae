//! Writes as many sealed records as asked for, for one desk, as JSON lines on standard output: first
//! the tablet's key code and its six words, then the pieces and the receipt of each record. Keys,
//! names and numbers are invented.
//!
//!     sealed_many DESK_KEY_AS_TYPED COUNT

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;

use feedside::handover::{DeskPublic, Fresh, VersionCap, pack};
use feedside::record::VisitId;
use uuid::Uuid;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let desk = DeskPublic::from_typed(&arguments.next().unwrap()).unwrap();
    let count: u32 = arguments.next().unwrap().parse().unwrap();
    let tablet = sample::tablet();
    println!(
        "{}",
        serde_json::json!({
            "code": tablet.public().to_code_text(),
            "words": tablet.public().fingerprint().join(" "),
        })
    );
    for number in 1..=count {
        let mut handed = sample::ordinary(number.into(), false);
        handed.visit.id = VisitId::of(Uuid::from_u128(number.into()));
        let mut bytes = [0x5a; 64];
        for (byte, at) in bytes.iter_mut().zip(0u32..) {
            *byte = (number.wrapping_mul(2_654_435_761) >> (at % 4 * 8)) as u8 ^ at as u8;
        }
        let fresh = Fresh::from_random(bytes);
        let packed = pack(&handed, &tablet, &desk, &fresh, VersionCap::V20).unwrap();
        println!(
            "{}",
            serde_json::json!({
                "pieces": packed.pieces,
                "receipt": packed.receipt.digits(),
            })
        );
    }
}
