//! Lays phases, runs and rests over the feed so that they tile it, and adds them up.
//!
//! Between two anchors (sucks, coming off or on, the first and last tap) the time is cut where
//! somebody looked away or back.
//! - A gap that is no rest belongs to the suck before it (or after it, if none came before).
//! - In a longer one, the watched time is rest. Looking away cuts from it and adds nothing.
//! - Unwatched time is unwatched. Sucks tapped in it are kept, and a run of them counts as looked
//!   at from its first suck to its last.

use super::evidence;
use super::label::index as phase_index;
use super::smooth::Smoothed;
use super::suck::Sucks;
use super::summary::{Phase, PhaseSpan, RestStatistics, Run, RunStatistics, Summary, TotalsMs};
use super::watch::{Seen, Watch};
use crate::record::{At, Tap};

/// A stretch between two marks.
#[derive(Debug, Clone, Copy)]
struct Piece {
    from: At,
    to: At,
    unwatched: bool,
}

/// A suck as an anchor: its label, and its probability.
#[derive(Debug, Clone, Copy)]
struct Anchor {
    index: usize,
    label: Phase,
    probability: f64,
}

struct Tiler<'a> {
    smoothed: &'a Smoothed,
    rest_ms: u64,
    spans: Vec<PhaseSpan>,
    /// What each span's probability is the mean of.
    weights: Vec<f64>,
    /// Everything before this is laid.
    laid: At,
    anchor: At,
    suck: Option<Anchor>,
    pieces: Vec<Piece>,
    runs: Vec<Run>,
    rests_ms: Vec<u64>,
}

impl Tiler<'_> {
    /// Lays a stretch, as far as it is not laid yet, joining it to one of the same phase.
    fn lay(&mut self, from: At, to: At, phase: Phase, probability: f64, weight: f64) {
        let from = from.max(self.laid);
        if to <= from {
            return;
        }
        self.laid = to;
        if let (Some(last), Some(sum)) = (self.spans.last_mut(), self.weights.last_mut())
            && last.phase == phase
        {
            last.to = to;
            if 0.0 < *sum + weight {
                last.probability =
                    (last.probability * *sum + probability * weight) / (*sum + weight);
            }
            *sum += weight;
        } else {
            self.spans.push(PhaseSpan {
                from,
                to,
                phase,
                probability,
            });
            self.weights.push(weight);
        }
    }

    /// Time goes on to a mark.
    fn cut(&mut self, at: At, unwatched: bool) {
        let from = self.pieces.last().map_or(self.anchor, |last| last.to);
        self.pieces.push(Piece {
            from,
            to: at,
            unwatched,
        });
    }

    /// The next anchor: lays all since the last one.
    fn anchor(&mut self, at: At, off: bool, unwatched: bool, next: Option<Anchor>) {
        self.cut(at, unwatched);
        let pieces = std::mem::take(&mut self.pieces);
        let near = at.since_ms(self.anchor) <= self.rest_ms;
        let whole = pieces.len() == 1;
        let sucking = self.suck.or(next).filter(|_| near && !off);
        let both = self.suck.is_some() && next.is_some();
        for (order, piece) in pieces.iter().enumerate() {
            let (phase, probability, weight) = match sucking {
                Some(suck) if !piece.unwatched || (whole && both) => {
                    (suck.label, suck.probability, 0.0)
                }
                _ if piece.unwatched => (Phase::Unwatched, 1.0, 1.0),
                _ if off => (Phase::Off, 1.0, 1.0),
                _ => match self.suck {
                    // Looked away soon after a suck: not yet a rest.
                    Some(suck)
                        if order == 0
                            && !whole
                            && piece.to.since_ms(piece.from) <= self.rest_ms =>
                    {
                        (suck.label, suck.probability, 0.0)
                    }
                    Some(suck) => {
                        let silent_ms = piece.to.since_ms(piece.from) as f64;
                        let phases = &self.smoothed.phases[suck.index];
                        let probability =
                            evidence::rest_probability(&self.smoothed.own, phases, silent_ms);
                        (Phase::Rest, probability, silent_ms)
                    }
                    None => (Phase::Rest, 1.0, piece.to.since_ms(piece.from) as f64),
                },
            };
            self.lay(piece.from, piece.to, phase, probability, weight);
        }
        if both && !near && !off && whole && !unwatched {
            self.rests_ms.push(at.since_ms(self.anchor) - 1);
        }
        self.pieces = pieces;
        self.pieces.clear();
        self.anchor = at;
        self.suck = next;
    }

    fn suck(&mut self, tap: Tap, off: bool, unwatched: bool, suck: Anchor) {
        let goes_on = self.suck.is_some() && tap.at.since_ms(self.anchor) <= self.rest_ms;
        self.anchor(tap.at, off, unwatched, Some(suck));
        let to = tap.at.plus_ms(1);
        self.lay(tap.at, to, suck.label, suck.probability, 1.0);
        let swallows = u32::from(tap.what.is_swallow());
        match self.runs.last_mut() {
            Some(run) if goes_on => {
                run.to = to;
                run.sucks += 1;
                run.swallows += swallows;
            }
            _ => self.runs.push(Run {
                from: tap.at,
                to,
                sucks: 1,
                swallows,
            }),
        }
    }
}

/// Phases, runs, rests and their sums; counts, rates and doubts are left for others.
pub(super) fn of(
    taps: &[Tap],
    sucks: &Sucks,
    labels: &[Phase],
    smoothed: &Smoothed,
    rest_ms: u64,
) -> Summary {
    let (Some(first), Some(last)) = (taps.first(), taps.last()) else {
        return Summary::default();
    };
    let mut tiler = Tiler {
        smoothed,
        rest_ms,
        spans: Vec::new(),
        weights: Vec::new(),
        laid: first.at,
        anchor: first.at,
        suck: None,
        pieces: Vec::new(),
        runs: Vec::new(),
        rests_ms: Vec::new(),
    };
    let mut watch = Watch::default();
    let mut of_tap = sucks.of_tap.iter();
    for tap in taps {
        let before = watch;
        match watch.see(*tap) {
            Seen::Suck { .. } | Seen::Doubled { .. } => {
                let index = of_tap.next().map_or(0, |it| *it as usize);
                let label = labels[index];
                let probability = smoothed.sure(index, phase_index(label));
                let anchor = Anchor {
                    index,
                    label,
                    probability,
                };
                tiler.suck(*tap, before.off, before.unwatched, anchor);
            }
            Seen::Changed if before.off != watch.off => {
                tiler.anchor(tap.at, before.off, before.unwatched, None);
            }
            Seen::Changed => tiler.cut(tap.at, before.unwatched),
            Seen::Swallow { .. } => {
                if let Some(run) = tiler.runs.last_mut() {
                    run.swallows += 1;
                }
            }
            Seen::Unchanged => {}
        }
    }
    tiler.anchor(last.at, watch.off, watch.unwatched, None);
    sum(tiler.spans, tiler.runs, &tiler.rests_ms)
}

fn sum(phases: Vec<PhaseSpan>, runs: Vec<Run>, rests_ms: &[u64]) -> Summary {
    let mut totals_ms = TotalsMs::default();
    let mut all_ms = 0;
    let mut flow_episodes = 0;
    let mut in_flow = false;
    for span in &phases {
        let ms = span.to.since_ms(span.from);
        all_ms += ms;
        *totals_ms.of_mut(span.phase) += ms;
        match span.phase {
            Phase::Flow => {
                flow_episodes += u32::from(!in_flow);
                in_flow = true;
            }
            // A rest within a flow does not end it.
            Phase::Rest | Phase::Unwatched => {}
            Phase::Quick | Phase::Flutter | Phase::Off => in_flow = false,
        }
    }
    let sucking_ms = totals_ms.quick + totals_ms.flow + totals_ms.flutter;
    let on_ms = sucking_ms + totals_ms.rest;
    let lengths_ms: Vec<u64> = runs.iter().map(|it| it.to.since_ms(it.from)).collect();
    let sucks: Vec<u64> = runs.iter().map(|it| it.sucks.into()).collect();
    Summary {
        watched_ms: all_ms - totals_ms.unwatched,
        first_flow: phases
            .iter()
            .find(|it| it.phase == Phase::Flow)
            .map(|it| it.from),
        totals_ms,
        flow_episodes,
        share_sucking: (0 < on_ms).then(|| sucking_ms as f64 / on_ms as f64),
        run_statistics: RunStatistics {
            count: runs.len() as u32,
            median_sucks: quantile(&sucks, 0.5),
            median_ms: quantile(&lengths_ms, 0.5),
            spread_ms: quantile(&lengths_ms, 0.75) - quantile(&lengths_ms, 0.25),
        },
        rest_statistics: RestStatistics {
            count: rests_ms.len() as u32,
            median_ms: quantile(rests_ms, 0.5),
            spread_ms: quantile(rests_ms, 0.75) - quantile(rests_ms, 0.25),
        },
        phases,
        runs,
        ..Summary::default()
    }
}

/// A quantile between the values around it (type 7 of Hyndman and Fan 1996, Am Stat 50:361); zero
/// of nothing.
fn quantile(values: &[u64], share: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_unstable();
    let Some(most) = sorted.len().checked_sub(1) else {
        return 0.0;
    };
    let place = most as f64 * share;
    let below = place.floor() as usize;
    let (low, high) = (sorted[below], sorted[(below + 1).min(most)]);
    low as f64 + (high - low) as f64 * (place - place.floor())
}
