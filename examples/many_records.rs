//! Writes what a tablet would show for many invented visits, for checks of a desk from outside: the
//! tablet's key code, its six words, then the text of each code, a line each.
//!
//!     many_records KEY COUNT [FOLDER]
//!
//! KEY is the desk's key as `feedside-desk keys show` writes it. Into FOLDER, which must be there,
//! goes a picture of each code.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;

use std::path::{Path, PathBuf};

use feedside::handover::{Code, DeskPublic, Fresh, VersionCap, pack};
use feedside::record::VisitId;
use image::GrayImage;
use uuid::Uuid;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let desk = DeskPublic::from_typed(&arguments.next().unwrap()).unwrap();
    let count: u32 = arguments.next().unwrap().parse().unwrap();
    let folder = arguments.next().map(PathBuf::from);
    let tablet = sample::tablet();
    println!("{}", tablet.public().to_code_text());
    println!("{}", tablet.public().fingerprint().join(" "));
    for number in 1..=count {
        let mut handed = sample::ordinary(number.into(), false);
        // Visits of one pair, an hour apart.
        handed.visit.id = VisitId::of(Uuid::from_u128(0x5eed_0000 + u128::from(number)));
        handed.visit.began = handed.visit.began.plus_ms(i64::from(number) * 3_600_000);
        let mut random = [0x5e; 64];
        for at in [0, 4, 20] {
            random[at..at + 4].copy_from_slice(&number.to_be_bytes());
        }
        let fresh = Fresh::from_random(random);
        let packed = pack(&handed, &tablet, &desk, &fresh, VersionCap::V20).unwrap();
        for piece in &packed.pieces {
            println!("{piece}");
        }
        if let Some(folder) = &folder {
            for (at, code) in packed.codes.iter().enumerate() {
                draw(
                    code,
                    &folder.join(format!("record-{number}-code-{}.png", at + 1)),
                );
            }
        }
    }
}

/// Four pixels a module and four modules of quiet around it (ISO/IEC 18004).
fn draw(code: &Code, file: &Path) {
    let (side, pixels) = code.to_luma(4, 4);
    let side = u32::try_from(side).unwrap();
    let picture = GrayImage::from_raw(side, side, pixels).unwrap();
    picture.save(file).unwrap();
}
