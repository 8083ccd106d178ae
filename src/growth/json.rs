//! The figures as one JSON object, for the command line. Plain numbers in named units; stored
//! words; no sentences.

use serde_json::{Value, json};

use super::pair_file::PairFile;
use super::{
    Age, Centile, DayOutput, Growth, RULE_VERSION, TestWeighing, WeighedAt,
    feeds_least_over_last_day, of,
};
use crate::record::WallTime;

/// The figures of a pair as JSON.
pub fn json(growth: &Growth) -> Value {
    json!({
        "rule_version": RULE_VERSION,
        "at": growth.at,
        "age": growth.age.map(age),
        "birth_weight_g": growth.birth_weight,
        "weight": growth.weight.map(weight),
        "clothed_since": growth.clothed_since.map(weight),
        "who": who(growth),
        "sds_line": growth.line.map(|it| json!({
            "day": it.day,
            "percent": tenths(-it.line_tenths),
            "below": it.below,
        })),
        "median_loss": growth.median_loss.map(|it| json!({
            "way_of_birth": if it.caesarean { "caesarean" } else { "vaginal" },
            "hours": it.hours,
            "percent": tenths(-it.tenths),
        })),
        "back_at_birth_weight": growth.back_at.map(age),
        "gain": growth.gain.map(|it| json!({
            "from": it.from,
            "to": it.to,
            "hours": it.hours,
            "grams": it.grams,
            "grams_per_day": it.per_day,
            "low": it.low,
            "high": it.high,
        })),
        "test_weighings": growth.test_weighings.iter().map(test_weighing).collect::<Vec<_>>(),
        "expected_output": growth.expected.map(|it| json!({
            "from_day": it.from_day,
            "to_day": it.to_day,
            "wet_least": it.wet,
            "heavy": it.heavy,
            "dirty_least": it.dirty,
            "colours": it.colours,
            "urates": it.urates,
        })),
        "feeds_least": growth.age.and_then(feeds_least_over_last_day),
        "usual_feed_ml": growth.usual_feed.map(|it| json!({ "low": it.low_ml, "high": it.high_ml })),
        "questions": growth.questions.iter().map(|it| json!({
            "at": it.at,
            "grams": it.grams,
            "why": it.why,
        })).collect::<Vec<_>>(),
        "cautions": growth.cautions,
        "missing": growth.missing,
    })
}

/// The figures of a pair file, with the output and feeds of its last 24 hours held against what is
/// expected. A file that names no time is read as of `now`.
pub fn json_of_file(file: &PairFile, now: WallTime) -> Value {
    let at = file.at.unwrap_or(now);
    let growth = of(&file.pair, &file.weighings, at);
    let mut value = json(&growth);
    let day = DayOutput::of(file.last_day.as_ref(), &file.nappies, growth.age, at);
    value["output"] = json!({
        "against_days": day.expected.map(|it| [it.from_day, it.to_day]),
        "feeds": day.feeds,
        "feeds_least": value["feeds_least"],
        "feeds_enough": day.feeds_enough,
        "wet": day.wet,
        "wet_least": day.expected.map(|it| it.wet),
        "wet_enough": day.wet_enough,
        "dirty": day.dirty,
        "dirty_least": day.expected.map(|it| it.dirty),
        "dirty_enough": day.dirty_enough,
        "stool": day.stool,
        "colour_fits": day.colour_fits,
        "urates": day.urates,
        "urates_fit": day.urates_fit,
    });
    if let Some(missing) = value["missing"].as_array_mut() {
        missing.extend(day.missing.iter().map(|it| it.as_word().into()));
    }
    value
}

fn age(age: Age) -> Value {
    json!({
        "hours": age.hours(),
        "days": age.days(),
        "day_of_life": age.day_of_life(),
        "who_day": age.who_day(),
    })
}

fn weight(weight: WeighedAt) -> Value {
    json!({
        "at": weight.at,
        "age": age(weight.age),
        "grams": weight.grams,
        "clothed": weight.clothed,
        "change": weight.change.map(|it| json!({
            "grams": it.grams,
            "percent": tenths(it.tenths_percent()),
            "more_than_ten_percent_lost": it.lost_more_than_tenths(100),
        })),
    })
}

fn who(growth: &Growth) -> Value {
    let (Some(z), Some(centile), Some(weight)) = (growth.z, growth.centile, growth.weight) else {
        return Value::Null;
    };
    json!({
        "day": weight.age.who_day(),
        "z": hundredths(z.hundredths()),
        "centile": match centile {
            Centile::Below => json!("<0.4"),
            Centile::Above => json!(">99.6"),
            Centile::Tenths(value) => json!(tenths(value.into())),
        },
        "implausible": z.is_implausible(),
    })
}

fn test_weighing(it: &TestWeighing) -> Value {
    json!({
        "before": it.before,
        "after": it.after,
        "grams": it.grams,
        "ml": tenths(it.tenths_ml),
        "low_ml": it.low_ml,
        "high_ml": it.high_ml,
        "below_resolution": it.below_resolution,
    })
}

// Whole numbers far below 2^52, so nothing is lost.
#[allow(clippy::cast_precision_loss)]
fn tenths(value: i64) -> f64 {
    value as f64 / 10.0
}

#[allow(clippy::cast_precision_loss)]
fn hundredths(value: i64) -> f64 {
    value as f64 / 100.0
}
