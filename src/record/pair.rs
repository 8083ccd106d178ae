//! One mother and one baby, as the ward knows them. Twins are two pairs that share a mother.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

use super::error::in_range;
use super::word::words;
use super::{Coded, Grams, Label, PairId, RecordError, WallTime};

words!(
    /// The baby's sex, as the growth standard needs it.
    Sex {
        /// A girl.
        Female = "female",
        /// A boy.
        Male = "male",
        /// Not stated: no centile can be given.
        NotStated = "not_stated",
    }
);

words!(
    /// How the baby was born.
    WayOfBirth {
        /// Vaginal, without instruments.
        Vaginal = "vaginal",
        /// Vaginal, with forceps or vacuum.
        Assisted = "assisted",
        /// Caesarean.
        Caesarean = "caesarean",
    }
);

words!(
    /// Why this pair may need more help than others.
    RiskNote {
        /// Born before 37 weeks.
        Preterm = "preterm",
        /// Born at 37 or 38 weeks.
        EarlyTerm = "early_term",
        /// Small for its age.
        SmallBaby = "small_baby",
        /// Mother has diabetes.
        Diabetes = "diabetes",
        /// Large blood loss at birth.
        BloodLoss = "blood_loss",
        /// Separated after birth.
        Separated = "separated",
        /// Jaundice treated, now or in a sibling.
        JaundiceTreated = "jaundice_treated",
        /// Trouble feeding an earlier baby.
        EarlierTrouble = "earlier_trouble",
        /// Breast surgery.
        BreastSurgery = "breast_surgery",
        /// Tongue movement looks restricted.
        Tongue = "tongue",
        /// Medicine that may matter for feeding.
        Medicine = "medicine",
        /// First baby.
        FirstBaby = "first_baby",
    }
);

words!(
    /// Why the specialist was called.
    Reason {
        /// First feed, or a first look.
        FirstLook = "first_look",
        /// Pain.
        Pain = "pain",
        /// Baby does not attach.
        NotAttaching = "not_attaching",
        /// Baby too sleepy.
        Sleepy = "sleepy",
        /// Weight.
        Weight = "weight",
        /// Few nappies.
        Nappies = "nappies",
        /// Yellow skin.
        Jaundice = "jaundice",
        /// Not enough milk, or so feared.
        MilkSupply = "milk_supply",
        /// Full, tight breasts.
        Engorgement = "engorgement",
        /// Twins or more.
        Twins = "twins",
        /// The mother asked.
        MotherAsked = "mother_asked",
        /// Before going home.
        BeforeHome = "before_home",
    }
);

/// Gestation at birth in whole days, 22 weeks 0 days to 44 weeks 6 days.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "i64", into = "i64")]
pub struct Gestation(u16);

impl Gestation {
    /// From whole weeks and days.
    ///
    /// # Errors
    /// Outside 22+0 to 44+6, or more than 6 days.
    pub fn weeks_days(weeks: u16, days: u16) -> Result<Self, RecordError> {
        in_range("days of gestation past the week", days.into(), 0, 6)?;
        Self::try_from(i64::from(weeks) * 7 + i64::from(days))
    }

    /// Whole days.
    pub const fn days(self) -> u16 {
        self.0
    }

    /// Whole weeks, and the days past them.
    pub const fn in_weeks(self) -> (u16, u16) {
        (self.0 / 7, self.0 % 7)
    }
}

impl TryFrom<i64> for Gestation {
    type Error = RecordError;
    fn try_from(days: i64) -> Result<Self, RecordError> {
        in_range("gestation in days", days, 22 * 7, 44 * 7 + 6)?;
        Ok(Self(u16::try_from(days).unwrap_or(u16::MAX)))
    }
}

impl From<Gestation> for i64 {
    fn from(gestation: Gestation) -> Self {
        gestation.0.into()
    }
}

/// A language by its tag, as `de` or `ar`.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Language(String);

impl Language {
    /// A tag of letters, digits and hyphens, 2 to 35 characters (BCP 47).
    ///
    /// # Errors
    /// Anything else.
    pub fn new(tag: &str) -> Result<Self, RecordError> {
        let fits = (2..=35).contains(&tag.len())
            && tag.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-');
        if fits {
            Ok(Self(tag.to_owned()))
        } else {
            Err(RecordError::NotKnown {
                what: "language tag",
            })
        }
    }

    /// The tag.
    pub fn tag(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for Language {
    type Error = RecordError;
    fn try_from(tag: String) -> Result<Self, RecordError> {
        Self::new(&tag)
    }
}

impl From<Language> for String {
    fn from(language: Language) -> Self {
        language.0
    }
}

/// One mother and one baby. Every field holds a checked value, so any combination is allowed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Pair {
    /// Its id.
    pub id: PairId,
    /// Shared by the pairs of twins.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mother_id: Option<Uuid>,
    /// Bay and bed.
    pub bed: Label,
    /// Initials.
    pub initials: Label,
    /// The mother's number on the ward.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mother_number: Option<Label>,
    /// The baby's number on the ward.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub baby_number: Option<Label>,
    /// When the baby was born.
    pub birth: WallTime,
    /// The baby's sex.
    pub sex: Sex,
    /// Gestation at birth, in days, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gestation: Option<Gestation>,
    /// Birth weight, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub birth_weight: Option<Grams>,
    /// How the baby was born, if known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub way_of_birth: Option<WayOfBirth>,
    /// How many babies were born together.
    #[serde(default = "one_baby")]
    pub babies: u8,
    /// Why this pair may need more help.
    #[serde(default)]
    pub risk_notes: Vec<Coded<RiskNote>>,
    /// Why the specialist was called.
    #[serde(default)]
    pub reasons: Vec<Coded<Reason>>,
    /// The mother's language.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub language: Option<Language>,
}

const fn one_baby() -> u8 {
    1
}
