//! Weight and output against age: change from birth weight, WHO z and centile, daily gain, test
//! weighing, expected nappies, usual volumes.
//!
//! Uses `record` only; no clock, disk or screen. Describes; never prescribes. Whatever cannot be
//! computed is absent and named in what was missing.

mod age;
mod change;
mod checked;
mod day_output;
mod gain;
mod json;
mod lines;
mod loss;
mod of;
mod output;
pub mod pair_file;
mod question;
mod test_weighing;
mod volume;
mod who;

pub use age::Age;
pub use change::Change;
pub use checked::{Checked, right};
pub use day_output::{DayOutput, MissingForOutput};
pub use gain::{Gain, STEP_ASSUMED_G, gain};
pub use json::{json, json_of_file};
pub use lines::{LinePoint, median_back_day, median_line, median_losses, sds_line};
pub use loss::{
    LineAgainst, MEDIAN_LOSSES, MedianLoss, SDS_LINE, SDS_LINE_DAYS, median_loss, sds_line_tenths,
};
pub use of::{Caution, Growth, MissingForGrowth, WeighedAt, of, of_checked};
pub use output::{
    Colours, EXPECTED_OUTPUT, ExpectedOutput, FEEDS_LEAST, FEEDS_LEAST_FIRST_DAY, OutputAgainst,
    counts_first_day, expected_on_day, expected_over_last_day, feeds_least_over_last_day,
};
pub use question::{Question, Questioned, questions};
pub use test_weighing::{TestWeighing, test_weighings};
pub use volume::{VolumeRange, usual_feed_volume};
pub use who::{Centile, DAY_LAST, WHO_TABLE, Z, centile, weight_at_sd, z};

/// The version of the rules; goes wherever a computed number goes.
pub const RULE_VERSION: &str = "growth-3";
