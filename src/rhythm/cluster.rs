//! The ratio of two totals that come run by run, how uncertain it is, and an interval made of
//! several uncertainties. Arithmetic alone; knows nothing of feeds.
//!
//! Sucks of one run resemble each other, so runs are the clusters of a ratio estimator (Cochran
//! 1977, Sampling Techniques, 3rd ed., 6.3 and 9A). Strata may differ without making anything
//! uncertain. Variances are of the ratio's logarithm.

use super::student::student_95;
use super::summary::Rate;

/// With fewer clusters of equal weight, how much clusters differ is not taken from them.
const CLUSTERS_LEAST: f64 = 3.0;
/// Clusters so far apart still count as neighbours. Common practice: about a minute of runs.
const NEIGHBOURS: usize = 2;
/// The most that an interval reaches up or down, as a logarithm.
const WIDTH_MOST: f64 = 3.0;

/// A ratio of two totals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ratio {
    /// The total of the tops over that of the bottoms.
    pub value: f64,
    /// The variance of its logarithm that comes from how much clusters differ.
    pub between: f64,
    /// The degrees of freedom of that variance.
    pub freedom: f64,
    /// The variance of its logarithm if a stretch of one stratum alone stood for all: how much the
    /// strata differ, each weighed by its bottom.
    pub strata: f64,
}

/// A cluster against the ratios of its strata.
#[derive(Clone, Copy, Default)]
struct Departure {
    /// Its top over what was expected.
    residual: f64,
    /// The top that its bottoms let expect.
    expected: f64,
    /// Its bottoms.
    size: f64,
}

/// How each cluster departs, and each stratum's ratio and bottom. A stratum without a bottom counts
/// for nothing.
fn departures(strata: &[Vec<(f64, f64)>]) -> (Vec<Departure>, Vec<(f64, f64)>) {
    let clusters = strata.iter().map(Vec::len).max().unwrap_or(0);
    let mut departures = vec![Departure::default(); clusters];
    let mut ratios = Vec::with_capacity(strata.len());
    for stratum in strata {
        let (top, bottom) = stratum
            .iter()
            .fold((0.0, 0.0), |sum, it| (sum.0 + it.0, sum.1 + it.1));
        if bottom <= 0.0 {
            continue;
        }
        let ratio = top / bottom;
        for (departure, it) in departures.iter_mut().zip(stratum) {
            departure.residual += it.0 - ratio * it.1;
            departure.expected += ratio * it.1;
            departure.size += it.1;
        }
        ratios.push((ratio, bottom));
    }
    (departures, ratios)
}

/// The ratio of the totals of some strata together. Each stratum has for each cluster its top and
/// its bottom, the same clusters in all. `alone` is what chance alone gives: where there are too
/// few clusters to tell, twice that is taken, and never less than half of it, as few clusters can
/// agree by chance. `None` if a total is not above zero.
pub fn ratio(strata: &[Vec<(f64, f64)>], alone: f64) -> Option<Ratio> {
    let (departures, ratios) = departures(strata);
    let (top, bottom) = ratios.iter().fold((0.0, 0.0), |sum, (its_ratio, size)| {
        (sum.0 + its_ratio * size, sum.1 + size)
    });
    if top <= 0.0 || bottom <= 0.0 {
        return None;
    }
    let value = top / bottom;
    // How many clusters of equal size would weigh as much.
    let equal = bottom * bottom / departures.iter().map(|it| it.size * it.size).sum::<f64>();
    let (between, freedom) = if equal < CLUSTERS_LEAST {
        (2.0 * alone, CLUSTERS_LEAST)
    } else {
        let between = squares(&departures) / (top * top) * equal / (equal - 1.0);
        (between.max(0.5 * alone), equal - 1.0)
    };
    let strata = ratios
        .iter()
        .map(|(its_ratio, size)| size / bottom * (its_ratio / value - 1.0).powi(2))
        .sum();
    Some(Ratio {
        value,
        between,
        freedom,
        strata,
    })
}

/// The squares of clusters' residuals, and the products of neighbours that resemble each other
/// (Newey and West 1987, Econometrica 55:703); never less than the squares alone.
fn squares(departures: &[Departure]) -> f64 {
    let products = |apart: usize| -> f64 {
        let pairs = departures.iter().zip(departures.iter().skip(apart));
        pairs.map(|(a, b)| a.residual * b.residual).sum()
    };
    let neighbours: f64 = (1..=NEIGHBOURS)
        .map(|apart| 2.0 * (1.0 - apart as f64 / (NEIGHBOURS + 1) as f64) * products(apart))
        .sum();
    products(0) + neighbours.max(0.0)
}

/// How much clusters and the next ones depart alike from their strata's ratios: the product of both
/// departures, relative, mean over pairs by their sizes; and how many pairs of equal size that is.
pub fn alike(strata: &[Vec<(f64, f64)>]) -> (f64, f64) {
    let (mut products, mut weights, mut squares) = (0.0, 0.0, 0.0);
    for pair in departures(strata).0.windows(2) {
        let weight = pair[0].expected * pair[1].expected;
        products += pair[0].residual * pair[1].residual;
        weights += weight;
        squares += weight * weight;
    }
    if weights <= 0.0 {
        return (0.0, 0.0);
    }
    (products / weights, weights * weights / squares)
}

/// An interval about the logarithm of `centre`, stretched to hold `value`. `estimated` is the part
/// of the variance that was estimated with so many degrees of freedom, `known` the rest; the sum
/// has degrees of freedom after Satterthwaite (1946, Biometrics Bulletin 2:110).
pub fn interval(value: f64, centre: f64, estimated: (f64, f64), known: f64) -> Rate {
    let (part, freedom) = estimated;
    let variance = part + known;
    let freedom = if 0.0 < part {
        freedom * (variance / part).powi(2)
    } else {
        f64::MAX
    };
    let width = (student_95(freedom.min(FREEDOM_MOST)) * variance.sqrt())
        .min(WIDTH_MOST)
        .exp();
    Rate {
        value,
        low: (centre / width).min(value),
        high: (centre * width).max(value),
    }
}

/// From so many degrees of freedom on, Student's distribution is the normal one.
const FREEDOM_MOST: f64 = 1e4;
