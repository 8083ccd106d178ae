//! The hard limits, checked before any work is done. Ours, with room to spare over an ordinary
//! record; each guards one step of opening.

/// The most characters of one scanned text: four times the largest code and its prefix.
pub const TEXT_CHARS_MOST: usize = 16_384;
/// The most pieces of one record.
pub const PIECES_MOST: u8 = 60;
/// The most bytes of a sealed record.
pub const SEALED_BYTES_MOST: usize = 60_000;
/// The most bytes that the signed content may inflate to.
pub const INFLATED_BYTES_MOST: usize = 400_000;
/// The deepest nesting of lists and maps.
pub const DEPTH_MOST: usize = 8;
/// The most values in one record, all lists and maps counted.
pub const ITEMS_MOST: usize = 200_000;
/// The most decisions of a squeezed record: so many however short it is, so many more for each of its
/// bytes, and never more than so many. An ordinary record takes 24,000 decisions in all,
/// 50 a byte without single taps and 11 with them (measured on simulated visits); one whose values
/// hardly differ goes over and is laid out in the plain coding.
pub const DECISIONS: usize = 100_000;
/// See [`DECISIONS`].
pub const DECISIONS_A_BYTE: usize = 200;
/// See [`DECISIONS`].
pub const DECISIONS_MOST: usize = 2_000_000;
/// The most entries of one journal.
pub const ENTRIES_MOST: u64 = 40_000;
/// The most rows of one table.
pub const ROWS_MOST: u64 = 20_000;
/// The most half-read records that are kept waiting at once.
pub const WAITING_MOST: usize = 8;
