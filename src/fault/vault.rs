//! The lock's errors: the data cannot be opened, or the PIN not set.

use super::Explained;
use crate::store::vault::VaultError;
use crate::words::Words;

/// A lock's error in words.
pub fn vault(error: &VaultError, words: &Words) -> Explained {
    let name = match error {
        VaultError::Wrong { .. } => "vault-wrong",
        VaultError::Wait { .. } => "vault-wait",
        VaultError::DeviceGone => "vault-device-gone",
        VaultError::KeysGone => "vault-keys-gone",
        VaultError::KeysDamaged => "vault-keys-damaged",
        VaultError::NoAccess => "store-no-access",
        VaultError::Full => "vault-full",
        VaultError::NoRandom => "vault-no-random",
    };
    Explained::of(name, &[], words)
}
