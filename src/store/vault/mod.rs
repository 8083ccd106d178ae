//! What stands between the tablet's file and whoever holds the tablet: the file is encrypted under a
//! random key, and that key is kept wrapped, under the PIN and this device's secret together, and
//! once more under a rescue code for the day when the PIN is forgotten.
//!
//! Before a PIN is set, the device's secret alone opens the file: all it guards against then is the
//! file being read apart from its folder. Knows no screen and no words; the time comes in. Random
//! bytes are taken from the system here, and nowhere else in the room, so that nobody can hand in
//! others by mistake.

mod error;
mod file_key;
mod keys_file;
mod pin;
mod sealing;
mod slot;
mod tries;

use std::path::{Path, PathBuf};

use zeroize::Zeroizing;

use crate::record::WallTime;

pub use error::{PinFault, VaultError};
pub use file_key::FileKey;
pub use pin::{Pin, RescueCode, Typed, in_groups};
pub use slot::Cost;
pub use tries::WAITS_MS;

pub(crate) use sealing::seal_if_plain;

use keys_file::{KeysFile, Place};
use slot::{Opens, Slot};
use tries::Tries;

/// The database's name in the data folder.
pub const DATABASE: &str = "feedside.db";

/// A data folder's keys.
#[derive(Clone)]
pub struct Vault {
    place: Place,
    keys: KeysFile,
    device: Option<Zeroizing<[u8; 32]>>,
    tries: Tries,
    cost: Cost,
}

impl Vault {
    /// The keys of a folder, made if it has none yet. `cost` is what a PIN set from now on is to
    /// cost whoever guesses; one that is set keeps its own.
    ///
    /// # Errors
    /// `KeysGone` where an encrypted database has no keys, `KeysDamaged` where they cannot be read;
    /// nothing is changed then. `NoAccess`, `Full`, `NoRandom`.
    pub fn of(folder: &Path, cost: Cost) -> Result<Self, VaultError> {
        let place = Place::of(folder);
        let device = place.device()?;
        let (keys, device) = match place.keys()? {
            Some(keys) => (keys, device),
            None if sealing::is_sealed(&folder.join(DATABASE))? => {
                return Err(VaultError::KeysGone);
            }
            None => {
                let device = match device {
                    Some(device) => device,
                    None => Zeroizing::new(random()?),
                };
                let file_key = FileKey::new(random()?, random()?);
                let slot = Slot::wrap(&file_key, Opens::Device, &device[..], &[], Cost::LEAST)?;
                let keys = KeysFile::with_device(&file_key, slot);
                // The secret first: keys without it would open nothing.
                place.write_device(&device)?;
                place.write_keys(&keys)?;
                (keys, Some(device))
            }
        };
        let tries = place.tries();
        Ok(Self {
            place,
            keys,
            device,
            tries,
            cost,
        })
    }

    /// Where the database lies.
    pub fn database(&self) -> PathBuf {
        self.place.file(DATABASE)
    }

    /// Whether a PIN was set.
    pub const fn has_pin(&self) -> bool {
        self.keys.pin.is_some()
    }

    /// The file's key while there is no PIN; `None` once there is one.
    ///
    /// # Errors
    /// `KeysDamaged` where the device's secret does not open it.
    pub fn key_without_pin(&self) -> Result<Option<FileKey>, VaultError> {
        let Some(slot) = self.keys.device.as_ref().filter(|_| !self.has_pin()) else {
            return Ok(None);
        };
        let device = self.device.as_ref().ok_or(VaultError::KeysDamaged)?;
        slot.open(Opens::Device, &device[..], &[], self.keys.salt)?
            .ok_or(VaultError::KeysDamaged)
            .map(Some)
    }

    /// How long nothing can be tried yet, in milliseconds; 0 when it can.
    pub fn wait_ms(&mut self, now: WallTime) -> u64 {
        self.tries.wait_ms(now.utc_ms())
    }

    /// The file's key for what was typed. Takes as long as the PIN's cost.
    ///
    /// # Errors
    /// `Wait` where it is too early; `Wrong` where it does not open; `DeviceGone` where the PIN
    /// could not open it on this device.
    pub fn key(&mut self, typed: &Typed, now: WallTime) -> Result<FileKey, VaultError> {
        let wait_ms = self.wait_ms(now);
        if 0 < wait_ms {
            return Err(VaultError::Wait { wait_ms });
        }
        let (slot, opens, secret, device) = match typed {
            Typed::Pin(pin) => {
                let device = self.device.as_ref().ok_or(VaultError::DeviceGone)?;
                (&self.keys.pin, Opens::Pin, pin.digits(), &device[..])
            }
            // Without the device's secret: it is for the day when the device is broken, too.
            Typed::Rescue(code) => (&self.keys.rescue, Opens::Rescue, code.digits(), &[][..]),
        };
        // Counted before it is tried, so that ending the program does not undo it.
        self.tries.count(now.utc_ms());
        self.place.write_tries(&self.tries);
        let key = match slot {
            Some(slot) => slot.open(opens, secret, device, self.keys.salt)?,
            None => None,
        };
        let Some(key) = key else {
            return Err(VaultError::Wrong {
                wait_ms: self.wait_ms(now),
            });
        };
        self.tries = Tries::default();
        self.place.write_tries(&self.tries);
        Ok(key)
    }

    /// Sets the PIN, or changes it: then the one before, or the rescue code, is needed. Gives the
    /// new rescue code, which nobody can ask for again; the one before no longer opens.
    ///
    /// # Errors
    /// As [`Self::key`]; `Wrong` where there is a PIN and nothing was typed. On `NoAccess`, `Full`
    /// and `NoRandom` all is as it was.
    pub fn set_pin(
        &mut self,
        current: Option<&Typed>,
        pin: &Pin,
        now: WallTime,
    ) -> Result<RescueCode, VaultError> {
        let key = match (self.key_without_pin()?, current) {
            (Some(key), _) => key,
            (None, Some(typed)) => self.key(typed, now)?,
            (None, None) => return Err(VaultError::Wrong { wait_ms: 0 }),
        };
        let device = match &self.device {
            Some(device) => device.clone(),
            // On another device than before, by the rescue code: this one becomes the PIN's.
            None => Zeroizing::new(random()?),
        };
        let rescue = RescueCode::from_random(random()?);
        let keys = KeysFile {
            device: None,
            pin: Some(Slot::wrap(
                &key,
                Opens::Pin,
                pin.digits(),
                &device[..],
                self.cost,
            )?),
            rescue: Some(Slot::wrap(
                &key,
                Opens::Rescue,
                rescue.digits(),
                &[],
                self.cost,
            )?),
            ..self.keys.clone()
        };
        if self.device.is_none() {
            self.place.write_device(&device)?;
        }
        self.place.write_keys(&keys)?;
        (self.keys, self.device) = (keys, Some(device));
        Ok(rescue)
    }
}

impl std::fmt::Debug for Vault {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Vault")
    }
}

/// Random bytes from the system.
fn random<const N: usize>() -> Result<[u8; N], VaultError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|_| VaultError::NoRandom)?;
    Ok(bytes)
}
