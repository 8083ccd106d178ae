//! How long nobody has touched the tablet. Pure: times come in, on the device's own clock.

use std::cell::Cell;

/// When the tablet was touched last, and after how long without a touch it is to be locked.
#[derive(Debug, Default)]
pub struct Idle {
    touched_boot_ms: Cell<u64>,
    least_ms: Cell<Option<u64>>,
}

impl Idle {
    /// Begins anew; `least_ms` is `None` where there is nothing to lock with.
    pub fn begin(&self, now_boot_ms: u64, least_ms: Option<u64>) {
        self.touched_boot_ms.set(now_boot_ms);
        self.least_ms.set(least_ms);
    }

    /// After how long it is to be locked, as the settings say now.
    pub fn set_least_ms(&self, least_ms: Option<u64>) {
        self.least_ms.set(least_ms);
    }

    /// Somebody touched it. Once it is over, a touch comes too late: it may be a stranger's.
    pub fn touched(&self, now_boot_ms: u64) {
        if self.left_ms(now_boot_ms) != Some(0) {
            self.touched_boot_ms.set(now_boot_ms);
        }
    }

    /// How long until it is to be locked, in milliseconds, 0 where it is over; `None` where it
    /// never is.
    pub fn left_ms(&self, now_boot_ms: u64) -> Option<u64> {
        let idle_ms = now_boot_ms.saturating_sub(self.touched_boot_ms.get());
        Some(self.least_ms.get()?.saturating_sub(idle_ms))
    }
}
