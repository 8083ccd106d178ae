//! The range coder: yes-or-no decisions, each with its chance in 65536ths, to bytes and back.
//!
//! Carryless, 32 bits: the interval is cut at the chance, and its common high bytes go out. Past
//! the end of its bytes the reader reads zeros, so the last bytes can be as few as tell the interval.

use super::super::limit::{DECISIONS, DECISIONS_A_BYTE, DECISIONS_MOST};

/// The most decisions that so many bytes may stand for.
pub(super) const fn decisions_most(bytes: usize) -> usize {
    let most = DECISIONS + DECISIONS_A_BYTE * bytes;
    if most < DECISIONS_MOST {
        most
    } else {
        DECISIONS_MOST
    }
}

/// One end of the coder: gives each decision on, or finds it out.
pub(super) trait Port {
    /// Codes one decision with the chance that it is yes, 1 to 65535. The writer writes `told`;
    /// the reader does not look at it.
    fn decide(&mut self, told: bool, chance: u32) -> bool;

    /// Whether this end has to stop: it read past its bytes.
    fn is_spent(&self) -> bool {
        false
    }

    /// The most decisions that this end takes part in.
    fn decisions_most(&self) -> usize {
        DECISIONS_MOST
    }
}

/// An interval, both ends within it.
struct Interval {
    low: u32,
    high: u32,
}

impl Interval {
    const WHOLE: Self = Self {
        low: 0,
        high: u32::MAX,
    };

    /// The last place of the part that stands for yes.
    fn middle(&self, chance: u32) -> u32 {
        let width = u64::from(self.high - self.low);
        self.low + ((width * u64::from(chance)) >> 16) as u32
    }

    fn take(&mut self, yes: bool, middle: u32) {
        if yes {
            self.high = middle;
        } else {
            self.low = middle + 1;
        }
    }

    /// The high byte that both ends share, shifted out.
    fn shared(&mut self) -> Option<u8> {
        ((self.low ^ self.high) >> 24 == 0).then(|| {
            let byte = (self.high >> 24) as u8;
            self.low <<= 8;
            self.high = self.high << 8 | 0xff;
            byte
        })
    }
}

/// Writes.
pub(super) struct Writer {
    interval: Interval,
    bytes: Vec<u8>,
}

impl Writer {
    pub(super) const fn new() -> Self {
        Self {
            interval: Interval::WHOLE,
            bytes: Vec::new(),
        }
    }

    /// The bytes, with the fewest at the end that lie in the interval, and no zeros there.
    pub(super) fn finish(mut self) -> Vec<u8> {
        let Interval { low, high } = self.interval;
        let told = (0..=4)
            .map(|count| {
                let step = if count == 0 {
                    1 << 32
                } else {
                    1u64 << (32 - 8 * count)
                };
                u64::from(low).div_ceil(step) * step
            })
            .find(|place| *place <= u64::from(high))
            .unwrap_or(low.into());
        self.bytes.extend((told as u32).to_be_bytes());
        let kept = self.bytes.iter().rposition(|byte| *byte != 0);
        self.bytes.truncate(kept.map_or(0, |last| last + 1));
        self.bytes
    }
}

impl Port for Writer {
    fn decide(&mut self, told: bool, chance: u32) -> bool {
        let middle = self.interval.middle(chance);
        self.interval.take(told, middle);
        while let Some(byte) = self.interval.shared() {
            self.bytes.push(byte);
        }
        told
    }
}

/// Zeros that may be read past the end: those that the writer leaves out, and the four read ahead.
const PAST_END_MOST: usize = 64;

/// Reads.
pub(super) struct Reader<'b> {
    interval: Interval,
    place: u32,
    bytes: &'b [u8],
    read: usize,
}

impl<'b> Reader<'b> {
    pub(super) fn new(bytes: &'b [u8]) -> Self {
        let mut reader = Self {
            interval: Interval::WHOLE,
            place: 0,
            bytes,
            read: 0,
        };
        for _ in 0..4 {
            reader.next();
        }
        reader
    }

    fn next(&mut self) {
        let byte = self.bytes.get(self.read).copied().unwrap_or(0);
        self.place = self.place << 8 | u32::from(byte);
        self.read += 1;
    }
}

impl Port for Reader<'_> {
    fn decide(&mut self, _: bool, chance: u32) -> bool {
        let middle = self.interval.middle(chance);
        let yes = self.place <= middle;
        self.interval.take(yes, middle);
        while self.interval.shared().is_some() {
            self.next();
        }
        yes
    }

    fn is_spent(&self) -> bool {
        self.bytes.len() + PAST_END_MOST < self.read
    }

    fn decisions_most(&self) -> usize {
        decisions_most(self.bytes.len())
    }
}
