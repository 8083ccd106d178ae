//! What is behind the lock, once it is open: the store and what is read from it at the start.

use std::collections::HashMap;
use std::path::Path;

use super::desk_key_file::{self, Offered};
use super::keeper::{Ask, Told, answer};
use super::preferences::{self, Preferences};
use super::ward_policy::{self, Counting};
use crate::fault;
use crate::record::WallTime;
use crate::store::vault::{Cost, FileKey, Typed, Vault, VaultError};
use crate::store::{KeepDays, Store, StoreError};
use crate::words::Words;

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
    /// A desk's key that lies in the folder and is not the one that is kept.
    pub desk_key: Option<Offered>,
    /// The visit that was not finished.
    pub unfinished: Option<Told>,
    /// Where the data were damaged and set aside, so that these are new: that.
    pub set_aside: Option<StoreError>,
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
    /// Opens a folder whose vault gave its key. Damaged data are set aside and kept; it then opens
    /// with new ones, and says so.
    ///
    /// # Errors
    /// As [`NotOpened`].
    pub fn of(data: &Path, vault: Vault, key: &FileKey, now: WallTime) -> Result<Self, NotOpened> {
        match Self::as_it_is(data, vault.clone(), key, now) {
            Err(NotOpened::Store(error @ StoreError::Damaged { kept_as: Some(_) })) => {
                let inside = Self::as_it_is(data, vault, key, now)?;
                Ok(Self {
                    set_aside: Some(error),
                    ..inside
                })
            }
            other => other,
        }
    }

    fn as_it_is(
        data: &Path,
        vault: Vault,
        key: &FileKey,
        now: WallTime,
    ) -> Result<Self, NotOpened> {
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
        let desk_key = desk_key_file::in_folder(data)
            .filter(|it| desk_key_file::is_new(it, &preferences.desk_key));
        Ok(Self {
            desk_key,
            store,
            has_pin,
            secret,
            preferences,
            counting,
            unfinished,
            set_aside: None,
        })
    }

    /// What is to be told at once, if something is not as it should be.
    pub fn trouble(&self) -> Option<String> {
        let words = Words::new(self.preferences.lang);
        let set_aside = self.set_aside.as_ref();
        set_aside
            .map(|error| {
                let happened = fault::store(error, &words).happened;
                format!("{happened} {}", words.say("frame-set-aside"))
            })
            .or_else(|| ward_policy::told(&self.counting, &words))
            .or_else(|| {
                let file = [("file", desk_key_file::FILE.into())];
                let there = || words.say_with("settings-desk-file-there", &file);
                self.desk_key.as_ref().map(|_| there())
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
