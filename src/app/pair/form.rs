//! The form of a pair as it is typed, and its one door to a checked pair.

use chrono::{FixedOffset, NaiveDateTime, TimeZone};
use uuid::Uuid;

use crate::record::{
    Coded, Gestation, Grams, Label, Language, Pair, PairId, Reason, RiskNote, Sex, StoredWord,
    WallTime, WayOfBirth,
};

/// Least and most grams that a birth weight is taken to have without a slip (common practice).
const BIRTH_WEIGHT_G: std::ops::RangeInclusive<i64> = 300..=7000;

/// The languages that the form offers, by tag; messages `language-<tag>`. Common practice: those of
/// many wards, the program's own first. A pair's other language is kept.
pub const LANGUAGES: [&str; 12] = [
    "en", "de", "ar", "fa", "fr", "pl", "ro", "ru", "so", "es", "tr", "uk",
];
/// The most babies born together that the form offers.
pub const BABIES_MOST: u8 = 4;

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
    /// A ward number is too long.
    Number,
}

/// The form.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Form {
    /// The pair that is mended; `None` for a new one.
    pub of: Option<Box<Pair>>,
    /// The pair of the same mother that a new one is made beside.
    pub twin_of: Option<Box<Pair>>,
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
    /// As typed.
    pub mother_number: String,
    /// As typed.
    pub baby_number: String,
    /// Chosen.
    pub language: Option<Language>,
    /// How many babies were born together; none chosen is one.
    pub babies: u8,
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
        let number = |it: &Option<Label>| it.as_ref().map_or("", Label::as_str).to_owned();
        Self {
            of: Some(Box::new(pair.clone())),
            twin_of: None,
            mother_number: number(&pair.mother_number),
            baby_number: number(&pair.baby_number),
            language: pair.language.clone(),
            babies: pair.babies,
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

    /// The form for another baby of a pair's mother: what is hers is filled in.
    pub fn twin_of(pair: &Pair) -> Self {
        let same = Self::of(pair);
        Self {
            of: None,
            twin_of: Some(Box::new(pair.clone())),
            baby_number: String::new(),
            weight: String::new(),
            sex: None,
            reasons: Vec::new(),
            babies: pair.babies.max(2),
            ..same
        }
    }

    /// The id of the mother that the pairs of her babies share: hers already, or one that follows
    /// from the first pair.
    pub fn mother_of(pair: &Pair) -> Uuid {
        pair.mother_id
            .unwrap_or_else(|| Uuid::new_v5(&pair.id.uuid(), b"mother"))
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
        let number =
            |text: &str| empty_or(text, |text| Label::new(text).ok()).ok_or(FormTrouble::Number);
        let before = self.of.as_deref();
        Ok(Pair {
            id: before.map_or(id, |pair| pair.id),
            mother_id: before
                .and_then(|pair| pair.mother_id)
                .or_else(|| self.twin_of.as_deref().map(Self::mother_of)),
            bed,
            initials,
            mother_number: number(&self.mother_number)?,
            baby_number: number(&self.baby_number)?,
            birth,
            sex: self.sex.unwrap_or(Sex::NotStated),
            gestation,
            birth_weight,
            way_of_birth: self.way,
            babies: self.babies.max(1),
            risk_notes: self.risks.clone(),
            reasons: self.reasons.clone(),
            language: self.language.clone(),
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
