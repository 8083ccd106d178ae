//! The one algorithm: tap by tap, forward only, with what has to be shown at the bedside. Of fixed size;
//! keeps no taps.
//!
//! Kept calm in two ways. A phase, once shown, stays until another is at least [`SWITCH_AT`]
//! probable. And on the clock with no taps only one thing can happen: once the silence is longer
//! than the feed's rest gap, a rest is shown, from the last suck on. Both cost a few sucks of
//! delay, which looking back does not have.

use super::chain::{self, Chain, Sleep, Stages, Steps};
use super::evidence::{self, GapFit};
use super::label::{most, phase};
use super::own::{Own, Sums};
use super::parameter::{PHASES, QUICK, SWALLOW_LATE_MS, SWITCH_AT};
use super::pass;
use super::ring::Ring;
use super::summary::{Live, Phase};
use super::tempo::Tempo;
use super::watch::{Before, Seen, Watch};
use crate::record::{At, Tap};

/// Over so many gaps the live rate is taken.
const RATE_GAPS: usize = 12;
/// With fewer gaps no live rate is shown.
const RATE_GAPS_LEAST: usize = 4;
/// A gap of more than so many usual gaps hides a missed tap, and is left out of the live rate.
const RATE_GAP_MOST: f64 = 1.6;
/// Over so many sucks back, and no longer than [`RATIO_MS`], live sucks per swallow are taken.
const RATIO_SUCKS: usize = 128;
/// See [`RATIO_SUCKS`].
const RATIO_MS: u64 = 60_000;
/// With fewer swallows no live sucks per swallow are shown.
const RATIO_SWALLOWS_LEAST: u32 = 3;

/// How late in the feed it is, nobody knows while it runs: as in its second part.
const LIVE_PART: usize = 1;

/// Everything that the taps so far amount to; of fixed size.
#[derive(Debug, Clone)]
pub(super) struct Now {
    watch: Watch,
    tempo: Tempo,
    own: Own,
    sums: Sums,
    stages: Stages,
    phases: [f64; PHASES],
    /// Swallows of the last suck.
    last_swallows: u8,
    /// The phase shown, and since when.
    shown: usize,
    shown_since: At,
    first: Option<At>,
    /// The last suck, doubled or not.
    last_suck: Option<At>,
    run_from: At,
    run_sucks: u32,
    sucks: u32,
    swallows: u32,
    gaps: Ring<u64, RATE_GAPS>,
    recent: Ring<(At, bool), RATIO_SUCKS>,
}

impl Now {
    pub(super) fn new() -> Self {
        Self {
            watch: Watch::default(),
            tempo: Tempo::new(),
            own: Own::start(),
            sums: Sums::default(),
            stages: chain::START,
            phases: chain::by_phase(&chain::START),
            last_swallows: 0,
            shown: QUICK,
            shown_since: At::START,
            first: None,
            last_suck: None,
            run_from: At::START,
            run_sucks: 0,
            sucks: 0,
            swallows: 0,
            gaps: Ring::new(),
            recent: Ring::new(),
        }
    }

    /// Takes the next tap.
    pub(super) fn push(&mut self, tap: Tap) {
        self.first.get_or_insert(tap.at);
        self.swallows += u32::from(tap.what.is_swallow());
        if tap.what.is_suck() {
            self.sucks += 1;
            self.last_suck = Some(tap.at);
        }
        match self.watch.see(tap) {
            Seen::Suck { before, swallow } => self.suck(tap.at, before, swallow),
            Seen::Doubled { swallow } => {
                self.run_sucks += 1;
                // Tapped twice, it still is one jaw movement with one swallow.
                if swallow && self.last_swallows == 0 {
                    self.late_swallow();
                }
            }
            Seen::Swallow { after_ms } => {
                if after_ms.is_some_and(|ms| ms <= SWALLOW_LATE_MS) {
                    self.late_swallow();
                }
            }
            Seen::Changed | Seen::Unchanged => {}
        }
    }

    /// The numbers that the feed has shown so far.
    pub(super) fn own(&self) -> Own {
        self.own
    }

    /// How long a gap has to be to be a rest.
    pub(super) fn rest_ms(&self) -> u64 {
        self.tempo.rest_ms()
    }

    fn suck(&mut self, at: At, before: Before, swallow: bool) {
        let previous = self.phases;
        if let Some(ms) = before.ms() {
            self.tempo.push(ms);
        }
        let rest_ms = self.tempo.rest_ms();
        let goes_on = match before {
            Before::Gap(ms) | Before::Unseen(ms) => ms <= rest_ms,
            Before::Nothing | Before::Off(_) => false,
        };
        let mut gap = None;
        match before {
            Before::Nothing => {}
            Before::Gap(ms) if goes_on => {
                let gap_ms = ms as f64;
                let fits: [GapFit; PHASES] =
                    std::array::from_fn(|phase| evidence::gap(&self.own, phase, gap_ms));
                chain::weigh(&mut self.stages, &evidence::no_rest(&self.own));
                self.pass(gap_ms);
                chain::weigh(&mut self.stages, &fits.map(|it| it.ln.exp()));
                self.gaps.push(ms);
                gap = Some((gap_ms, fits));
            }
            Before::Gap(ms) => {
                let rest_ms = ms as f64;
                chain::weigh(&mut self.stages, &evidence::rest(&self.own, rest_ms));
                self.pass(rest_ms);
                self.sums.add_rest(&previous, rest_ms);
            }
            Before::Unseen(ms) => self.pass(ms as f64),
            Before::Off(ms) => {
                self.pass(ms as f64);
                chain::on_again(&mut self.stages);
            }
        }
        self.weigh(&evidence::swallows(&self.own, u8::from(swallow)));
        if let Some((gap_ms, fits)) = gap {
            self.sums.add_followed(&previous);
            self.sums.add_gaps(&self.phases, gap_ms, &fits);
        }
        self.sums
            .add_sucks(&self.phases, 1.0, f64::from(u8::from(swallow)));
        self.own = Own::of(&self.sums, Sleep::AtTheEnd).0;
        self.last_swallows = u8::from(swallow);
        self.recent.push((at, swallow));
        if goes_on {
            self.run_sucks += 1;
        } else {
            (self.run_from, self.run_sucks) = (at, 1);
        }
        self.show(at);
    }

    /// Lets time pass.
    fn pass(&mut self, ms: f64) {
        Chain::of(LIVE_PART, Sleep::AtTheEnd).forward(&mut self.stages, &Steps::of(ms));
    }

    fn weigh(&mut self, fits: &Stages) {
        pass::weigh(&mut self.stages, fits);
        pass::normalise(&mut self.stages);
        self.phases = chain::by_phase(&self.stages);
    }

    /// A swallow heard just after the last suck.
    fn late_swallow(&mut self) {
        if 2 <= self.last_swallows {
            return;
        }
        let had = evidence::swallows(&self.own, self.last_swallows);
        let has = evidence::swallows(&self.own, self.last_swallows + 1);
        self.weigh(&std::array::from_fn(|stage| has[stage] / had[stage]));
        if self.last_swallows == 0 {
            for (sum, share) in self.sums.swallows.iter_mut().zip(self.phases) {
                *sum += share;
            }
            self.own = Own::of(&self.sums, Sleep::AtTheEnd).0;
            if let Some(last) = self.recent.last_mut() {
                last.1 = true;
            }
        }
        self.last_swallows += 1;
        if let Some(last) = self.watch.last {
            self.show(last);
        }
    }

    fn show(&mut self, at: At) {
        let best = most(&self.phases);
        if best != self.shown && SWITCH_AT <= self.phases[best] {
            (self.shown, self.shown_since) = (best, at);
        }
    }

    /// What to show at a time, with or without a tap just then.
    pub(super) fn live(&self, now: At) -> Live {
        let rest_ms = self.tempo.rest_ms();
        let last = self.last_suck;
        let changed = self.watch.changed.or(self.first).unwrap_or(now);
        let silent_ms = last.map_or(u64::MAX, |last| now.since_ms(last));
        // A suck later than the last change, and not long ago: the baby sucks, marked or not.
        let sucking = silent_ms <= rest_ms && last.is_some_and(|last| changed <= last);
        let (phase, since, probability) = if sucking {
            let since = self.shown_since.max(self.run_from);
            (phase(self.shown), since, self.phases[self.shown])
        } else {
            let since = last.map_or(changed, |last| changed.max(last.plus_ms(1)));
            if self.watch.unwatched {
                (Phase::Unwatched, since, 1.0)
            } else if self.watch.off {
                (Phase::Off, since, 1.0)
            } else {
                let silent_ms = now.since_ms(since) as f64;
                let probability = last.map_or(1.0, |_| {
                    evidence::rest_probability(&self.own, &self.phases, silent_ms)
                });
                (Phase::Rest, since, probability)
            }
        };
        Live {
            phase,
            since,
            probability,
            sucks_per_min: self.sucks_per_min(),
            sucks_per_swallow: self.sucks_per_swallow(now),
            run_sucks: self.run_sucks,
            rest_ms: if phase == Phase::Rest {
                now.since_ms(since)
            } else {
                0
            },
            sucks: self.sucks,
            swallows: self.swallows,
        }
    }

    /// Where looking back starts from: the numbers that the live pass came to, and a guess from
    /// the whole feed's gaps and swallows. Which is the better only shows when looking back.
    pub(super) fn starts(&self) -> Vec<Own> {
        let mut starts = vec![self.own];
        let sucks: f64 = self.sums.sucks.iter().sum();
        if 0.0 < sucks {
            let share = self.sums.swallows.iter().sum::<f64>() / sucks;
            starts.push(Own::guess(self.tempo.usual_ms(), share));
        }
        starts
    }

    fn sucks_per_min(&self) -> Option<f64> {
        let most_ms = self.tempo.usual_ms() * RATE_GAP_MOST;
        let (count, sum_ms) = self
            .gaps
            .iter()
            .filter(|ms| (*ms as f64) < most_ms)
            .fold((0, 0), |(count, sum), ms| (count + 1, sum + ms));
        (RATE_GAPS_LEAST <= count).then(|| 60_000.0 * count as f64 / sum_ms as f64)
    }

    fn sucks_per_swallow(&self, now: At) -> Option<f64> {
        let (sucks, swallows) = self
            .recent
            .iter()
            .filter(|(at, _)| now.since_ms(*at) <= RATIO_MS)
            .fold((0_u32, 0_u32), |(sucks, swallows), (_, swallow)| {
                (sucks + 1, swallows + u32::from(swallow))
            });
        (RATIO_SWALLOWS_LEAST <= swallows).then(|| f64::from(sucks) / f64::from(swallows))
    }
}
