//! How often the 95 % intervals hold the truth.

use feedside::practice::{Truth, TruthPhase};
use feedside::record::At;
use feedside::rhythm::{Rate, Summary};

/// How often a kind of interval held the truth.
#[derive(Default, Clone, Copy)]
pub struct Cover {
    held: usize,
    all: usize,
    below: usize,
    width: f64,
}

impl Cover {
    fn add(&mut self, rate: Option<Rate>, truth: Option<f64>) {
        if let (Some(rate), Some(truth)) = (rate, truth) {
            self.all += 1;
            self.held += usize::from(rate.low <= truth && truth <= rate.high);
            self.below += usize::from(truth < rate.low);
            self.width += (rate.high / rate.low).ln() / 2.0;
        }
    }

    /// Takes what another counted.
    pub fn join(&mut self, other: Self) {
        self.held += other.held;
        self.all += other.all;
        self.below += other.below;
        self.width += other.width;
    }

    fn share(&self) -> f64 {
        self.held as f64 / self.all.max(1) as f64
    }

    /// The share that held, in per cent.
    pub fn share_told(&self) -> String {
        format!("{:.1} %", 100.0 * self.share())
    }

    /// The share that held, its standard error, and half the mean width, in per cent.
    pub fn told(&self) -> String {
        let all = self.all.max(1) as f64;
        let share = self.share();
        format!(
            "{:.1} ± {:.1} % ({:.1} below; width {:.1})",
            100.0 * share,
            100.0 * (share * (1.0 - share) / all).sqrt(),
            100.0 * self.below as f64 / all,
            100.0 * self.width / all,
        )
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

/// Adds to the rate by phase and of the feed, and to sucks a swallow by phase and of the feed.
pub fn add(cover: &mut [Cover; 4], summary: &Summary, truth: &Truth) {
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
        cover[whole].add(rates.sucks_per_min, per_min);
        cover[2 + whole].add(rates.sucks_per_swallow, per_swallow);
    }
}
