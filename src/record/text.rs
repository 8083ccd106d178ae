//! Text that people type: short labels and notes. `Debug` never shows it.

use serde::{Deserialize, Serialize};

use super::RecordError;

macro_rules! text {
    ($(#[$meta:meta])* $name:ident, $what:literal, $most:literal) => {
        $(#[$meta])*
        #[derive(Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub struct $name(String);

        impl $name {
            /// The most characters it may have.
            pub const MOST: usize = $most;

            /// Takes text, trimmed.
            ///
            /// # Errors
            /// Empty, too long, or with control characters other than a line break.
            pub fn new(text: &str) -> Result<Self, RecordError> {
                let text = text.trim();
                if text.is_empty() {
                    return Err(RecordError::Empty { what: $what });
                }
                if Self::MOST < text.chars().count() {
                    return Err(RecordError::TooLong { what: $what, most: Self::MOST });
                }
                if text.chars().any(|c| c.is_control() && c != '\n') {
                    return Err(RecordError::NotPrintable { what: $what });
                }
                Ok(Self(text.to_owned()))
            }

            /// The text itself.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl TryFrom<String> for $name {
            type Error = RecordError;
            fn try_from(text: String) -> Result<Self, RecordError> {
                Self::new(&text)
            }
        }

        impl From<$name> for String {
            fn from(text: $name) -> Self {
                text.0
            }
        }

        impl std::fmt::Debug for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("…")
            }
        }
    };
}

text!(
    /// A bed, initials, a ward number, a specialist's sign: up to 40 characters.
    Label, "label", 40
);
text!(
    /// A note: up to 600 characters.
    Text, "note", 600
);
