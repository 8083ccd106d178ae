//! How right the rhythm is on simulated feeds whose truth is known, by level of the hand's noise.
//!
//! `cargo run --release --no-default-features --example accuracy [FEEDS]` prints one table: the
//! share of sucks in a wrong phase (smoothed, by a pass that is told the feed's true numbers, live,
//! and by a naive rule), the error of the first flow, told and by that pass, how well runs are found, and how often the 95 % intervals hold the truth.

mod informed;

use std::collections::HashSet;

use feedside::practice::{Baby, HandLevel, Simulated, Truth, TruthPhase, simulate};
use feedside::record::{At, TapWhat};
use feedside::rhythm::{Phase, Rate, Rhythm, Summary, of};

/// A run is found if the middle of a told one lies in it and its ends are so near, in
/// milliseconds.
const RUN_NEAR_MS: u64 = 1_000;

#[derive(Default)]
struct Score {
    sucks: usize,
    wrong: usize,
    wrong_informed: usize,
    wrong_live: usize,
    wrong_naive: usize,
    flips_live: usize,
    minutes: f64,
    first_flow_ms: Vec<f64>,
    first_flow_informed_ms: Vec<f64>,
    first_flow_unlike: usize,
    runs_true: usize,
    runs_told: usize,
    runs_found: usize,
    cover: [Cover; 4],
}

#[derive(Default, Clone, Copy)]
struct Cover {
    held: usize,
    all: usize,
    below: usize,
}

impl Cover {
    fn add(&mut self, rate: Option<Rate>, truth: Option<f64>) {
        if let (Some(rate), Some(truth)) = (rate, truth) {
            self.all += 1;
            self.held += usize::from(rate.low <= truth && truth <= rate.high);
            self.below += usize::from(truth < rate.low);
        }
    }
}

fn main() {
    let feeds: u64 = std::env::args()
        .nth(1)
        .and_then(|it| it.parse().ok())
        .unwrap_or(600);
    let only: Option<Baby> = std::env::args().nth(2).and_then(|it| Baby::from_word(&it));
    println!("{feeds} feeds a level, 20 minutes each, every kind of baby in turn\n");
    println!(
        "| hand | wrong sucks, smoothed | told the truth's numbers | ratio | live | naive | changes/min live | first flow: median s | 90th s | informed: median s | 90th s | told or not unlike | runs F1 | rate, phase | rate, feed | ratio, phase | ratio, feed |"
    );
    println!("|{}", "---|".repeat(17));
    for level in HandLevel::ALL {
        let mut score = Score::default();
        for seed in 0..feeds {
            let baby = only.unwrap_or(Baby::ALL[seed as usize % Baby::ALL.len()]);
            let feed = simulate(baby, level.hand(), seed, 20);
            let informed = informed::phases(baby, level.hand(), &feed, 20.0 * 60_000.0);
            add(&mut score, &feed, &informed);
        }
        print(level.as_word(), &mut score);
    }
}

fn add(score: &mut Score, feed: &Simulated, informed: &[(At, Phase)]) {
    let summary = of(&feed.taps);
    let mut rhythm = Rhythm::new();
    let mut shown = None;
    let mut naive = Naive::default();
    for tap in &feed.taps {
        rhythm.push(*tap);
        if !tap.what.is_suck() {
            continue;
        }
        let Some(truth) = nearest(&feed.truth, tap.at) else {
            continue;
        };
        let live = rhythm.live(tap.at).phase;
        if live.is_sucking() && shown.replace(live).is_some_and(|it| it != live) {
            score.flips_live += 1;
        }
        score.sucks += 1;
        score.wrong += usize::from(told(&summary, tap.at) != Some(truth));
        let place = informed
            .partition_point(|it| it.0 <= tap.at)
            .saturating_sub(1);
        let by_informed = informed.get(place).map(|it| it.1);
        score.wrong_informed += usize::from(by_informed != Some(truth));
        score.wrong_live += usize::from(live != truth);
        score.wrong_naive += usize::from(naive.push(tap.at, tap.what) != truth);
    }
    score.minutes += summary.watched_ms as f64 / 60_000.0;
    let flow = informed.iter().find(|it| it.1 == Phase::Flow);
    if let (Some((told, _)), Some(truth)) = (flow, feed.truth.first_flow) {
        score
            .first_flow_informed_ms
            .push(told.as_ms().abs_diff(truth.as_ms()) as f64);
    }
    match (summary.first_flow, feed.truth.first_flow) {
        (Some(told), Some(truth)) => score
            .first_flow_ms
            .push((told.as_ms() as f64 - truth.as_ms() as f64).abs()),
        (None, None) => {}
        _ => score.first_flow_unlike += 1,
    }
    runs(score, &summary, feed);
    cover(score, &summary, &feed.truth);
}

/// The phase of the true suck nearest to a time.
fn nearest(truth: &Truth, at: At) -> Option<Phase> {
    let next = truth.sucks.partition_point(|(it, _)| *it < at);
    let near = [next.checked_sub(1), Some(next)]
        .into_iter()
        .flatten()
        .filter_map(|index| truth.sucks.get(index))
        .min_by_key(|(it, _)| it.as_ms().abs_diff(at.as_ms()))?;
    Phase::from_word(truth.phase_at(near.0)?.as_word())
}

fn told(summary: &Summary, at: At) -> Option<Phase> {
    let next = summary.phases.partition_point(|it| it.from <= at);
    Some(summary.phases.get(next.checked_sub(1)?)?.phase)
}

/// The naive rule: a gap above 2 s is a rest, and flow is a rate below 1.2 a second over the last
/// five gaps.
#[derive(Default)]
struct Naive {
    times: Vec<u64>,
}

impl Naive {
    fn push(&mut self, at: At, what: TapWhat) -> Phase {
        if what.is_suck() {
            if self
                .times
                .last()
                .is_some_and(|last| last + 2_000 < at.as_ms())
            {
                self.times.clear();
            }
            self.times.push(at.as_ms());
        }
        let last: Vec<u64> = self.times.iter().rev().take(6).copied().collect();
        let per_s = match (last.first(), last.last()) {
            (Some(to), Some(from)) if from < to => {
                (last.len() - 1) as f64 * 1_000.0 / (to - from) as f64
            }
            _ => 2.0,
        };
        if per_s < 1.2 {
            Phase::Flow
        } else {
            Phase::Quick
        }
    }
}

fn runs(score: &mut Score, summary: &Summary, feed: &Simulated) {
    // Runs that the hand was away from are not asked for.
    let unwatched: Vec<(At, At)> = summary
        .phases
        .iter()
        .filter(|it| it.phase == Phase::Unwatched)
        .map(|it| (it.from, it.to))
        .collect();
    let away = |from: At, to: At| {
        unwatched
            .iter()
            .any(|it| it.0 <= to.plus_ms(1_000) && from <= it.1.plus_ms(1_000))
    };
    let mut truth: Vec<(At, At)> = Vec::new();
    for span in &feed.truth.phases {
        if matches!(span.phase, TruthPhase::Rest | TruthPhase::Off) {
            continue;
        }
        match truth.last_mut() {
            Some(last) if last.1 == span.from => last.1 = span.to,
            _ => truth.push((span.from, span.to)),
        }
    }
    truth.retain(|it| !away(it.0, it.1));
    let told: Vec<(At, At)> = summary
        .runs
        .iter()
        .map(|it| (it.from, it.to))
        .filter(|it| !away(it.0, it.1))
        .collect();
    score.runs_true += truth.len();
    score.runs_told += told.len();
    let mut used = HashSet::new();
    for run in told {
        let found = truth.iter().position(|it| {
            it.0.as_ms().abs_diff(run.0.as_ms()) <= RUN_NEAR_MS
                && it.1.as_ms().abs_diff(run.1.as_ms()) <= RUN_NEAR_MS
        });
        score.runs_found += usize::from(found.is_some_and(|it| used.insert(it)));
    }
}

/// True rate within runs and true sucks a swallow, of one phase or of all.
fn true_rates(truth: &Truth, phase: Option<TruthPhase>) -> (Option<f64>, Option<f64>) {
    let (mut gaps, mut sum_ms, mut sucks, mut swallows) = (0.0, 0.0, 0.0, 0.0);
    let mut before: Option<At> = None;
    for (at, swallow) in &truth.sucks {
        let its = truth.phase_at(*at);
        if phase.is_none() || its == phase {
            sucks += 1.0;
            swallows += f64::from(u8::from(*swallow));
            if let Some(gap) = before.map(|it| at.since_ms(it)).filter(|gap| *gap < 1_800) {
                gaps += 1.0;
                sum_ms += gap as f64;
            }
        }
        before = Some(*at);
    }
    (
        (20.0 <= gaps).then(|| 60_000.0 * gaps / sum_ms),
        (5.0 <= swallows).then(|| sucks / swallows),
    )
}

fn cover(score: &mut Score, summary: &Summary, truth: &Truth) {
    for rates in &summary.rates {
        let phase = rates
            .phase
            .and_then(|it| TruthPhase::from_word(it.as_word()));
        let (per_min, per_swallow) = true_rates(truth, phase);
        // The baby's own way where it was seen long enough; for the whole feed what it did.
        let way = truth
            .ways
            .iter()
            .find(|it| Some(it.0) == phase)
            .map(|it| it.1);
        let per_min = per_min.map(|it| way.map_or(it, |way| way.sucks_per_min));
        let per_swallow = per_swallow.map(|it| way.map_or(it, |way| way.sucks_per_swallow));
        let whole = usize::from(rates.phase.is_none());
        score.cover[whole].add(rates.sucks_per_min, per_min);
        score.cover[2 + whole].add(rates.sucks_per_swallow, per_swallow);
    }
}

fn print(level: &str, score: &mut Score) {
    let share = |part: usize, all: usize| 100.0 * part as f64 / all.max(1) as f64;
    let quantile = |values: &mut Vec<f64>, share: f64| {
        values.sort_by(f64::total_cmp);
        let most = values.len().saturating_sub(1);
        let at = (most as f64 * share) as usize;
        values.get(at).copied().unwrap_or(f64::NAN) / 1_000.0
    };
    let f1 = 200.0 * score.runs_found as f64 / (score.runs_true + score.runs_told).max(1) as f64;
    println!(
        "| {level} | {:.1} % | {:.1} % | {:.2} | {:.1} % | {:.1} % | {:.2} | {:.1} | {:.1} | {:.1} | {:.1} | {} | {f1:.1} % | {} |",
        share(score.wrong, score.sucks),
        share(score.wrong_informed, score.sucks),
        score.wrong as f64 / score.wrong_informed.max(1) as f64,
        share(score.wrong_live, score.sucks),
        share(score.wrong_naive, score.sucks),
        score.flips_live as f64 / score.minutes,
        quantile(&mut score.first_flow_ms, 0.5),
        quantile(&mut score.first_flow_ms, 0.9),
        quantile(&mut score.first_flow_informed_ms, 0.5),
        quantile(&mut score.first_flow_informed_ms, 0.9),
        score.first_flow_unlike,
        score
            .cover
            .map(|it| format!(
                "{:.1} % ({:.1} below)",
                share(it.held, it.all),
                share(it.below, it.all)
            ))
            .join(" | "),
    );
}
