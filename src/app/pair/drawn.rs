//! The drawings of the Pair screen and the figures beside them, as the screen takes them.

use crate::app::around::Around;
use crate::app::keeper::Story;
use crate::app::lists::list;
use crate::app::{say, ui};
use crate::growth;
use crate::record::{WallTime, Weighing};
use crate::words::Words;

use super::chart::{Bar, Place, commands, nappies, weight_chart};
use super::labels::{LABEL, MARK, Size, labels};
use super::render::fact;

/// Text in the drawings grows no further than this.
const GROWN_MOST: f32 = 1.4;

fn dot(place: Place, hollow: bool) -> ui::ChartDot {
    ui::ChartDot {
        x: place.x,
        y: place.y,
        hollow,
    }
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
        // From birth, where the change is zero.
        let zero = chart.across.iter().find(|it| it.1 == 0).map(|it| it.0);
        let mut track: Vec<Place> = zero.map(|y| Place { x: 0.0, y }).into_iter().collect();
        track.extend(chart.weights.iter().map(|it| it.place));
        let weights = chart.weights.iter();
        screen.set_chart_weights(list(weights.map(|it| dot(it.place, it.clothed))));
        let grown = (f32::from(around.preferences.text_percent) / 100.0).min(GROWN_MOST);
        let size = Size {
            wide: LABEL.wide * grown,
            high: LABEL.high * grown,
        };
        let middles = labels(&chart, &track, size, MARK);
        let labelled = chart.weights.iter().zip(middles);
        screen.set_chart_labels(list(labelled.filter_map(|(it, middle)| {
            middle.map(|middle| ui::ChartLabel {
                x: middle.x,
                y: middle.y,
                text: percent(it.change_tenths, 1).into(),
            })
        })));
        screen.set_chart_track(commands(&track).into());
        screen.set_chart_line(commands(&chart.line).into());
        let medians = chart.medians.iter();
        screen.set_chart_medians(list(medians.map(|it| dot(*it, false))));
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
        let curve = chart
            .medians_caesarean
            .map(|it| curve("pair-chart-medians", it));
        let curve = curve.map_or_else(String::new, |id| words.say(&id));
        screen.set_chart_median_words(curve.into());
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

/// The message that names the published curve: the source tells vaginal birth and caesarean apart
/// and nothing further.
fn curve(id: &str, caesarean: bool) -> String {
    let way = if caesarean { "caesarean" } else { "vaginal" };
    format!("{id}-{way}")
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
            words.say_with(&curve("pair-median-at", median.caesarean), &hours),
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
