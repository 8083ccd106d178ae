//! Reading one pair with its weights from JSON: `PAIR.json` of the command line.
//!
//! The object: `pair` (birth, sex, and what else is known), `weighings` (each with `at` and
//! `grams`), `nappies` (each with `at`), `last_day`, and `at` (the time asked for; now if absent).
//! Everything is bounded before it is read, and every error names the field it is about.

mod need;
mod strict;

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use need::Fields;
pub use need::Needed;

use crate::record::{LastDay, Nappy, Pair, WallTime, Weighing};

/// The most bytes that are read: 1 MiB, some thousands of weighings.
pub const BYTES_MOST: usize = 1 << 20;
/// The deepest that objects and lists may lie in each other; the format needs four.
pub const DEPTH_MOST: usize = 16;
/// The most values, objects and lists that are read. A weighing with all its fields is six of them;
/// each may take some hundred bytes of memory, however short it is written.
pub const VALUES_MOST: usize = 50_000;

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
    /// More values than are read; it stands at the first that is not.
    #[error("more than {most} values")]
    TooMany {
        /// The most that are read.
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
    /// Something else belongs there.
    #[error("{needed} is needed")]
    Needs {
        /// What belongs there.
        needed: Needed,
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

/// Reads a pair file. `now` is the time asked for where the file names none.
///
/// # Errors
/// The first thing that is wrong, with the path of its field.
pub fn read(bytes: &[u8], now: WallTime) -> Result<PairFile, PairFileError> {
    // A mark of byte order, as some editors write it (RFC 8259, 8.1 lets it be passed over).
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    if BYTES_MOST < bytes.len() {
        // What is refused before the cut has a place of its own; all else may be the cut's doing.
        let placed = |it: &PairFileError| !matches!(it.wrong, Wrong::NotJson { .. });
        let begins = strict::parse(&bytes[..BYTES_MOST]).err().filter(placed);
        return Err(begins.unwrap_or_else(|| error("", Wrong::TooLarge { most: BYTES_MOST })));
    }
    let value = strict::parse(bytes)?;
    let file = need::object(&value, "", need::FILE, &["pair"])?;
    let at: Option<WallTime> = file.get("at").map(|it| typed(it, "at")).transpose()?;
    let asked = at.unwrap_or(now);
    let pair = pair(&file["pair"])?;
    if asked.since_ms(pair.birth) < 0 {
        return Err(error("pair.birth", Wrong::BirthInFuture));
    }
    let weighings = timed(
        &file,
        "weighings",
        (need::WEIGHING, &["at", "grams"]),
        &pair,
        asked,
        |map| {
            // What a weight is usually like, unless the file says otherwise.
            default(map, "clothed", Value::Bool(false));
            default(map, "moment", Value::from("routine"));
        },
    )?;
    let nappies = timed(
        &file,
        "nappies",
        (need::NAPPY, &["at", "wet"]),
        &pair,
        asked,
        |_| (),
    )?;
    let last_day = file.get("last_day").map(last_day_of).transpose()?;
    Ok(PairFile {
        pair,
        weighings,
        nappies,
        last_day,
        at,
    })
}

fn pair(value: &Value) -> Result<Pair, PairFileError> {
    let mut map = need::object(value, "pair", need::PAIR, &["birth", "sex"])?;
    default(&mut map, "id", Value::from(uuid::Uuid::nil().to_string()));
    default(&mut map, "bed", Value::from("-"));
    default(&mut map, "initials", Value::from("-"));
    typed(&Value::Object(map), "pair")
}

fn last_day_of(value: &Value) -> Result<LastDay, PairFileError> {
    let map = need::object(value, "last_day", need::LAST_DAY, &[])?;
    typed(&Value::Object(map), "last_day")
}

/// Reads a list of things that each have a time `at`.
fn timed<T: DeserializeOwned>(
    file: &Map<String, Value>,
    name: &str,
    (known, must): (Fields, &[&str]),
    pair: &Pair,
    asked: WallTime,
    fill: impl Fn(&mut Map<String, Value>),
) -> Result<Vec<(WallTime, T)>, PairFileError> {
    let Some(value) = file.get(name) else {
        return Ok(Vec::new());
    };
    let needed = Needed::List;
    let list = value
        .as_array()
        .ok_or_else(|| error(name, Wrong::Needs { needed }))?;
    let mut read = Vec::with_capacity(list.len());
    for (index, item) in list.iter().enumerate() {
        let path = format!("{name}[{index}]");
        let mut map = need::object(item, &path, known, must)?;
        let at_path = join(&path, "at");
        let at: WallTime = typed(&map["at"], &at_path)?;
        if at.since_ms(pair.birth) < 0 {
            return Err(error(&at_path, Wrong::BeforeBirth));
        }
        if asked.since_ms(at) < 0 {
            return Err(error(&at_path, Wrong::InFuture));
        }
        map.shift_remove("at");
        fill(&mut map);
        read.push((at, typed(&Value::Object(map), &path)?));
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

/// Reads what was checked field by field; an error here would be of the whole.
fn typed<T: DeserializeOwned>(value: &Value, path: &str) -> Result<T, PairFileError> {
    let needed = Needed::Object;
    serde_json::from_value(value.clone()).map_err(|_| error(path, Wrong::Needs { needed }))
}
