//! Finding records again by what a person at the desk would type.

use super::base::Value;
use super::{Inbox, RecordHead};
use crate::desk::DeskError;

/// More words than this are not looked at: nobody types them.
const WORDS_MOST: usize = 8;

impl Inbox {
    /// The lines of the records that have words that begin so (of the bed, the initials, the
    /// specialist's sign, the receipt, the number, or the visit's day as
    /// `2026-03-04`), the newest
    /// first, at most so many. Without words: the newest.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn search(&self, text: &str, most: u32) -> Result<Vec<RecordHead>, DeskError> {
        let mut condition = String::new();
        let mut values = Vec::new();
        for word in folded(text).split_whitespace().take(WORDS_MOST) {
            values.push(Value::from(pattern(word).as_str()));
            condition.push_str(if values.len() == 1 { " WHERE" } else { " AND" });
            condition.push_str(&format!(" words LIKE ?{} ESCAPE '!'", values.len()));
        }
        values.push(most.into());
        let last = values.len();
        // The narrow table is searched first; the wide one is read for what was found alone.
        self.heads_where(
            &format!(
                "WHERE r.number IN (SELECT number FROM record_words{condition} \
                 ORDER BY number DESC LIMIT ?{last}) ORDER BY r.number DESC"
            ),
            &values,
        )
    }
}

/// What a record is found by.
pub(super) fn words_of(head: &RecordHead) -> String {
    let day = head.began.local().format("%Y-%m-%d");
    let receipt = &head.receipt;
    let group = |from: usize, to: usize| receipt.get(from..to).unwrap_or_default();
    folded(&format!(
        " {} {} {} {} {receipt} {} {} {} {day}",
        head.number,
        head.bed.as_str(),
        head.initials.as_str(),
        head.specialist.as_str(),
        group(0, 3),
        group(3, 6),
        group(6, receipt.len()),
    ))
}

/// Small letters, so that `BAY` finds `Bay`.
fn folded(text: &str) -> String {
    text.to_lowercase()
}

/// The beginning of a word; the signs that mean something in a pattern stand for themselves.
fn pattern(word: &str) -> String {
    let mut pattern = String::from("% ");
    for sign in word.chars() {
        if matches!(sign, '%' | '_' | '!') {
            pattern.push('!');
        }
        pattern.push(sign);
    }
    pattern.push('%');
    pattern
}
