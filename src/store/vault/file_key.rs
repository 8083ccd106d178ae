//! The random key under which the database is encrypted, as SQLCipher takes it.
//!
//! Source: SQLCipher's documentation of `PRAGMA key`: 64 hexadecimal digits of key and 32 of salt, as a
//! blob literal, are taken as they are, with no derivation from a passphrase.

use std::fmt::Write as _;

use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// A key of 256 bits, and the salt that stands at the beginning of the file. Wiped when dropped.
#[derive(Zeroize, ZeroizeOnDrop)]
pub struct FileKey {
    key: [u8; 32],
    salt: [u8; 16],
}

impl FileKey {
    pub(super) const fn new(key: [u8; 32], salt: [u8; 16]) -> Self {
        Self { key, salt }
    }

    pub(super) const fn key(&self) -> &[u8; 32] {
        &self.key
    }

    pub(super) const fn salt(&self) -> [u8; 16] {
        self.salt
    }

    /// As `PRAGMA key` takes it.
    pub(crate) fn as_pragma(&self) -> Zeroizing<String> {
        // As long as it becomes, so that it never grows and leaves a copy behind.
        let mut text = Zeroizing::new(String::with_capacity(99));
        text.push_str("x'");
        for byte in self.key.iter().chain(&self.salt) {
            // Writing to a string cannot fail.
            let _ = write!(text, "{byte:02x}");
        }
        text.push('\'');
        text
    }
}

impl std::fmt::Debug for FileKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("FileKey")
    }
}
