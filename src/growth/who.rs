//! WHO weight-for-age: z and centile from the day table (WHO Child Growth Standards 2006).
//!
//! Method (WHO 2006, chapter 7):
//! 1. Take L, M, S of the day and sex; `z = ((w / M)^L - 1) / (L S)`, or `ln(w / M) / S` if L is 0.
//! 2. Beyond 3 standard deviations, weight is spread evenly by the distance from 2 to 3.
//! 3. Round to hundredths. Flag as implausible below -6 or above +5.
//!
//! Knows no gestation: whoever shows it says what it means for a baby born early, and that UK
//! charts do not use this standard before two weeks.

use std::sync::LazyLock;

use crate::record::{Grams, Sex};

/// The table as kept in the repository, with its provenance on top.
pub const WHO_TABLE: &str = include_str!("../../assets/growth/who-weight-for-age.csv");

/// The last day of the table.
pub const DAY_LAST: i64 = 1826;

/// The edge below which the WHO's software flags a weight-for-age z as implausible.
const IMPLAUSIBLE_LOW: f64 = -6.0;
/// The edge above which it does.
const IMPLAUSIBLE_HIGH: f64 = 5.0;
/// Where the even spread takes over, in standard deviations (WHO 2006, chapter 7).
const EVEN_FROM_SD: f64 = 3.0;

/// L, M (kilograms) and S of one day and sex.
#[derive(Debug, Clone, Copy)]
struct Lms {
    l: f64,
    m: f64,
    s: f64,
}

impl Lms {
    /// The weight in kilograms at so many standard deviations.
    fn weight_kg(self, sd: f64) -> f64 {
        if self.l == 0.0 {
            self.m * libm::exp(self.s * sd)
        } else {
            self.m * libm::pow(1.0 + self.l * self.s * sd, 1.0 / self.l)
        }
    }

    /// The standard deviations of a weight, by the WHO's rule.
    fn sd(self, kg: f64) -> f64 {
        let plain = if self.l == 0.0 {
            libm::log(kg / self.m) / self.s
        } else {
            (libm::pow(kg / self.m, self.l) - 1.0) / (self.l * self.s)
        };
        if EVEN_FROM_SD < plain {
            let three = self.weight_kg(EVEN_FROM_SD);
            EVEN_FROM_SD + (kg - three) / (three - self.weight_kg(EVEN_FROM_SD - 1.0))
        } else if plain < -EVEN_FROM_SD {
            let three = self.weight_kg(-EVEN_FROM_SD);
            -EVEN_FROM_SD + (kg - three) / (self.weight_kg(1.0 - EVEN_FROM_SD) - three)
        } else {
            plain
        }
    }
}

/// Boys and girls, each by day.
static TABLE: LazyLock<Vec<[Lms; 2]>> = LazyLock::new(|| {
    WHO_TABLE
        .lines()
        .filter(|line| line.starts_with(|c: char| c.is_ascii_digit()))
        .filter_map(row)
        .collect()
});

fn row(line: &str) -> Option<[Lms; 2]> {
    let mut cells = line.split(',').skip(1).map(str::parse::<f64>);
    let mut lms = || {
        Some(Lms {
            l: cells.next()?.ok()?,
            m: cells.next()?.ok()?,
            s: cells.next()?.ok()?,
        })
    };
    Some([lms()?, lms()?])
}

/// A WHO z-score.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Z {
    exact: f64,
}

impl Z {
    /// Standard deviations, not rounded.
    pub const fn exact(self) -> f64 {
        self.exact
    }

    /// Hundredths of a standard deviation, rounded, as the WHO reports it.
    #[allow(clippy::cast_possible_truncation)]
    pub fn hundredths(self) -> i64 {
        // Bounded by the weights that a scale can show: far inside the whole numbers of f64.
        libm::round(self.exact * 100.0) as i64
    }

    /// Whether the WHO's software would flag it (below -6 or above +5): ask, do not drop.
    pub fn is_implausible(self) -> bool {
        self.exact < IMPLAUSIBLE_LOW || IMPLAUSIBLE_HIGH < self.exact
    }
}

fn lms(sex: Sex, day: i64) -> Option<Lms> {
    let column = match sex {
        Sex::Male => 0,
        Sex::Female => 1,
        Sex::NotStated => return None,
    };
    Some(TABLE.get(usize::try_from(day).ok()?)?[column])
}

/// The WHO z of a weight on a day of the table; `None` with no sex stated or outside the table.
pub fn z(sex: Sex, day: i64, weight: Grams) -> Option<Z> {
    let lms = lms(sex, day)?;
    let kg = f64::from(weight.value()) / 1000.0;
    Some(Z { exact: lms.sd(kg) })
}

/// The weight of the standard on a day, so many standard deviations from the median, in whole
/// grams; `None` with no sex stated, outside the table, and beyond 3 standard deviations, where the
/// standard has no curve.
#[allow(clippy::cast_possible_truncation)]
pub fn weight_at_sd(sex: Sex, day: i64, sd: f64) -> Option<Grams> {
    let lms = lms(sex, day)?;
    if EVEN_FROM_SD < sd.abs() {
        return None;
    }
    // A weight of the table is a few kilograms: far inside the whole numbers of f64.
    Grams::new(libm::round(lms.weight_kg(sd) * 1000.0) as i64).ok()
}

/// A centile, as it may be shown: no 0 and no 100.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Centile {
    /// Below the 0.4th.
    Below,
    /// Tenths of a centile, 4 to 996.
    Tenths(u16),
    /// Above the 99.6th.
    Above,
}

/// The least centile that is shown as a number, in tenths.
const CENTILE_LEAST: f64 = 4.0;
/// The greatest.
const CENTILE_MOST: f64 = 996.0;

/// The centile of a z: the share of the standard below it (normal distribution).
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn centile(z: Z) -> Centile {
    let share = 0.5 * libm::erfc(-z.exact / std::f64::consts::SQRT_2);
    let tenths = share * 1000.0;
    if tenths < CENTILE_LEAST {
        Centile::Below
    } else if CENTILE_MOST < tenths {
        Centile::Above
    } else {
        Centile::Tenths(libm::round(tenths) as u16)
    }
}
