//! Answers told, changed and taken back: the pure steps from one touch to the answers as they are to
//! be, and from those to entries of the journal.
//!
//! An answer that is taken back is gone from the visit: the entries that told it are struck, and what
//! else they told is told anew, first, so that nothing is lost on the way. So any reader, older ones
//! too, reads it as not asked.

use super::{Count, Question};
use crate::record::{
    BabyDanger, BreastBefore, BreastState, COUNT_MOST, Coded, HOURS_SINCE_WET_MOST, Jaundice,
    Journal, LastDay, Millilitres, MotherDanger, NippleBefore, Side, StoolColour, StoredWord,
    TenthsCelsius, What,
};

/// Where the temperature starts, in tenths of a degree (common practice).
const TEMPERATURE_START: i64 = 368;
/// One step of milk, in millilitres.
const MILK_STEP_ML: i64 = 5;
/// The most milk that is stepped to, in millilitres.
const MILK_MOST_ML: i64 = 500;

/// What a touch on less or more of a number does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stepped {
    /// The start is shown; it is not told yet.
    Offered,
    /// The number is told, or taken back.
    Told,
}

/// A touch on less (-1) or more (1). The first touch tells nothing that could be read as an answer
/// nobody gave: "none" and the start of a temperature are only offered, and told by a second touch.
/// Below none lies "not told".
pub(super) fn stepped(day: &mut LastDay, count: Count, by: i32, offered: bool) -> Stepped {
    let now = value(day, count);
    let next = match (count, now) {
        (Count::Temperature, None) if !offered => return Stepped::Offered,
        (Count::Temperature, None) => Some(TEMPERATURE_START),
        (_, None) if by < 0 && !offered => return Stepped::Offered,
        (_, None) => Some(if by < 0 { 0 } else { step(count) }),
        (_, Some(0)) if by < 0 => None,
        (_, Some(now)) => Some((now + i64::from(by) * step(count)).max(0)),
    };
    set(day, count, next);
    Stepped::Told
}

/// What is shown of a number that is offered.
pub(super) const fn offer(count: Count) -> i64 {
    match count {
        Count::Temperature => TEMPERATURE_START,
        _ => 0,
    }
}

const fn step(count: Count) -> i64 {
    match count {
        Count::Expressed | Count::Supplement => MILK_STEP_ML,
        _ => 1,
    }
}

/// A number as it is told, in its unit.
pub(super) fn value(day: &LastDay, count: Count) -> Option<i64> {
    match count {
        Count::Feeds => day.feeds.map(i64::from),
        Count::Wet => day.wet.map(i64::from),
        Count::Dirty => day.dirty.map(i64::from),
        Count::HoursSinceWet => day.hours_since_wet.map(i64::from),
        Count::Temperature => day.temperature.map(i64::from),
        Count::Expressed => day.expressed_ml.map(i64::from),
        Count::Supplement => day.supplement_ml.map(i64::from),
    }
}

/// Sets a number, held within what it may be; nothing takes it back.
pub(super) fn set(day: &mut LastDay, count: Count, next: Option<i64>) {
    let small = |most: u8| next.and_then(|next| u8::try_from(next.clamp(0, most.into())).ok());
    let milk = || next.and_then(|next| Millilitres::new(next.clamp(0, MILK_MOST_ML)).ok());
    match count {
        Count::Feeds => day.feeds = small(COUNT_MOST),
        Count::Wet => day.wet = small(COUNT_MOST),
        Count::Dirty => day.dirty = small(COUNT_MOST),
        Count::HoursSinceWet => day.hours_since_wet = small(HOURS_SINCE_WET_MOST),
        Count::Temperature => {
            // A step beyond the ends leaves it where it is.
            let held = day.temperature.filter(|_| next.is_some());
            day.temperature = next.and_then(|next| TenthsCelsius::new(next).ok()).or(held);
        }
        Count::Expressed => day.expressed_ml = milk(),
        Count::Supplement => day.supplement_ml = milk(),
    }
}

/// A choice that was touched; the chosen one is taken back.
pub(super) fn chose(day: &mut LastDay, question: Question, index: usize) {
    match question {
        Question::Stool => turn(&mut day.stool, StoolColour::ALL.get(index).copied()),
        Question::Urates => turn(&mut day.urates, Some(index == 0)),
        Question::Meconium => turn(&mut day.meconium, Some(index == 0)),
        Question::DarkUrine => turn(&mut day.dark_urine, Some(index == 0)),
        Question::Sleepy => turn(&mut day.sleepy, Some(index == 0)),
        Question::Jaundice => turn(&mut day.jaundice, Jaundice::ALL.get(index).copied()),
        Question::BabyDanger => {
            danger(&mut day.baby_danger, BabyDanger::ALL.get(index).copied());
        }
        Question::MotherDanger => {
            danger(
                &mut day.mother_danger,
                MotherDanger::ALL.get(index).copied(),
            );
        }
    }
}

fn turn<T: PartialEq>(told: &mut Option<T>, touched: Option<T>) {
    *told = if *told == touched { None } else { touched };
}

/// A danger sign put in or taken out; past the last one stands "none of these". Only that one says
/// that there is none: with the last sign taken out, or "none" touched again, nothing was said.
fn danger<T: StoredWord + PartialEq>(told: &mut Option<Vec<Coded<T>>>, touched: Option<T>) {
    let Some(touched) = touched.map(Coded::Known) else {
        turn(told, Some(Vec::new()));
        return;
    };
    let mut signs = told.take().unwrap_or_default();
    match signs.iter().position(|it| *it == touched) {
        Some(place) => drop(signs.remove(place)),
        None => signs.push(touched),
    }
    *told = Some(signs).filter(|signs| !signs.is_empty());
}

/// The entries that lead from the answers of a journal to those that are to be.
pub(super) fn entries(journal: &Journal, wanted: LastDay) -> Vec<What> {
    let mut told = LastDay::default();
    for (_, day, _) in standing_days(journal) {
        told = told.overlaid(day);
    }
    let back = told.open_in(&wanted);
    let mut remaining = LastDay::default();
    let mut struck = Vec::new();
    for (seq, day, whole) in standing_days(journal) {
        // What holds more than this version knows is not thrown away for the part it knows.
        if whole && day.meets(&back) {
            struck.push(What::Struck { entry: seq });
        } else {
            remaining = remaining.overlaid(day);
        }
    }
    let more = wanted.beyond(&remaining);
    let more = Some(more).filter(|more| !more.is_empty());
    more.and_then(|more| more.checked().ok())
        .map(What::LastDay)
        .into_iter()
        .chain(struck)
        .collect()
}

/// The answers that stand: number, what they tell, and whether this version knows all of it.
fn standing_days(journal: &Journal) -> impl Iterator<Item = (u32, &LastDay, bool)> {
    let entries = journal.standing_entries();
    entries.filter_map(|entry| match &entry.what {
        What::LastDay(day) => Some((entry.seq, day, entry.newer.is_none())),
        _ => None,
    })
}

/// The entries for a touch on the breast or the nipple of a side; the chosen one is taken back.
pub(super) fn breast(journal: &Journal, touched: BreastBefore) -> Vec<What> {
    let told: Vec<(u32, &BreastBefore)> = standing_breasts(journal)
        .filter(|(_, it)| it.side == touched.side)
        .collect();
    let breast = told.iter().rev().find_map(|(_, it)| it.breast);
    let nipple = told.iter().rev().find_map(|(_, it)| it.nipple);
    let breast_back = touched.breast.is_some() && touched.breast == breast;
    let nipple_back = touched.nipple.is_some() && touched.nipple == nipple;
    if !breast_back && !nipple_back {
        return vec![What::BreastBefore(touched)];
    }
    let struck: Vec<(u32, &BreastBefore)> = told
        .into_iter()
        .filter(|(_, it)| breast_back && it.breast.is_some() || nipple_back && it.nipple.is_some())
        .collect();
    // What else the struck ones told is told anew.
    let rest = BreastBefore {
        side: touched.side,
        breast: breast.filter(|_| !breast_back && struck.iter().any(|(_, it)| it.breast.is_some())),
        nipple: nipple.filter(|_| !nipple_back && struck.iter().any(|(_, it)| it.nipple.is_some())),
    };
    let rest = Some(rest).filter(|it| it.breast.is_some() || it.nipple.is_some());
    rest.map(What::BreastBefore)
        .into_iter()
        .chain(struck.iter().map(|(seq, _)| What::Struck { entry: *seq }))
        .collect()
}

fn standing_breasts(journal: &Journal) -> impl Iterator<Item = (u32, &BreastBefore)> {
    let entries = journal.standing_entries();
    entries.filter_map(|entry| match &entry.what {
        What::BreastBefore(it) => Some((entry.seq, it)),
        _ => None,
    })
}

/// The breast of a side by its place.
pub(super) fn breast_at(side: Side, index: usize) -> BreastBefore {
    BreastBefore {
        side,
        breast: BreastState::ALL.get(index).copied(),
        nipple: None,
    }
}

/// The nipple of a side by its place.
pub(super) fn nipple_at(side: Side, index: usize) -> BreastBefore {
    BreastBefore {
        side,
        breast: None,
        nipple: NippleBefore::ALL.get(index).copied(),
    }
}
