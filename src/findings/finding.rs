//! The value that a rule gives. No conditions here.

use serde::{Deserialize, Serialize};

use crate::record::{Adjustment, Coded, PlanWhat, words};

words!(
    /// How much a finding asks for, gravest first.
    Level {
        /// A doctor, now.
        MedicalReviewNow = "medical_review_now",
        /// Something is to be done today.
        ActToday = "act_today",
        /// To be looked at again.
        KeepWatching = "keep_watching",
        /// Good to see.
        GoingWell = "going_well",
    }
);

words!(
    /// The unit of a number that a finding shows.
    Unit {
        /// Grams.
        Gram = "g",
        /// Tenths of a per cent, signed.
        TenthsPercent = "tenths_percent",
        /// A plain count.
        Count = "count",
        /// Whole hours.
        Hour = "h",
        /// Whole days.
        Day = "d",
        /// Whole seconds.
        Second = "s",
        /// A pain score, 0 to 10.
        Score = "score",
        /// Tenths of a degree Celsius.
        TenthsCelsius = "tenths_celsius",
        /// Hundredths of a standard deviation.
        HundredthsSd = "hundredths_sd",
        /// Tenths of a plain number (a ratio).
        Tenths = "tenths",
        /// Millilitres.
        Millilitre = "ml",
    }
);

words!(
    /// Whom to call, as the ward's policy fills in.
    CallWhom {
        /// The doctor for babies.
        BabyDoctor = "baby_doctor",
        /// The doctor for mothers.
        MotherDoctor = "mother_doctor",
        /// The midwife in charge.
        MidwifeInCharge = "midwife_in_charge",
        /// The feeding team.
        FeedingTeam = "feeding_team",
        /// Nobody further.
        Nobody = "nobody",
    }
);

impl CallWhom {
    /// What is agreed where they are to be called if it gets worse; nothing for nobody.
    pub const fn agreed(self) -> Option<PlanWhat> {
        match self {
            Self::BabyDoctor => Some(PlanWhat::CallBabyDoctor),
            Self::MotherDoctor => Some(PlanWhat::CallMotherDoctor),
            Self::MidwifeInCharge => Some(PlanWhat::CallMidwifeInCharge),
            Self::FeedingTeam => Some(PlanWhat::CallFeedingTeam),
            Self::Nobody => None,
        }
    }
}

/// A number that a rule used: its name (part of the message id), value and unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Number {
    /// Its name, as `loss`, `age`, `limit`.
    pub name: String,
    /// Its value in the unit.
    pub value: i64,
    /// Its unit.
    pub unit: Unit,
}

impl Number {
    /// A number by name, value and unit.
    pub fn new(name: &str, value: i64, unit: Unit) -> Self {
        Self {
            name: name.to_owned(),
            value,
            unit,
        }
    }
}

/// A rule that held.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Finding {
    /// The rule's id, as `weight-loss-over-ten`. Messages: `finding-<id>` (one line) and
    /// `finding-<id>-reason` (why, with the numbers as arguments by name).
    pub rule: String,
    /// How much it asks for.
    pub level: Level,
    /// The numbers it used.
    pub numbers: Vec<Number>,
    /// The source: message `source-<id>`.
    pub source: String,
    /// What is usually tried at the breast.
    pub tries: Vec<Coded<Adjustment>>,
    /// What is usually agreed.
    pub plan: Vec<Coded<PlanWhat>>,
    /// Whom to call.
    pub call: CallWhom,
}

/// A rule that could not be judged, and what was missing (message `missing-<word>` each).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unjudged {
    /// The rule's id.
    pub rule: String,
    /// What was missing.
    pub missing: Vec<String>,
}

/// All that the rules said: findings, gravest first, and what could not be judged.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Judged {
    /// Rules that held, by level and then in the order of the catalogue.
    pub findings: Vec<Finding>,
    /// Rules that could not be judged.
    pub unjudged: Vec<Unjudged>,
}
