//! JSON read strictly: a name given twice is an error, not the last one wins; depth and the number
//! of values are bounded; errors carry the path.

use std::cell::{Cell, RefCell};

use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};

use super::{DEPTH_MOST, PairFileError, VALUES_MOST, Wrong, error, join};

/// The most characters of a name that an error shows.
const NAME_SHOWN: usize = 40;

/// A name as an error shows it: short, nothing that cannot be printed.
pub(super) fn shown(name: &str) -> String {
    name.chars()
        .filter(|c| !c.is_control() && !is_unseen(*c))
        .take(NAME_SHOWN)
        .collect()
}

/// Marks that break a line or turn its direction, or are not seen at all (Unicode, General
/// Punctuation).
const fn is_unseen(c: char) -> bool {
    matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}

/// Reads a whole JSON text.
pub(super) fn parse(bytes: &[u8]) -> Result<Value, PairFileError> {
    let found = RefCell::new(None);
    let left = Cell::new(VALUES_MOST);
    let mut reader = serde_json::Deserializer::from_slice(bytes);
    let seed = Strict {
        path: String::new(),
        depth: 0,
        left: &left,
        found: &found,
    };
    let read = seed.deserialize(&mut reader);
    let ended = read.and_then(|value| reader.end().map(|()| value));
    ended.map_err(|refused| {
        found.take().unwrap_or_else(|| {
            let (line, column) = (refused.line(), refused.column().max(1));
            error("", Wrong::NotJson { line, column })
        })
    })
}

struct Strict<'a> {
    path: String,
    depth: usize,
    left: &'a Cell<usize>,
    found: &'a RefCell<Option<PairFileError>>,
}

impl Strict<'_> {
    fn stop<E: de::Error>(&self, path: &str, wrong: Wrong) -> E {
        *self.found.borrow_mut() = Some(error(path, wrong));
        E::custom("stopped")
    }

    fn inside<E: de::Error>(&self, path: String) -> Result<Self, E> {
        let depth = self.depth + 1;
        if DEPTH_MOST < depth {
            return Err(self.stop(&self.path, Wrong::TooDeep { most: DEPTH_MOST }));
        }
        Ok(Self {
            path,
            depth,
            left: self.left,
            found: self.found,
        })
    }
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        let Some(left) = self.left.get().checked_sub(1) else {
            return Err(self.stop(&self.path, Wrong::TooMany { most: VALUES_MOST }));
        };
        self.left.set(left);
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut values = Vec::new();
        loop {
            let path = format!("{}[{}]", self.path, values.len());
            match list.next_element_seed(self.inside(path)?)? {
                Some(value) => values.push(value),
                None => return Ok(Value::Array(values)),
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        while let Some(name) = object.next_key::<String>()? {
            let path = join(&self.path, &shown(&name));
            if map.contains_key(&name) {
                return Err(self.stop(&path, Wrong::Twice));
            }
            let value = object.next_value_seed(self.inside(path)?)?;
            map.insert(name, value);
        }
        Ok(Value::Object(map))
    }
}
