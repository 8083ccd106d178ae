//! Reading one pair with its weights from JSON: `PAIR.json` of the command line.
//!
//! The object: `pair` (birth, sex, and what else is known), `weighings` (each with `at` and
//! `grams`), `nappies` (each with `at`), `last_day`, and `at` (the time asked for; now if absent).
//! Everything is bounded before it is read, and every error names the field it is about.

mod strict;

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use crate::record::{LastDay, Nappy, Pair, WallTime, Weighing};

/// The most bytes that are read: 1 MiB, some thousands of weighings.
pub const BYTES_MOST: usize = 1 << 20;
/// The deepest that objects and lists may lie in each other; the format needs four.
pub const DEPTH_MOST: usize = 16;

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Wrong {
    /// Larger than is read.
    #[error("more than {most} bytes")]
    TooLarge {
        /// The most that are read.
        most: usize,
    },
    /// Nested deeper than is read.
    #[error("nested deeper than {most}")]
    TooDeep {
        /// The deepest that is read.
        most: usize,
    },
    /// Not JSON.
    #[error("not JSON at line {line}, column {column}")]
    NotJson {
        /// The line, from 1.
        line: usize,
        /// The column, from 1.
        column: usize,
    },
    /// Given twice.
    #[error("given twice")]
    Twice,
    /// Needed and not there.
    #[error("missing")]
    Missing,
    /// A name that is not known here.
    #[error("not known")]
    NotKnown,
    /// Another kind of value is needed.
    #[error("{needed} needed")]
    WrongKind {
        /// Which kind.
        needed: &'static str,
    },
    /// A value that is not taken, with the reason.
    #[error("{reason}")]
    NotTaken {
        /// Why, in the words of the record's errors.
        reason: String,
    },
    /// A birth after the time asked for.
    #[error("birth in the future")]
    BirthInFuture,
    /// A time before birth.
    #[error("before birth")]
    BeforeBirth,
    /// A time after the time asked for.
    #[error("in the future")]
    InFuture,
}

/// An error and the field it is about.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{path}: {wrong}")]
pub struct PairFileError {
    /// The field, as `weighings[2].grams`; `file` for the whole.
    pub path: String,
    /// What is wrong.
    pub wrong: Wrong,
}

fn error(path: &str, wrong: Wrong) -> PairFileError {
    PairFileError {
        path: if path.is_empty() { "file" } else { path }.to_owned(),
        wrong,
    }
}

/// One pair as read.
#[derive(Debug, Clone, PartialEq)]
pub struct PairFile {
    /// The pair. Id, bed and initials are optional in the file and stand empty (a nil id, a dash).
    pub pair: Pair,
    /// Its weighings, in the order of the file.
    pub weighings: Vec<(WallTime, Weighing)>,
    /// Nappies that were changed, in the order of the file.
    pub nappies: Vec<(WallTime, Nappy)>,
    /// The last 24 hours.
    pub last_day: Option<LastDay>,
    /// The time asked for, if the file names one.
    pub at: Option<WallTime>,
}

const FILE_FIELDS: &[&str] = &["pair", "weighings", "nappies", "last_day", "at"];
const PAIR_FIELDS: &[&str] = &[
    "id",
    "mother_id",
    "bed",
    "initials",
    "mother_number",
    "baby_number",
    "birth",
    "sex",
    "gestation",
    "birth_weight",
    "way_of_birth",
    "babies",
    "risk_notes",
    "reasons",
    "language",
];
const WEIGHING_FIELDS: &[&str] = &["at", "grams", "step", "clothed", "moment"];
const NAPPY_FIELDS: &[&str] = &["at", "wet", "heavy", "stool", "urates"];
const LAST_DAY_FIELDS: &[&str] = &[
    "feeds",
    "wet",
    "dirty",
    "stool",
    "urates",
    "hours_since_wet",
    "expressed_ml",
    "supplement_ml",
    "sleepy",
    "jaundice",
    "temperature",
    "baby_danger",
    "mother_danger",
];

/// Reads a pair file. `now` is the time asked for where the file names none.
///
/// # Errors
/// The first thing that is wrong, with the path of its field.
pub fn read(bytes: &[u8], now: WallTime) -> Result<PairFile, PairFileError> {
    if BYTES_MOST < bytes.len() {
        return Err(error("", Wrong::TooLarge { most: BYTES_MOST }));
    }
    let value = strict::parse(bytes)?;
    let file = fields(&value, "", FILE_FIELDS)?;
    let at: Option<WallTime> = optional(file, "", "at")?;
    let asked = at.unwrap_or(now);
    let pair = pair(
        file.get("pair")
            .ok_or_else(|| error("pair", Wrong::Missing))?,
    )?;
    if asked.since_ms(pair.birth) < 0 {
        return Err(error("pair.birth", Wrong::BirthInFuture));
    }
    let weighings = timed(file, "weighings", WEIGHING_FIELDS, &pair, asked, |map| {
        // What a weight is usually like, unless the file says otherwise.
        default(map, "clothed", Value::Bool(false));
        default(map, "moment", Value::from("routine"));
    })?;
    let nappies = timed(file, "nappies", NAPPY_FIELDS, &pair, asked, |_| ())?;
    let last_day = file.get("last_day").filter(|it| !it.is_null());
    let last_day = last_day.map(last_day_of).transpose()?;
    Ok(PairFile {
        pair,
        weighings,
        nappies,
        last_day,
        at,
    })
}

fn pair(value: &Value) -> Result<Pair, PairFileError> {
    let mut map = fields(value, "pair", PAIR_FIELDS)?.clone();
    default(&mut map, "id", Value::from(uuid::Uuid::nil().to_string()));
    default(&mut map, "bed", Value::from("-"));
    default(&mut map, "initials", Value::from("-"));
    for needed in ["birth", "sex"] {
        if !map.contains_key(needed) {
            return Err(error(&format!("pair.{needed}"), Wrong::Missing));
        }
    }
    checked(map, "pair", &["id", "bed", "initials", "birth", "sex"])
}

fn last_day_of(value: &Value) -> Result<LastDay, PairFileError> {
    let map = fields(value, "last_day", LAST_DAY_FIELDS)?.clone();
    let day: LastDay = checked(map, "last_day", &[])?;
    day.checked().map_err(|refused| {
        let reason = refused.to_string();
        error("last_day", Wrong::NotTaken { reason })
    })
}

/// Reads a list of things that each have a time `at`.
fn timed<T: DeserializeOwned>(
    file: &Map<String, Value>,
    name: &str,
    known: &[&str],
    pair: &Pair,
    asked: WallTime,
    fill: impl Fn(&mut Map<String, Value>),
) -> Result<Vec<(WallTime, T)>, PairFileError> {
    let Some(value) = file.get(name).filter(|it| !it.is_null()) else {
        return Ok(Vec::new());
    };
    let list = value
        .as_array()
        .ok_or_else(|| error(name, Wrong::WrongKind { needed: "a list" }))?;
    let mut read = Vec::with_capacity(list.len());
    for (index, item) in list.iter().enumerate() {
        let path = format!("{name}[{index}]");
        let mut map = fields(item, &path, known)?.clone();
        let at_path = format!("{path}.at");
        let at: WallTime =
            optional(&map, &path, "at")?.ok_or_else(|| error(&at_path, Wrong::Missing))?;
        if at.since_ms(pair.birth) < 0 {
            return Err(error(&at_path, Wrong::BeforeBirth));
        }
        if asked.since_ms(at) < 0 {
            return Err(error(&at_path, Wrong::InFuture));
        }
        map.shift_remove("at");
        fill(&mut map);
        let needed: &[&str] = if name == "weighings" {
            &["grams"]
        } else {
            &["wet"]
        };
        read.push((at, checked(map, &path, needed)?));
    }
    Ok(read)
}

fn default(map: &mut Map<String, Value>, name: &str, value: Value) {
    map.entry(name).or_insert(value);
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() {
        name.to_owned()
    } else {
        format!("{path}.{name}")
    }
}

/// The fields of an object, all of them known.
fn fields<'a>(
    value: &'a Value,
    path: &str,
    known: &[&str],
) -> Result<&'a Map<String, Value>, PairFileError> {
    let map = value.as_object().ok_or_else(|| {
        error(
            path,
            Wrong::WrongKind {
                needed: "an object",
            },
        )
    })?;
    match map.keys().find(|name| !known.contains(&name.as_str())) {
        Some(name) => Err(error(&join(path, &strict::shown(name)), Wrong::NotKnown)),
        None => Ok(map),
    }
}

fn optional<T: DeserializeOwned>(
    map: &Map<String, Value>,
    path: &str,
    name: &str,
) -> Result<Option<T>, PairFileError> {
    map.get(name)
        .filter(|it| !it.is_null())
        .map(|value| typed(value.clone(), &join(path, name)))
        .transpose()
}

fn typed<T: DeserializeOwned>(value: Value, path: &str) -> Result<T, PairFileError> {
    serde_json::from_value(value).map_err(|refused| {
        let reason = refused.to_string();
        error(path, Wrong::NotTaken { reason })
    })
}

/// Reads a whole object; where that fails, finds the field by leaving each one out in turn.
fn checked<T: DeserializeOwned>(
    map: Map<String, Value>,
    path: &str,
    needed: &[&str],
) -> Result<T, PairFileError> {
    if let Some(name) = needed.iter().find(|name| !map.contains_key(**name)) {
        return Err(error(&join(path, name), Wrong::Missing));
    }
    let refused = match serde_json::from_value::<T>(Value::Object(map.clone())) {
        Ok(value) => return Ok(value),
        Err(refused) => refused.to_string(),
    };
    // One field at a time is put among good ones: the one that is refused alone is the one.
    let guilty = map.keys().find(|name| {
        let mut less = map.clone();
        less.shift_remove(name.as_str());
        let without = serde_json::from_value::<T>(Value::Object(less));
        without.map_or_else(|other| other.to_string() != refused, |_| true)
    });
    let path = guilty.map_or_else(|| path.to_owned(), |name| join(path, name));
    Err(error(&path, Wrong::NotTaken { reason: refused }))
}
