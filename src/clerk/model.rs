//! All that the desk's window remembers.

use std::path::PathBuf;

use super::typing::Typing;
use crate::desk::{DeskError, Kept, RecordHead, Said};
use crate::handover::{TabletPublic, Waiting};

/// How many records the list shows; older ones are found by searching.
pub const LISTED_MOST: u32 = 60;

/// What the line is for that is open.
#[derive(Debug, Default)]
pub enum LineFor {
    /// No line is open: every key is the scanner's.
    #[default]
    Nothing,
    /// Finding a record.
    Search,
    /// What a tablet is to be called here, whose six words were found the same.
    Name(TabletPublic),
}

/// A record that is read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Its number.
    pub number: i64,
    /// The page in plain text.
    pub text: String,
    /// What of it this version does not know, a sentence each.
    pub doubts: Vec<String>,
}

/// What became of something that was touched.
#[derive(Debug)]
pub enum Notice {
    /// A record was written to a file.
    Written(PathBuf),
    /// A record was given to the printer.
    Printed,
    /// There is no printer that can be reached from here; the page was written to a file.
    NoPrinter(PathBuf),
    /// A tablet is enrolled under this name.
    Enrolled(String),
    /// The six words differ; nothing was changed.
    NotEnrolled,
    /// It failed.
    Failed(DeskError),
}

/// The model.
#[derive(Debug, Default)]
pub struct Model {
    /// Whether the window is in front, so that it hears the scanner.
    pub is_in_front: bool,
    /// Whether this desk has a key, so that records can be for it.
    pub has_key: bool,
    /// Whether a scan runs.
    pub is_reading: bool,
    /// Whether something was typed since the listener was last told that nothing more comes.
    pub is_unfinished: bool,
    /// What was said to the last scan.
    pub said: Option<Said>,
    /// The record that arrived last: its receipt stays until the next.
    pub kept: Option<Kept>,
    /// The records begun of which pieces are missing.
    pub waiting: Vec<Waiting>,
    /// Where keys go.
    pub typing: Typing,
    /// What the open line is for.
    pub line_for: LineFor,
    /// What the list shows is found by this; empty for the newest.
    pub searched: String,
    /// Whether the list is to be asked for when the person pauses.
    pub is_search_due: bool,
    /// The list.
    pub heads: Vec<RecordHead>,
    /// The record that is read, in place of the list.
    pub page: Option<Page>,
    /// What became of the last thing that was touched.
    pub notice: Option<Notice>,
}
