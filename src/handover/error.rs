//! What can go wrong between a record and the desk. Data only; the sentences come at the edge.

use super::Kid;
use crate::record::RecordError;

/// Why something was refused, on the tablet or at the desk.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum HandoverError {
    /// The scanned text is no code of this program.
    #[error("not a code of ours")]
    NotOurs,
    /// The code is ours, of a version that this program does not know.
    #[error("version {found} is not known")]
    UnknownVersion {
        /// The version found.
        found: u8,
    },
    /// A code is damaged so that not even its number can be told.
    #[error("a code is damaged")]
    CodeDamaged,
    /// A piece does not pass its check.
    #[error("piece {piece} is damaged")]
    PieceDamaged {
        /// Its number, from 1.
        piece: u8,
    },
    /// A piece is shorter than it says: the scan was cut.
    #[error("piece {piece} is cut short")]
    PieceCut {
        /// Its number, from 1.
        piece: u8,
    },
    /// A piece names a transfer that it cannot belong to.
    #[error("piece {piece} does not belong with the others")]
    PieceMixed {
        /// Its number, from 1.
        piece: u8,
    },
    /// More than this program takes: text, pieces, sealed or unpacked bytes, or entries.
    #[error("too large")]
    TooLarge,
    /// The record was sealed for another desk.
    #[error("sealed for desk {desk}")]
    NotForThisDesk {
        /// The id of the key that it was sealed for.
        desk: Kid,
    },
    /// The sealed record was changed after it was sealed.
    #[error("altered after sealing")]
    Altered,
    /// The tablet that signed it is not enrolled at this desk.
    #[error("tablet {tablet} is not enrolled")]
    TabletNotEnrolled {
        /// The id of the tablet's key.
        tablet: Kid,
    },
    /// The signature does not fit the record, the tablet or this desk.
    #[error("the signature is wrong")]
    SignatureWrong,
    /// The signed content cannot be unpacked.
    #[error("the content cannot be unpacked")]
    CannotUnpack,
    /// The unpacked content is not laid out as a record.
    #[error("the content is not laid out as a record")]
    NotReadable,
    /// The content is laid out as a record, and a value in it is not possible.
    #[error("a value in it is not possible: {0}")]
    NotPossible(#[from] RecordError),
    /// A group of a typed key does not pass its check.
    #[error("group {group} of the key is wrong")]
    KeyGroupWrong {
        /// The group, from 1.
        group: u8,
    },
    /// A typed key has too few or too many characters.
    #[error("the key has {given} characters")]
    KeyLengthWrong {
        /// How many characters were typed, spaces and dashes left out.
        given: u32,
    },
    /// A key that nothing can be sealed to or checked with.
    #[error("the key cannot be used")]
    KeyUnusable,
    /// A note with nothing in it.
    #[error("the note is empty")]
    NoteEmpty,
    /// A note longer than the note code holds.
    #[error("the note has {given} characters")]
    NoteTooLong {
        /// How many characters it has.
        given: u32,
    },
    /// A note with a character that cannot be typed into any notes field.
    #[error("character {place} of the note cannot be typed everywhere")]
    NoteNotPlain {
        /// The character's place, from 1.
        place: u32,
    },
    /// A drawn code did not read back as it was written.
    #[error("code {piece} did not read back")]
    ReadBackFailed {
        /// Its number, from 1.
        piece: u8,
    },
}

impl HandoverError {
    /// The variant part of its message ids: `err-handover-<word>` says what happened and
    /// `rec-handover-<word>` what to do.
    pub const fn word(&self) -> &'static str {
        match self {
            Self::NotOurs => "not-ours",
            Self::UnknownVersion { .. } => "unknown-version",
            Self::CodeDamaged => "code-damaged",
            Self::PieceDamaged { .. } => "piece-damaged",
            Self::PieceCut { .. } => "piece-cut",
            Self::PieceMixed { .. } => "piece-mixed",
            Self::TooLarge => "too-large",
            Self::NotForThisDesk { .. } => "not-for-this-desk",
            Self::Altered => "altered",
            Self::TabletNotEnrolled { .. } => "tablet-not-enrolled",
            Self::SignatureWrong => "signature-wrong",
            Self::CannotUnpack => "cannot-unpack",
            Self::NotReadable => "not-readable",
            Self::NotPossible(_) => "not-possible",
            Self::KeyGroupWrong { .. } => "key-group-wrong",
            Self::KeyLengthWrong { .. } => "key-length-wrong",
            Self::KeyUnusable => "key-unusable",
            Self::NoteEmpty => "note-empty",
            Self::NoteTooLong { .. } => "note-too-long",
            Self::NoteNotPlain { .. } => "note-not-plain",
            Self::ReadBackFailed { .. } => "read-back-failed",
        }
    }

    /// The piece that it is about, from 1.
    pub const fn piece(&self) -> Option<u8> {
        match self {
            Self::PieceDamaged { piece }
            | Self::PieceCut { piece }
            | Self::PieceMixed { piece }
            | Self::ReadBackFailed { piece } => Some(*piece),
            _ => None,
        }
    }

    /// The numbers in its sentences, by the names that the messages use.
    pub fn numbers(&self) -> Vec<(&'static str, i64)> {
        match self {
            Self::PieceDamaged { piece }
            | Self::PieceCut { piece }
            | Self::PieceMixed { piece }
            | Self::ReadBackFailed { piece } => vec![("piece", i64::from(*piece))],
            Self::UnknownVersion { found } => vec![("found", i64::from(*found))],
            Self::KeyGroupWrong { group } => vec![("group", i64::from(*group))],
            Self::KeyLengthWrong { given } | Self::NoteTooLong { given } => {
                vec![("given", i64::from(*given))]
            }
            Self::NoteNotPlain { place } => vec![("place", i64::from(*place))],
            Self::NotOurs
            | Self::CodeDamaged
            | Self::TooLarge
            | Self::NotForThisDesk { .. }
            | Self::Altered
            | Self::TabletNotEnrolled { .. }
            | Self::SignatureWrong
            | Self::CannotUnpack
            | Self::NotReadable
            | Self::NotPossible(_)
            | Self::KeyUnusable
            | Self::NoteEmpty => Vec::new(),
        }
    }
}
