//! What is observed at the bedside, in the trade's words: pair, visit, journal, signs, holds, units.
//!
//! The journal is the truth; a visit is what folding it gives. This room deliberately knows no
//! clock, no randomness, no disk, no screen and no other room: times and ids come in as arguments.

mod adjustment;
mod day;
mod entry;
mod error;
mod feed;
mod fold;
mod hold;
mod id;
mod journal;
mod pain;
mod pair;
mod plan;
mod sign;
mod stored;
mod tap;
mod text;
mod time;
mod unit;
mod visit;
mod word;

pub use adjustment::Adjustment;
pub use day::{
    BabyDanger, BreastBefore, BreastState, COUNT_MOST, HOURS_SINCE_WET_MOST, Jaundice, LastDay,
    MotherDanger, Nappy, NippleBefore, StoolColour, Weighing, WeighingMoment,
};
pub use entry::{AsStored, Entry, What};
pub use error::RecordError;
pub use feed::{AdjustmentTried, Feed, FeedEnd, PainAt, SignChange};
pub use fold::{Acknowledged, Folded, Odd, SignNow, Signed, fold, fold_on};
pub use hold::{Hold, Side};
pub use id::{PairId, TabletId, VisitId};
pub use journal::Journal;
pub use pain::Pain;
pub use pair::{Gestation, Language, Pair, Reason, RiskNote, Sex, WayOfBirth};
pub use plan::{PlanItem, PlanWhat};
pub use sign::{Sign, SignState};
pub use stored::{StoredEntry, from_stored, to_stored};
pub use tap::{BoundaryMoved, SuckPhase, Tap, TapWhat};
pub use text::{Label, Text};
pub use time::{At, WallTime};
pub use unit::{Grams, Millilitres, ScaleStep, TenthsCelsius};
pub use visit::{PolicyMark, Visit};
pub(crate) use word::words;
pub use word::{Coded, StoredWord};

pub use feed::{BabyState, BreastAfter, EndedBy, NippleAfter};
