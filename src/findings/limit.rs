//! The thresholds that a ward may set, each with its default, its published bounds and its source.

use super::Unit;
use crate::record::words;

words!(
    /// A threshold; its word is the key in the policy file.
    Limit {
        /// A loss above it is to be watched.
        WeightLossWatch = "weight_loss_watch_percent",
        /// A loss above it needs a clinical assessment today.
        WeightLossAct = "weight_loss_act_percent",
        /// A loss above it needs a medical review now.
        WeightLossMedical = "weight_loss_medical_percent",
        /// A weight older than this does not tell the present in the first two weeks.
        WeightFresh = "weight_fresh_hours",
        /// The least gain per day once weight goes up.
        GainLeast = "gain_least_g_per_day",
        /// The least feeds in 24 hours.
        FeedsLeast = "feeds_least",
        /// So long without a wet nappy is to be acted on.
        WetGapAct = "wet_gap_act_hours",
        /// So long without a wet nappy needs a medical review now.
        WetGapMedical = "wet_gap_medical_hours",
        /// Milk flow is looked for within this time at the breast.
        FirstFlowWithin = "first_flow_within_s",
        /// The least milk flow in a visit.
        FlowLeast = "flow_least_s",
        /// Pain from this score on counts.
        PainFrom = "pain_from_score",
        /// Pain from this score on at the end of a feed is to be acted on.
        PainEnd = "pain_end_score",
        /// A temperature above it needs a medical review now.
        TemperatureHigh = "temperature_high_celsius",
        /// A temperature below it needs a medical review now.
        TemperatureLow = "temperature_low_celsius",
    }
);

/// What is fixed about a threshold. Values are whole numbers of its unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LimitFacts {
    /// The value where a ward sets none.
    pub default: i64,
    /// The least that a ward may set.
    pub low: i64,
    /// The most.
    pub high: i64,
    /// The unit; per cent and degrees are written with one decimal in the file.
    pub unit: Unit,
    /// The source of default and bounds: message `source-<id>`.
    pub source: &'static str,
}

const fn facts(default: i64, low: i64, high: i64, unit: Unit, source: &'static str) -> LimitFacts {
    LimitFacts {
        default,
        low,
        high,
        unit,
        source,
    }
}

impl Limit {
    /// Default, bounds, unit and source.
    pub const fn facts(self) -> LimitFacts {
        match self {
            // ABM Protocol 3 (2017): 8 to 10 % from day 5 asks for an evaluation (from memory).
            // 7 %: the older guidelines' figure (Noel-Weiss et al. 2008, Open Med 2:e99).
            Self::WeightLossWatch => facts(80, 70, 100, Unit::TenthsPercent, "abm-3"),
            // NICE NG75 (2017) 1.1: more than 10 %. A ward may be stricter, not laxer.
            Self::WeightLossAct => facts(100, 70, 100, Unit::TenthsPercent, "nice-ng75"),
            // Above 12 % in 0.3 % of 1003 (Davanzo et al. 2013, J Hum Lact 29:374); the 97.5th
            // centile of the largest loss is 12.8 % (Macdonald et al. 2003, ADC-FN 88:F472).
            Self::WeightLossMedical => facts(120, 100, 128, Unit::TenthsPercent, "macdonald-2003"),
            // Common practice: weighed again within three days in the first two weeks.
            Self::WeightFresh => facts(72, 24, 72, Unit::Hour, "common-practice"),
            // Common rule of thumb: 30 g a day to 3 months, 20 to 6, 15 to 12.
            Self::GainLeast => facts(20, 15, 30, Unit::Gram, "common-practice"),
            // UK checklist: at least 8; 8 to 12 is the usual range (from memory).
            Self::FeedsLeast => facts(8, 8, 12, Unit::Count, "uk-checklist"),
            // UK advice to parents: none in 8 hours under three months is amber; 12 hours
            // elsewhere (from memory).
            Self::WetGapAct => facts(8, 8, 12, Unit::Hour, "uk-urgent"),
            Self::WetGapMedical => facts(12, 8, 12, Unit::Hour, "uk-urgent"),
            // Mean about one minute (Kent et al. 2003, J Hum Lact 19:179; from memory); the rest is
            // common practice.
            Self::FirstFlowWithin => facts(300, 120, 600, Unit::Second, "common-practice"),
            // One let-down lasts 45 s to 3.5 min (Gardner et al. 2015, BMC Pregnancy Childbirth
            // 15:156).
            Self::FlowLeast => facts(120, 45, 210, Unit::Second, "gardner-2015"),
            // Bands of the 0 to 10 scale: 1-3 mild, 4-6 moderate, 7-10 severe (from memory).
            Self::PainFrom => facts(2, 1, 4, Unit::Score, "common-practice"),
            Self::PainEnd => facts(4, 1, 7, Unit::Score, "common-practice"),
            // YICSS 2008 (Lancet 371:135): above 37.5 or below 35.5 degrees.
            Self::TemperatureHigh => facts(375, 370, 375, Unit::TenthsCelsius, "yicss-2008"),
            Self::TemperatureLow => facts(355, 355, 364, Unit::TenthsCelsius, "yicss-2008"),
        }
    }

    /// Whether the file writes it with one decimal.
    pub const fn is_in_tenths(self) -> bool {
        matches!(self.facts().unit, Unit::TenthsPercent | Unit::TenthsCelsius)
    }

    /// Its place among all limits.
    pub const fn index(self) -> usize {
        self as usize
    }
}

/// Pairs of which the first may not lie above the second.
pub(super) const IN_ORDER: &[(Limit, Limit)] = &[
    (Limit::WeightLossWatch, Limit::WeightLossAct),
    (Limit::WeightLossAct, Limit::WeightLossMedical),
    (Limit::WetGapAct, Limit::WetGapMedical),
];
