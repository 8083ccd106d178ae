//! Raw touches to taps: each finger by itself. A finger that comes down on a pad is one tap, then
//! and there; where it goes afterwards changes nothing. A finger that comes down elsewhere becomes
//! the toolkit's one pointer, and the newest such finger wins, so that a resting hand never holds a
//! key, or keeps another finger from one.

use super::{FromFingers, Heard, PadKind, PadTap};

/// A finger that stays longer than this on a pad rests there: its tap is withdrawn and told as
/// unresolved. In milliseconds. Common practice: a tap touches for a tenth of a second, and no jaw
/// movement lasts longer.
pub const RESTING_MS: u64 = 1_500;

/// A place in the window, in logical pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// From the left.
    pub x: f32,
    /// From the top.
    pub y: f32,
}

/// Where a pad lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PadPlace {
    /// Which.
    pub pad: PadKind,
    /// Its left upper corner.
    pub corner: Place,
    /// Its width in logical pixels.
    pub width: f32,
    /// Its height in logical pixels.
    pub height: f32,
}

impl PadPlace {
    fn holds(&self, place: Place) -> bool {
        let (x, y) = (place.x - self.corner.x, place.y - self.corner.y);
        0.0 <= x && x < self.width && 0.0 <= y && y < self.height
    }
}

/// What a finger did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// It came down.
    Down,
    /// It moved.
    Moved,
    /// It was lifted.
    Up,
    /// The system took it away.
    Cancelled,
}

/// A touch as the system tells it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RawTouch {
    /// Which finger; the same from down to up.
    pub finger: u64,
    /// What it did.
    pub phase: Phase,
    /// Where.
    pub place: Place,
    /// When, in milliseconds on any clock that goes on.
    pub at_ms: u64,
}

/// What the toolkit's one pointer is to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pointer {
    /// Press here.
    Press(Place),
    /// Move there, pressed.
    Move(Place),
    /// Let go here.
    Release(Place),
    /// Leave, without having pressed anything.
    Leave,
}

/// What a finger that is down is for.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Finger {
    /// It tapped a pad.
    Pad(PadTap),
    /// It rests on a pad, and was told.
    Resting(PadKind),
    /// It is, or was, the pointer.
    Pointer,
}

/// The router.
#[derive(Debug, Clone, Default)]
pub struct Router {
    pads: Vec<PadPlace>,
    down: Vec<(u64, Finger)>,
    pointer: Option<u64>,
}

impl Router {
    /// Where the pads lie now; none where the screen has none. A finger that is down stays what it
    /// was.
    pub fn set_pads(&mut self, pads: Vec<PadPlace>) {
        self.pads = pads;
    }

    /// Whether a finger is on a pad.
    pub fn is_down(&self, pad: PadKind) -> bool {
        self.down.iter().any(|(_, finger)| match finger {
            Finger::Pad(tap) => tap.pad == pad,
            Finger::Resting(on) => *on == pad,
            Finger::Pointer => false,
        })
    }

    /// Whether any finger is its own.
    pub fn holds_any(&self) -> bool {
        !self.down.is_empty()
    }

    fn came_down(&mut self, touch: RawTouch) -> Heard {
        // A finger whose lifting was never told.
        self.down.retain(|(finger, _)| *finger != touch.finger);
        let mut heard = kept();
        let on = self.pads.iter().find(|pad| pad.holds(touch.place));
        if let Some(pad) = on {
            let tap = PadTap {
                pad: pad.pad,
                at_ms: touch.at_ms,
            };
            self.down.push((touch.finger, Finger::Pad(tap)));
            heard.taps.push(tap);
        } else {
            if self.pointer.replace(touch.finger).is_some() {
                heard.pointer.push(Pointer::Leave);
            }
            self.down.push((touch.finger, Finger::Pointer));
            heard.pointer.push(Pointer::Press(touch.place));
        }
        heard
    }
}

/// Kept from the toolkit, and nothing else so far.
fn kept() -> Heard {
    Heard {
        kept: true,
        ..Heard::default()
    }
}

impl FromFingers for Router {
    type Raw = RawTouch;

    fn hear(&mut self, touch: RawTouch) -> Heard {
        if touch.phase == Phase::Down {
            return self.came_down(touch);
        }
        let Some(index) = self.down.iter().position(|(it, _)| *it == touch.finger) else {
            // Came down before the pads were there: the toolkit has it.
            return Heard::default();
        };
        let mut heard = kept();
        let is_pointer = self.pointer == Some(touch.finger);
        match touch.phase {
            Phase::Moved if is_pointer => heard.pointer.push(Pointer::Move(touch.place)),
            Phase::Up if is_pointer => {
                heard.pointer = vec![Pointer::Release(touch.place), Pointer::Leave];
            }
            Phase::Cancelled if is_pointer => heard.pointer.push(Pointer::Leave),
            _ => {}
        }
        if matches!(touch.phase, Phase::Up | Phase::Cancelled) {
            heard.merge(self.tick(touch.at_ms));
            self.down.remove(index);
            if is_pointer {
                self.pointer = None;
            }
        }
        heard
    }

    fn tick(&mut self, at_ms: u64) -> Heard {
        let mut heard = kept();
        for (_, finger) in &mut self.down {
            if let Finger::Pad(tap) = *finger
                && RESTING_MS < at_ms.saturating_sub(tap.at_ms)
                && heard.withdrawn.is_none()
            {
                *finger = Finger::Resting(tap.pad);
                heard.withdrawn = Some(tap);
                heard.unresolved += 1;
            }
        }
        heard
    }
}

impl Heard {
    fn merge(&mut self, other: Self) {
        self.taps.extend(other.taps);
        self.withdrawn = self.withdrawn.or(other.withdrawn);
        self.unresolved += other.unresolved;
    }
}
