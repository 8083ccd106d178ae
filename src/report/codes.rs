//! Our codes and what other code systems call the same thing: a table that a site can edit.
//!
//! Every thing has a code of our own ([`SYSTEM`]); some have codes of a public system beside it.
//! The built-in table holds public codes only where they were looked up at their publisher:
//! LOINC 29463-7 and 3141-9 (HL7, value set of body weight), 8339-4 and 11884-4 (HL7, birth and
//! fetal death reporting guide), 72514-3 (HL7 Belgium, pain scale), and 271 of the HL7 code system
//! service-type.

use std::collections::HashMap;

use serde_json::{Value, json};

use crate::words::{Lang, Words};

/// Our own code system. Not an address: nothing is behind it.
pub const SYSTEM: &str = "urn:feedside:code";

const BUILT_IN: &str = include_str!("../../assets/report/codes.csv");
const HEADER: &str = "ours,display,system,code,system_display";

/// The longest table that is read, in bytes: a choice of this project.
pub const CODES_BYTES_MOST: usize = 1024 * 1024;

/// Why a table of codes was refused.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CodesError {
    /// The first line is not the header.
    #[error("the first line is not `{HEADER}`")]
    Header,
    /// A line without exactly five cells, or with an empty first or second one, or with a code
    /// but no system.
    #[error("line {line} is not a code")]
    Line {
        /// Its number, from 1.
        line: usize,
    },
    /// A line for a thing that no record has.
    #[error("line {line} is for nothing that a record has")]
    NotOurs {
        /// Its number, from 1.
        line: usize,
    },
    /// A line that says again what an earlier one said.
    #[error("line {line} stands there already")]
    Twice {
        /// Its number, from 1.
        line: usize,
    },
    /// The table is too long.
    #[error("the table is too long")]
    TooLong,
}

/// A code of another system.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Other {
    /// The system: an address or URN; or, without a colon, the name of a coding system in HL7
    /// version 2 alone (HL7 table 0396, as `L`).
    pub system: String,
    /// The code.
    pub code: String,
    /// What it is called there; may be empty.
    pub display: String,
}

impl Other {
    fn is_for_fhir(&self) -> bool {
        self.system.contains(':')
    }

    /// The system's name in HL7 version 2, if it has one (HL7 table 0396).
    pub fn hl7_system(&self) -> Option<&str> {
        match self.system.as_str() {
            "http://loinc.org" => Some("LN"),
            "http://snomed.info/sct" => Some("SCT"),
            other => (!self.is_for_fhir()).then_some(other),
        }
    }
}

/// What a thing is called by us and by others.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Named {
    display: String,
    others: Vec<Other>,
}

/// The table, and the English words that name what is not in it.
#[derive(Debug, Clone)]
pub struct Codes {
    named: HashMap<String, Named>,
    words: Words,
}

impl Codes {
    /// The table that comes with the program.
    pub fn built_in() -> Self {
        let words = Words::new(Lang::En);
        let named = rows(BUILT_IN).map(|rows| gathered(&rows).unwrap_or_default());
        Self {
            named: named.unwrap_or_default(),
            words,
        }
    }

    /// The table that comes with the program with a site's own file over it: the header, then one
    /// line for each code of another system (or one with empty cells for a thing that only we have
    /// a code for). A thing that the file names has the file's codes alone. Cells with a comma are
    /// quoted (RFC 4180).
    ///
    /// # Errors
    /// A wrong header or line, with its number.
    pub fn with_site(text: &str) -> Result<Self, CodesError> {
        let mut codes = Self::built_in();
        let rows = rows(text)?;
        let is_ours = |ours: &str| codes.named.contains_key(ours) || codes.words.has(ours);
        if let Some(row) = rows.iter().find(|row| !is_ours(&row.cells[0])) {
            return Err(CodesError::NotOurs { line: row.line });
        }
        codes.named.extend(gathered(&rows)?);
        Ok(codes)
    }

    /// What a thing is called: in the table, or by the message of the same id in English, or by
    /// its own code.
    pub fn display(&self, ours: &str) -> String {
        match self.named.get(ours) {
            Some(named) => named.display.clone(),
            None if self.words.has(ours) => self.words.say(ours),
            None => ours.replace(['-', '_'], " "),
        }
    }

    /// What others call a thing, the one that counts most first.
    pub fn others(&self, ours: &str) -> &[Other] {
        self.named.get(ours).map_or(&[], |it| &it.others)
    }

    /// A FHIR `CodeableConcept`: public codes first, then ours, and the text.
    pub fn concept(&self, ours: &str) -> Value {
        let display = self.display(ours);
        let mut coding: Vec<Value> = self
            .others(ours)
            .iter()
            .filter(|it| it.is_for_fhir())
            .map(|it| {
                let mut coding = json!({ "system": it.system, "code": it.code });
                if !it.display.is_empty() {
                    coding["display"] = it.display.as_str().into();
                }
                coding
            })
            .collect();
        coding.push(json!({ "system": SYSTEM, "code": ours, "display": display }));
        json!({ "coding": coding, "text": display })
    }
}

/// A line of the table.
struct Line {
    line: usize,
    cells: [String; 5],
}

/// The lines of a table, each a code by its form.
fn rows(text: &str) -> Result<Vec<Line>, CodesError> {
    if CODES_BYTES_MOST < text.len() {
        return Err(CodesError::TooLong);
    }
    // Spreadsheets put a mark in front.
    let text = text.trim_start_matches('\u{feff}');
    let mut lines = text.lines().zip(1..);
    if lines.next().map(|(line, _)| line.trim_end()) != Some(HEADER) {
        return Err(CodesError::Header);
    }
    lines
        .filter(|(text, _)| !text.trim().is_empty())
        .map(|(text, line)| {
            let wrong = CodesError::Line { line };
            let cells = cells(text.trim_end()).ok_or_else(|| wrong.clone())?;
            let cells: [String; 5] = cells.try_into().map_err(|_| wrong.clone())?;
            let [ours, display, system, code, _] = &cells;
            let is_control = |text: &String| text.chars().any(char::is_control);
            if ours.is_empty()
                || display.is_empty()
                || system.is_empty() != code.is_empty()
                || cells.iter().any(is_control)
            {
                return Err(wrong);
            }
            Ok(Line { line, cells })
        })
        .collect()
}

/// The cells of a line, unquoted; `None` where a quote is not closed or stands in the middle.
fn cells(line: &str) -> Option<Vec<String>> {
    let mut cells = Vec::new();
    let mut rest = line;
    loop {
        let mut cell = String::new();
        if let Some(quoted) = rest.strip_prefix('"') {
            rest = quoted;
            loop {
                let (part, after) = rest.split_once('"')?;
                cell.push_str(part);
                rest = after;
                match rest.strip_prefix('"') {
                    Some(after) => {
                        cell.push('"');
                        rest = after;
                    }
                    None => break,
                }
            }
        } else {
            let end = rest.find(',').unwrap_or(rest.len());
            cell.push_str(&rest[..end]);
            rest = &rest[end..];
            if cell.contains('"') {
                return None;
            }
        }
        cells.push(cell.trim().to_owned());
        match rest.strip_prefix(',') {
            Some(after) => rest = after,
            None => return rest.is_empty().then_some(cells),
        }
    }
}

/// The lines by the thing that they are for.
fn gathered(rows: &[Line]) -> Result<HashMap<String, Named>, CodesError> {
    let mut named: HashMap<String, Named> = HashMap::new();
    for Line { line, cells } in rows {
        let [ours, display, system, code, other] = cells;
        let is_new = !named.contains_key(ours);
        let entry = named.entry(ours.clone()).or_insert_with(|| Named {
            display: display.clone(),
            others: Vec::new(),
        });
        let is_there = |it: &Other| it.system == *system && it.code == *code;
        let says_nothing = system.is_empty() && !is_new;
        if entry.display != *display || says_nothing || entry.others.iter().any(is_there) {
            return Err(CodesError::Twice { line: *line });
        }
        if !system.is_empty() {
            entry.others.push(Other {
                system: system.clone(),
                code: code.clone(),
                display: other.clone(),
            });
        }
    }
    Ok(named)
}
