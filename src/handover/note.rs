//! The note code: plain text that a scanner types into the notes. Anyone who sees it can read it.
//!
//! The text is made elsewhere; here it is made safe to be typed: one line of plain letters, digits
//! and a few marks, none of which is a dead key, a shortcut or a separator of the ward's system.

use super::{Code, HandoverError, qr, read_back};

/// The most characters of a note.
pub const NOTE_CHARS_MOST: usize = 900;
/// The most characters that a code of version 20 at error correction M holds.
pub const NOTE_CHARS_IN_V20: usize = 666;
/// The version that holds the longest note.
const NOTE_VERSION_MOST: u8 = 24;

/// Marks that may stand in a note beside letters, digits and spaces.
const MARKS: &str = ".,:;()+-/%=?";

/// What is written for a character that cannot be typed everywhere.
const INSTEAD: &[(&str, &str)] = &[
    ("\n\r\t\u{a0}\u{2007}\u{2009}\u{202f}", " "),
    ("\u{2010}\u{2011}\u{2012}\u{2013}\u{2014}\u{2212}", "-"),
    (
        "'\"\u{2018}\u{2019}\u{201a}\u{201c}\u{201d}\u{201e}`\u{b4}",
        "",
    ),
    ("\u{2066}\u{2067}\u{2068}\u{2069}\u{200e}\u{200f}", ""),
    ("\u{2026}!", "."),
    ("&", "+"),
    ("°", " deg "),
    ("×", "x"),
    ("µμ", "u"),
    ("½", "1/2"),
    ("¼", "1/4"),
    ("¾", "3/4"),
    ("ä", "ae"),
    ("öœ", "oe"),
    ("ü", "ue"),
    ("ß", "ss"),
    ("Ä", "Ae"),
    ("ÖŒ", "Oe"),
    ("Ü", "Ue"),
    ("æ", "ae"),
    ("Æ", "Ae"),
    ("åàáâãāăą", "a"),
    ("ÅÀÁÂÃĀĂĄ", "A"),
    ("çćč", "c"),
    ("ÇĆČ", "C"),
    ("ďđð", "d"),
    ("ĎĐÐ", "D"),
    ("èéêëēėęě", "e"),
    ("ÈÉÊËĒĖĘĚ", "E"),
    ("ğ", "g"),
    ("Ğ", "G"),
    ("ìíîïīįı", "i"),
    ("ÌÍÎÏĪĮİ", "I"),
    ("łľĺ", "l"),
    ("ŁĽĹ", "L"),
    ("ñńňņ", "n"),
    ("ÑŃŇŅ", "N"),
    ("òóôõøőō", "o"),
    ("ÒÓÔÕØŐŌ", "O"),
    ("řŕ", "r"),
    ("ŘŔ", "R"),
    ("śšşș", "s"),
    ("ŚŠŞȘ", "S"),
    ("ťțţ", "t"),
    ("ŤȚŢ", "T"),
    ("ùúûūůűų", "u"),
    ("ÙÚÛŪŮŰŲ", "U"),
    ("ýÿ", "y"),
    ("ÝŸ", "Y"),
    ("źżž", "z"),
    ("ŹŻŽ", "Z"),
    ("þ", "th"),
    ("Þ", "Th"),
];

/// A note that can be typed into any notes field.
#[derive(Clone, PartialEq, Eq)]
pub struct Note(String);

impl Note {
    /// Makes text safe to be typed: accents are written out, line breaks become spaces, quotes are
    /// left out, runs of spaces become one.
    ///
    /// # Errors
    /// [`HandoverError::NoteEmpty`]; [`HandoverError::NoteNotPlain`] naming the first character
    /// that has no plain form; [`HandoverError::NoteTooLong`] by what would be typed.
    pub fn new(text: &str) -> Result<Self, HandoverError> {
        let mut plain = String::new();
        for (place, c) in (1u32..).zip(text.trim().chars()) {
            let written = of_char(c).ok_or(HandoverError::NoteNotPlain { place })?;
            for c in written
                .chars()
                .chain(written.is_empty().then_some(c).filter(|_| is_plain(c)))
            {
                if c != ' ' || !plain.ends_with(' ') {
                    plain.push(c);
                }
            }
        }
        let plain = plain.trim().to_owned();
        if plain.is_empty() {
            return Err(HandoverError::NoteEmpty);
        }
        if NOTE_CHARS_MOST < plain.len() {
            return Err(HandoverError::NoteTooLong {
                given: u32::try_from(plain.len()).unwrap_or(u32::MAX),
            });
        }
        Ok(Self(plain))
    }

    /// The text as it will be typed.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The code, read back before it is given.
    ///
    /// # Errors
    /// [`HandoverError::ReadBackFailed`].
    pub fn to_code(&self) -> Result<Code, HandoverError> {
        let code = qr::draw_plain(&self.0, NOTE_VERSION_MOST)?;
        read_back::check(&code, &self.0, 1)?;
        Ok(code)
    }
}

impl std::fmt::Debug for Note {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Note(…)")
    }
}

fn is_plain(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == ' ' || MARKS.contains(c)
}

/// What is written for a character; empty for one that stays as it is or is left out.
fn of_char(c: char) -> Option<&'static str> {
    if is_plain(c) {
        return Some("");
    }
    INSTEAD
        .iter()
        .find(|(these, _)| these.contains(c))
        .map(|(_, instead)| *instead)
}
