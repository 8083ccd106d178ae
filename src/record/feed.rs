//! One feed as folded from the journal: one stretch at one breast.

use super::word::words;
use super::{
    Adjustment, At, BoundaryMoved, Hold, Pain, Side, Sign, SignNow, SignState, Tap, TapWhat,
};

words!(
    /// Who ended the feed.
    EndedBy {
        /// The baby came off or fell asleep.
        Baby = "baby",
        /// The mother.
        Mother = "mother",
        /// The specialist.
        Specialist = "specialist",
        /// An interruption.
        Interrupted = "interrupted",
    }
);

words!(
    /// The nipple's shape and colour just after the feed.
    NippleAfter {
        /// Rounded or a little longer, same colour.
        Rounded = "rounded",
        /// Flattened or slanted.
        Flattened = "flattened",
        /// A crease or stripe.
        Creased = "creased",
        /// White tip.
        Blanched = "blanched",
        /// Cracked, blistered or bleeding.
        Damaged = "damaged",
    }
);

words!(
    /// Whether the breast was softer after the feed.
    BreastAfter {
        /// Softer.
        Softer = "softer",
        /// No change felt.
        Unchanged = "unchanged",
        /// Could not be told.
        Unclear = "unclear",
    }
);

words!(
    /// The baby's state after the feed.
    BabyState {
        /// Relaxed, content, asleep or quietly awake.
        Content = "content",
        /// Still rooting or hungry.
        Hungry = "hungry",
        /// Fell asleep early, hard to wake.
        Sleepy = "sleepy",
        /// Crying or arching.
        Unsettled = "unsettled",
    }
);

/// A pain score and when it was told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PainAt {
    /// When.
    pub at: At,
    /// How much.
    pub pain: Pain,
}

/// A change of one sign and when it was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignChange {
    /// When.
    pub at: At,
    /// Which.
    pub sign: Sign,
    /// To what; `None` takes it back to "not looked yet".
    pub state: Option<SignState>,
}

/// An adjustment and when it was tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AdjustmentTried {
    /// When.
    pub at: At,
    /// What.
    pub what: Adjustment,
}

/// The end of a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeedEnd {
    /// When.
    pub at: At,
    /// By whom.
    pub by: EndedBy,
}

/// One stretch at one breast.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Feed {
    /// When it began.
    pub started: At,
    /// At which breast.
    pub side: Side,
    /// The holds, each from its time on; the first from the start.
    pub holds: Vec<(At, Hold)>,
    /// When and by whom it was ended; `None` while it runs.
    pub ended: Option<FeedEnd>,
    /// What was tapped, with `on` at the start and `end` at the end, times rising.
    pub taps: Vec<Tap>,
    /// Pain over time, while it ran.
    pub pains: Vec<PainAt>,
    /// Pain told of it after its end.
    pub pains_after: Vec<PainAt>,
    /// Changes of signs that are of this feed: made while it ran, or after it and before another;
    /// those of the first feed begin with what was told before it.
    pub signs: Vec<SignChange>,
    /// What was tried.
    pub adjustments: Vec<AdjustmentTried>,
    /// Touches that the screen could not resolve.
    pub unresolved_touches: u32,
    /// Boundaries between phases that the specialist moved, in the order of their moving.
    pub boundaries: Vec<BoundaryMoved>,
    /// The nipple after it.
    pub nipple_after: Option<NippleAfter>,
    /// The breast after it.
    pub breast_after: Option<BreastAfter>,
    /// The baby after it.
    pub baby_state: Option<BabyState>,
}

impl Feed {
    /// A feed that begins.
    pub(super) fn starting(at: At, side: Side, hold: Hold) -> Self {
        Self {
            started: at,
            side,
            holds: vec![(at, hold)],
            ended: None,
            taps: vec![Tap {
                at,
                what: TapWhat::On,
            }],
            pains: Vec::new(),
            pains_after: Vec::new(),
            signs: Vec::new(),
            adjustments: Vec::new(),
            unresolved_touches: 0,
            boundaries: Vec::new(),
            nipple_after: None,
            breast_after: None,
            baby_state: None,
        }
    }

    /// All pain that was told of it, in order: while it ran, and after.
    pub fn all_pains(&self) -> impl Iterator<Item = &PainAt> {
        self.pains.iter().chain(&self.pains_after)
    }

    /// A sign's last state in this feed; `None` is "not looked yet". It stays when the baby comes
    /// off and goes on again: its time tells which latch it is of.
    pub fn sign(&self, sign: Sign) -> Option<SignNow> {
        let last = self.signs.iter().rfind(|change| change.sign == sign)?;
        let at = last.at;
        last.state.map(|state| SignNow { state, at })
    }

    /// The hold now.
    pub fn hold(&self) -> Option<Hold> {
        self.holds.last().map(|(_, hold)| *hold)
    }

    /// Whether it still runs.
    pub const fn is_running(&self) -> bool {
        self.ended.is_none()
    }

    /// Whether nobody is looking just now.
    pub fn is_unwatched(&self) -> bool {
        self.taps
            .iter()
            .rev()
            .find_map(|tap| match tap.what {
                TapWhat::Unwatched => Some(true),
                TapWhat::Watched => Some(false),
                _ => None,
            })
            .unwrap_or(false)
    }

    /// Whether the baby is off the breast just now.
    pub fn is_off(&self) -> bool {
        self.taps
            .iter()
            .rev()
            .find_map(|tap| match tap.what {
                TapWhat::Off => Some(true),
                TapWhat::On | TapWhat::Suck | TapWhat::SuckSwallow => Some(false),
                _ => None,
            })
            .unwrap_or(false)
    }
}
