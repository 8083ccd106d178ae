//! The drawings of the Pair screen and the figures beside them, as the screen takes them.

use crate::app::around::Around;
use crate::app::keeper::Story;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::growth;
use crate::record::{WallTime, Weighing};
use crate::words::Words;

use super::chart::{Bar, Place, Weighed, commands, nappies, weight_chart};
use super::render::fact;

fn dot(place: Place, label: String, hollow: bool) -> ui::ChartDot {
    ui::ChartDot {
        x: place.x,
        y: place.y,
        label: label.into(),
        label_left: TURN_SHARE < place.x,
        hollow,
    }
}

/// How wide a weight's label is with text of usual size, as a share of the drawing.
const LABEL_SHARE: f32 = 0.18;
/// Text in the drawings grows no further than this.
const GROWN_MOST: f32 = 1.4;
/// Past this share of the width a label stands left of its weight.
const TURN_SHARE: f32 = 0.8;

/// Which of these weights have room for a label; the latest first.
fn labelled(weights: &[Weighed], text_percent: u16) -> Vec<bool> {
    let wide = LABEL_SHARE * (f32::from(text_percent) / 100.0).min(GROWN_MOST);
    let mut taken: Vec<(f32, f32)> = Vec::new();
    let free = weights.iter().rev().map(|it| {
        let x = it.place.x;
        let (from, to) = if TURN_SHARE < x {
            (x - wide, x)
        } else {
            (x, x + wide)
        };
        let free = taken.iter().all(|other| to < other.0 || other.1 < from);
        if free {
            taken.push((from, to));
        }
        free
    });
    let mut free: Vec<bool> = free.collect();
    free.reverse();
    free
}

pub(super) fn charts(
    story: &Story,
    weighings: &[(WallTime, Weighing)],
    around: &Around<'_>,
    words: &Words,
    screen: &ui::PairAdapter<'_>,
) {
    let chart = weight_chart(&story.pair, weighings, around.now.wall);
    screen.set_has_chart(chart.is_some());
    let percent = |tenths: i64, decimals| words.signed_percent(say::tenths(tenths), decimals);
    if let Some(chart) = chart {
        let free = labelled(&chart.weights, around.preferences.text_percent);
        screen.set_chart_weights(list(chart.weights.iter().zip(free).map(|(it, free)| {
            let label = if free {
                percent(it.change_tenths, 1)
            } else {
                String::new()
            };
            dot(it.place, label, it.clothed)
        })));
        // From birth, where the change is zero.
        let zero = chart.across.iter().find(|it| it.1 == 0).map(|it| it.0);
        let mut track: Vec<Place> = zero.map(|y| Place { x: 0.0, y }).into_iter().collect();
        track.extend(chart.weights.iter().map(|it| it.place));
        screen.set_chart_track(commands(&track).into());
        screen.set_chart_line(commands(&chart.line).into());
        let medians = chart.medians.iter();
        screen.set_chart_medians(list(medians.map(|it| dot(*it, String::new(), false))));
        screen.set_chart_across(list(chart.across.iter().map(|(at, tenths)| {
            ui::ChartTick {
                at: *at,
                label: percent(*tenths, 0).into(),
                strong: *tenths == 0,
            }
        })));
        screen.set_chart_days(list(chart.days.iter().map(|(at, day)| ui::ChartTick {
            at: *at,
            label: day.to_string().into(),
            strong: false,
        })));
        let way = story.pair.way_of_birth.map_or_else(String::new, |way| {
            let way = say::stored(words, "birth", way);
            words.say_with("pair-chart-medians", &[("way", way.into())])
        });
        screen.set_chart_median_words(way.into());
    }
    for (wet, id) in [(true, "before-wet"), (false, "before-dirty")] {
        let bars = nappies(story, wet);
        let bars = list(bars.iter().map(|it| bar(it, words)));
        let heading = words.say(id).into();
        if wet {
            screen.set_wet_bars(bars);
            screen.set_wet_words(heading);
        } else {
            screen.set_dirty_bars(bars);
            screen.set_dirty_words(heading);
        }
    }
}

fn bar(it: &Bar, words: &Words) -> ui::ChartBar {
    ui::ChartBar {
        day: words
            .say_with("pair-chart-day", &[("day", it.day.into())])
            .into(),
        count: it
            .count
            .map_or_else(|| "–".to_owned(), |count| count.to_string())
            .into(),
        told: it.count.is_some(),
        height: it.height,
        has_least: it.least.is_some(),
        least_height: it.least_height,
    }
}

/// The figures of weight that are no weight: each with its range where it has one.
pub(super) fn figures(growth: &growth::Growth, words: &Words) -> Vec<ui::FactRow> {
    let mut rows = Vec::new();
    let percent = |tenths: i64| words.signed_percent(say::tenths(-tenths), 1);
    if let Some(median) = growth.median_loss {
        let hours = [("hours", median.hours.into())];
        rows.push(fact(
            words.say("pair-median"),
            percent(median.tenths),
            words.say_with("pair-median-at", &hours),
        ));
    }
    if let Some(line) = growth.line {
        let below = if line.below {
            "pair-line-below"
        } else {
            "pair-line-above"
        };
        rows.push(fact(
            words.say_with("pair-line", &[("day", line.day.into())]),
            percent(line.line_tenths),
            words.say(below),
        ));
    }
    if let Some(gain) = growth.gain {
        let grams = |value: i64| words.signed(say::tenths(value * 10), 0);
        let args = [
            ("low", grams(gain.low).into()),
            ("high", grams(gain.high).into()),
        ];
        rows.push(fact(
            words.say("pair-gain"),
            words.say_with("pair-grams-a-day", &[("grams", grams(gain.per_day).into())]),
            words.say_with("pair-between", &args),
        ));
    }
    if let Some(age) = growth.back_at {
        rows.push(fact(
            words.say("pair-back"),
            say::age(words, Some(age)),
            String::new(),
        ));
    }
    if let Some(test) = growth.test_weighings.last() {
        let args = [("low", test.low_ml.into()), ("high", test.high_ml.into())];
        let ml = words.number(say::tenths(test.tenths_ml), 0);
        let mut range = words.say_with("pair-between", &args);
        if test.below_resolution {
            range = format!("{range}. {}", words.say("pair-below-resolution"));
        }
        rows.push(fact(
            words.say("pair-test-weighing"),
            words.say_with("pair-millilitres", &[("ml", ml.into())]),
            range,
        ));
    }
    rows
}
