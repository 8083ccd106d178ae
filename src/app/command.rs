//! The commands that analyse a file: a tap file, a pair's figures, a ward policy.
//!
//! Each gives what is to be printed and whether the input was good; where it is printed, and the
//! exit code, are the program's matter.

use std::fmt::Write as _;
use std::fs::File;
use std::io::Read;
use std::path::Path;

use super::clock::wall_now;
use super::say;
use crate::fault;
use crate::findings::Policy;
use crate::growth::{self, pair_file};
use crate::report::catalogue;
use crate::rhythm::{self, Phase, Summary};
use crate::words::{Lang, Words};

/// The most bytes that a pair or a policy file may have; the readers have limits of their own below.
const FILE_BYTES_MOST: u64 = 16 * 1024 * 1024;

/// A file that was refused: what was wrong with it, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadInput(pub String);

/// Why a file could not be opened or read, in words.
fn unreadable(file: &Path, error: &std::io::Error) -> BadInput {
    BadInput(format!(
        "{}: {error}. Name a file that can be read.",
        file.display()
    ))
}

/// Opens a file; a directory is refused here, with its own words.
fn open(file: &Path) -> Result<File, BadInput> {
    let opened = File::open(file).map_err(|error| unreadable(file, &error))?;
    let about = opened
        .metadata()
        .map_err(|error| unreadable(file, &error))?;
    if about.is_dir() {
        return Err(BadInput(format!(
            "{}: this is a directory. Name a file.",
            file.display()
        )));
    }
    Ok(opened)
}

fn bytes(file: &Path) -> Result<Vec<u8>, BadInput> {
    let mut bytes = Vec::new();
    open(file)?
        .take(FILE_BYTES_MOST)
        .read_to_end(&mut bytes)
        .map_err(|error| unreadable(file, &error))?;
    Ok(bytes)
}

/// Analyses a tap file.
///
/// # Errors
/// The file cannot be read, or a line is bad.
pub fn taps(file: &Path, json: bool) -> Result<String, BadInput> {
    let taps = rhythm::read_taps(open(file)?).map_err(|error| {
        BadInput(format!(
            "{}: {error}. Mend that line and run it again; nothing was analysed.",
            file.display()
        ))
    })?;
    let summary = rhythm::of(&taps);
    Ok(if json {
        format!("{:#}", rhythm::json(&summary))
    } else {
        let first_ms = taps.first().map_or(0, |tap| tap.at.as_ms());
        rhythm_text(&summary, first_ms)
    })
}

/// The lines for people: every time is how long it took, or how long after the first row it was.
fn rhythm_text(summary: &Summary, first_ms: u64) -> String {
    let words = Words::new(Lang::En);
    let mut text = String::new();
    let mut line = |label: String, value: String| {
        let _ = writeln!(text, "{label:<22} {value}");
    };
    line(
        words.say("looking-back-counts"),
        words.say_with(
            "looking-back-counts-value",
            &[
                ("sucks", i64::from(summary.sucks).into()),
                ("swallows", i64::from(summary.swallows).into()),
            ],
        ),
    );
    line(
        words.say("looking-back-watched"),
        words.duration_clock(summary.watched_ms),
    );
    line(
        words.say("looking-back-first-flow"),
        summary.first_flow.map_or_else(
            || words.say("looking-back-no-flow"),
            |at| words.duration_clock(at.as_ms().saturating_sub(first_ms)),
        ),
    );
    for phase in Phase::ALL {
        let total_ms = summary.totals_ms.of(*phase);
        if 0 < total_ms {
            line(
                say::stored(&words, "phase", *phase),
                words.duration_clock(total_ms),
            );
        }
    }
    for doubt in &summary.doubts {
        let _ = writeln!(text, "{}", say::stored(&words, "doubt", *doubt));
    }
    text
}

/// Weight and output figures of one pair.
///
/// # Errors
/// The file cannot be read, or a field is bad.
pub fn pair(file: &Path, json: bool) -> Result<String, BadInput> {
    let now = wall_now();
    let read = pair_file::read(&bytes(file)?, now).map_err(|error| {
        let why = fault::pair_file(&error, &Words::new(Lang::En));
        BadInput(format!("{}: {why}", file.display()))
    })?;
    let told = growth::json_of_file(&read, now);
    if json {
        return Ok(format!("{told:#}"));
    }
    let mut text = String::new();
    flatten(&told, String::new(), &mut text);
    Ok(text)
}

/// Each number with the path of names that leads to it.
fn flatten(value: &serde_json::Value, path: String, text: &mut String) {
    use serde_json::Value;
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let longer = if path.is_empty() {
                    name.clone()
                } else {
                    format!("{path} {name}")
                };
                flatten(value, longer.replace('_', " "), text);
            }
        }
        Value::Array(items) => {
            for item in items {
                flatten(item, path.clone(), text);
            }
        }
        Value::Null => {}
        Value::String(value) => {
            let _ = writeln!(text, "{path:<40} {value}");
        }
        other => {
            let _ = writeln!(text, "{path:<40} {other}");
        }
    }
}

/// Every rule of the findings, with the thresholds of a ward policy or the built-in ones.
///
/// # Errors
/// The language is not known, or the policy cannot be used.
pub fn rules(lang: &str, policy: Option<&Path>) -> Result<String, BadInput> {
    let words = Lang::from_tag(lang).map(Words::new).ok_or_else(|| {
        let known: Vec<&str> = Lang::ALL.iter().map(|it| it.tag()).collect();
        BadInput(format!(
            "{lang}: not a language of Feedside. Name one of {}.",
            known.join(", ")
        ))
    })?;
    let policy = policy.map_or_else(|| Ok(Policy::built_in()), ward_policy)?;
    Ok(catalogue::text(&policy, &words))
}

/// Checks a ward policy.
///
/// # Errors
/// The file cannot be read, or the policy is wrong: line and column are named.
pub fn policy(file: &Path) -> Result<String, BadInput> {
    let policy = ward_policy(file)?;
    let mark = policy.mark();
    Ok(format!(
        "{} {} is a complete ward policy.\nsha256 {}\n",
        mark.name, mark.version, mark.hash
    ))
}

fn ward_policy(file: &Path) -> Result<Policy, BadInput> {
    let bytes = bytes(file)?;
    let text = std::str::from_utf8(&bytes).map_err(|error| {
        let line = 1 + bytes[..error.valid_up_to()]
            .iter()
            .filter(|byte| **byte == b'\n')
            .count();
        BadInput(format!(
            "{}: line {line}: not UTF-8 text. Save it as UTF-8 and check it again.",
            file.display()
        ))
    })?;
    Policy::from_toml(text).map_err(|error| {
        let why = fault::policy(&error, &Words::new(Lang::En));
        BadInput(format!("{}: {why}", file.display()))
    })
}
