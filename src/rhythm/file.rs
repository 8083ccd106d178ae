//! Tap files: `ms,what` in the first line, then one tap a line, times rising.
//!
//! Read line by line from anything that gives bytes, within bounded memory; where the bytes come
//! from is not known here.

use std::io::{self, BufRead, BufReader, Read, Write};

use crate::record::{Tap, TapWhat};

/// The most rows that a file may have: days of sucking without a pause.
pub const ROWS_MOST: usize = 500_000;
/// The most bytes that a line may have.
pub const LINE_MOST: usize = 100;
/// The latest time, in milliseconds: a year, far beyond any feed.
const MS_MOST: u64 = 366 * 24 * 3_600_000;
const HEADER: &str = "ms,what";

/// Why a tap file was refused. Lines count from 1.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TapFileError {
    /// Nothing in it.
    #[error("line 1: the file is empty, the header ms,what was expected")]
    Empty,
    /// The first line is not the header.
    #[error("line 1: the header is not ms,what")]
    Header,
    /// A header and no tap.
    #[error("line 2: there is no tap")]
    NoTap,
    /// A line that is too long to be a tap.
    #[error("line {line}: more than {LINE_MOST} bytes")]
    LineTooLong {
        /// Which line.
        line: usize,
    },
    /// A line that is not a time, a comma and a word.
    #[error("line {line}: not a time, a comma and a word")]
    NotARow {
        /// Which line.
        line: usize,
    },
    /// A time that is not a whole number of milliseconds, or too large.
    #[error("line {line}: the time is not a whole number of milliseconds within a year")]
    Time {
        /// Which line.
        line: usize,
    },
    /// A word that is none of those known.
    #[error(
        "line {line}: the word is none of on, off, suck, suck_swallow, swallow, unwatched, watched, end"
    )]
    Word {
        /// Which line.
        line: usize,
    },
    /// A time before the one above.
    #[error("line {line}: the time goes back")]
    TimeGoesBack {
        /// Which line.
        line: usize,
    },
    /// More rows than are taken.
    #[error("line {line}: more than {ROWS_MOST} rows")]
    TooManyRows {
        /// Which line.
        line: usize,
    },
    /// The bytes could not be read.
    #[error("line {line}: could not be read ({kind})")]
    Unreadable {
        /// Up to which line.
        line: usize,
        /// What went wrong.
        kind: io::ErrorKind,
    },
}

/// Reads a tap file. Lines end with a line feed, with or without a carriage return.
///
/// # Errors
/// The first line that is not as it has to be.
pub fn read_taps(from: impl Read) -> Result<Vec<Tap>, TapFileError> {
    let mut lines = Lines {
        from: BufReader::new(from),
        bytes: Vec::with_capacity(LINE_MOST + 2),
        line: 0,
    };
    match lines.next() {
        Ok(None) => return Err(TapFileError::Empty),
        Ok(Some(header)) if header.strip_prefix('\u{feff}').unwrap_or(header) == HEADER => {}
        // Another table, or a file in another encoding.
        Ok(Some(_)) | Err(TapFileError::NotARow { .. }) => return Err(TapFileError::Header),
        Err(error) => return Err(error),
    }
    let mut taps: Vec<Tap> = Vec::new();
    loop {
        let line = lines.line + 1;
        let Some(text) = lines.next()? else { break };
        if ROWS_MOST <= taps.len() {
            return Err(TapFileError::TooManyRows { line });
        }
        let tap = row(text, line)?;
        if taps.last().is_some_and(|last| tap.at < last.at) {
            return Err(TapFileError::TimeGoesBack { line });
        }
        taps.push(tap);
    }
    if taps.is_empty() {
        return Err(TapFileError::NoTap);
    }
    Ok(taps)
}

fn row(text: &str, line: usize) -> Result<Tap, TapFileError> {
    let (ms, what) = text.split_once(',').ok_or(TapFileError::NotARow { line })?;
    if ms.is_empty() || !ms.bytes().all(|byte| byte.is_ascii_digit()) {
        return Err(TapFileError::Time { line });
    }
    let ms: u64 = ms.parse().map_err(|_| TapFileError::Time { line })?;
    if MS_MOST < ms {
        return Err(TapFileError::Time { line });
    }
    let what = TapWhat::from_word(what).ok_or(TapFileError::Word { line })?;
    Ok(Tap::new(ms, what))
}

/// Lines of bounded length.
struct Lines<R> {
    from: BufReader<R>,
    bytes: Vec<u8>,
    line: usize,
}

impl<R: Read> Lines<R> {
    /// The next line without its end; `None` after the last.
    fn next(&mut self) -> Result<Option<&str>, TapFileError> {
        self.line += 1;
        let line = self.line;
        self.bytes.clear();
        let most = LINE_MOST as u64 + 2;
        let read = (&mut self.from)
            .take(most)
            .read_until(b'\n', &mut self.bytes)
            .map_err(|error| TapFileError::Unreadable {
                line,
                kind: error.kind(),
            })?;
        if read == 0 {
            return Ok(None);
        }
        if self.bytes.last() == Some(&b'\n') {
            self.bytes.pop();
            if self.bytes.last() == Some(&b'\r') {
                self.bytes.pop();
            }
        }
        if LINE_MOST < self.bytes.len() {
            return Err(TapFileError::LineTooLong { line });
        }
        std::str::from_utf8(&self.bytes)
            .map(Some)
            .map_err(|_| TapFileError::NotARow { line })
    }
}

/// Writes a tap file that [`read_taps`] reads back.
///
/// # Errors
/// Those of what is written to.
pub fn write_taps(taps: &[Tap], mut to: impl Write) -> io::Result<()> {
    writeln!(to, "{HEADER}")?;
    for tap in taps {
        writeln!(to, "{},{}", tap.at.as_ms(), tap.what.as_word())?;
    }
    to.flush()
}
