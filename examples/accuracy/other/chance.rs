//! What the second simulator draws from.

use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, Exp1, Gamma, LogNormal, Poisson, StandardNormal};

pub struct Chance(pub ChaCha8Rng);

impl Chance {
    pub fn share(&mut self) -> f64 {
        self.0.random()
    }

    pub fn normal(&mut self) -> f64 {
        StandardNormal.sample(&mut self.0)
    }

    pub fn near(&mut self, median: f64, spread: f64) -> f64 {
        LogNormal::new(0.0, spread).map_or(median, |it| median * it.sample(&mut self.0))
    }

    pub fn gamma(&mut self, mean: f64, shape: f64) -> f64 {
        Gamma::new(shape, mean / shape).map_or(mean, |it| it.sample(&mut self.0))
    }

    pub fn count(&mut self, mean: f64) -> u32 {
        Poisson::new(mean).map_or(0, |it| it.sample(&mut self.0) as u32)
    }

    /// Numbers of one baby, by phase.
    pub fn of_baby(&mut self, means: [f64; 3], (alike, each): (f64, f64)) -> [f64; 3] {
        let baby = self.near(1.0, alike);
        means.map(|mean| mean * baby * self.near(1.0, each))
    }

    /// Long tails: a difference of two exponentials of variance one.
    pub fn long_tailed(&mut self) -> f64 {
        let tails: f64 = Exp1.sample(&mut self.0);
        let other: f64 = Exp1.sample(&mut self.0);
        (tails - other) / 2.0_f64.sqrt()
    }
}
