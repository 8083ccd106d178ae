//! The figures that the rehearsal can measure on this machine, each in microseconds.

use std::path::Path;
use std::time::Instant;

use serde_json::{Value, json};

use crate::app::bedside::{Event as Bedside, PadKind};
use crate::app::demo;
use crate::app::event::Event;
use crate::desk::Desk;
use crate::handover::{Code, VersionCap, qr};
use crate::record::{At, What};
use crate::rhythm::Rhythm;
use crate::store::Store;
use crate::store::vault::{Cost, Vault};

use super::RehearseError;
use super::album::Album;
use super::ward::Tablet;

/// How many taps are timed to disk.
const DURABLE_TAPS: u32 = 500;
/// How many frames are timed.
const FRAMES: u32 = 20;
/// How many pushes are timed.
const PUSHES: u64 = 6_000;

/// Median and 99th percentile in microseconds.
fn spread(mut micros: Vec<u128>) -> Value {
    micros.sort_unstable();
    let at = |percent: usize| micros.get(micros.len().saturating_sub(1) * percent / 100);
    json!({ "median_us": at(50), "p99_us": at(99), "count": micros.len() })
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, u128) {
    let start = Instant::now();
    let done = work();
    (done, start.elapsed().as_micros())
}

/// Measures.
pub fn measure(
    tablet: &mut Tablet,
    desk: &mut Desk,
    album: &Album,
    out: &Path,
) -> Result<Value, RehearseError> {
    let _ = desk;
    Ok(json!({
        "built": if cfg!(debug_assertions) { "debug" } else { "release" },
        "tap_to_durable_entry": durable(out, tablet)?,
        "push": push(),
        "feed_of_6000_taps_analysed_again": again(),
        "touch_to_picture": touch(tablet, album),
        "code_drawn": drawn(tablet)?,
    }))
}

fn durable(out: &Path, tablet: &Tablet) -> Result<Value, RehearseError> {
    // Made for this rehearsal, and empty but for its mark.
    let folder = out.join("timing");
    // Encrypted, as on the tablet.
    let vault = Vault::of(&folder, Cost::LEAST)?;
    let key = vault
        .key_without_pin()?
        .ok_or(RehearseError::Step("the timing's store is locked"))?;
    let store = Store::open_locked(vault, &key)?;
    let wall = tablet.start.wall;
    let mut micros = Vec::new();
    if let Some((pair, visits)) = demo::ward(wall).into_iter().next()
        && let Some(mut visit) = visits.into_iter().next()
    {
        visit.journal = crate::record::Journal::new();
        store.save_pair(&pair)?;
        store.begin_visit(&visit)?;
        for index in 0..DURABLE_TAPS {
            let entry = visit
                .journal
                .next(At::ms(u64::from(index) * 600), wall, What::Suck);
            let (stored, us) = timed(|| store.append(visit.id, &entry));
            stored?;
            let _ = visit.journal.push(entry);
            micros.push(us);
        }
    }
    drop(store);
    Ok(spread(micros))
}

fn taps() -> impl Iterator<Item = crate::record::Tap> {
    use crate::record::{Tap, TapWhat};
    (0..PUSHES).map(|index| {
        let what = match index {
            0 => TapWhat::On,
            _ if index % 3 == 0 => TapWhat::SuckSwallow,
            _ => TapWhat::Suck,
        };
        // A rest after every tenth suck.
        Tap::new(index * 620 + index / 10 * 5_000, what)
    })
}

fn push() -> Value {
    let mut rhythm = Rhythm::new();
    let (_, us) = timed(|| taps().for_each(|tap| rhythm.push(tap)));
    json!({ "mean_ns": us * 1000 / u128::from(PUSHES), "count": PUSHES })
}

fn again() -> Value {
    let mut rhythm = Rhythm::new();
    taps().for_each(|tap| rhythm.push(tap));
    spread((0..5).map(|_| timed(|| rhythm.so_far()).1).collect())
}

/// A touch on a pad until the picture shows it, on the bedside screen of a feed that runs.
fn touch(tablet: &mut Tablet, album: &Album) -> Value {
    let micros = (0..FRAMES)
        .map(|_| {
            tablet.clock.forward_ms(600);
            timed(|| {
                tablet.hear(Event::Bedside(Bedside::Tapped(PadKind::Suck)));
                album.draw();
            })
            .1
        })
        .collect();
    spread(micros)
}

fn drawn(tablet: &Tablet) -> Result<Value, RehearseError> {
    let text = tablet
        .shell
        .handover()
        .shown
        .as_ref()
        .and_then(|shown| shown.pieces.first().cloned())
        .unwrap_or_default();
    let mut micros = Vec::new();
    for _ in 0..FRAMES {
        let (code, us): (Result<Code, _>, u128) = timed(|| qr::draw_digits(&text, VersionCap::V20));
        code?;
        micros.push(us);
    }
    Ok(spread(micros))
}
