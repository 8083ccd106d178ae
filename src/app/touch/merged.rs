//! What the toolkit makes of fingers, to taps: for systems that give no raw touches.
//!
//! The toolkit has one pointer. When a second finger comes down it lets the first one go, with the
//! second finger's number, and says nothing of where the second one is. When one of the two is
//! lifted, the other is pressed (again). So:
//! - a letting go with another number means: a second finger is down, place unknown;
//! - a press with that number tells where: it is counted, at the time when it came down;
//! - a press with the first number is no tap, and where the second finger was cannot be told;
//! - a press with a third number leaves the second finger untold.
//!
//! A third finger comes and goes unseen while two are down, but the two have been told by then.
//! Every area of the screen reports here, not the pads alone: a hand may rest anywhere.

use super::router::RESTING_MS;
use super::{FromFingers, Heard, PadKind, PadTap};

/// What an area of the screen felt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeltKind {
    /// A press.
    Down,
    /// A letting go.
    Up,
    /// The press was taken away.
    Cancelled,
}

/// One thing that an area of the screen felt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Felt {
    /// The pad, if the area is one.
    pub pad: Option<PadKind>,
    /// What.
    pub kind: FeltKind,
    /// The finger's number; 0 for a mouse.
    pub finger: i32,
    /// When, in milliseconds.
    pub at_ms: u64,
}

/// The number that the toolkit gives a mouse.
const MOUSE: i32 = 0;

/// The finger that the toolkit follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct First {
    finger: i32,
    /// The tap that it made, until it is lifted or found to rest.
    tap: Option<PadTap>,
}

/// The reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Merged {
    first: Option<First>,
    /// A finger that came down besides, and when; where is not known.
    second: Option<(i32, u64)>,
}

impl FromFingers for Merged {
    type Raw = Felt;

    fn hear(&mut self, felt: Felt) -> Heard {
        let mut heard = Heard::default();
        let tap_at = |at_ms| felt.pad.map(|pad| PadTap { pad, at_ms });
        let first = self.first.map(|first| first.finger);
        match felt.kind {
            FeltKind::Down if felt.finger == MOUSE => heard.taps.extend(tap_at(felt.at_ms)),
            FeltKind::Down => {
                let tap = match self.second.take() {
                    None => tap_at(felt.at_ms),
                    Some((second, came_ms)) if second == felt.finger => tap_at(came_ms),
                    Some(_) => {
                        heard.unresolved = 1;
                        tap_at(felt.at_ms).filter(|_| first != Some(felt.finger))
                    }
                };
                heard.taps.extend(tap);
                self.first = Some(First {
                    finger: felt.finger,
                    tap,
                });
            }
            FeltKind::Up if felt.finger == MOUSE => {}
            FeltKind::Up if first.is_some_and(|first| first != felt.finger) => {
                self.second = Some((felt.finger, felt.at_ms));
            }
            FeltKind::Up => self.first = None,
            FeltKind::Cancelled => {
                heard.unresolved = u32::from(self.second.take().is_some());
                self.first = None;
            }
        }
        heard
    }

    fn tick(&mut self, at_ms: u64) -> Heard {
        let mut heard = Heard::default();
        if let Some(First { tap, .. }) = &mut self.first
            && tap.is_some_and(|tap| RESTING_MS < at_ms.saturating_sub(tap.at_ms))
        {
            heard.withdrawn = tap.take();
            heard.unresolved = 1;
        }
        heard
    }
}
