//! Reads taps one by one: what each one is, given those before it. Knows nothing of phases.

use super::parameter::DOUBLED_MS;
use crate::record::{At, Tap, TapWhat};

/// What came before a suck.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Before {
    /// No suck at all.
    Nothing,
    /// The suck before, so many milliseconds ago, watched all the while.
    Gap(u64),
    /// The suck before, but nobody looked for some of the time between.
    Unseen(u64),
    /// The suck before, but the baby was off in between.
    Off(u64),
}

/// What a tap is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Seen {
    /// A jaw movement.
    Suck {
        /// What came before.
        before: Before,
        /// Whether a swallow came with it.
        swallow: bool,
    },
    /// The same jaw movement, tapped again.
    Doubled {
        /// Whether a swallow came with it.
        swallow: bool,
    },
    /// A swallow alone, so long after the last suck.
    Swallow {
        /// Milliseconds since the last suck, if there was one.
        after_ms: Option<u64>,
    },
    /// Off, on, looked away, looked again, ended: the state changed.
    Changed,
    /// A mark that changes nothing.
    Unchanged,
}

/// The state between taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Watch {
    /// The baby is off the breast, or the feed was ended.
    pub(super) off: bool,
    /// Nobody looks.
    pub(super) unwatched: bool,
    /// When `off` or `unwatched` last changed.
    pub(super) changed: Option<At>,
    /// The last jaw movement that was not a doubled tap.
    pub(super) last: Option<At>,
    was_off: bool,
    was_unseen: bool,
}

impl Watch {
    /// Takes the next tap. A suck says that the baby is on; it does not end unwatched time, it
    /// says that somebody looked just then.
    pub(super) fn see(&mut self, tap: Tap) -> Seen {
        let (off, unwatched) = match tap.what {
            TapWhat::Suck | TapWhat::SuckSwallow => return self.suck(tap),
            TapWhat::Swallow => {
                return Seen::Swallow {
                    after_ms: self.last.map(|last| tap.at.since_ms(last)),
                };
            }
            TapWhat::On => (false, self.unwatched),
            TapWhat::Off | TapWhat::End => (true, self.unwatched),
            TapWhat::Unwatched => (self.off, true),
            TapWhat::Watched => (self.off, false),
        };
        if (off, unwatched) == (self.off, self.unwatched) {
            return Seen::Unchanged;
        }
        self.was_off |= off != self.off;
        self.was_unseen |= unwatched != self.unwatched;
        (self.off, self.unwatched, self.changed) = (off, unwatched, Some(tap.at));
        Seen::Changed
    }

    fn suck(&mut self, tap: Tap) -> Seen {
        let swallow = tap.what.is_swallow();
        if self.off {
            (self.off, self.was_off, self.changed) = (false, true, Some(tap.at));
        }
        let before = match self.last {
            None => Before::Nothing,
            Some(last) => {
                let ms = tap.at.since_ms(last);
                if ms < DOUBLED_MS {
                    return Seen::Doubled { swallow };
                }
                if self.was_off {
                    Before::Off(ms)
                } else if self.was_unseen {
                    Before::Unseen(ms)
                } else {
                    Before::Gap(ms)
                }
            }
        };
        (self.was_off, self.was_unseen) = (false, false);
        self.last = Some(tap.at);
        Seen::Suck { before, swallow }
    }
}

impl Before {
    /// Milliseconds since the suck before.
    pub(super) const fn ms(self) -> Option<u64> {
        match self {
            Self::Nothing => None,
            Self::Gap(ms) | Self::Unseen(ms) | Self::Off(ms) => Some(ms),
        }
    }
    /// Milliseconds of a gap within a run: one that is watched and no rest.
    pub(super) const fn within(self, rest_ms: u64) -> Option<u64> {
        match self {
            Self::Gap(ms) if ms <= rest_ms => Some(ms),
            _ => None,
        }
    }
}
