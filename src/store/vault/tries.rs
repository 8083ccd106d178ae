//! How long to wait after wrong tries. Pure: the time comes in.
//!
//! It holds back whoever has the tablet in hand and types. Whoever can set its clock or write to its
//! folder can undo it; against those stands what each guess costs. The data are never wiped for
//! wrong tries: the tablet may hold the only copy.

use serde::{Deserialize, Serialize};

/// How long to wait after so many wrong tries one after the other, in milliseconds; after more, the
/// last. Four are free: fingers slip at night. Common practice.
pub const WAITS_MS: [u64; 9] = [0, 0, 0, 0, 0, 30_000, 60_000, 300_000, 900_000];

/// Wrong tries so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Tries {
    wrong: u32,
    /// When the last one was, in milliseconds of UTC.
    last_utc_ms: i64,
}

impl Tries {
    /// Counts one.
    pub(super) fn count(&mut self, now_utc_ms: i64) {
        self.wrong = self.wrong.saturating_add(1);
        self.last_utc_ms = now_utc_ms;
    }

    /// How long nothing can be tried yet. A clock that was set back begins the wait anew, rather
    /// than make it last until the clock is there again.
    pub(super) fn wait_ms(&mut self, now_utc_ms: i64) -> u64 {
        self.last_utc_ms = self.last_utc_ms.min(now_utc_ms);
        let place = usize::try_from(self.wrong).unwrap_or(usize::MAX);
        let whole_ms = WAITS_MS[place.min(WAITS_MS.len() - 1)];
        let gone_ms = u64::try_from(now_utc_ms.saturating_sub(self.last_utc_ms)).unwrap_or(0);
        whole_ms.saturating_sub(gone_ms)
    }
}
