//! The feed's own numbers: published means, moved towards what this feed shows.
//!
//! Babies differ by tens of per cent, mostly in all phases alike. So flow and flutter are drawn
//! towards how this baby's quick sucks are, and those towards the published means: levels of
//! normal distributions (logarithms of gaps and rests, log odds of swallows and of rests), solved
//! in closed form. How plausible the numbers then are comes with them, for weighing one reading of
//! a feed against another: their density under these distributions, and how sharply the feed shows
//! them (Laplace's approximation, MacKay 2003, Information Theory, Inference, and Learning
//! Algorithms, 27 and 28).

use super::chain::Sleep;
use super::evidence::GapFit;
use super::parameter::{
    GAP_BABY_SPREAD, GAP_MS, GAP_PHASE_SPREAD, GAP_SPREAD, GAP_SPREAD_BY, GAP_SPREAD_BY_WEIGHT,
    GAP_SPREAD_WEIGHT, HAND_SHARE, HAND_SHARE_MOST, HAND_SHARE_WEIGHT, MISSED, MISSED_WEIGHT,
    PHASES, QUICK, RATE_WEIGHT, REST_CHANCE, REST_CHANCE_BABY_SPREAD, REST_CHANCE_PHASE_SPREAD,
    REST_FOLLOWS, REST_MS, REST_MS_BABY_SPREAD, REST_MS_PHASE_SPREAD, REST_SPREAD,
    REST_SPREAD_WEIGHT, SWALLOW, SWALLOW_BABY_SPREAD, SWALLOW_PHASE_SPREAD,
};

/// The numbers of one feed, by sucking phase where they differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Own {
    /// Mean gap within a run, in milliseconds.
    pub(super) gap_ms: [f64; PHASES],
    /// Spread of such gaps, relative.
    pub(super) gap_spread: [f64; PHASES],
    /// The share of their variance that is the hand's and not the jaw's, 0 to 1.
    pub(super) hand_share: f64,
    /// How the evidence of gaps is taken.
    pub(super) gaps: Gaps,
    /// Share of sucks not tapped.
    pub(super) missed: f64,
    /// Share of sucks with a swallow noticed.
    pub(super) swallow: [f64; PHASES],
    /// Chance that a rest follows a suck.
    pub(super) rest_chance: [f64; PHASES],
    /// Mean logarithm of a rest's milliseconds.
    pub(super) rest_ln_ms: [f64; PHASES],
    /// Spread of these logarithms.
    pub(super) rest_spread: f64,
    /// When the baby flutters, as this reading has it.
    pub(super) sleep: Sleep,
}

/// How the evidence of gaps is taken: chosen for a whole feed, not learnt suck by suck.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Gaps {
    /// The power to which it is taken: see [`RATE_WEIGHT`].
    pub(super) power: f64,
    /// How far the paces of runs spread, one standard deviation of the logarithm; at zero, all runs have
    /// the same.
    pub(super) pace_spread: f64,
    /// Whether a tap is known to depart from both gaps about it.
    pub(super) hand: bool,
}

impl Gaps {
    /// To such a power, where all runs have the same pace.
    pub(super) const fn even(power: f64) -> Self {
        Self {
            power,
            pace_spread: 0.0,
            hand: true,
        }
    }

    /// To such a power, each gap for itself: quicker, for long feeds.
    pub(super) const fn each(power: f64) -> Self {
        Self {
            hand: false,
            ..Self::even(power)
        }
    }
}

/// What a feed has shown, each suck shared out over the phases by their probability.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Sums {
    /// Sucks.
    pub(super) sucks: [f64; PHASES],
    /// Those with a swallow.
    pub(super) swallows: [f64; PHASES],
    /// Gaps within runs.
    pub(super) gaps: [f64; PHASES],
    /// Their milliseconds, each over the number of sucks that it spans.
    pub(super) gap_ms: [f64; PHASES],
    /// Squares of their departures from the mean, relative, as if all phases spread alike.
    pub(super) squares: [f64; PHASES],
    /// Products of the relative departures of gaps that follow each other, and their squares.
    pub(super) neighbours: f64,
    /// See [`Self::neighbours`].
    pub(super) neighbours_squares: f64,
    /// Sucks missed within gaps, all phases.
    pub(super) missed: f64,
    /// Sucks that were followed by another suck, rest or not.
    pub(super) followed: [f64; PHASES],
    /// Those followed by a rest.
    pub(super) rests: [f64; PHASES],
    /// The logarithms of these rests' milliseconds.
    pub(super) rest_ln_ms: [f64; PHASES],
    /// The squares of these logarithms.
    pub(super) rest_ln_squares: [f64; PHASES],
}

/// What was shown of one number in each phase: an estimate and its variance.
type Shown = [(f64, f64); PHASES];

/// The variance of what was not shown at all.
const NOT_SHOWN: f64 = 1e9;

/// All phases follow the baby alike.
const ALL_FOLLOW: [f64; PHASES] = [1.0; PHASES];

/// Draws estimates towards their common departure from `means` as far as each phase
/// `follows` it, and that towards none; gives them and the logarithm of how plausible they are.
fn drawn(
    means: [f64; PHASES],
    shown: Shown,
    baby_spread: f64,
    follows: [f64; PHASES],
    phase_spread: [f64; PHASES],
) -> ([f64; PHASES], f64) {
    let baby_variance = baby_spread * baby_spread;
    let phase_variance = phase_spread.map(|it| it * it);
    let (mut weights, mut departure) = (1.0 / baby_variance, 0.0);
    for phase in 0..PHASES {
        let (value, variance) = shown[phase];
        let weight = 1.0 / (variance + phase_variance[phase]);
        weights += weight * follows[phase] * follows[phase];
        departure += weight * follows[phase] * (value - means[phase]);
    }
    let baby = departure / weights;
    let values = std::array::from_fn(|phase| {
        let (value, variance) = shown[phase];
        let from = means[phase] + follows[phase] * baby;
        from + (value - from) * phase_variance[phase] / (phase_variance[phase] + variance)
    });
    let mut plausible = -0.5 * baby * baby / baby_variance - 0.5 * (weights * baby_variance).ln();
    for phase in 0..PHASES {
        let away = values[phase] - means[phase] - follows[phase] * baby;
        let (variance, spread) = (shown[phase].1, phase_variance[phase]);
        plausible += -0.5 * away * away / spread + 0.5 * (variance / (variance + spread)).ln();
    }
    (values, plausible)
}

/// Log odds.
fn logit(share: f64) -> f64 {
    (share / (1.0 - share)).ln()
}

/// The share that log odds stand for.
fn share(odds: f64) -> f64 {
    1.0 / (1.0 + (-odds).exp())
}

/// How far a guess of the swallowing goes towards what the whole feed shows.
const GUESS_WEIGHT: f64 = 0.8;
/// How many sucks a starting share is worth while it is put into log odds.
const START_WEIGHT: f64 = 3.0;

/// Log odds of shares that were seen so often of so many, and their variance.
fn odds(seen: &[f64; PHASES], of: &[f64; PHASES], start: &[f64; PHASES]) -> Shown {
    std::array::from_fn(|it| {
        let share = (seen[it] + start[it] * START_WEIGHT) / (of[it] + START_WEIGHT);
        let share = share.clamp(0.005, 0.98);
        (
            logit(share),
            1.0 / (of[it].max(1e-9) * share * (1.0 - share)),
        )
    })
}

/// Means of so many values with such a variance each.
fn means(count: &[f64; PHASES], variance: f64, mean: impl Fn(usize) -> f64) -> Shown {
    std::array::from_fn(|it| {
        if count[it] < 0.5 {
            (0.0, NOT_SHOWN)
        } else {
            (mean(it), variance / count[it])
        }
    })
}

impl Own {
    /// The numbers of a feed that has shown nothing yet.
    pub(super) fn start() -> Self {
        Self::of(&Sums::default(), Sleep::AtTheEnd).0
    }

    /// A guess from the usual gap and the share of sucks with a swallow, as if half of the feed
    /// were flow and the baby departed alike in all phases.
    pub(super) fn guess(usual_ms: f64, share_swallow: f64) -> Self {
        let start = Self::start();
        let expected_ms = f64::midpoint(GAP_MS[1], GAP_MS[QUICK]);
        let expected = f64::midpoint(SWALLOW[1], SWALLOW[QUICK]);
        let odds = logit(share_swallow.clamp(0.02, 0.9)) - logit(expected);
        Self {
            gap_ms: start.gap_ms.map(|ms| ms * usual_ms / expected_ms),
            swallow: start
                .swallow
                .map(|it| share(logit(it) + odds * GUESS_WEIGHT)),
            ..start
        }
    }

    /// The numbers of a feed, read with flutter at that time, and the logarithm of how plausible they
    /// are; not how plausible that time is.
    pub(super) fn of(sums: &Sums, sleep: Sleep) -> (Self, f64) {
        let gaps: f64 = sums.gaps.iter().sum();
        let gap_variance = (GAP_SPREAD * GAP_SPREAD * GAP_SPREAD_WEIGHT
            + sums.squares.iter().sum::<f64>())
            / (GAP_SPREAD_WEIGHT + gaps);
        let (gap_ln, gap_fit) = drawn(
            GAP_MS.map(f64::ln),
            means(&sums.gaps, gap_variance / RATE_WEIGHT, |it| {
                (sums.gap_ms[it] / sums.gaps[it]).ln()
            }),
            GAP_BABY_SPREAD,
            ALL_FOLLOW,
            GAP_PHASE_SPREAD,
        );
        let (swallow, swallow_fit) = drawn(
            SWALLOW.map(logit),
            odds(&sums.swallows, &sums.sucks, &SWALLOW),
            SWALLOW_BABY_SPREAD,
            ALL_FOLLOW,
            SWALLOW_PHASE_SPREAD,
        );
        let (rest_chance, chance_fit) = drawn(
            REST_CHANCE.map(logit),
            odds(&sums.rests, &sums.followed, &REST_CHANCE),
            REST_CHANCE_BABY_SPREAD,
            REST_FOLLOWS,
            REST_CHANCE_PHASE_SPREAD,
        );
        let rest_variance = sums.rest_variance();
        let (rest_ln_ms, rest_fit) = drawn(
            REST_MS.map(f64::ln),
            means(&sums.rests, rest_variance, |it| {
                sums.rest_ln_ms[it] / sums.rests[it]
            }),
            REST_MS_BABY_SPREAD,
            REST_FOLLOWS,
            REST_MS_PHASE_SPREAD,
        );
        let own = Self {
            gap_ms: gap_ln.map(f64::exp),
            gap_spread: sums.gap_spread(gap_variance),
            hand_share: sums.hand_share(gap_variance),
            gaps: Gaps::even(RATE_WEIGHT),
            missed: ((MISSED * MISSED_WEIGHT + sums.missed) / (MISSED_WEIGHT + gaps + sums.missed))
                .clamp(0.002, 0.4),
            swallow: swallow.map(share),
            rest_chance: rest_chance.map(share),
            rest_ln_ms,
            rest_spread: rest_variance.sqrt(),
            sleep,
        };
        let plausible = gap_fit + swallow_fit + chance_fit + rest_fit;
        (own, plausible)
    }

    /// Whether two are so near that they read the feed alike.
    pub(super) fn is_near(&self, other: &Self) -> bool {
        let near = |a: &[f64; PHASES], b: &[f64; PHASES], share: f64| {
            a.iter().zip(b).all(|(a, b)| (a / b - 1.0).abs() < share)
        };
        self.sleep == other.sleep
            && near(&self.gap_ms, &other.gap_ms, 0.01)
            && near(&self.swallow, &other.swallow, 0.08)
            && near(&self.rest_chance, &other.rest_chance, 0.08)
    }
}

impl Sums {
    /// Takes sucks, some with a swallow, shared out by `phases`.
    pub(super) fn add_sucks(&mut self, phases: &[f64; PHASES], sucks: f64, swallows: f64) {
        for (phase, share) in phases.iter().enumerate() {
            self.sucks[phase] += share * sucks;
            self.swallows[phase] += share * swallows;
        }
    }

    /// Takes gaps within runs of one length; `shares` of them end with a suck of each phase.
    pub(super) fn add_gaps(
        &mut self,
        shares: &[f64; PHASES],
        gap_ms: f64,
        fits: &[GapFit; PHASES],
    ) {
        for phase in 0..PHASES {
            let (share, fit) = (shares[phase], fits[phase]);
            self.gaps[phase] += share;
            self.gap_ms[phase] += share * gap_ms / fit.sucks;
            self.squares[phase] += share * fit.square;
            self.missed += share * (fit.sucks - 1.0);
        }
    }

    /// Takes two gaps of a run that follow each other, by their departures from the mean, relative.
    pub(super) fn add_neighbours(&mut self, departure: f64, next: f64) {
        self.neighbours += departure * next;
        self.neighbours_squares += next * next;
    }

    /// Takes sucks of these phases that were followed by another without a rest.
    pub(super) fn add_followed(&mut self, before: &[f64; PHASES]) {
        for (followed, share) in self.followed.iter_mut().zip(before) {
            *followed += share;
        }
    }

    /// Takes a rest after a suck of these phases.
    pub(super) fn add_rest(&mut self, before: &[f64; PHASES], rest_ms: f64) {
        let ln_ms = rest_ms.ln();
        self.add_followed(before);
        for (phase, share) in before.iter().enumerate() {
            self.rests[phase] += share;
            self.rest_ln_ms[phase] += share * ln_ms;
            self.rest_ln_squares[phase] += share * ln_ms * ln_ms;
        }
    }

    /// The spread of each phase's gaps: the feed's own variance, moved towards what the phase shows.
    fn gap_spread(&self, variance: f64) -> [f64; PHASES] {
        let common = variance.sqrt().clamp(0.06, 0.5);
        std::array::from_fn(|phase| {
            let shown = GAP_SPREAD_BY_WEIGHT + self.squares[phase] / variance;
            let against = shown / (GAP_SPREAD_BY_WEIGHT + self.gaps[phase]);
            common * GAP_SPREAD_BY[phase] * against.sqrt()
        })
    }

    /// The hand's share of gaps of such a variance: a tap of its own departs from both gaps about it, the
    /// other way round, so that neighbours are correlated by minus half that share.
    fn hand_share(&self, variance: f64) -> f64 {
        let start = HAND_SHARE_WEIGHT * variance;
        let shown = 2.0 * (0.5 * HAND_SHARE * start - self.neighbours);
        (shown / (start + self.neighbours_squares)).clamp(0.0, HAND_SHARE_MOST)
    }

    /// The variance of the logarithms of rests about their phase's mean.
    fn rest_variance(&self) -> f64 {
        let mut squares = REST_SPREAD * REST_SPREAD * REST_SPREAD_WEIGHT;
        let mut weight = REST_SPREAD_WEIGHT;
        for phase in 0..PHASES {
            let count = self.rests[phase];
            weight += count;
            if 0.5 <= count {
                let sum = self.rest_ln_ms[phase];
                squares += (self.rest_ln_squares[phase] - sum * sum / count).max(0.0);
            }
        }
        squares / weight
    }
}
