//! The two drawings of the Pair screen as places between 0 and 1: weight against age, and nappies
//! against what is expected. Only layout; every number comes from `growth`.

use crate::app::keeper::Story;
use crate::growth::{
    Age, Change, MEDIAN_LOSSES, MedianLoss, SDS_LINE_DAYS, expected_over_last_day, sds_line_tenths,
};
use crate::record::{Pair, WallTime, WayOfBirth, Weighing};

/// A place on the drawing: right of its left edge, and below its upper edge, as a share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// From the left.
    pub x: f32,
    /// From the top.
    pub y: f32,
}

/// A weight on the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weighed {
    /// Where.
    pub place: Place,
    /// In tenths of a per cent against the birth weight.
    pub change_tenths: i64,
    /// Whether in clothes: drawn hollow.
    pub clothed: bool,
}

/// Weight against age.
#[derive(Debug, Clone, PartialEq)]
pub struct WeightChart {
    /// The weights, oldest first.
    pub weights: Vec<Weighed>,
    /// Published medians for the way of birth.
    pub medians: Vec<Place>,
    /// Which of the two published curves they are of: after a caesarean, or else after vaginal
    /// birth, with instruments or without.
    pub medians_caesarean: Option<bool>,
    /// The -2.5 SDS line, from left to right.
    pub line: Vec<Place>,
    /// Lines across, each with its change in tenths of a per cent; zero is the birth weight.
    pub across: Vec<(f32, i64)>,
    /// Days of age along the lower edge.
    pub days: Vec<(f32, i64)>,
}

/// The lines across stand so far apart, in tenths of a per cent.
const STEP_TENTHS: i64 = 50;
/// The drawing reaches at least so far down and up, in tenths of a per cent: the line of -2.5 SDS has
/// its lowest place at 11.9 %.
const LEAST_TENTHS: (i64, i64) = (-130, 30);
/// The fewest days that are drawn.
const DAYS_LEAST: i64 = 5;
/// The most days that get a number along the edge.
const DAYS_NUMBERED: i64 = 14;
const DAY_MS: i64 = 86_400_000;

/// Draws the weights of a pair; `None` without a birth weight, since there is no change to draw.
pub fn weight_chart(
    pair: &Pair,
    weighings: &[(WallTime, Weighing)],
    now: WallTime,
) -> Option<WeightChart> {
    let birth = pair.birth_weight?;
    let mut sorted: Vec<_> = weighings.to_vec();
    sorted.sort_by_key(|(wall, _)| wall.utc_ms());
    let taken: Vec<(i64, i64, bool)> = sorted
        .iter()
        .filter_map(|(wall, weighing)| {
            let age = Age::of(pair.birth, *wall)?;
            let change = Change::of(birth, weighing.grams).tenths_percent();
            Some((age.as_ms(), change, weighing.clothed))
        })
        .collect();
    let oldest_ms = taken.iter().map(|it| it.0).max().unwrap_or(0);
    let now_ms = Age::of(pair.birth, now).map_or(0, Age::as_ms);
    let days = (oldest_ms.max(now_ms) / DAY_MS + 1).max(DAYS_LEAST);
    let changes = || taken.iter().map(|it| it.1);
    let low = changes().min().unwrap_or(0).min(LEAST_TENTHS.0) - 10;
    let high = changes().max().unwrap_or(0).max(LEAST_TENTHS.1);
    let x = |ms: i64| share(ms, 0, days * DAY_MS);
    let y = |tenths: i64| 1.0 - share(tenths, low, high);
    let place = |ms: i64, tenths: i64| Place {
        x: x(ms),
        y: y(tenths),
    };
    let line = SDS_LINE_DAYS
        .filter(|day| *day <= days)
        .filter_map(|day| {
            let hours = u32::try_from(day * 24).ok()?;
            let tenths = sds_line_tenths(Age::of_hours(hours))?;
            Some(place(day * DAY_MS, -tenths))
        })
        .collect();
    let medians_caesarean = pair.way_of_birth.map(|way| way == WayOfBirth::Caesarean);
    let medians = medians_caesarean.map_or_else(Vec::new, |caesarean| {
        let of_way = |it: &&MedianLoss| it.caesarean == caesarean;
        MEDIAN_LOSSES
            .iter()
            .filter(of_way)
            .map(|it| place(it.hours * DAY_MS / 24, -it.tenths))
            .collect()
    });
    let first = low.div_euclid(STEP_TENTHS) + 1;
    let every = (days / DAYS_NUMBERED + 1).max(1);
    Some(WeightChart {
        weights: taken
            .iter()
            .map(|(ms, change_tenths, clothed)| Weighed {
                place: place(*ms, *change_tenths),
                change_tenths: *change_tenths,
                clothed: *clothed,
            })
            .collect(),
        medians,
        medians_caesarean,
        line,
        across: (first..=high.div_euclid(STEP_TENTHS))
            .map(|step| (y(step * STEP_TENTHS), step * STEP_TENTHS))
            .collect(),
        days: (0..=days)
            .filter(|day| day % every == 0)
            .map(|day| (x(day * DAY_MS), day))
            .collect(),
    })
}

/// One day's nappies of a kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// Whole days of age when it was asked.
    pub day: i64,
    /// How many, if it was told.
    pub count: Option<u8>,
    /// The least expected, where a row of the table applies.
    pub least: Option<u8>,
    /// How high the bar is, as a share.
    pub height: f32,
    /// How high the mark of the least stands, as a share.
    pub least_height: f32,
}

/// The most days that are drawn: the latest.
const BARS_MOST: usize = 7;

/// Wet or dirty nappies of each visit's last 24 hours.
pub fn nappies(story: &Story, wet: bool) -> Vec<Bar> {
    let told: Vec<(i64, Option<u8>, Option<u8>)> = story
        .days
        .iter()
        .filter_map(|(wall, day)| {
            let age = Age::of(story.pair.birth, *wall)?;
            let count = if wet { day.wet } else { day.dirty };
            let least = expected_over_last_day(age);
            let least = least.map(|row| if wet { row.wet } else { row.dirty });
            Some((age.days(), count, least))
        })
        .collect();
    let told = &told[told.len().saturating_sub(BARS_MOST)..];
    let counts = told.iter().flat_map(|it| [it.1, it.2]).flatten();
    let most = i64::from(counts.max().unwrap_or(1).max(1));
    let height = |count: Option<u8>| share(count.map_or(0, i64::from), 0, most);
    told.iter()
        .map(|(day, count, least)| Bar {
            day: *day,
            count: *count,
            least: *least,
            height: height(*count),
            least_height: height(*least),
        })
        .collect()
}

/// Where a value lies between two others, 0 to 1.
#[allow(clippy::cast_precision_loss)]
fn share(value: i64, from: i64, to: i64) -> f32 {
    // A drawing has some hundred places; what a float of 24 bits loses cannot be seen.
    let span = (to - from).max(1) as f32;
    ((value - from) as f32 / span).clamp(0.0, 1.0)
}

/// The places as the commands of a path on a square of 1000.
pub fn commands(places: &[Place]) -> String {
    places
        .iter()
        .enumerate()
        .map(|(index, place)| {
            let verb = if index == 0 { 'M' } else { 'L' };
            format!("{verb} {:.1} {:.1}", place.x * 1000.0, place.y * 1000.0)
        })
        .collect::<Vec<_>>()
        .join(" ")
}
