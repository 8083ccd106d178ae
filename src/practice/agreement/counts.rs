//! Agreement on counts: how many sucks or swallows each observer saw, stretch by stretch.

use crate::record::At;

/// The stretch over which things are counted, in milliseconds: half a minute holds about fifty
/// sucks and ten to twenty swallows. Common practice.
pub const COUNT_WINDOW_MS: u64 = 30_000;

/// How many of these times lie in each whole stretch of [`COUNT_WINDOW_MS`] before `end`.
pub fn counts(times: &[At], end: At) -> Vec<u32> {
    let whole = (end.as_ms() / COUNT_WINDOW_MS) as usize;
    let mut counts = vec![0; whole];
    for at in times {
        if let Some(count) = counts.get_mut((at.as_ms() / COUNT_WINDOW_MS) as usize) {
            *count += 1;
        }
    }
    counts
}

/// Intraclass correlation for absolute agreement of single observers, two-way random: ICC(2,1) of
/// Shrout and Fleiss 1979, Psychol Bull 86:420. Each row holds what every observer counted in one
/// stretch. `None` with fewer than two rows or observers, with rows of unequal length, or where
/// nothing varies.
pub fn intraclass(rows: &[Vec<f64>]) -> Option<f64> {
    let observers = rows.first()?.len();
    if rows.len() < 2 || observers < 2 || rows.iter().any(|row| row.len() != observers) {
        return None;
    }
    let (n, k) = (rows.len() as f64, observers as f64);
    let mean = rows.iter().flatten().sum::<f64>() / (n * k);
    let square = |value: f64| (value - mean) * (value - mean);
    let between_rows = k * rows
        .iter()
        .map(|row| square(row.iter().sum::<f64>() / k))
        .sum::<f64>();
    let between_observers = n
        * (0..observers)
            .map(|at| square(rows.iter().map(|row| row[at]).sum::<f64>() / n))
            .sum::<f64>();
    let all = rows.iter().flatten().map(|it| square(*it)).sum::<f64>();
    let left_over = (all - between_rows - between_observers).max(0.0);
    let rows_mean = between_rows / (n - 1.0);
    let observers_mean = between_observers / (k - 1.0);
    let error_mean = left_over / ((n - 1.0) * (k - 1.0));
    let whole = rows_mean + (k - 1.0) * error_mean + k * (observers_mean - error_mean) / n;
    (1e-12 < whole).then(|| (rows_mean - error_mean) / whole)
}
