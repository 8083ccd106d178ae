//! All that the practice screen remembers.

use std::rc::Rc;

use crate::practice::{Baby, Truth};
use crate::record::{At, Tap};

use super::compare::{Between, Compared};

/// How fast a feed is played.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Speed {
    /// Half as fast as in life.
    Half,
    /// Three quarters.
    ThreeQuarters,
    /// As in life.
    #[default]
    Whole,
}

impl Speed {
    /// All speeds, slow to fast.
    pub const ALL: [Self; 3] = [Self::Half, Self::ThreeQuarters, Self::Whole];

    /// Per cent of the speed in life.
    pub const fn percent(self) -> u64 {
        match self {
            Self::Half => 50,
            Self::ThreeQuarters => 75,
            Self::Whole => 100,
        }
    }

    /// Time of the feed that is played in a time on the wall.
    pub const fn played(self, wall_ms: u64) -> At {
        At::ms(wall_ms * self.percent() / 100)
    }
}

/// How long a practice feed lasts, in minutes of the feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Minutes(u32);

impl Minutes {
    /// The lengths to choose from.
    pub const ALL: [Self; 3] = [Self(3), Self(6), Self(12)];

    /// As a number.
    pub const fn get(self) -> u32 {
        self.0
    }

    /// Where it ends.
    pub const fn end(self) -> At {
        At::ms(self.0 as u64 * 60_000)
    }
}

impl Default for Minutes {
    fn default() -> Self {
        Self::ALL[1]
    }
}

/// Who taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Observer {
    /// The first observer, or the only one.
    #[default]
    First,
    /// A second one on the same feed.
    Second,
}

/// A feed that is played, and what was tapped so far.
#[derive(Debug, Clone, PartialEq)]
pub struct Watched {
    /// Who taps.
    pub observer: Observer,
    /// What the baby does.
    pub truth: Rc<Truth>,
    /// Where the feed ends.
    pub end: At,
    /// How fast it is played.
    pub speed: Speed,
    /// When it began, in milliseconds since the device started.
    pub began_boot_ms: u64,
    /// The taps, in the feed's own time.
    pub taps: Vec<Tap>,
}

impl Watched {
    /// Where the feed is at a time of the device, not beyond its end.
    pub fn played(&self, boot_ms: u64) -> At {
        let at = self
            .speed
            .played(boot_ms.saturating_sub(self.began_boot_ms));
        at.min(self.end)
    }
}

/// What is told after a feed.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// Whose.
    pub observer: Observer,
    /// She against the truth.
    pub against_truth: Compared,
    /// The two observers against each other, after the second.
    pub between: Option<Between>,
}

/// What is on the screen.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum Stage {
    /// Choosing what to practise with.
    #[default]
    Choosing,
    /// The feed is played.
    Watching(Box<Watched>),
    /// It is over.
    Told(Box<Told>),
}

/// The model.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// The kind of baby.
    pub baby: Baby,
    /// How fast.
    pub speed: Speed,
    /// How long.
    pub minutes: Minutes,
    /// What is on the screen.
    pub stage: Stage,
    /// What the first observer tapped of the last feed.
    pub first: Option<Box<Watched>>,
}

impl Model {
    /// Whether a feed is being played.
    pub const fn is_playing(&self) -> bool {
        matches!(self.stage, Stage::Watching(_))
    }
}

impl Default for Model {
    fn default() -> Self {
        Self {
            baby: Baby::Established,
            speed: Speed::default(),
            minutes: Minutes::default(),
            stage: Stage::default(),
            first: None,
        }
    }
}
