//! How right a summary is against the truth: sucks in a wrong phase, and first flow.

use feedside::practice::{Simulated, Truth};
use feedside::record::At;
use feedside::rhythm::{Phase, Rhythm, Summary, of};

use crate::cover::{self, Cover};
use crate::informed;
use crate::naive::Naive;
use crate::runs::Runs;
use crate::told::Feed;

/// The table's head.
pub const HEAD: &str = "| hand | wrong sucks, looking back | informed | ratio | live | naive | changes/min live | first flow: median s | 90th s | informed: median s | 90th s | told or not unlike | runs F1 | rate, phase | rate, feed | ratio, phase | ratio, feed | wrong, as it tells itself |";

/// Prints a table's head and the line below it.
pub fn print_head(head: &str) {
    println!("{head}");
    println!("|{}", "---|".repeat(head.matches('|').count() - 1));
}

#[derive(Default)]
pub struct Score {
    sucks: usize,
    wrong: usize,
    wrong_informed: usize,
    /// How many it expects to be wrong: what is left of each one's probability.
    wrong_expected: f64,
    wrong_live: usize,
    wrong_naive: usize,
    flips_live: usize,
    minutes: f64,
    first_flow_ms: Vec<f64>,
    first_flow_informed_ms: Vec<f64>,
    first_flow_unlike: usize,
    runs: Runs,
    cover: [Cover; 4],
}

impl Score {
    /// The score over these feeds.
    pub fn of(feeds: impl Iterator<Item = Feed>) -> Self {
        let mut score = Self::default();
        for feed in feeds {
            score.add(&feed.simulated, &informed::phases(&feed));
        }
        score
    }

    /// Takes one feed, with what the informed pass says of its sucks.
    fn add(&mut self, feed: &Simulated, informed: &[(At, Phase)]) {
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
                self.flips_live += 1;
            }
            let place = informed.partition_point(|it| it.0 <= tap.at);
            let by_informed = informed.get(place.saturating_sub(1)).map(|it| it.1);
            self.sucks += 1;
            let told = summary.span_at(tap.at);
            self.wrong += usize::from(told.map(|it| it.phase) != Some(truth));
            self.wrong_informed += usize::from(by_informed != Some(truth));
            self.wrong_expected += 1.0 - told.map_or(0.0, |it| it.probability);
            self.wrong_live += usize::from(live != truth);
            self.wrong_naive += usize::from(naive.push(tap.at, tap.what) != truth);
        }
        self.minutes += summary.watched_ms as f64 / 60_000.0;
        self.first_flow(&summary, feed, informed);
        self.runs.add(&summary, feed);
        cover::add(&mut self.cover, &summary, &feed.truth);
    }

    fn first_flow(&mut self, summary: &Summary, feed: &Simulated, informed: &[(At, Phase)]) {
        let by_informed = informed.iter().find(|it| it.1 == Phase::Flow);
        let truth = feed.truth.first_flow;
        let off = |told: At, truth: At| told.as_ms().abs_diff(truth.as_ms()) as f64;
        if let (Some((told, _)), Some(truth)) = (by_informed, truth) {
            self.first_flow_informed_ms.push(off(*told, truth));
        }
        match (summary.first_flow, truth) {
            (Some(told), Some(truth)) => self.first_flow_ms.push(off(told, truth)),
            (None, None) => {}
            _ => self.first_flow_unlike += 1,
        }
    }

    /// Takes all feeds of another score.
    pub fn join(&mut self, other: Self) {
        self.sucks += other.sucks;
        self.wrong += other.wrong;
        self.wrong_informed += other.wrong_informed;
        self.wrong_expected += other.wrong_expected;
        self.wrong_live += other.wrong_live;
        self.first_flow_ms.extend(other.first_flow_ms);
        self.first_flow_informed_ms
            .extend(other.first_flow_informed_ms);
        for (cover, of_other) in self.cover.iter_mut().zip(other.cover) {
            cover.join(of_other);
        }
    }

    /// Sucks in a wrong phase over those of the informed pass.
    pub fn ratio(&self) -> f64 {
        self.wrong as f64 / self.wrong_informed.max(1) as f64
    }

    fn share(&self, part: usize) -> f64 {
        100.0 * part as f64 / self.sucks.max(1) as f64
    }

    /// Sucks that the informed pass has in a wrong phase, in per cent.
    pub fn wrong_informed(&self) -> f64 {
        self.share(self.wrong_informed)
    }

    /// What is told of a world beside the ratios: live errors, the first flow and the intervals.
    pub fn told_of_world(mut self) -> String {
        format!(
            "{:.1} % | {:.2} | {}",
            self.share(self.wrong_live),
            quantile_s(&mut self.first_flow_ms, 0.9)
                / quantile_s(&mut self.first_flow_informed_ms, 0.9),
            self.cover.map(|it| it.share_told()).join(" | "),
        )
    }

    /// Prints a row of the table.
    pub fn print(mut self, level: &str) {
        let median_s = quantile_s(&mut self.first_flow_ms, 0.5);
        let median_informed_s = quantile_s(&mut self.first_flow_informed_ms, 0.5);
        let late_s = quantile_s(&mut self.first_flow_ms, 0.9);
        let late_informed_s = quantile_s(&mut self.first_flow_informed_ms, 0.9);
        println!(
            "| {level} | {:.1} % | {:.1} % | {:.2} | {:.1} % | {:.1} % | {:.2} | {:.1} | {:.1} | {:.1} | {:.1} | {} | {:.1} % | {} | {:.1} % |",
            self.share(self.wrong),
            self.share(self.wrong_informed),
            self.ratio(),
            self.share(self.wrong_live),
            self.share(self.wrong_naive),
            self.flips_live as f64 / self.minutes,
            median_s,
            late_s,
            median_informed_s,
            late_informed_s,
            self.first_flow_unlike,
            self.runs.f1(),
            self.cover.map(|it| it.told()).join(" | "),
            100.0 * self.wrong_expected / self.sucks.max(1) as f64,
        );
    }
}

/// The phase of the true suck nearest to a time.
pub fn nearest(truth: &Truth, at: At) -> Option<Phase> {
    let next = truth.sucks.partition_point(|(it, _)| *it < at);
    let near = [next.checked_sub(1), Some(next)]
        .into_iter()
        .flatten()
        .filter_map(|index| truth.sucks.get(index))
        .min_by_key(|(it, _)| it.as_ms().abs_diff(at.as_ms()))?;
    Phase::from_word(truth.phase_at(near.0)?.as_word())
}

fn quantile_s(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = (values.len().saturating_sub(1) as f64 * share) as usize;
    values.get(at).copied().unwrap_or(f64::NAN) / 1_000.0
}
