//! Coded words, findings and numbers as phrases of a language. Every message id that is put
//! together from a stored word is put together here.

use crate::findings::{CallWhom, Finding, Number, Unit};
use crate::record::{Coded, StoredWord};
use crate::words::{Arg, Words};

/// The phrase of a stored word; a word that nobody has a message for stands as it is, readable.
pub fn word(words: &Words, thing: &str, stored: &str) -> String {
    let id = format!("{thing}-{}", stored.replace('_', "-"));
    if words.has(&id) {
        words.say(&id)
    } else {
        stored.replace(['_', '-'], " ")
    }
}

/// The phrase of a value with a stored word.
pub fn of<T: StoredWord>(words: &Words, thing: &str, value: T) -> String {
    word(words, thing, value.word())
}

/// The phrase of a stored word that may be of another version.
pub fn coded<T: StoredWord>(words: &Words, thing: &str, value: &Coded<T>) -> String {
    word(words, thing, value.word())
}

/// Words with the ward's own number for them, where it has one, as "Feeding team (bleep 101)".
pub fn with_number(words: &Words, what: String, number: Option<&str>) -> String {
    match number {
        Some(number) => {
            let args = [("what", what.into()), ("number", number.into())];
            words.say_with("call-with-number", &args)
        }
        None => what,
    }
}

/// What is usually tried for a finding, as a line; nothing where nothing is.
pub fn tries(words: &Words, finding: &Finding) -> Option<String> {
    let tries = finding
        .tries
        .iter()
        .map(|it| coded(words, "adjustment", it));
    let tries: Vec<String> = tries.collect();
    (!tries.is_empty()).then(|| {
        let tries = tries.join("; ").into();
        words.say_with("report-tries", &[("tries", tries)])
    })
}

/// Whom to call for a finding, as a line, with the ward's own number where it has one.
pub fn call(words: &Words, finding: &Finding, number: Option<&str>) -> Option<String> {
    (finding.call != CallWhom::Nobody).then(|| {
        let whom = with_number(words, of(words, "call", finding.call), number);
        words.say_with("report-call", &[("whom", whom.into())])
    })
}

/// The line of a rule, whether it held or not.
pub fn rule(words: &Words, rule: &str) -> String {
    word(words, "finding", rule)
}

/// The line of a finding.
pub fn finding(words: &Words, finding: &Finding) -> String {
    let id = format!("finding-{}", finding.rule);
    if words.has(&id) {
        words.say_with(&id, &arguments(words, finding))
    } else {
        rule(words, &finding.rule)
    }
}

/// Why a finding held, with its numbers; the bare numbers where there is no message for it, or one
/// of another version that asks for other numbers.
pub fn reason(words: &Words, finding: &Finding) -> String {
    let id = format!("finding-{}-reason", finding.rule);
    let said = words
        .has(&id)
        .then(|| words.say_with(&id, &arguments(words, finding)));
    said.filter(|said| !said.contains("{$")).unwrap_or_else(|| {
        let numbers: Vec<String> = finding
            .numbers
            .iter()
            .map(|it| format!("{} {}", it.name.replace('_', " "), number(words, it)))
            .collect();
        numbers.join(", ")
    })
}

fn arguments<'a>(words: &Words, finding: &'a Finding) -> Vec<(&'a str, Arg)> {
    finding
        .numbers
        .iter()
        .map(|it| (it.name.as_str(), number(words, it).into()))
        .collect()
}

/// A finding's number with its unit, as `10.4%`, `3 days` or `2:10 min`; counts and scores plain.
pub fn number(words: &Words, number: &Number) -> String {
    let (value, _, decimals) = super::form::in_ucum(number);
    let plain = words.number(value, decimals);
    let counted = |id: &str| words.say_with(id, &[("count", number.value.into())]);
    match number.unit {
        Unit::TenthsPercent => words.percent(value, decimals),
        Unit::Gram => format!("{plain} g"),
        Unit::Millilitre => format!("{plain} ml"),
        Unit::TenthsCelsius => format!("{plain} °C"),
        Unit::Hour => counted("report-hours"),
        Unit::Day => counted("report-days"),
        Unit::HundredthsSd => format!("{plain} {}", words.say("report-unit-sd")),
        Unit::Second => match u64::try_from(number.value) {
            Ok(seconds) if 60 <= seconds => format!("{} min", words.duration_clock(seconds * 1000)),
            _ => format!("{plain} s"),
        },
        Unit::Count | Unit::Score | Unit::Tenths => plain,
    }
}

/// Milliseconds as minutes, rounded to so many decimals.
pub fn minutes(words: &Words, ms: u64, decimals: usize) -> String {
    // A visit lasts far less than 2^52 ms, so nothing is lost.
    #[allow(clippy::cast_precision_loss)]
    words.number(ms as f64 / 60_000.0, decimals)
}

/// A UCUM unit as it stands behind a number, with the space before it if it has one.
pub fn unit(words: &Words, ucum: &str) -> String {
    match ucum {
        "%" => words.percent(0.0, 0).trim_start_matches('0').to_owned(),
        "{sd}" => format!(" {}", words.say("report-unit-sd")),
        "{count}" | "{score}" | "{centile}" | "1" => String::new(),
        "d" => format!(" {}", words.say("report-unit-day")),
        "g/d" => format!(" {}", words.say("report-unit-gram-per-day")),
        "mL" => " ml".to_owned(),
        other => format!(" {other}"),
    }
}
