//! What simulated feeds tell, one number each.

use feedside::practice::TruthPhase::{self, Flow, Flutter, Quick};

use super::counted::{Feed, Stretch, Suck};

/// A number told of feeds.
pub type Told = fn(&[Feed]) -> f64;

/// Each feed's figures for one phase, of those feeds that show enough of it.
pub struct PerFeed {
    pub rates: Vec<f64>,
    pub ratios: Vec<f64>,
}

/// With fewer gaps or swallows a feed says little of the baby's way.
const ENOUGH: (usize, usize) = (100, 10);

pub fn per_feed(feeds: &[Feed], phase: TruthPhase) -> PerFeed {
    let (mut rates, mut ratios) = (Vec::new(), Vec::new());
    for feed in feeds {
        let of_phase = || feed.sucks.iter().filter(|it| it.phase == phase);
        let gaps: Vec<f64> = of_phase().filter_map(|it| gap_in(it, phase)).collect();
        let swallows = of_phase().filter(|it| it.swallow).count();
        if ENOUGH.0 <= gaps.len() && ENOUGH.1 <= swallows {
            rates.push(60_000.0 / mean(&gaps));
            ratios.push(of_phase().count() as f64 / swallows as f64);
        }
    }
    assert!(30 <= rates.len(), "too few feeds show {phase:?}");
    PerFeed { rates, ratios }
}

pub fn swallows_per_min(feeds: &[Feed], phase: TruthPhase) -> f64 {
    let PerFeed { rates, ratios } = per_feed(feeds, phase);
    let all: Vec<f64> = rates.iter().zip(ratios).map(|(a, b)| a / b).collect();
    mean(&all)
}

/// The gap before a suck, if both its ends lie in one run and one phase.
fn gap_in(suck: &Suck, phase: TruthPhase) -> Option<f64> {
    suck.gap.filter(|it| it.1 == phase).map(|it| it.0)
}

/// Sucks a minute within runs, of all feeds together.
pub fn sucks_per_min(feeds: &[Feed], which: fn(&Suck) -> bool) -> f64 {
    let sucks = feeds.iter().flat_map(|it| &it.sucks).filter(|it| which(it));
    let gaps: Vec<f64> = sucks.filter_map(|it| gap_in(it, it.phase)).collect();
    60_000.0 / mean(&gaps)
}

/// Sucks a swallow in one phase, of all feeds together.
pub fn sucks_a_swallow(feeds: &[Feed], phase: TruthPhase) -> f64 {
    let sucks = || feeds.iter().flat_map(|it| &it.sucks);
    let of_phase = || sucks().filter(|it| it.phase == phase);
    of_phase().count() as f64 / of_phase().filter(|it| it.swallow).count() as f64
}

pub fn share_with_fewer_sucks_a_swallow_in_flow(feeds: &[Feed]) -> f64 {
    let (mut fewer, mut all) = (0.0, 0.0);
    for feed in feeds {
        let feed = std::slice::from_ref(feed);
        let (flow, quick) = (sucks_a_swallow(feed, Flow), sucks_a_swallow(feed, Quick));
        if flow.is_finite() && quick.is_finite() {
            all += 1.0;
            fewer += f64::from(u8::from(flow < quick));
        }
    }
    fewer / all
}

pub fn share_of_ejections_in_range(feeds: &[Feed]) -> f64 {
    let flows = feeds.iter().flat_map(|it| &it.flows);
    let ms: Vec<f64> = flows
        .filter(|it| it.then == Quick)
        .map(|it| it.ms)
        .collect();
    share_between(&ms, 45_000.0, 210_000.0)
}

pub fn ejections(feeds: &[Feed]) -> Vec<f64> {
    feeds.iter().map(|it| f64::from(it.ejections)).collect()
}

/// How much the sucks from one swallow to the next vary, in one phase.
pub fn irregularity_of_swallows(feeds: &[Feed], phase: TruthPhase) -> f64 {
    let mut counts = Vec::new();
    for feed in feeds {
        let mut count = 0.0;
        for suck in feed.sucks.iter().filter(|it| it.phase == phase) {
            count += 1.0;
            if suck.swallow {
                counts.push(count);
                count = 0.0;
            }
        }
    }
    variation(&counts)
}

/// How much gaps within runs vary about their feed's mean in their phase.
pub fn variation_of_gaps(feeds: &[Feed]) -> f64 {
    let mut relative = Vec::new();
    for feed in feeds {
        for phase in [Quick, Flow, Flutter] {
            let sucks = feed.sucks.iter().filter(|it| it.phase == phase);
            let gaps: Vec<f64> = sucks.filter_map(|it| gap_in(it, phase)).collect();
            relative.extend(gaps.iter().map(|it| it / mean(&gaps)));
        }
    }
    variation(&relative)
}

pub fn lies_in(share: f64, part: (f64, f64)) -> bool {
    part.0 <= share && share < part.1
}

/// The sizes of runs or rests in a part of the feed.
pub fn sizes(feeds: &[Feed], of: fn(&Feed) -> &[Stretch], part: (f64, f64)) -> Vec<f64> {
    let all = feeds.iter().flat_map(of);
    let part = all.filter(|it| lies_in(it.share, part));
    part.map(|it| it.size).collect()
}

/// How many sucks of a feed are such, mean.
pub fn mean_count(feeds: &[Feed], which: fn(&Suck) -> bool) -> f64 {
    let sucks = feeds.iter().flat_map(|it| &it.sucks);
    sucks.filter(|it| which(it)).count() as f64 / feeds.len() as f64
}

pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

pub fn deviation(values: &[f64]) -> f64 {
    let mean = mean(values);
    let squares: f64 = values.iter().map(|it| (it - mean).powi(2)).sum();
    (squares / (values.len() as f64 - 1.0)).sqrt()
}

/// The coefficient of variation.
pub fn variation(values: &[f64]) -> f64 {
    deviation(values) / mean(values)
}

pub fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

pub fn share_between(values: &[f64], low: f64, high: f64) -> f64 {
    let inside = values.iter().filter(|it| (low..=high).contains(it));
    inside.count() as f64 / values.len() as f64
}
