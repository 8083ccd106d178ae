//! What each field of a pair file needs, checked before the whole is read, so that an error can
//! name the field and say what belongs there.

use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::{PairFileError, Wrong, error, join};
use crate::record::{
    Jaundice, Label, Language, Sex, StoolColour, WallTime, WayOfBirth, WeighingMoment,
};

/// What belongs in a field.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Needed {
    /// An object.
    #[error("an object")]
    Object,
    /// A list.
    #[error("a list")]
    List,
    /// A time with its offset.
    #[error("a time as 2026-11-25T18:30:00+00:00")]
    Time,
    /// Yes or no.
    #[error("true or false")]
    YesNo,
    /// A whole number in a range.
    #[error("a whole number from {low} to {high}")]
    Whole {
        /// The least.
        low: i64,
        /// The most.
        high: i64,
    },
    /// One of some words.
    #[error("one of {}", words.join(", "))]
    OneOf {
        /// The words.
        words: Vec<&'static str>,
    },
    /// A list of words.
    #[error("a list of words")]
    Words,
    /// A short text.
    #[error("a short text")]
    ShortText,
    /// A language tag.
    #[error("a language tag as de")]
    Language,
    /// An id.
    #[error("an id of 32 hexadecimal digits")]
    Id,
}

/// A field's kind.
#[derive(Clone, Copy)]
pub(super) enum Kind {
    Inner,
    Time,
    YesNo,
    Whole(i64, i64),
    OneOf(fn() -> Vec<&'static str>),
    Words,
    ShortText,
    Language,
    Id,
}

/// The fields of an object: name and kind.
pub(super) type Fields = &'static [(&'static str, Kind)];

macro_rules! one_of {
    ($words:ty) => {
        Kind::OneOf(|| <$words>::ALL.iter().map(|it| it.as_word()).collect())
    };
}

pub(super) const FILE: Fields = &[
    ("pair", Kind::Inner),
    ("weighings", Kind::Inner),
    ("nappies", Kind::Inner),
    ("last_day", Kind::Inner),
    ("at", Kind::Time),
];
/// The ranges are those that the record takes; a test holds them to it.
const GRAMS: Kind = Kind::Whole(1, 30_000);
const MILLILITRES: Kind = Kind::Whole(0, 5_000);
const COUNT: Kind = Kind::Whole(0, 40);
pub(super) const PAIR: Fields = &[
    ("id", Kind::Id),
    ("mother_id", Kind::Id),
    ("bed", Kind::ShortText),
    ("initials", Kind::ShortText),
    ("mother_number", Kind::ShortText),
    ("baby_number", Kind::ShortText),
    ("birth", Kind::Time),
    ("sex", one_of!(Sex)),
    ("gestation", Kind::Whole(22 * 7, 44 * 7 + 6)),
    ("birth_weight", GRAMS),
    ("way_of_birth", one_of!(WayOfBirth)),
    ("babies", Kind::Whole(1, 8)),
    ("risk_notes", Kind::Words),
    ("reasons", Kind::Words),
    ("language", Kind::Language),
];
pub(super) const WEIGHING: Fields = &[
    ("at", Kind::Time),
    ("grams", GRAMS),
    ("step", Kind::Whole(1, 200)),
    ("clothed", Kind::YesNo),
    ("moment", one_of!(WeighingMoment)),
];
pub(super) const NAPPY: Fields = &[
    ("at", Kind::Time),
    ("wet", Kind::YesNo),
    ("heavy", Kind::YesNo),
    ("stool", one_of!(StoolColour)),
    ("urates", Kind::YesNo),
];
pub(super) const LAST_DAY: Fields = &[
    ("feeds", COUNT),
    ("wet", COUNT),
    ("dirty", COUNT),
    ("stool", one_of!(StoolColour)),
    ("urates", Kind::YesNo),
    ("meconium", Kind::YesNo),
    ("dark_urine", Kind::YesNo),
    ("hours_since_wet", Kind::Whole(0, 96)),
    ("expressed_ml", MILLILITRES),
    ("supplement_ml", MILLILITRES),
    ("sleepy", Kind::YesNo),
    ("jaundice", one_of!(Jaundice)),
    ("temperature", Kind::Whole(200, 450)),
    ("baby_danger", Kind::Words),
    ("mother_danger", Kind::Words),
];

fn reads<T: DeserializeOwned>(value: &Value) -> bool {
    serde_json::from_value::<T>(value.clone()).is_ok()
}

impl Kind {
    fn fits(self, value: &Value) -> bool {
        match self {
            Self::Inner => true,
            Self::Time => reads::<WallTime>(value),
            Self::YesNo => value.is_boolean(),
            Self::Whole(low, high) => value.as_i64().is_some_and(|it| low <= it && it <= high),
            Self::OneOf(words) => value.as_str().is_some_and(|it| words().contains(&it)),
            Self::Words => value
                .as_array()
                .is_some_and(|all| all.iter().all(Value::is_string)),
            Self::ShortText => reads::<Label>(value),
            Self::Language => reads::<Language>(value),
            Self::Id => reads::<uuid::Uuid>(value),
        }
    }

    fn needed(self) -> Needed {
        match self {
            Self::Inner => Needed::Object,
            Self::Time => Needed::Time,
            Self::YesNo => Needed::YesNo,
            Self::Whole(low, high) => Needed::Whole { low, high },
            Self::OneOf(words) => Needed::OneOf { words: words() },
            Self::Words => Needed::Words,
            Self::ShortText => Needed::ShortText,
            Self::Language => Needed::Language,
            Self::Id => Needed::Id,
        }
    }
}

/// The object in a field with every field of it known and of its kind; `null` is as good as left
/// out, and what has to be there is there.
pub(super) fn object(
    value: &Value,
    path: &str,
    known: Fields,
    must: &[&str],
) -> Result<Map<String, Value>, PairFileError> {
    let wrong = |needed| error(path, Wrong::Needs { needed });
    let map = value.as_object().ok_or_else(|| wrong(Needed::Object))?;
    let mut fields = Map::new();
    for (name, value) in map {
        let path = join(path, &super::strict::shown(name));
        let kind = known.iter().find(|(it, _)| it == name);
        let (_, kind) = kind.ok_or_else(|| error(&path, Wrong::NotKnown))?;
        if value.is_null() {
            continue;
        }
        if !kind.fits(value) {
            let needed = kind.needed();
            return Err(error(&path, Wrong::Needs { needed }));
        }
        fields.insert(name.clone(), value.clone());
    }
    match must.iter().find(|name| !fields.contains_key(**name)) {
        Some(name) => Err(error(&join(path, name), Wrong::Missing)),
        None => Ok(fields),
    }
}
