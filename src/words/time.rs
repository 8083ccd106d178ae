//! Dates and times of day as people of each language read them. The clock has 24 hours everywhere:
//! a ward's notes do.

use chrono::{DateTime, Datelike, FixedOffset};

use super::Words;

impl Words {
    /// The time of day, `03:04`.
    pub fn time(&self, local: DateTime<FixedOffset>) -> String {
        local.format("%H:%M").to_string()
    }

    /// The date, `25 Nov 2026`.
    pub fn date(&self, local: DateTime<FixedOffset>) -> String {
        self.dated("date", local)
    }

    /// Date and time, `25 Nov 2026, 03:04`.
    pub fn date_time(&self, local: DateTime<FixedOffset>) -> String {
        self.dated("date-time", local)
    }

    /// Day, month and time, `25 Nov, 03:04`, where the year is plain.
    pub fn day_time(&self, local: DateTime<FixedOffset>) -> String {
        self.dated("day-time", local)
    }

    fn dated(&self, id: &str, local: DateTime<FixedOffset>) -> String {
        let month = self.say(&format!("month-{}", local.month()));
        self.say_with(
            id,
            &[
                ("day", local.day().into()),
                ("month", month.into()),
                ("year", local.year().to_string().into()),
                ("time", self.time(local).into()),
            ],
        )
    }
}
