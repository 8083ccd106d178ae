//! Segments of HL7 version 2.5.1 while they are written: fields by number, parts, escapes, times.
//!
//! Source: HL7 v2.5.1, chapter 2 (encoding characters `|^~\&`, escape sequences of 2.7, data type
//! TS); from memory, and held to it by an independent strict validator.

use crate::record::WallTime;

/// The end of a segment.
const END: char = '\r';

/// One segment while it is written.
pub(super) struct Segment {
    fields: Vec<String>,
}

impl Segment {
    pub fn new(name: &str) -> Self {
        Self {
            fields: vec![name.to_owned()],
        }
    }

    /// Puts text into a field, by its number in the standard.
    pub fn text(self, number: usize, text: &str) -> Self {
        self.raw(number, escaped(text))
    }

    /// Puts parts into a field.
    pub fn parts(self, number: usize, parts: &[&str]) -> Self {
        let parts: Vec<String> = parts.iter().map(|part| escaped(part)).collect();
        self.raw(number, parts.join("^").trim_end_matches('^').to_owned())
    }

    /// Puts a time into a field.
    pub fn time(self, number: usize, wall: WallTime) -> Self {
        self.raw(number, time(wall))
    }

    /// Puts into a field what is escaped already.
    pub fn raw(mut self, number: usize, field: String) -> Self {
        if self.fields.len() <= number {
            self.fields.resize(number + 1, String::new());
        }
        self.fields[number] = field;
        self
    }

    /// Adds it to a message.
    pub fn end(self, message: &mut String) {
        message.push_str(self.fields.join("|").trim_end_matches('|'));
        message.push(END);
    }
}

/// A time with milliseconds and offset.
pub(super) fn time(wall: WallTime) -> String {
    wall.local().format("%Y%m%d%H%M%S%.3f%z").to_string()
}

/// Text whose signs mean themselves; what would break a segment becomes a space.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '\\' => out.push_str("\\E\\"),
            '|' => out.push_str("\\F\\"),
            '^' => out.push_str("\\S\\"),
            '&' => out.push_str("\\T\\"),
            '~' => out.push_str("\\R\\"),
            sign if sign.is_control() => out.push(' '),
            sign => out.push(sign),
        }
    }
    out
}
