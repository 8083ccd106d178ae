//! The file's key wrapped under a secret: Argon2id makes a key of the secret, ChaCha20-Poly1305 wraps
//! the file's key with it.
//!
//! Sources: Argon2id and its cost, RFC 9106 section 4, second recommended option; ChaCha20-Poly1305,
//! RFC 8439. The device's secret goes in as Argon2's own secret value (RFC 9106 section 3.1).

use argon2::{Algorithm, Argon2, Params, Version};
use chacha20poly1305::aead::{AeadInOut as _, KeyInit as _};
use chacha20poly1305::{ChaCha20Poly1305, Key, Nonce, Tag};
use serde::{Deserialize, Serialize};
use zeroize::Zeroizing;

use super::{FileKey, VaultError, random};

/// What a slot is opened with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Opens {
    Device,
    Pin,
    Rescue,
}

impl Opens {
    /// What is authenticated beside the key: so that one slot cannot pass for another, nor the key
    /// be put beside another file's salt.
    fn bound(self, file_salt: [u8; 16]) -> Vec<u8> {
        let kind: &[u8] = match self {
            Self::Device => b"feedside keys 1: device",
            Self::Pin => b"feedside keys 1: pin",
            Self::Rescue => b"feedside keys 1: rescue",
        };
        [kind, &file_salt].concat()
    }
}

/// What one guess costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cost {
    /// Memory, in KiB.
    memory_kib: u32,
    /// How often it is gone through.
    passes: u32,
    /// How many parts could be done at once.
    lanes: u32,
}

impl Cost {
    /// 64 MiB, 3 passes, 4 lanes. Source: RFC 9106 section 4, the option for less memory.
    pub const USUAL: Self = Self {
        memory_kib: 64 * 1024,
        passes: 3,
        lanes: 4,
    };

    /// As little as can be: for secrets that nobody can guess, and for tests.
    pub const LEAST: Self = Self {
        memory_kib: 8,
        passes: 1,
        lanes: 1,
    };

    /// Whether a tablet can bear it; a file that asks for more is not believed.
    const fn is_bearable(self) -> bool {
        self.memory_kib <= 256 * 1024 && self.passes <= 16 && self.lanes <= 16
    }
}

/// The file's key, wrapped.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Slot {
    cost: Cost,
    salt: [u8; 16],
    nonce: [u8; 12],
    wrapped: [u8; 32],
    tag: [u8; 16],
}

impl Slot {
    /// Wraps a key under a secret, and the device's own where there is one.
    pub(super) fn wrap(
        key: &FileKey,
        opens: Opens,
        secret: &[u8],
        device: &[u8],
        cost: Cost,
    ) -> Result<Self, VaultError> {
        let (salt, nonce) = (random()?, random()?);
        let mut wrapped = Zeroizing::new(*key.key());
        let tag = cipher(secret, device, &salt, cost)?
            .encrypt_inout_detached(
                &Nonce::from(nonce),
                &opens.bound(key.salt()),
                (&mut wrapped[..]).into(),
            )
            // Only what is longer than gigabytes cannot be encrypted.
            .map_err(|_| VaultError::KeysDamaged)?;
        Ok(Self {
            cost,
            salt,
            nonce,
            wrapped: *wrapped,
            tag: tag.into(),
        })
    }

    /// The key, if the secret is the one; the file's salt is put beside it.
    pub(super) fn open(
        &self,
        opens: Opens,
        secret: &[u8],
        device: &[u8],
        file_salt: [u8; 16],
    ) -> Result<Option<FileKey>, VaultError> {
        let mut key = Zeroizing::new(self.wrapped);
        let opened = cipher(secret, device, &self.salt, self.cost)?.decrypt_inout_detached(
            &Nonce::from(self.nonce),
            &opens.bound(file_salt),
            (&mut key[..]).into(),
            &Tag::from(self.tag),
        );
        Ok(opened.ok().map(|()| FileKey::new(*key, file_salt)))
    }
}

fn cipher(
    secret: &[u8],
    device: &[u8],
    salt: &[u8; 16],
    cost: Cost,
) -> Result<ChaCha20Poly1305, VaultError> {
    let damaged = |_| VaultError::KeysDamaged;
    if !cost.is_bearable() {
        return Err(VaultError::KeysDamaged);
    }
    let params =
        Params::new(cost.memory_kib, cost.passes, cost.lanes, Some(32)).map_err(damaged)?;
    let argon = if device.is_empty() {
        Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
    } else {
        Argon2::new_with_secret(device, Algorithm::Argon2id, Version::V0x13, params)
            .map_err(damaged)?
    };
    let mut key = Zeroizing::new([0; 32]);
    argon
        .hash_password_into(secret, salt, &mut key[..])
        .map_err(damaged)?;
    Ok(ChaCha20Poly1305::new(&Key::from(*key)))
}
