//! The catalogue: every rule, in families by subject.

use super::{Rule, baby, feeds, mother, nipple, output, pain, rhythm, risk, signs, weight};

/// The families in the order in which they are shown; each a word and its rules.
pub const FAMILIES: &[(&str, &[Rule])] = &[
    ("baby", baby::RULES),
    ("mother", mother::RULES),
    ("weight", weight::RULES),
    ("output", output::RULES),
    ("feeds", feeds::RULES),
    ("signs", signs::RULES),
    ("rhythm", rhythm::RULES),
    ("pain", pain::RULES),
    ("nipple", nipple::RULES),
    ("risk", risk::RULES),
];

/// The versions of the rules with their dates, oldest first.
pub const VERSIONS: &[(&str, &str)] = &[
    ("findings-1", "2026-11-25"),
    ("findings-2", "2026-11-25"),
    ("findings-3", "2026-11-28"),
];

/// The date of a version of the rules.
pub fn version_date(version: &str) -> Option<&'static str> {
    let known = VERSIONS.iter().find(|(it, _)| *it == version);
    known.map(|(_, date)| *date)
}

/// Every rule, family by family.
pub fn catalogue() -> impl Iterator<Item = &'static Rule> {
    FAMILIES.iter().flat_map(|(_, rules)| rules.iter())
}

/// A rule by its id.
pub fn rule(id: &str) -> Option<&'static Rule> {
    catalogue().find(|rule| rule.id == id)
}
