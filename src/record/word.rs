//! Closed sets of words that are stored: each has one stable short word, never changed once used.
//!
//! Knows nothing of what the words mean. A word that a newer version wrote is kept as it stands
//! (`Coded::Unknown`) and handed on unchanged.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A value with one stable stored word.
pub trait StoredWord: Sized + Copy {
    /// The word that is stored and sent.
    fn word(self) -> &'static str;
    /// The value for a stored word, if this version knows it.
    fn of_word(word: &str) -> Option<Self>;
}

/// A stored word that this version knows, or one kept as it was written elsewhere.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Coded<T> {
    /// A word of this version.
    Known(T),
    /// A word of another version, kept unchanged.
    Unknown(String),
}

impl<T: StoredWord> Coded<T> {
    /// Reads any word; nothing is refused, nothing is lost.
    pub fn of_word(word: &str) -> Self {
        T::of_word(word).map_or_else(|| Self::Unknown(word.to_owned()), Self::Known)
    }

    /// The word as stored.
    pub fn word(&self) -> &str {
        match self {
            Self::Known(value) => value.word(),
            Self::Unknown(word) => word,
        }
    }

    /// The value, if this version knows it.
    pub fn known(&self) -> Option<T> {
        match self {
            Self::Known(value) => Some(*value),
            Self::Unknown(_) => None,
        }
    }
}

impl<T: StoredWord> Serialize for Coded<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.word())
    }
}

impl<'de, T: StoredWord> Deserialize<'de> for Coded<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = String::deserialize(deserializer)?;
        Ok(Self::of_word(&word))
    }
}

/// Declares a closed set of stored words.
macro_rules! words {
    ($(#[$meta:meta])* $name:ident { $($(#[$variant_meta:meta])* $variant:ident = $word:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name {
            $($(#[$variant_meta])* $variant),+
        }

        impl $name {
            /// Every value, in the order in which they are shown.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The stable word that is stored and sent.
            pub const fn as_word(self) -> &'static str {
                match self {
                    $(Self::$variant => $word),+
                }
            }

            /// The value for a stored word, if this version knows it.
            pub fn from_word(word: &str) -> Option<Self> {
                match word {
                    $($word => Some(Self::$variant),)+
                    _ => None,
                }
            }
        }

        impl $crate::record::StoredWord for $name {
            fn word(self) -> &'static str {
                self.as_word()
            }

            fn of_word(word: &str) -> Option<Self> {
                Self::from_word(word)
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.as_word())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let word = <String as serde::Deserialize>::deserialize(deserializer)?;
                Self::from_word(&word).ok_or_else(|| {
                    serde::de::Error::custom(format_args!(
                        "one of {:?} was expected",
                        [$($word),+]
                    ))
                })
            }
        }
    };
}

pub(crate) use words;
