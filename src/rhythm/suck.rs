//! Taps to sucks, for looking back: doubled taps join the suck they double, and swallows alone the
//! suck before them. Knows nothing of phases.

use super::parameter::SWALLOW_LATE_MS;
use super::watch::{Before, Seen, Watch};
use crate::record::{At, Tap, TapWhat};

/// One jaw movement.
#[derive(Debug, Clone, Copy)]
pub(super) struct Suck {
    pub(super) at: At,
    pub(super) before: Before,
    /// Swallows with it or just after it.
    pub(super) swallows: u8,
}

/// The sucks of a feed, and which of them each tapped suck is.
pub(super) struct Sucks {
    pub(super) sucks: Vec<Suck>,
    /// For each tapped suck, doubled ones too, the index of its suck.
    pub(super) of_tap: Vec<u32>,
    /// When the feed was ended, if that is the last that is known of it.
    pub(super) ended: Option<At>,
}

impl Sucks {
    /// The sucks of these taps.
    pub(super) fn of(taps: &[Tap]) -> Self {
        let mut watch = Watch::default();
        let mut sucks: Vec<Suck> = Vec::with_capacity(taps.len());
        let mut of_tap = Vec::with_capacity(taps.len());
        for tap in taps {
            match watch.see(*tap) {
                Seen::Suck { before, swallow } => {
                    sucks.push(Suck {
                        at: tap.at,
                        before,
                        swallows: u8::from(swallow),
                    });
                    of_tap.push(sucks.len() as u32 - 1);
                }
                Seen::Doubled { swallow } => {
                    if let Some(last) = sucks.last_mut() {
                        last.swallows = last.swallows.max(u8::from(swallow));
                    }
                    of_tap.push((sucks.len() as u32).saturating_sub(1));
                }
                Seen::Swallow { after_ms } => {
                    if after_ms.is_some_and(|ms| ms <= SWALLOW_LATE_MS)
                        && let Some(last) = sucks.last_mut()
                    {
                        last.swallows = last.swallows.saturating_add(1);
                    }
                }
                Seen::Changed | Seen::Unchanged => {}
            }
        }
        let ended = taps.last().filter(|it| it.what == TapWhat::End);
        Self {
            sucks,
            of_tap,
            ended: ended.map(|it| it.at),
        }
    }
}
