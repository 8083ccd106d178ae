//! Student's t for 95 % intervals. Arithmetic alone; knows nothing of feeds.
//!
//! The share beyond plus and minus t is the regularised incomplete beta function (Abramowitz and
//! Stegun 26.7.1 and 26.5.8, its continued fraction); t is found from it by Newton's method, from
//! the series of Cornish and Fisher (26.7.5) on.

/// The share that lies outside of a 95 % interval.
const OUTSIDE: f64 = 0.05;
/// The fewest degrees of freedom told apart.
const FREEDOM_LEAST: f64 = 2.0;

/// Student's t for a 95 % interval: 0.975 of the distribution lies below it. Fewer than two
/// degrees of freedom count as two.
pub fn student_95(freedom: f64) -> f64 {
    let n = freedom.max(FREEDOM_LEAST);
    let mut t = series(n);
    for _ in 0..12 {
        let density = (libm::lgamma(f64::midpoint(n, 1.0)) - libm::lgamma(0.5 * n)).exp()
            / (n * std::f64::consts::PI).sqrt()
            * (1.0 + t * t / n).powf(-f64::midpoint(n, 1.0));
        let step = (outside(t, n) - OUTSIDE) / (2.0 * density);
        t += step;
        if step.abs() < 1e-13 * t {
            break;
        }
    }
    t
}

/// Near the value, about the normal quantile; worst for few degrees of freedom.
fn series(n: f64) -> f64 {
    const Z: f64 = 1.959_963_984_540_054;
    let z2 = Z * Z;
    let g1 = Z * (z2 + 1.0) / 4.0;
    let g2 = Z * ((5.0 * z2 + 16.0) * z2 + 3.0) / 96.0;
    let g3 = Z * (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) / 384.0;
    Z + g1 / n + g2 / (n * n) + g3 / (n * n * n)
}

/// The share beyond plus and minus `t`.
fn outside(t: f64, n: f64) -> f64 {
    let x = n / (n + t * t);
    let (a, b) = (0.5 * n, 0.5);
    let front = (libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b)
        + a * x.ln()
        + b * (t * t / (n + t * t)).ln())
    .exp();
    if x < (a + 1.0) / (a + b + 2.0) {
        front * fraction(a, b, x) / a
    } else {
        1.0 - front * fraction(b, a, t * t / (n + t * t)) / b
    }
}

/// The continued fraction of the incomplete beta function, by the method of Lentz (1976, Applied
/// Optics 15:668).
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    let tame = |it: f64| if it.abs() < 1e-300 { 1e-300 } else { it };
    let mut c = 1.0;
    let mut d = 1.0 / tame(1.0 - (a + b) * x / (a + 1.0));
    let mut value = d;
    for step in 1..=300 {
        let m = f64::from(step);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        let mut change = 1.0;
        for term in [even, odd] {
            d = 1.0 / tame(1.0 + term * d);
            c = tame(1.0 + term / c);
            change = c * d;
            value *= change;
        }
        if (change - 1.0).abs() < 1e-15 {
            break;
        }
    }
    value
}
