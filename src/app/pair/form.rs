//! The form of a pair as it is typed, and its one door to a checked pair.

use chrono::{FixedOffset, NaiveDateTime, TimeZone};

use crate::record::{
    Coded, Gestation, Grams, Label, Pair, PairId, Reason, RiskNote, Sex, StoredWord, WallTime,
    WayOfBirth,
};

/// Least and most grams that a birth weight is taken to have without a slip (common practice).
const BIRTH_WEIGHT_G: std::ops::RangeInclusive<i64> = 300..=7000;

/// What is wrong with the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FormTrouble {
    /// No bed.
    Bed,
    /// No initials.
    Initials,
    /// The birth cannot be read, or lies in the future.
    Birth,
    /// The birth weight cannot be read, or is no birth weight.
    Weight,
    /// The gestation cannot be read.
    Gestation,
}

/// The form.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Form {
    /// The pair that is mended; `None` for a new one.
    pub of: Option<Box<Pair>>,
    /// As typed.
    pub bed: String,
    /// As typed.
    pub initials: String,
    /// As typed.
    pub birth: String,
    /// As typed.
    pub weight: String,
    /// As typed.
    pub gestation: String,
    /// Chosen.
    pub sex: Option<Sex>,
    /// Chosen.
    pub way: Option<WayOfBirth>,
    /// Chosen; words of other versions are kept.
    pub reasons: Vec<Coded<Reason>>,
    /// Chosen; words of other versions are kept.
    pub risks: Vec<Coded<RiskNote>>,
}

impl Form {
    /// The form of a pair.
    pub fn of(pair: &Pair) -> Self {
        Self {
            of: Some(Box::new(pair.clone())),
            bed: pair.bed.as_str().to_owned(),
            initials: pair.initials.as_str().to_owned(),
            birth: pair.birth.local().format("%Y-%m-%d %H:%M").to_string(),
            weight: pair
                .birth_weight
                .map_or_else(String::new, |grams| grams.value().to_string()),
            gestation: pair.gestation.map_or_else(String::new, |gestation| {
                let (weeks, days) = gestation.in_weeks();
                format!("{weeks}+{days}")
            }),
            sex: Some(pair.sex),
            way: pair.way_of_birth,
            reasons: pair.reasons.clone(),
            risks: pair.risk_notes.clone(),
        }
    }

    /// A checked pair. `id` is used for a new one; the birth is read in the wall clock's offset, or
    /// in the offset that it already had.
    ///
    /// # Errors
    /// The first thing that is wrong, from top to bottom.
    pub fn checked(&self, id: PairId, now: WallTime) -> Result<Pair, FormTrouble> {
        let bed = Label::new(&self.bed).map_err(|_| FormTrouble::Bed)?;
        let initials = Label::new(&self.initials).map_err(|_| FormTrouble::Initials)?;
        let offset_min = self.of.as_ref().map_or(now, |pair| pair.birth).offset_min();
        let birth = read_birth(&self.birth, offset_min)
            .filter(|birth| birth.utc_ms() <= now.utc_ms())
            .ok_or(FormTrouble::Birth)?;
        let birth_weight = empty_or(&self.weight, |text| {
            let grams: i64 = text.parse().ok()?;
            BIRTH_WEIGHT_G
                .contains(&grams)
                .then(|| Grams::new(grams).ok())?
        })
        .ok_or(FormTrouble::Weight)?;
        let gestation = empty_or(&self.gestation, |text| {
            let (weeks, days) = text.split_once('+').unwrap_or((text, "0"));
            Gestation::weeks_days(weeks.trim().parse().ok()?, days.trim().parse().ok()?).ok()
        })
        .ok_or(FormTrouble::Gestation)?;
        let before = self.of.as_deref();
        Ok(Pair {
            id: before.map_or(id, |pair| pair.id),
            mother_id: before.and_then(|pair| pair.mother_id),
            bed,
            initials,
            mother_number: before.and_then(|pair| pair.mother_number.clone()),
            baby_number: before.and_then(|pair| pair.baby_number.clone()),
            birth,
            sex: self.sex.unwrap_or(Sex::NotStated),
            gestation,
            birth_weight,
            way_of_birth: self.way,
            babies: before.map_or(1, |pair| pair.babies),
            risk_notes: self.risks.clone(),
            reasons: self.reasons.clone(),
            language: before.and_then(|pair| pair.language.clone()),
        })
    }
}

/// Nothing for empty text; otherwise what was read, or `None` if it cannot be read.
fn empty_or<T>(text: &str, read: impl Fn(&str) -> Option<T>) -> Option<Option<T>> {
    let text = text.trim();
    if text.is_empty() {
        Some(None)
    } else {
        read(text).map(Some)
    }
}

fn read_birth(text: &str, offset_min: i16) -> Option<WallTime> {
    let naive = NaiveDateTime::parse_from_str(text.trim(), "%Y-%m-%d %H:%M").ok()?;
    let offset = FixedOffset::east_opt(i32::from(offset_min) * 60)?;
    WallTime::of(offset.from_local_datetime(&naive).single()?).ok()
}

/// Puts a word in or takes it out.
pub(super) fn toggle<T: StoredWord + PartialEq>(words: &mut Vec<Coded<T>>, value: T) {
    let word = Coded::Known(value);
    if let Some(place) = words.iter().position(|it| *it == word) {
        words.remove(place);
    } else {
        words.push(word);
    }
}
