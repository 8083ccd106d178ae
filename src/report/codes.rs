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
}

/// What a thing is called by us and by others.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Named {
    display: String,
    others: Vec<[String; 3]>,
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
        Self::of_csv(BUILT_IN).unwrap_or(Self {
            named: HashMap::new(),
            words: Words::new(Lang::En),
        })
    }

    /// A table from its file: the header, then one line for each code of another system (or one
    /// with empty cells for a thing that only we have a code for). Cells hold no commas.
    ///
    /// # Errors
    /// A wrong header or line.
    pub fn of_csv(text: &str) -> Result<Self, CodesError> {
        let mut lines = text.lines().zip(1..);
        if lines.next().map(|(line, _)| line.trim_end()) != Some(HEADER) {
            return Err(CodesError::Header);
        }
        let mut named: HashMap<String, Named> = HashMap::new();
        for (text, line) in lines.filter(|(text, _)| !text.trim().is_empty()) {
            let cells: Vec<&str> = text.trim_end().split(',').collect();
            let [ours, display, system, code, other] = cells[..] else {
                return Err(CodesError::Line { line });
            };
            if ours.is_empty() || display.is_empty() || system.is_empty() != code.is_empty() {
                return Err(CodesError::Line { line });
            }
            let entry = named.entry(ours.to_owned()).or_insert_with(|| Named {
                display: display.to_owned(),
                others: Vec::new(),
            });
            if !system.is_empty() {
                entry.others.push([system, code, other].map(str::to_owned));
            }
        }
        Ok(Self {
            named,
            words: Words::new(Lang::En),
        })
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

    /// A FHIR `CodeableConcept`: public codes first, then ours, and the text.
    pub fn concept(&self, ours: &str) -> Value {
        let display = self.display(ours);
        let mut coding: Vec<Value> = self
            .named
            .get(ours)
            .into_iter()
            .flat_map(|it| &it.others)
            .map(|[system, code, display]| {
                json!({ "system": system, "code": code, "display": display })
            })
            .collect();
        coding.push(json!({ "system": SYSTEM, "code": ours, "display": display }));
        json!({ "coding": coding, "text": display })
    }
}
