//! The randomness of one handing over, made outside and passed in, so that vectors are stable.

use zeroize::{Zeroize, ZeroizeOnDrop};

/// Everything about one handing over that must be new each time. Used once.
#[derive(Zeroize, ZeroizeOnDrop)]
pub struct Fresh {
    /// The transfer's number, the same in each of its pieces.
    pub(super) transfer: u32,
    /// What the sender's one-time key is derived from.
    pub(super) ephemeral_seed: [u8; 32],
}

impl Fresh {
    /// From 64 random bytes; those between the number and the seed, and the last ones, are not used.
    pub fn from_random(mut bytes: [u8; 64]) -> Self {
        let mut fresh = Self {
            transfer: u32::from_be_bytes([bytes[0], bytes[1], bytes[2], bytes[3]]),
            ephemeral_seed: [0; 32],
        };
        fresh.ephemeral_seed.copy_from_slice(&bytes[20..52]);
        bytes.zeroize();
        fresh
    }

    /// The transfer's number.
    pub const fn transfer(&self) -> u32 {
        self.transfer
    }
}

impl std::fmt::Debug for Fresh {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Fresh(…)")
    }
}
