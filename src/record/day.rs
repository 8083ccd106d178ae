//! The last 24 hours and what is found before the feed: counts, nappies, weights, danger signs.
//!
//! Everything here may be missing, and missing is never read as fine.

use serde::{Deserialize, Serialize};

use super::error::in_range;
use super::word::words;
use super::{Coded, Grams, Millilitres, RecordError, ScaleStep, TenthsCelsius, WallTime};

words!(
    /// The colour of stool, from first to later days.
    StoolColour {
        /// Black or dark green, tarry.
        Black = "black",
        /// Greenish or brown, loosening.
        Green = "green",
        /// Yellow, loose.
        Yellow = "yellow",
        /// Pale, chalky: never expected.
        Pale = "pale",
        /// With blood: never expected.
        Bloody = "bloody",
    }
);

words!(
    /// How far yellow skin is seen.
    Jaundice {
        /// Looked for, none.
        None = "none",
        /// Face only.
        Face = "face",
        /// Face and body.
        Body = "body",
        /// To hands and feet, or very deep.
        Extensive = "extensive",
    }
);

words!(
    /// Danger signs of the baby that are asked and looked for.
    BabyDanger {
        /// Hard to wake, or does not respond as usual.
        HardToWake = "hard_to_wake",
        /// Floppy.
        Floppy = "floppy",
        /// A fit.
        Fit = "fit",
        /// Fast, laboured or grunting breathing.
        Breathing = "breathing",
        /// Blue, grey, mottled or very pale.
        Colour = "colour",
        /// Green vomit.
        GreenVomit = "green_vomit",
        /// Bulging soft spot.
        BulgingFontanelle = "bulging_fontanelle",
        /// A rash that does not fade under pressure.
        Rash = "rash",
        /// Redness or pus at the cord.
        Cord = "cord",
        /// Will not feed at all.
        NotFeeding = "not_feeding",
        /// Yellow within the first 24 hours of life.
        JaundiceFirstDay = "jaundice_first_day",
        /// Swollen, tense belly.
        Distension = "distension",
    }
);

words!(
    /// Danger signs of the mother that are asked for.
    MotherDanger {
        /// Sudden or growing heavy bleeding, or faintness with it.
        Bleeding = "bleeding",
        /// Fever, shivering, belly pain or offensive loss.
        Infection = "infection",
        /// Headache with changed sight, nausea or vomiting.
        Headache = "headache",
        /// Pain or swelling in one calf.
        Calf = "calf",
        /// Short of breath or chest pain.
        Chest = "chest",
        /// Confused, mottled, passing no urine.
        Sepsis = "sepsis",
        /// Spreading hot red breast, or a lump that may be an abscess.
        Breast = "breast",
        /// Thoughts of harming herself or the baby, or strange beliefs.
        Mind = "mind",
    }
);

/// What was asked about the last 24 hours. A field that is `None` was not asked or not known.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct LastDay {
    /// Feeds at the breast.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub feeds: Option<u8>,
    /// Wet nappies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wet: Option<u8>,
    /// Dirty nappies.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dirty: Option<u8>,
    /// The latest stool's colour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stool: Option<StoolColour>,
    /// Pink or brick-red staining (urates) seen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub urates: Option<bool>,
    /// Hours since the last wet nappy.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hours_since_wet: Option<u8>,
    /// Whether a stool was ever passed since birth: meconium, or any after it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub meconium: Option<bool>,
    /// Dark urine, which stains the nappy brown or deep yellow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dark_urine: Option<bool>,
    /// Expressed milk given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expressed_ml: Option<Millilitres>,
    /// Formula or donor milk given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub supplement_ml: Option<Millilitres>,
    /// Needs waking for most feeds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sleepy: Option<bool>,
    /// How far yellow skin is seen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jaundice: Option<Jaundice>,
    /// The baby's temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Option<TenthsCelsius>,
    /// Danger signs of the baby: `None` not asked, empty asked and none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub baby_danger: Option<Vec<Coded<BabyDanger>>>,
    /// Danger signs of the mother: `None` not asked, empty asked and none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mother_danger: Option<Vec<Coded<MotherDanger>>>,
}

/// A day of which each answer is made of the same answer of two others.
macro_rules! each_answer {
    ($make:ident, $own:expr, $other:expr) => {
        each_answer!($make, $own, $other; feeds, wet, dirty, stool, urates, hours_since_wet,
            meconium, dark_urine, expressed_ml, supplement_ml, sleepy, jaundice, temperature,
            baby_danger, mother_danger)
    };
    ($make:ident, $own:expr, $other:expr; $($answer:ident),*) => {
        Self { $($answer: $make($own.$answer.as_ref(), $other.$answer.as_ref()),)* }
    };
}

/// The most feeds, or nappies of a kind, that a day is taken to hold.
pub const COUNT_MOST: u8 = 40;
/// The most hours since a wet nappy that are taken.
pub const HOURS_SINCE_WET_MOST: u8 = 96;

impl LastDay {
    /// Checks the counts.
    ///
    /// # Errors
    /// A count above [`COUNT_MOST`], or more than [`HOURS_SINCE_WET_MOST`] hours since a wet nappy.
    pub fn checked(self) -> Result<Self, RecordError> {
        for (what, count) in [
            ("feeds", self.feeds),
            ("wet nappies", self.wet),
            ("dirty nappies", self.dirty),
        ] {
            in_range(what, count.unwrap_or(0).into(), 0, COUNT_MOST.into())?;
        }
        in_range(
            "hours since a wet nappy",
            self.hours_since_wet.unwrap_or(0).into(),
            0,
            HOURS_SINCE_WET_MOST.into(),
        )?;
        Ok(self)
    }

    /// This, with whatever a later answer says put over it.
    pub fn overlaid(&self, later: &Self) -> Self {
        fn over<T: Clone>(own: Option<&T>, later: Option<&T>) -> Option<T> {
            later.or(own).cloned()
        }
        each_answer!(over, self, later)
    }

    /// The answers of this one that another does not give as well.
    pub fn beyond(&self, other: &Self) -> Self {
        fn new<T: Clone + PartialEq>(own: Option<&T>, other: Option<&T>) -> Option<T> {
            own.filter(|_| own != other).cloned()
        }
        each_answer!(new, self, other)
    }

    /// The answers of this one to what another leaves open.
    pub fn open_in(&self, other: &Self) -> Self {
        fn only<T: Clone>(own: Option<&T>, other: Option<&T>) -> Option<T> {
            own.filter(|_| other.is_none()).cloned()
        }
        each_answer!(only, self, other)
    }

    /// Whether it answers something that another answers, too, alike or not.
    pub fn meets(&self, other: &Self) -> bool {
        self.open_in(other) != *self
    }

    /// Whether it answers nothing.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

words!(
    /// When a weight was taken, as to a feed.
    WeighingMoment {
        /// Not tied to a feed.
        Routine = "routine",
        /// Just before a feed.
        BeforeFeed = "before_feed",
        /// Just after a feed.
        AfterFeed = "after_feed",
    }
);

/// A weight as the scale showed it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Weighing {
    /// The weight.
    pub grams: Grams,
    /// The scale's step, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<ScaleStep>,
    /// Whether the baby wore clothes or a nappy.
    pub clothed: bool,
    /// When, as to a feed.
    pub moment: WeighingMoment,
    /// When it was taken, where it was taken earlier and told now; absent, it was taken when the
    /// entry was made.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken: Option<WallTime>,
}

impl Weighing {
    /// When it was taken, noted in an entry of such a time.
    pub fn taken_at(&self, noted: WallTime) -> WallTime {
        self.taken.unwrap_or(noted)
    }
}

/// One nappy changed during the visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Nappy {
    /// Wet.
    pub wet: bool,
    /// Heavy for its size.
    #[serde(default)]
    pub heavy: bool,
    /// The stool's colour, if it was dirty.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stool: Option<StoolColour>,
    /// Pink or brick-red staining.
    #[serde(default)]
    pub urates: bool,
}

words!(
    /// The breasts before the feed.
    BreastState {
        /// Soft.
        Soft = "soft",
        /// Filling.
        Filling = "filling",
        /// Full, tight, hard.
        Engorged = "engorged",
        /// A red or hot area.
        Red = "red",
        /// A lump.
        Lump = "lump",
    }
);

words!(
    /// The nipples before the feed.
    NippleBefore {
        /// Nothing remarkable.
        Intact = "intact",
        /// Flat.
        Flat = "flat",
        /// Turned in.
        Inverted = "inverted",
        /// Sore or red.
        Sore = "sore",
        /// Cracked or blistered.
        Cracked = "cracked",
        /// Bleeding.
        Bleeding = "bleeding",
    }
);

/// Breast and nipple on one side before the feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct BreastBefore {
    /// Which side.
    pub side: super::Side,
    /// The breast; `None` if it was not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub breast: Option<BreastState>,
    /// The nipple; `None` if it was not told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub nipple: Option<NippleBefore>,
}
