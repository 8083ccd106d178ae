//! All that the lock's screen remembers. What was typed is wiped as soon as it is done with, and is
//! not in `Debug`.

use zeroize::Zeroizing;

use crate::store::StoreError;
use crate::store::vault::{Pin, PinFault, RescueCode, Typed, VaultError};

/// What is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stage {
    /// The PIN or the rescue code, to open the data.
    #[default]
    Open,
    /// The PIN that there is, or the rescue code, before a new one.
    Current,
    /// The new PIN.
    New,
    /// The new PIN once more.
    Again,
    /// The rescue code is to be written down.
    WriteDown,
}

/// Why it did not go on.
#[derive(Debug)]
pub enum Why {
    /// It is no PIN.
    NoPin(PinFault),
    /// The second time it was another.
    Differs,
    /// It was refused.
    Refused(VaultError),
    /// What it opened cannot be used.
    Unusable(StoreError),
}

/// The model.
#[derive(Default)]
pub struct Model {
    /// What is asked for.
    pub stage: Stage,
    pub(super) typed: Zeroizing<String>,
    pub(super) current: Option<Typed>,
    pub(super) new: Option<Pin>,
    pub(super) rescue: Option<RescueCode>,
    /// Whether a PIN is set already.
    pub(super) has_pin: bool,
    /// Why the last did not go on.
    pub why: Option<Why>,
    /// Until when nothing can be tried, in milliseconds of the device's clock.
    pub wait_until_boot_ms: u64,
    /// Whether an answer is waited for.
    pub busy: bool,
}

impl Model {
    /// A lock on which nothing can be tried for a while yet.
    pub fn locked(now_boot_ms: u64, wait_ms: u64) -> Self {
        Self {
            wait_until_boot_ms: now_boot_ms.saturating_add(wait_ms),
            ..Self::default()
        }
    }

    /// How many digits are typed.
    pub fn digits(&self) -> usize {
        self.typed.len()
    }

    /// How long nothing can be tried yet, in milliseconds.
    pub const fn wait_ms(&self, now_boot_ms: u64) -> u64 {
        self.wait_until_boot_ms.saturating_sub(now_boot_ms)
    }
}

impl std::fmt::Debug for Model {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Model")
            .field("stage", &self.stage)
            .field("why", &self.why)
            .field("busy", &self.busy)
            .finish_non_exhaustive()
    }
}
