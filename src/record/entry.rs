//! One entry of the journal: its number, its two times, and what happened.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{
    Adjustment, At, BabyState, BoundaryMoved, BreastAfter, BreastBefore, EndedBy, Hold, Label,
    LastDay, Nappy, NippleAfter, Pain, PlanItem, Side, Sign, SignState, TapWhat, Text, WallTime,
    Weighing,
};

/// One entry. Entries are only ever added.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// 1 for the first; each one more than the one before.
    pub seq: u32,
    /// Since the visit began.
    pub at: At,
    /// On the wall.
    pub wall: WallTime,
    /// What happened.
    pub what: What,
    /// The whole body, where a newer version stored more in it than this one knows.
    pub newer: Option<AsStored>,
}

/// The body of an entry as it was stored (JSON). `Debug` never shows it.
#[derive(Clone, PartialEq, Eq)]
pub struct AsStored(Box<str>);

impl AsStored {
    pub(super) fn new(body: &str) -> Self {
        Self(body.into())
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl std::fmt::Debug for AsStored {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("…")
    }
}

/// What happened. The stored kind of each is its name in small letters with underscores.
#[derive(Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "kind", content = "body")]
pub enum What {
    /// Facts of the last 24 hours were asked.
    LastDay(LastDay),
    /// A weight was taken.
    Weighed(Weighing),
    /// A nappy was changed.
    Nappy(Nappy),
    /// Breast and nipple were looked at before the feed.
    BreastBefore(BreastBefore),
    /// A feed began: baby on.
    FeedStarted {
        /// At which breast.
        side: Side,
        /// In which hold.
        hold: Hold,
    },
    /// One jaw movement.
    Suck,
    /// One jaw movement with a swallow.
    SuckSwallow,
    /// A swallow alone.
    Swallow,
    /// From a time on, nobody looked. The time may lie before the entry's own.
    UnwatchedFrom {
        /// Since when.
        from: At,
    },
    /// From here on somebody looks again.
    UnwatchedTo,
    /// The baby came off.
    BabyOff,
    /// The baby went on again.
    BabyOn,
    /// The hold changed.
    HoldChanged {
        /// To which.
        hold: Hold,
    },
    /// A sign changed; no state takes it back to "not looked yet".
    SignChanged {
        /// Which.
        sign: Sign,
        /// To what.
        state: Option<SignState>,
    },
    /// Pain was told.
    Pain {
        /// How much; nothing for "cannot say".
        score: Pain,
        /// Of which feed, told after it, by its place in the visit, the first being 0; if none is
        /// named, of the one that runs or ran last.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed: Option<u32>,
    },
    /// An adjustment was tried.
    AdjustmentTried {
        /// What.
        what: Adjustment,
    },
    /// A note was written.
    Note {
        /// Its words.
        text: Text,
    },
    /// The feed ended.
    FeedEnded {
        /// By whom.
        by: EndedBy,
    },
    /// The nipple was looked at after the feed.
    NippleAfter {
        /// How it was.
        nipple: NippleAfter,
        /// Of which feed, by its place in the visit, the first being 0; of the last one if none is
        /// named.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed: Option<u32>,
    },
    /// The breast was felt after the feed.
    BreastAfter {
        /// How it was.
        breast: BreastAfter,
        /// Of which feed, by its place in the visit, the first being 0; of the last one if none is
        /// named.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed: Option<u32>,
    },
    /// The baby's state after the feed.
    BabyState {
        /// How it was.
        state: BabyState,
        /// Of which feed, by its place in the visit, the first being 0; of the last one if none is
        /// named.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        feed: Option<u32>,
    },
    /// A touch came that the screen could not resolve.
    TouchUnresolved,
    /// The specialist added a tap to a feed, running or ended, at a time that she tells.
    TapAdded {
        /// When it was.
        at: At,
        /// What it was: a suck, a suck with swallow, or a swallow.
        what: TapWhat,
    },
    /// The specialist moved a boundary between two phases of a feed, running or ended.
    BoundaryMoved(BoundaryMoved),
    /// A finding was acknowledged.
    FindingAcknowledged {
        /// The rule's id.
        rule: String,
        /// By whom.
        by: Label,
    },
    /// Something was agreed.
    PlanItem(PlanItem),
    /// When to look again.
    NextLook {
        /// When it is due.
        due: WallTime,
    },
    /// The visit was signed.
    Signed {
        /// By whom.
        by: Label,
    },
    /// The record was shown as codes.
    ShownAsCode {
        /// The transfer's number.
        transfer: u32,
        /// How many pieces.
        pieces: u8,
    },
    /// The desk's receipt was typed in and fitted.
    ReceiptTaken {
        /// Its digits.
        receipt: String,
    },
    /// A correction: the entry named is taken back. Nothing is deleted.
    Struck {
        /// The number of the entry that is taken back.
        entry: u32,
    },
    /// An entry that a newer version wrote, kept as it was stored.
    #[serde(skip)]
    Unknown {
        /// Its kind as stored.
        kind: String,
        /// Its body as stored (JSON).
        body: String,
    },
}

impl What {
    /// Whether it may still be added after signing: it changes nothing that was seen.
    pub const fn is_after_signing(&self) -> bool {
        matches!(self, Self::ShownAsCode { .. } | Self::ReceiptTaken { .. })
    }

    /// Whether it is a single tap on one of the pads (the entries that are many).
    pub const fn is_tap(&self) -> bool {
        matches!(self, Self::Suck | Self::SuckSwallow | Self::Swallow)
    }

    /// Whether "take back" at the bedside may take it back.
    pub const fn can_be_taken_back(&self) -> bool {
        !matches!(
            self,
            Self::Signed { .. }
                | Self::ShownAsCode { .. }
                | Self::ReceiptTaken { .. }
                | Self::Struck { .. }
                | Self::FindingAcknowledged { .. }
                | Self::Unknown { .. }
        )
    }

    /// Whether it holds words that people typed, or might.
    const fn holds_words(&self) -> bool {
        matches!(
            self,
            Self::Note { .. }
                | Self::FindingAcknowledged { .. }
                | Self::PlanItem(_)
                | Self::Signed { .. }
                | Self::Unknown { .. }
        )
    }
}

/// The kind, and the body where nobody's own words can be in it.
impl std::fmt::Debug for What {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if let Self::Unknown { kind, .. } = self {
            return write!(f, "{kind} …");
        }
        let value = serde_json::to_value(self).unwrap_or_default();
        f.write_str(value.get("kind").and_then(Value::as_str).unwrap_or("…"))?;
        match value.get("body") {
            Some(_) if self.holds_words() => f.write_str(" …"),
            Some(body) => write!(f, " {body}"),
            None => Ok(()),
        }
    }
}
