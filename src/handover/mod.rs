//! From a signed visit to sealed codes and back, one stage a file; and the receipt.
//!
//! visit -> wire form -> CBOR -> DEFLATE -> COSE_Sign1 -> HPKE seal -> pieces -> digits -> QR.
//! Knows only `record`. Keys, randomness and time are given to it; no disk, no words, no SQLite.

mod handed;

pub use handed::{FeedTable, FindingRow, Handed, NumberRow, PhaseRow, RateRow, RunRow};
