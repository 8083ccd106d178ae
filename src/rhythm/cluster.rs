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

/// The ratio of the totals of some strata together. Each stratum has for each cluster its top and
/// its bottom, the same clusters in all. `alone` is what chance alone gives: where there are too
/// few clusters to tell, twice that is taken, and never less than half of it, as few clusters can
/// agree by chance. `None` if a total is not above zero.
pub fn ratio(strata: &[Vec<(f64, f64)>], alone: f64) -> Option<Ratio> {
    let clusters = strata.iter().map(Vec::len).max()?;
    let (mut top, mut bottom) = (0.0, 0.0);
    let (mut residuals, mut sizes) = (vec![0.0; clusters], vec![0.0; clusters]);
    let mut ratios = Vec::with_capacity(strata.len());
    for stratum in strata {
        let (its_top, its_bottom) = stratum
            .iter()
            .fold((0.0, 0.0), |sum, it| (sum.0 + it.0, sum.1 + it.1));
        if its_bottom <= 0.0 {
            continue;
        }
        let its_ratio = its_top / its_bottom;
        for (at, it) in stratum.iter().enumerate() {
            residuals[at] += it.0 - its_ratio * it.1;
            sizes[at] += it.1;
        }
        top += its_top;
        bottom += its_bottom;
        ratios.push((its_ratio, its_bottom));
    }
    if top <= 0.0 || bottom <= 0.0 {
        return None;
    }
    let value = top / bottom;
    // How many clusters of equal size would weigh as much.
    let equal = bottom * bottom / sizes.iter().map(|size| size * size).sum::<f64>();
    let (between, freedom) = if equal < CLUSTERS_LEAST {
        (2.0 * alone, CLUSTERS_LEAST)
    } else {
        let between = squares(&residuals) / (top * top) * equal / (equal - 1.0);
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
fn squares(residuals: &[f64]) -> f64 {
    let products = |apart: usize| -> f64 {
        let later = residuals.iter().skip(apart);
        residuals.iter().zip(later).map(|(a, b)| a * b).sum()
    };
    let neighbours: f64 = (1..=NEIGHBOURS)
        .map(|apart| 2.0 * (1.0 - apart as f64 / (NEIGHBOURS + 1) as f64) * products(apart))
        .sum();
    products(0) + neighbours.max(0.0)
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
