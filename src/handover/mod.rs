//! From a signed visit to sealed codes and back, one stage a file; and the receipt.
//!
//! visit -> wire form -> CBOR -> coding (range coder or DEFLATE) -> COSE_Sign1 -> HPKE seal -> pieces -> digits -> QR.
//! Knows only `record`. Keys, randomness and time are given to it; no disk, no words, no SQLite.

mod handed;

pub mod cbor;
pub mod coding;
pub mod deflate;
pub mod dictionary;
pub mod digits;
mod error;
mod fresh;
pub mod limit;
pub mod pieces;
pub mod qr;
pub mod read_back;
pub mod seal;
pub mod shapes;
pub mod sign;
pub mod squeeze;
pub mod test_code;
pub mod wire;

mod collect;
mod keys;
mod note;
mod pack;
mod receipt;

pub use collect::{Collector, Offered, Waiting};
pub use error::HandoverError;
pub use fresh::Fresh;
pub use handed::{FeedTable, FindingRow, Handed, NumberRow, PhaseRow, RateRow, RunRow};
pub use keys::{
    DeskKeyPair, DeskPublic, FINGERPRINT_WORDS, KEY_GROUP_CHARS, KEY_GROUPS, Kid, TabletKey,
    TabletPublic,
};
pub use note::{NOTE_CHARS_IN_V20, NOTE_CHARS_MOST, Note};
pub use pack::{Opened, Packed, open, pack};
pub use qr::{Code, VersionCap};
pub use receipt::{Receipt, ReceiptCheck, check_digit};
