//! The facts as a table: one row for each fact or entry, RFC 4180, lines ending in CR LF.
//!
//! Coded words stay coded words. A cell of free text that a spreadsheet would take for a formula
//! gets an apostrophe before it. Single taps are not rows: their counts are.

mod facts;
mod feed;

use super::Facts;
use super::form::iso;
use crate::record::{Sign, WallTime};

/// The first line.
pub const HEADER: &str = "section,at,name,value,unit,low,high,source";

/// Where a fact comes from when it was seen, asked or typed at the bedside.
const SEEN: &str = "journal";

/// Writes the whole table.
pub fn write(facts: &Facts) -> String {
    let mut table = Table::default();
    facts::record(&mut table, facts);
    facts::findings(&mut table, facts);
    facts::pair(&mut table, facts);
    facts::last_day(&mut table, facts);
    facts::measured(&mut table, facts);
    signs(&mut table, facts);
    for (index, feed) in facts.feeds.iter().enumerate() {
        feed::add(&mut table, facts, &format!("feed {}", index + 1), feed);
    }
    for (wall, text) in &facts.notes {
        table.text("note", Some(*wall), "note", text.as_str());
    }
    facts::plan(&mut table, facts);
    table.text
}

/// The signs of each feed; of several each has a section of its own.
fn signs(table: &mut Table, facts: &Facts) {
    let looks = facts.looks();
    for (number, look) in (1..).zip(&looks) {
        let section = match looks.len() {
            1 => "sign".to_owned(),
            _ => format!("sign feed {number}"),
        };
        for sign in Sign::ALL {
            let now = look.signs[sign.index()];
            let at = now.map(|now| facts.wall(now.at));
            let state = now.map_or("not_looked", |now| now.state.as_word());
            table.seen(&section, at, sign.as_word(), state);
        }
    }
}

#[derive(Default)]
struct Table {
    text: String,
}

/// One row; what is left out is empty.
#[derive(Default)]
struct Row<'a> {
    section: &'a str,
    at: Option<WallTime>,
    name: &'a str,
    value: String,
    unit: &'a str,
    low: String,
    high: String,
    source: &'a str,
}

impl Table {
    fn push(&mut self, row: &Row<'_>) {
        if self.text.is_empty() {
            self.text.push_str(HEADER);
            self.text.push_str("\r\n");
        }
        let at = row.at.map(iso).unwrap_or_default();
        let cells = [
            row.section,
            &at,
            row.name,
            &row.value,
            row.unit,
            &row.low,
            &row.high,
            row.source,
        ];
        for (index, cell) in cells.into_iter().enumerate() {
            if index != 0 {
                self.text.push(',');
            }
            self.text.push_str(&quoted(cell));
        }
        self.text.push_str("\r\n");
    }

    /// A coded word seen at the bedside.
    fn seen(&mut self, section: &str, at: Option<WallTime>, name: &str, value: &str) {
        self.push(&Row {
            section,
            at,
            name,
            value: value.to_owned(),
            source: SEEN,
            ..Row::default()
        });
    }

    /// Text that somebody typed.
    fn text(&mut self, section: &str, at: Option<WallTime>, name: &str, value: &str) {
        self.seen(section, at, name, &harmless(value));
    }

    /// A number seen at the bedside; `unknown` where it was not asked.
    fn number(
        &mut self,
        section: &str,
        at: Option<WallTime>,
        name: &str,
        value: Option<i64>,
        unit: &str,
    ) {
        let value = value.map_or_else(|| "unknown".to_owned(), |value| value.to_string());
        self.push(&Row {
            section,
            at,
            name,
            value,
            unit,
            source: SEEN,
            ..Row::default()
        });
    }
}

/// A cell as RFC 4180 wants it: quoted where it holds a comma, a quote or a line break.
fn quoted(cell: &str) -> String {
    if cell.contains([',', '"', '\r', '\n']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell.to_owned()
    }
}

/// Text that no spreadsheet takes for a formula.
/// Source: OWASP, "CSV injection": a cell starting with `= + - @`, tab or carriage return (from memory).
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}
