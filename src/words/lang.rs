//! The languages that the program speaks. Not the mother's own language, which may be any.

use unic_langid::LanguageIdentifier;

/// A language with a complete set of messages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub enum Lang {
    /// English: the source of all messages, and what is shown where a message is missing.
    #[default]
    En,
    /// German.
    De,
}

impl Lang {
    /// Every language, in the order in which they are offered.
    pub const ALL: &'static [Self] = &[Self::En, Self::De];

    /// Its tag (BCP 47), which is also its folder's name in `translations/`.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::De => "de",
        }
    }

    /// The language of a tag; regions are not told apart (`de-AT` is German).
    pub fn from_tag(tag: &str) -> Option<Self> {
        let primary = tag.split(['-', '_']).next().unwrap_or_default();
        Self::ALL
            .iter()
            .copied()
            .find(|lang| lang.tag().eq_ignore_ascii_case(primary))
    }

    /// What its speakers call it.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::En => "English",
            Self::De => "Deutsch",
        }
    }

    /// Whether it is written from right to left.
    pub const fn is_right_to_left(self) -> bool {
        match self {
            Self::En | Self::De => false,
        }
    }

    /// The mark between whole and fraction.
    pub(super) const fn decimal_mark(self) -> char {
        match self {
            Self::En => '.',
            Self::De => ',',
        }
    }

    /// What stands between a number and the per cent sign: nothing, or a space that does not break.
    pub(super) const fn before_percent(self) -> &'static str {
        match self {
            Self::En => "",
            Self::De => "\u{a0}",
        }
    }

    pub(super) fn id(self) -> LanguageIdentifier {
        self.tag().parse().unwrap_or_default()
    }
}
