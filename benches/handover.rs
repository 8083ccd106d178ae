//! Benches of the room `handover`: packing, drawing and opening an ordinary record.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;

use divan::{Bencher, black_box};
use feedside::handover::{Collector, VersionCap, open, pack, qr, read_back};

fn main() {
    divan::main();
}

fn packed(taps: bool) -> feedside::handover::Packed {
    pack(
        &sample::ordinary(4, taps),
        &sample::tablet(),
        &sample::desk().public(),
        &sample::fresh(1),
        VersionCap::V20,
    )
    .unwrap()
}

/// Record to codes, each read back.
#[divan::bench(args = [false, true])]
fn pack_and_read_back(bencher: Bencher<'_, '_>, taps: bool) {
    let handed = sample::ordinary(4, taps);
    let (tablet, desk) = (sample::tablet(), sample::desk().public());
    bencher.bench(|| {
        pack(
            black_box(&handed),
            &tablet,
            &desk,
            &sample::fresh(1),
            VersionCap::V20,
        )
    });
}

/// One full code of each cap.
#[divan::bench(args = [15, 20, 25])]
fn draw(bencher: Bencher<'_, '_>, version: u8) {
    let text = "7".repeat(qr::digits_most(version));
    bencher.bench(|| qr::draw_digits_at(black_box(&text), version));
}

/// One full code of version 20 from its picture.
#[divan::bench]
fn read_picture(bencher: Bencher<'_, '_>) {
    let code = qr::draw_digits_at(&"7".repeat(qr::digits_most(20)), 20).unwrap();
    let (side, pixels) = code.to_luma(4, qr::QUIET_MODULES);
    bencher.bench(|| read_back::read_one(black_box(pixels.clone()), side, side));
}

/// Scanned texts to a sealed record.
#[divan::bench]
fn collect(bencher: Bencher<'_, '_>) {
    let packed = packed(true);
    bencher.bench(|| {
        let mut collector = Collector::new();
        packed
            .pieces
            .iter()
            .map(|text| collector.offer(black_box(text)))
            .last()
    });
}

/// A sealed record to checked values.
#[divan::bench(args = [false, true])]
fn open_sealed(bencher: Bencher<'_, '_>, taps: bool) {
    let packed = packed(taps);
    let desks = [sample::desk()];
    let tablet = sample::tablet().public();
    bencher.bench(|| open(black_box(&packed.sealed), &desks, &|_| Some(tablet)));
}
