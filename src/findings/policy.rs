//! The ward policy: the ward's own thresholds within published bounds, read from TOML.
//!
//! A file that is wrong anywhere is refused whole, with line and column. No rule and no level can
//! be switched off. Knows no disk: text in, policy out.

use sha2::{Digest, Sha256};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::limit::IN_ORDER;
use super::{CallWhom, Limit};
use crate::record::PolicyMark;

/// The built-in policy as a file, to start a ward's own from.
pub const POLICY_BUILT_IN: &str = include_str!("policy-built-in.toml");

/// The most bytes of a policy file that are read.
const BYTES_MOST: usize = 64 * 1024;
/// The most characters of a text in it.
const TEXT_MOST: usize = 60;

/// Which kind of value a key needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PolicyNeeded {
    /// A text of one line.
    #[error("a text of 1 to 60 characters on one line")]
    ShortText,
    /// A date.
    #[error("a date as 2026-11-25")]
    Date,
    /// A table.
    #[error("a table")]
    Table,
    /// A number with one decimal.
    #[error("a number with one decimal")]
    OneDecimal,
    /// A whole number.
    #[error("a whole number")]
    Whole,
}

/// What is wrong with a policy file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PolicyWrong {
    /// Larger than is read.
    #[error("more than {most} bytes")]
    TooLarge {
        /// The most that are read.
        most: usize,
    },
    /// Not TOML.
    #[error("not TOML: {why}")]
    NotToml {
        /// What the parser says.
        why: String,
    },
    /// A key that is not known.
    #[error("key {key} is not known")]
    UnknownKey {
        /// The key.
        key: String,
    },
    /// A key that is needed and not there.
    #[error("key {key} is missing")]
    Missing {
        /// The key.
        key: &'static str,
    },
    /// Another kind of value is needed.
    #[error("{key} needs {needed}")]
    WrongKind {
        /// The key.
        key: String,
        /// Which kind.
        needed: PolicyNeeded,
    },
    /// Outside the published bounds. All numbers in the unit that the key names, times ten where
    /// the file writes one decimal.
    #[error("{} of {given} is outside {low} to {high}", limit.as_word())]
    OutOfBounds {
        /// The threshold.
        limit: Limit,
        /// The number given.
        given: i64,
        /// The least that is taken.
        low: i64,
        /// The most.
        high: i64,
    },
    /// Two thresholds in the wrong order.
    #[error("{} lies above {}", lower.as_word(), higher.as_word())]
    Disordered {
        /// The one that may not lie above.
        lower: Limit,
        /// The other.
        higher: Limit,
    },
}

/// An error in a policy file and where it is.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}, column {column}: {wrong}")]
pub struct PolicyError {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// What is wrong.
    pub wrong: PolicyWrong,
}

/// A ward's thresholds, complete and checked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Policy {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
    /// Who wrote it.
    pub author: String,
    /// Its date, as `2026-11-25`.
    pub date: String,
    limits: [i64; Limit::ALL.len()],
    call: [Option<String>; CallWhom::ALL.len()],
    hash: String,
}

impl Policy {
    /// The built-in policy: the published defaults.
    pub fn built_in() -> Self {
        Self {
            name: "Built-in".to_owned(),
            version: "1".to_owned(),
            author: "Feedside".to_owned(),
            date: "2026-11-25".to_owned(),
            limits: std::array::from_fn(|index| Limit::ALL[index].facts().default),
            call: Default::default(),
            hash: hash(POLICY_BUILT_IN),
        }
    }

    /// Reads a ward's policy. Limits that it leaves out keep their defaults.
    ///
    /// # Errors
    /// The first thing that is wrong, with line and column; nothing of the file is used then.
    pub fn from_toml(text: &str) -> Result<Self, PolicyError> {
        let file = File { text };
        if BYTES_MOST < text.len() {
            return Err(file.error(0, PolicyWrong::TooLarge { most: BYTES_MOST }));
        }
        let table = DeTable::parse(text).map_err(|refused| {
            let at = refused.span().map_or(0, |span| span.start);
            let why = refused.message().to_owned();
            file.error(at, PolicyWrong::NotToml { why })
        })?;
        let table = table.get_ref();
        file.known(
            table,
            &["name", "version", "author", "date", "limits", "call"],
        )?;
        let mut policy = Self::built_in();
        policy.name = file.text_of(table, "name")?;
        policy.version = file.text_of(table, "version")?;
        policy.author = file.text_of(table, "author")?;
        policy.date = file.date_of(table, "date")?;
        policy.hash = hash(text);
        if let Some(limits) = table.get("limits") {
            file.limits(limits, &mut policy.limits)?;
        }
        if let Some(call) = table.get("call") {
            file.call(call, &mut policy.call)?;
        }
        Ok(policy)
    }

    /// A threshold, in its unit.
    pub const fn limit(&self, limit: Limit) -> i64 {
        self.limits[limit.index()]
    }

    /// Whom to call, in the ward's own words, if it wrote any.
    pub fn call(&self, whom: CallWhom) -> Option<&str> {
        self.call[whom as usize].as_deref()
    }

    /// Name, version and hash, as they go into every record.
    pub fn mark(&self) -> PolicyMark {
        PolicyMark {
            name: self.name.clone(),
            version: self.version.clone(),
            hash: self.hash.clone(),
        }
    }
}

/// SHA-256 in hex.
fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes())
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// The text, to tell where things stand in it.
struct File<'a> {
    text: &'a str,
}

type Value<'a> = Spanned<DeValue<'a>>;

impl File<'_> {
    fn error(&self, at: usize, wrong: PolicyWrong) -> PolicyError {
        let before = self.text.get(..at).unwrap_or(self.text);
        let line_start = before.rfind('\n').map_or(0, |place| place + 1);
        PolicyError {
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            wrong,
        }
    }

    fn wrong_kind(&self, value: &Value<'_>, key: &str, needed: PolicyNeeded) -> PolicyError {
        let key = key.to_owned();
        self.error(value.span().start, PolicyWrong::WrongKind { key, needed })
    }

    fn known(&self, table: &DeTable<'_>, known: &[&str]) -> Result<(), PolicyError> {
        let unknown = table
            .keys()
            .filter(|key| !known.contains(&key.get_ref().as_ref()))
            .min_by_key(|key| key.span().start);
        unknown.map_or(Ok(()), |key| {
            let at = key.span().start;
            let key = key.get_ref().chars().take(TEXT_MOST).collect();
            Err(self.error(at, PolicyWrong::UnknownKey { key }))
        })
    }

    fn short_text(&self, value: &Value<'_>, key: &str) -> Result<String, PolicyError> {
        let text = value.get_ref().as_str().map(str::trim);
        text.filter(|text| {
            !text.is_empty()
                && text.chars().count() <= TEXT_MOST
                && !text.chars().any(char::is_control)
        })
        .map(str::to_owned)
        .ok_or_else(|| self.wrong_kind(value, key, PolicyNeeded::ShortText))
    }

    fn text_of(&self, table: &DeTable<'_>, key: &'static str) -> Result<String, PolicyError> {
        let value = table
            .get(key)
            .ok_or_else(|| self.error(0, PolicyWrong::Missing { key }))?;
        self.short_text(value, key)
    }

    /// A date, written as a text or as a date of TOML.
    fn date_of(&self, table: &DeTable<'_>, key: &'static str) -> Result<String, PolicyError> {
        let value = table
            .get(key)
            .ok_or_else(|| self.error(0, PolicyWrong::Missing { key }))?;
        let date = match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            DeValue::Datetime(date) => date.to_string(),
            _ => String::new(),
        };
        chrono::NaiveDate::parse_from_str(&date, "%Y-%m-%d")
            .ok()
            .filter(|read| read.to_string() == date)
            .map(|_| date)
            .ok_or_else(|| self.wrong_kind(value, key, PolicyNeeded::Date))
    }

    fn table_of<'a, 'b>(
        &self,
        value: &'a Value<'b>,
        key: &str,
    ) -> Result<&'a DeTable<'b>, PolicyError> {
        value
            .get_ref()
            .as_table()
            .ok_or_else(|| self.wrong_kind(value, key, PolicyNeeded::Table))
    }

    fn limits(
        &self,
        value: &Value<'_>,
        limits: &mut [i64; Limit::ALL.len()],
    ) -> Result<(), PolicyError> {
        let table = self.table_of(value, "limits")?;
        let keys: Vec<&str> = Limit::ALL.iter().map(|limit| limit.as_word()).collect();
        self.known(table, &keys)?;
        let mut places = [None; Limit::ALL.len()];
        for limit in Limit::ALL.iter().copied() {
            if let Some(value) = table.get(limit.as_word()) {
                limits[limit.index()] = self.number(value, limit)?;
                places[limit.index()] = Some(value.span().start);
            }
        }
        for (lower, higher) in IN_ORDER.iter().copied() {
            if limits[higher.index()] < limits[lower.index()] {
                let place = places[lower.index()].or(places[higher.index()]);
                let wrong = PolicyWrong::Disordered { lower, higher };
                return Err(self.error(place.unwrap_or(0), wrong));
            }
        }
        Ok(())
    }

    fn number(&self, value: &Value<'_>, limit: Limit) -> Result<i64, PolicyError> {
        let facts = limit.facts();
        let given = match value.get_ref() {
            DeValue::Integer(whole) if whole.radix() == 10 => whole
                .as_str()
                .parse::<i64>()
                .ok()
                .and_then(|it| it.checked_mul(if limit.is_in_tenths() { 10 } else { 1 })),
            DeValue::Float(decimal) if limit.is_in_tenths() => tenths(decimal.as_str()),
            _ => None,
        };
        let needed = if limit.is_in_tenths() {
            PolicyNeeded::OneDecimal
        } else {
            PolicyNeeded::Whole
        };
        let given = given.ok_or_else(|| self.wrong_kind(value, limit.as_word(), needed))?;
        if facts.low <= given && given <= facts.high {
            Ok(given)
        } else {
            let wrong = PolicyWrong::OutOfBounds {
                limit,
                given,
                low: facts.low,
                high: facts.high,
            };
            Err(self.error(value.span().start, wrong))
        }
    }

    fn call(
        &self,
        value: &Value<'_>,
        call: &mut [Option<String>; CallWhom::ALL.len()],
    ) -> Result<(), PolicyError> {
        let table = self.table_of(value, "call")?;
        let keys: Vec<&str> = CallWhom::ALL.iter().map(|whom| whom.as_word()).collect();
        self.known(table, &keys)?;
        for whom in CallWhom::ALL.iter().copied() {
            if let Some(value) = table.get(whom.as_word()) {
                call[whom as usize] = Some(self.short_text(value, whom.as_word())?);
            }
        }
        Ok(())
    }
}

/// Tenths of a plain decimal text with one decimal, as `37.5`; more decimals only if zeros.
fn tenths(text: &str) -> Option<i64> {
    let (whole, decimals) = text.split_once('.')?;
    let (first, rest) = decimals.split_at_checked(1)?;
    let plain = |digits: &str| digits.bytes().all(|byte| byte.is_ascii_digit());
    if !plain(decimals) || rest.bytes().any(|byte| byte != b'0') {
        return None;
    }
    let negative = whole.starts_with('-');
    let whole = whole.trim_start_matches(['+', '-']);
    if !plain(whole) {
        return None;
    }
    let value = whole.parse::<i64>().ok()?.checked_mul(10)? + first.parse::<i64>().ok()?;
    Some(if negative { -value } else { value })
}
