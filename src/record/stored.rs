//! An entry as it is stored: a stable kind word and a JSON body. Nothing that was stored is lost:
//! a kind that this version does not know is kept whole, and so is a body with more in it.
//!
//! Knows nothing of where it is stored.

use serde_json::{Value, json};

use super::{AsStored, At, Entry, LastDay, RecordError, WallTime, What};

/// The plain columns of one entry. `Debug` never shows the body.
#[derive(Clone, PartialEq, Eq)]
pub struct StoredEntry {
    /// Its number.
    pub seq: u32,
    /// Milliseconds since the visit began.
    pub at_ms: u64,
    /// Milliseconds since 1970 UTC.
    pub utc_ms: i64,
    /// Minutes east of UTC.
    pub offset_min: i16,
    /// The kind's stable word.
    pub kind: String,
    /// The body as JSON; `null` where there is none.
    pub body: String,
}

impl std::fmt::Debug for StoredEntry {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("StoredEntry")
            .field("seq", &self.seq)
            .field("at_ms", &self.at_ms)
            .field("utc_ms", &self.utc_ms)
            .field("offset_min", &self.offset_min)
            .field("kind", &self.kind)
            .finish_non_exhaustive()
    }
}

/// Writes an entry as plain columns.
///
/// # Errors
/// Never for an entry of this version; an error of the JSON writer is handed on as unreadable.
pub fn to_stored(entry: &Entry) -> Result<StoredEntry, RecordError> {
    let (kind, body) = match &entry.what {
        What::Unknown { kind, body } => (kind.clone(), body.clone()),
        what => {
            let (kind, body) = kind_and_body(what)?;
            let newer = entry.newer.as_ref().map(|it| it.as_str().to_owned());
            (kind, newer.unwrap_or_else(|| body.to_string()))
        }
    };
    Ok(StoredEntry {
        seq: entry.seq,
        at_ms: entry.at.as_ms(),
        utc_ms: entry.wall.utc_ms(),
        offset_min: entry.wall.offset_min(),
        kind,
        body,
    })
}

fn kind_and_body(what: &What) -> Result<(String, Value), RecordError> {
    let unreadable = || RecordError::Unreadable {
        kind: String::new(),
    };
    let mut value = serde_json::to_value(what).map_err(|_| unreadable())?;
    let kind = value.get("kind").and_then(Value::as_str);
    let kind = kind.ok_or_else(unreadable)?.to_owned();
    let body = value.get_mut("body").map_or(Value::Null, Value::take);
    Ok((kind, body))
}

/// Reads an entry from plain columns. A kind, word or field that this version does not know is
/// kept as it was stored.
///
/// # Errors
/// A time out of range, or a body that is not JSON.
pub fn from_stored(stored: &StoredEntry) -> Result<Entry, RecordError> {
    let body: Value = serde_json::from_str(&stored.body).map_err(|_| RecordError::Unreadable {
        kind: stored.kind.clone(),
    })?;
    let what = known(&stored.kind, &body).unwrap_or_else(|| What::Unknown {
        kind: stored.kind.clone(),
        body: stored.body.clone(),
    });
    let more = match &what {
        What::Unknown { .. } => false,
        _ if body.is_null() => false,
        what => holds_more(&body, &kind_and_body(what)?.1),
    };
    Ok(Entry {
        seq: stored.seq,
        at: At::ms(stored.at_ms),
        wall: WallTime::new(stored.utc_ms, stored.offset_min)?,
        what,
        newer: more.then(|| AsStored::new(&stored.body)),
    })
}

/// What an entry says to this version, if anything.
fn known(kind: &str, body: &Value) -> Option<What> {
    let tagged = if body.is_null() {
        json!({ "kind": kind })
    } else {
        json!({ "kind": kind, "body": body })
    };
    let what = serde_json::from_value(tagged).ok();
    what.or_else(|| (kind == LAST_DAY).then(|| answers(body)).flatten())
}

/// The kind of the answers about the last 24 hours.
const LAST_DAY: &str = "last_day";

/// The answers that this version understands. Each stands for itself, and one that is left out
/// reads as not asked: a danger sign must not go unheard because of a new word in another answer.
fn answers(body: &Value) -> Option<What> {
    let fields = body.as_object()?.iter().filter(|(name, answer)| {
        let alone = json!({ name.as_str(): answer });
        serde_json::from_value::<LastDay>(alone).is_ok()
    });
    let understood: serde_json::Map<_, _> = fields.map(|(k, v)| (k.clone(), v.clone())).collect();
    let day = serde_json::from_value(Value::Object(understood)).ok()?;
    (day != LastDay::default()).then_some(What::LastDay(day))
}

/// Whether a stored value has something in it that the understood one lacks.
fn holds_more(stored: &Value, understood: &Value) -> bool {
    match (stored, understood) {
        (Value::Object(stored), Value::Object(understood)) => stored.iter().any(|(name, value)| {
            let same = understood.get(name);
            !value.is_null() && same.is_none_or(|same| holds_more(value, same))
        }),
        (Value::Array(stored), Value::Array(understood)) => {
            let pairs = stored.iter().zip(understood);
            stored.len() != understood.len() || pairs.into_iter().any(|(a, b)| holds_more(a, b))
        }
        (Value::Object(_) | Value::Array(_), _) => true,
        _ => false,
    }
}
