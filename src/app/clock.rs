//! The one place where the app reads a clock: the wall, and one that goes on while the device sleeps.

use std::cell::Cell;

use chrono::Local;

use crate::record::WallTime;

/// Both times at one moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Now {
    /// Milliseconds since the device started, sleep included.
    pub boot_ms: u64,
    /// The wall clock.
    pub wall: WallTime,
}

impl Now {
    /// Both times at an earlier moment of the device's clock; at most now.
    pub fn at_boot(self, boot_ms: u64) -> Self {
        let ago_ms = self.boot_ms.saturating_sub(boot_ms);
        Self {
            boot_ms: self.boot_ms - ago_ms,
            wall: self.wall.plus_ms(-i64::try_from(ago_ms).unwrap_or(0)),
        }
    }
}

/// Something that tells the time.
pub trait Clock {
    /// The time now.
    fn now(&self) -> Now;
}

/// The device's own clocks.
#[derive(Debug, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now(&self) -> Now {
        Now {
            boot_ms: boot_ms(),
            wall: wall_now(),
        }
    }
}

/// The wall clock with the device's own offset.
pub fn wall_now() -> WallTime {
    let local = Local::now().fixed_offset();
    WallTime::of(local)
        .or_else(|_| WallTime::new(local.timestamp_millis().max(0), 0))
        .unwrap_or_default()
}

/// Microseconds on the clock that scripts outside can read too; for measuring alone.
#[cfg(any(target_os = "linux", target_os = "android"))]
pub fn monotonic_us() -> u64 {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Monotonic);
    let seconds = u64::try_from(time.tv_sec).unwrap_or(0);
    seconds * 1_000_000 + u64::try_from(time.tv_nsec / 1_000).unwrap_or(0)
}

/// Microseconds of the device's own clock; for measuring alone.
#[cfg(not(any(target_os = "linux", target_os = "android")))]
pub fn monotonic_us() -> u64 {
    boot_ms() * 1000
}

#[cfg(any(target_os = "linux", target_os = "android"))]
fn boot_ms() -> u64 {
    let time = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    let seconds = u64::try_from(time.tv_sec).unwrap_or(0);
    let millis = u64::try_from(time.tv_nsec / 1_000_000).unwrap_or(0);
    seconds * 1000 + millis
}

#[cfg(not(any(target_os = "linux", target_os = "android")))]
fn boot_ms() -> u64 {
    // Elsewhere the monotonic clock is the nearest; it may stand still in sleep.
    use std::sync::OnceLock;
    use std::time::Instant;
    static START: OnceLock<Instant> = OnceLock::new();
    let start = START.get_or_init(Instant::now);
    u64::try_from(start.elapsed().as_millis()).unwrap_or(u64::MAX)
}

/// A clock that is set by hand, for rehearsals and tests.
#[derive(Debug)]
pub struct HandClock(Cell<Now>);

impl HandClock {
    /// A clock that shows a time.
    pub const fn at(now: Now) -> Self {
        Self(Cell::new(now))
    }

    /// Moves it on by so many milliseconds.
    pub fn forward_ms(&self, ms: u64) {
        let now = self.0.get();
        self.0.set(Now {
            boot_ms: now.boot_ms + ms,
            wall: now.wall.plus_ms(i64::try_from(ms).unwrap_or(0)),
        });
    }

    /// Sets it to any time.
    pub fn set(&self, now: Now) {
        self.0.set(now);
    }

    /// Sets it to so many milliseconds after a moment.
    pub fn set_after(&self, start: Now, ms: u64) {
        self.0.set(Now {
            boot_ms: start.boot_ms + ms,
            wall: start.wall.plus_ms(i64::try_from(ms).unwrap_or(0)),
        });
    }
}

impl Clock for HandClock {
    fn now(&self) -> Now {
        self.0.get()
    }
}

impl<C: Clock> Clock for std::rc::Rc<C> {
    fn now(&self) -> Now {
        (**self).now()
    }
}
