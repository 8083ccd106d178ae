//! Everything that the shell hears: each screen's events, the keeper's answers, the clock.

use super::inside::{Inside, NotOpened};
use super::keeper::Told;
use super::{
    bedside, before, handover, looking_back, month, pair, pin, plan, practice, settings, ward,
};

/// One event.
#[derive(Debug)]
pub enum Event {
    /// On the Ward screen.
    Ward(ward::Event),
    /// On the Pair screen.
    Pair(pair::Event),
    /// Before the feed.
    Before(before::Event),
    /// At the bedside.
    Bedside(bedside::Event),
    /// Looking back.
    LookingBack(looking_back::Event),
    /// On the plan screen.
    Plan(plan::Event),
    /// On the hand-over screen.
    Handover(handover::Event),
    /// On the practice screen.
    Practice(practice::Event),
    /// On the settings screen.
    Settings(settings::Event),
    /// On the lock's screen.
    Pin(pin::Event),
    /// On the month's screen.
    Month(month::Event),
    /// What was typed at the lock opened the data, or did not.
    Opened(Box<Result<Inside, NotOpened>>),
    /// The app was started.
    Arrived,
    /// The store answered.
    Told(Told),
    /// The clock went on.
    Ticked,
    /// Back to the running feed.
    ToRunning,
    /// To what calls for medical review now.
    ToReview,
    /// The trouble was read.
    TroubleSeen,
    /// The hardware's back key.
    Back,
}

impl Event {
    /// Whether a person did it, and not the clock or the store.
    pub const fn is_a_persons(&self) -> bool {
        !matches!(self, Self::Ticked | Self::Told(_) | Self::Opened(_))
    }

    /// Whether it is a tap on a pad, whose mark has to be seen at once.
    pub const fn is_tap(&self) -> bool {
        matches!(
            self,
            Self::Bedside(bedside::Event::Tapped(_) | bedside::Event::TappedAt(..))
                | Self::Practice(practice::Event::Tapped(_))
        )
    }
}
