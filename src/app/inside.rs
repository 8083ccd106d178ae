//! What is behind the lock, once it is open: the store and what is read from it at the start.

use std::collections::HashMap;
use std::path::Path;

use super::keeper::{Ask, Told, answer};
use super::preferences::{self, Preferences};
use super::ward_policy::{self, Counting};
use crate::record::WallTime;
use crate::store::vault::{Cost, FileKey, Typed, Vault, VaultError};
use crate::store::{KeepDays, Store, StoreError};

/// The name under which the tablet's secret is kept.
const SECRET: &str = "tablet_key";

/// What is inside.
pub struct Inside {
    /// The store.
    pub store: Store,
    /// Whether a PIN is set.
    pub has_pin: bool,
    /// The tablet's secret.
    pub secret: [u8; 32],
    /// The settings as kept.
    pub preferences: Preferences,
    /// The ward policy.
    pub counting: Counting,
    /// The visit that was not finished.
    pub unfinished: Option<Told>,
}

/// Why it could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum NotOpened {
    /// The lock.
    #[error("{0}")]
    Vault(#[from] VaultError),
    /// The data.
    #[error("{0}")]
    Store(#[from] StoreError),
    /// The system gave no random bytes.
    #[error("the system gave no random bytes")]
    Random,
}

impl Inside {
    /// Opens a folder whose vault gave its key.
    ///
    /// # Errors
    /// As [`NotOpened`].
    pub fn of(data: &Path, vault: Vault, key: &FileKey, now: WallTime) -> Result<Self, NotOpened> {
        let has_pin = vault.has_pin();
        let mut store = Store::open_locked(vault, key)?;
        let secret = tablet_secret(&store)?;
        let mut kept = HashMap::new();
        for name in preferences::NAMES {
            if let Some(word) = store.setting(name)? {
                kept.insert(name, word);
            }
        }
        let preferences = Preferences::read(|name| kept.get(name).cloned());
        // What does not leave now leaves the next time; nobody is kept out for it.
        if let Ok(keep) = KeepDays::new(preferences.stay_days.into()) {
            let _ = store.let_leave(now, keep);
        }
        let counting = ward_policy::at_start(&store, data)?;
        let unfinished = store
            .open_visit()?
            .map(|visit| answer(&mut store, &counting.policy, Ask::Open(visit)));
        Ok(Self {
            store,
            has_pin,
            secret,
            preferences,
            counting,
            unfinished,
        })
    }

    /// Opens a folder with what was typed.
    ///
    /// # Errors
    /// As [`NotOpened`].
    pub fn typed(data: &Path, typed: &Typed, cost: Cost, now: WallTime) -> Result<Self, NotOpened> {
        let mut vault = Vault::of(data, cost)?;
        let key = vault.key(typed, now)?;
        Self::of(data, vault, &key, now)
    }
}

/// The tablet's secret, made on the first start.
fn tablet_secret(store: &Store) -> Result<[u8; 32], NotOpened> {
    if let Some(kept) = store.secret(SECRET)?
        && let Ok(secret) = <[u8; 32]>::try_from(kept.as_slice())
    {
        return Ok(secret);
    }
    let mut secret = [0; 32];
    getrandom::fill(&mut secret).map_err(|_| NotOpened::Random)?;
    store.set_secret(SECRET, &secret)?;
    Ok(secret)
}

impl std::fmt::Debug for Inside {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Inside")
    }
}
