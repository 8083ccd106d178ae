//! An entry as it is stored: a stable kind word and a JSON body; unknown kinds are kept.
//!
//! Knows nothing of where it is stored.

use serde_json::{Value, json};

use super::{At, Entry, RecordError, WallTime, What};

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
            let unreadable = || RecordError::Unreadable {
                kind: String::new(),
            };
            let value = serde_json::to_value(what).map_err(|_| unreadable())?;
            let kind = value
                .get("kind")
                .and_then(Value::as_str)
                .ok_or_else(unreadable)?;
            let body = value.get("body").unwrap_or(&Value::Null);
            (kind.to_owned(), body.to_string())
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

/// Reads an entry from plain columns. A kind or word that this version does not know is kept whole.
///
/// # Errors
/// A time out of range, or a body that is not JSON.
pub fn from_stored(stored: &StoredEntry) -> Result<Entry, RecordError> {
    let body: Value = serde_json::from_str(&stored.body).map_err(|_| RecordError::Unreadable {
        kind: stored.kind.clone(),
    })?;
    let tagged = if body.is_null() {
        json!({ "kind": stored.kind })
    } else {
        json!({ "kind": stored.kind, "body": body })
    };
    let what = serde_json::from_value(tagged).unwrap_or_else(|_| What::Unknown {
        kind: stored.kind.clone(),
        body: stored.body.clone(),
    });
    Ok(Entry {
        seq: stored.seq,
        at: At::ms(stored.at_ms),
        wall: WallTime::new(stored.utc_ms, stored.offset_min)?,
        what,
    })
}
