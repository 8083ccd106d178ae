//! The journal: the visit's entries in order, only ever added to.

use super::{At, Entry, RecordError, WallTime, What};

/// The entries of one visit. `seq` rises by one from 1 (with gaps where it was picked).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Journal {
    entries: Vec<Entry>,
}

impl Journal {
    /// An empty journal.
    pub const fn new() -> Self {
        Self {
            entries: Vec::new(),
        }
    }

    /// A journal from entries read back.
    ///
    /// # Errors
    /// The first entry that could not have been added.
    pub fn of(entries: impl IntoIterator<Item = Entry>) -> Result<Self, RecordError> {
        let mut journal = Self::new();
        for entry in entries {
            journal.push(entry)?;
        }
        Ok(journal)
    }

    /// A journal from a choice of another journal's entries: numbers rise but may leave gaps.
    ///
    /// # Errors
    /// Numbers that do not rise.
    pub fn picked(entries: impl IntoIterator<Item = Entry>) -> Result<Self, RecordError> {
        let mut journal = Self::new();
        for entry in entries {
            if entry.seq < journal.next_seq() {
                return Err(RecordError::OutOfOrder {
                    given: entry.seq,
                    last: journal.next_seq() - 1,
                });
            }
            journal.entries.push(entry);
        }
        Ok(journal)
    }

    /// All entries, struck ones too.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The number that the next entry gets.
    pub fn next_seq(&self) -> u32 {
        self.entries
            .last()
            .map_or(1, |last| last.seq.saturating_add(1))
    }

    /// Makes the next entry without adding it, so that it can be stored first.
    pub fn next(&self, at: At, wall: WallTime, what: What) -> Entry {
        Entry {
            seq: self.next_seq(),
            at,
            wall,
            what,
            newer: None,
        }
    }

    /// Adds an entry.
    ///
    /// # Errors
    /// Its number does not follow; it takes back what is not there; the visit is signed and it
    /// would change what was seen.
    pub fn push(&mut self, entry: Entry) -> Result<(), RecordError> {
        self.check(&entry)?;
        self.entries.push(entry);
        Ok(())
    }

    /// Whether an entry could be added.
    ///
    /// # Errors
    /// As [`Journal::push`].
    pub fn check(&self, entry: &Entry) -> Result<(), RecordError> {
        if entry.seq != self.next_seq() {
            return Err(RecordError::OutOfOrder {
                given: entry.seq,
                last: self.next_seq() - 1,
            });
        }
        if self.is_signed() && !entry.what.is_after_signing() {
            return Err(RecordError::AlreadySigned);
        }
        if let What::Struck { entry: struck } = entry.what
            && !(1..entry.seq).contains(&struck)
        {
            return Err(RecordError::NothingToStrike(struck));
        }
        Ok(())
    }

    /// Whether it is signed.
    pub fn is_signed(&self) -> bool {
        self.entries
            .iter()
            .rev()
            .take_while(|entry| {
                matches!(entry.what, What::Signed { .. }) || entry.what.is_after_signing()
            })
            .any(|entry| matches!(entry.what, What::Signed { .. }))
    }

    /// For each entry, whether it stands: it was not taken back, or its taking back was itself
    /// taken back.
    pub fn standing(&self) -> Vec<bool> {
        let mut standing = vec![true; self.entries.len()];
        for index in (0..self.entries.len()).rev() {
            if let What::Struck { entry } = self.entries[index].what
                && standing[index]
                && let Ok(target) = self.entries.binary_search_by_key(&entry, |it| it.seq)
            {
                standing[target] = false;
            }
        }
        standing
    }

    /// The entries that stand, in order.
    pub fn standing_entries(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        let entries = self.entries.iter().zip(self.standing());
        entries.filter_map(|(entry, stands)| stands.then_some(entry))
    }

    /// What "take back" may take back, the last first.
    pub fn to_take_back(&self) -> impl Iterator<Item = &Entry> {
        let standing = self.standing_entries().rev();
        standing.filter(|entry| entry.what.can_be_taken_back())
    }
}
