//! Which key goes where: to the scanner's listener, to the line that a person types, or to the
//! toolkit.
//!
//! Pure: keys with their times in, what to do with them out. A scanner types like a keyboard, so
//! that both come the same way. As long as no line is open all that is typed is the scanner's. While
//! one is open a scan is known by its pace, or by the preamble that every code begins with, and is
//! taken out of the line again: a record scanned while somebody searches is neither lost nor left
//! as digits in the search.

use crate::handover::digits;

/// Keys that follow each other faster than this are typed by a machine, in milliseconds. Scanners
/// take 1 to 40 ms from key to key; the fastest fingers about 60 (common practice).
pub const MACHINE_GAP_MS: u64 = 45;
/// So many keys in a row at that pace are a scan: nobody rolls so many keys.
pub const MACHINE_KEYS: usize = 12;
/// What follows a scan sooner than this belongs to it: a suffix, or the next code. Common practice.
pub const SCAN_ENDS_MS: u64 = 500;
/// The longest line that a person types, in characters.
pub const LINE_CHARS_MOST: usize = 60;

/// A key as the toolkit names it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key<'a> {
    /// Something to be written.
    Text(&'a str),
    /// Enter.
    Enter,
    /// The tab key.
    Tab,
    /// Takes the last character back.
    Backspace,
    /// Away from here.
    Escape,
    /// A key that writes nothing.
    Other,
}

/// What a key led to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Typed {
    /// The scanner typed this.
    Scanned(String),
    /// The line is another now.
    Edited,
    /// The person is done with the line.
    Accepted(String),
    /// The person does without the line, or wants to leave the page.
    Left,
    /// Nothing. The key is swallowed all the same.
    Nothing,
    /// Not for us: the toolkit moves the focus, or presses the key that has it.
    Toolkits,
}

/// All that has to be remembered of what was typed.
#[derive(Debug, Default)]
pub struct Typing {
    line: Option<String>,
    /// When the last key came.
    last_ms: Option<u64>,
    /// How many characters at the end of the line came at a machine's pace.
    fast: usize,
    /// Whether a scan runs, or ended just now.
    in_scan: bool,
}

impl Typing {
    /// The line that is open, and what is in it.
    pub fn line(&self) -> Option<&str> {
        self.line.as_deref()
    }

    /// Opens an empty line.
    pub fn open(&mut self) {
        self.line = Some(String::new());
        self.fast = 0;
    }

    /// Closes the line and forgets what is in it.
    pub fn close(&mut self) {
        self.line = None;
    }

    /// How long no key came, in milliseconds; `None` if none ever did.
    pub fn silent_ms(&self, now_ms: u64) -> Option<u64> {
        self.last_ms.map(|last_ms| now_ms.saturating_sub(last_ms))
    }

    /// Takes a key that came at this time, in milliseconds of any clock that only goes on.
    pub fn key(&mut self, key: Key<'_>, now_ms: u64) -> Typed {
        if key == Key::Other {
            return Typed::Nothing;
        }
        let gap_ms = self.silent_ms(now_ms).unwrap_or(u64::MAX);
        self.last_ms = Some(now_ms);
        let after_pause = SCAN_ENDS_MS <= gap_ms;
        if after_pause {
            self.in_scan = false;
        }
        if self.line.is_some() && !self.in_scan {
            return self.in_line(key, gap_ms);
        }
        match key {
            Key::Text(text) => {
                self.in_scan = true;
                Typed::Scanned(text.to_owned())
            }
            // A person who moves about by keys pauses before each.
            Key::Enter | Key::Tab if after_pause => Typed::Toolkits,
            Key::Enter => Typed::Scanned("\n".to_owned()),
            Key::Tab => Typed::Scanned("\t".to_owned()),
            Key::Escape => Typed::Left,
            Key::Backspace | Key::Other => Typed::Nothing,
        }
    }

    fn in_line(&mut self, key: Key<'_>, gap_ms: u64) -> Typed {
        let Some(line) = &mut self.line else {
            return Typed::Nothing;
        };
        match key {
            Key::Text(text) => {
                if MACHINE_GAP_MS < gap_ms {
                    self.fast = 0;
                }
                self.fast += text.chars().count();
                line.push_str(text);
                let chars = line.chars().count();
                let begins = if MACHINE_KEYS <= self.fast {
                    Some(chars.saturating_sub(self.fast))
                } else {
                    preamble_at(line)
                };
                if let Some(begins) = begins {
                    let scanned: String = line.chars().skip(begins).collect();
                    *line = line.chars().take(begins).collect();
                    self.fast = 0;
                    self.in_scan = true;
                    return Typed::Scanned(scanned);
                }
                if LINE_CHARS_MOST < chars {
                    // Room for a preamble is kept; what stands longest goes.
                    *line = line.chars().skip(chars - LINE_CHARS_MOST).collect();
                }
                Typed::Edited
            }
            Key::Backspace => {
                line.pop();
                self.fast = 0;
                Typed::Edited
            }
            Key::Enter => {
                self.fast = 0;
                Typed::Accepted(line.clone())
            }
            Key::Escape => {
                self.line = None;
                Typed::Left
            }
            Key::Tab => Typed::Toolkits,
            Key::Other => Typed::Nothing,
        }
    }
}

/// Where a whole preamble begins in a line, in characters.
fn preamble_at(line: &str) -> Option<usize> {
    let scanned = digits::unwrap(line).ok()?;
    (!scanned.preamble_damaged).then_some(scanned.begins)
}
