//! A feed as it runs: takes taps as they come, and says at any time what is so, or what can be said
//! looking back. Keeps the taps; what they amount to is `now`'s, and `smooth`'s looking back.

use super::learn::Numbers;
use super::now::Now;
use super::summary::{Live, PhaseRates, PhaseSpan, Summary};
use super::watch::Watch;
use crate::record::{At, BoundaryMoved, Tap, TapWhat};

/// The rhythm of one feed as it runs.
#[derive(Debug, Clone)]
pub struct Rhythm {
    taps: Vec<Tap>,
    unresolved: u32,
    out_of_order: u32,
    boundaries: Vec<BoundaryMoved>,
    now: Now,
}

impl Default for Rhythm {
    fn default() -> Self {
        Self::new()
    }
}

/// The rhythm of a whole feed: a loop over [`Rhythm::push`].
pub fn of(taps: &[Tap]) -> Summary {
    Rhythm::after(taps).so_far()
}

/// How the baby sucks over all of these taps, whatever the phases: for comparing one stretch of a
/// feed with another. The intervals take the runs seen for a sample of its way; see [`Rate`](super::Rate).
pub fn way(taps: &[Tap]) -> PhaseRates {
    let rhythm = Rhythm::after(taps);
    let numbers = Numbers::Learnt(rhythm.now.starts());
    super::smooth::way(&rhythm.taps, &numbers, rhythm.now.rest_ms())
}

impl Rhythm {
    /// A feed with no tap yet.
    pub fn new() -> Self {
        Self {
            taps: Vec::new(),
            unresolved: 0,
            out_of_order: 0,
            boundaries: Vec::new(),
            now: Now::new(),
        }
    }

    /// A feed after these taps.
    fn after(taps: &[Tap]) -> Self {
        let mut rhythm = Self::new();
        for tap in taps {
            rhythm.push(*tap);
        }
        rhythm
    }

    /// Takes the next tap. A tap whose time went back is put where it belongs and doubted; only
    /// then is everything counted again from the start.
    pub fn push(&mut self, tap: Tap) {
        match self.taps.last() {
            Some(last) if tap.at < last.at => {
                self.out_of_order = self.out_of_order.saturating_add(1);
                let place = self.taps.partition_point(|it| it.at <= tap.at);
                self.taps.insert(place, tap);
                self.now = Now::new();
                for tap in &self.taps {
                    self.now.push(*tap);
                }
            }
            _ => {
                self.taps.push(tap);
                self.now.push(tap);
            }
        }
    }

    /// Notes touches that the screen could not resolve.
    pub fn note_unresolved(&mut self, touches: u32) {
        self.unresolved = self.unresolved.saturating_add(touches);
    }

    /// Notes a boundary that the specialist moved. It wins in [`Self::so_far`]; live, where only
    /// the last sucks matter, it changes nothing.
    pub fn note_boundary(&mut self, moved: BoundaryMoved) {
        self.boundaries.push(moved);
    }

    /// What to show at a time, with or without a tap just then; cheap.
    pub fn live(&self, now: At) -> Live {
        self.now.live(now)
    }

    /// All that is said of the feed so far, looking back over all of it.
    pub fn so_far(&self) -> Summary {
        super::smooth::summary(
            &self.taps,
            &self.boundaries,
            &Numbers::Learnt(self.now.starts()),
            self.now.rest_ms(),
            self.unresolved,
            self.out_of_order,
        )
    }

    /// The phases from the first tap at or after a time on, looking back over that stretch alone,
    /// with the numbers that the feed has shown so far. Its cost grows with the stretch, not with
    /// the feed; near its start it knows less than [`Rhythm::so_far`].
    pub fn recent(&self, from: At) -> Vec<PhaseSpan> {
        let place = self.taps.partition_point(|tap| tap.at < from);
        let (before, stretch) = self.taps.split_at(place);
        let Some(first) = stretch.first() else {
            return vec![];
        };
        let mut taps = Vec::with_capacity(stretch.len() + 2);
        taps.extend(state_after(before).map(|what| Tap { at: first.at, what }));
        taps.extend_from_slice(stretch);
        super::smooth::summary(
            &taps,
            &self.boundaries,
            &Numbers::Given(self.now.own()),
            self.now.rest_ms(),
            0,
            0,
        )
        .phases
    }

    /// The taps so far, in the order of their times.
    pub fn taps(&self) -> &[Tap] {
        &self.taps
    }
}

/// What still holds after some taps: off, unwatched, or both.
fn state_after(taps: &[Tap]) -> impl Iterator<Item = TapWhat> {
    let mut watch = Watch::default();
    for tap in taps {
        let _ = watch.see(*tap);
    }
    [
        watch.off.then_some(TapWhat::Off),
        watch.unwatched.then_some(TapWhat::Unwatched),
    ]
    .into_iter()
    .flatten()
}
