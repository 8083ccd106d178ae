//! Output and feeds of the last 24 hours, from what was told of them and from nappies that were
//! listed with their times.

use super::age::HOUR_MS;
use super::{
    Age, ExpectedOutput, OutputAgainst, expected_over_last_day, feeds_least_over_last_day,
};
use crate::record::{LastDay, Nappy, StoolColour, WallTime, words};

words!(
    /// What was missing for the output of a day.
    MissingForOutput {
        /// Twenty-four hours of life: there is no whole day yet to hold against anything.
        WholeDay = "whole_day",
        /// A row of the table: it ends with day 28.
        Expected = "expected_output",
        /// How many feeds.
        Feeds = "feeds",
        /// How many wet nappies.
        Wet = "wet",
        /// How many dirty nappies.
        Dirty = "dirty",
        /// The stool's colour.
        StoolColour = "stool_colour",
        /// Whether urates were seen.
        Urates = "urates",
    }
);

/// A day's output and feeds held against what is expected. What cannot be judged is `None`, and in
/// what was missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DayOutput {
    /// The row that counts over the last 24 hours are held against.
    pub expected: Option<&'static ExpectedOutput>,
    /// Feeds that were told.
    pub feeds: Option<u8>,
    /// Whether they are enough; only past the first day.
    pub feeds_enough: Option<bool>,
    /// Wet nappies told or listed.
    pub wet: Option<u8>,
    /// Whether they are enough.
    pub wet_enough: Option<bool>,
    /// Dirty nappies told or listed.
    pub dirty: Option<u8>,
    /// Whether they are enough.
    pub dirty_enough: Option<bool>,
    /// The latest stool's colour.
    pub stool: Option<StoolColour>,
    /// Whether it fits.
    pub colour_fits: Option<bool>,
    /// Whether urates were seen.
    pub urates: Option<bool>,
    /// Whether that fits: urates may be seen in the first days.
    pub urates_fit: Option<bool>,
    /// What was missing.
    pub missing: Vec<MissingForOutput>,
}

impl DayOutput {
    /// The 24 hours up to an instant. A list of nappies that begins before them is taken as kept
    /// through them; of a shorter one it is only known that at least so many were changed: it can
    /// show that they are enough, never that they are too few. `age` is that at the instant.
    pub fn of(
        told: Option<&LastDay>,
        nappies: &[(WallTime, Nappy)],
        age: Option<Age>,
        at: WallTime,
    ) -> Self {
        let before_ms = |it: &(WallTime, Nappy)| at.since_ms(it.0);
        let day_ms = 24 * HOUR_MS;
        let is_kept_through = nappies.iter().any(|it| day_ms <= before_ms(it));
        let mut listed: Vec<&(WallTime, Nappy)> = nappies
            .iter()
            .filter(|it| (0..day_ms).contains(&before_ms(it)))
            .collect();
        listed.sort_by_key(|it| it.0.utc_ms());
        let is_listed = is_kept_through || !listed.is_empty();
        let count = |told: Option<u8>, fits: fn(&Nappy) -> bool| {
            let seen = listed.iter().filter(|it| fits(&it.1)).count();
            let seen = is_listed.then(|| u8::try_from(seen).unwrap_or(u8::MAX));
            (told.max(seen), told.is_some() || is_kept_through)
        };
        let wet = count(told.and_then(|it| it.wet), |it| it.wet);
        let dirty = count(told.and_then(|it| it.dirty), |it| it.stool.is_some());
        let stool = listed.iter().rev().find_map(|it| it.1.stool);
        let seen_urates = listed.iter().any(|it| it.1.urates);
        let told_urates = told.and_then(|it| it.urates);
        let mut day = Self {
            expected: age.and_then(expected_over_last_day),
            feeds: told.and_then(|it| it.feeds),
            feeds_enough: None,
            wet: wet.0,
            wet_enough: None,
            dirty: dirty.0,
            dirty_enough: None,
            stool: stool.or_else(|| told.and_then(|it| it.stool)),
            colour_fits: None,
            urates: (seen_urates || (is_kept_through && told_urates.is_none()))
                .then_some(seen_urates)
                .or(told_urates),
            urates_fit: None,
            missing: Vec::new(),
        };
        day.judge(age, wet.1, dirty.1);
        day
    }

    fn judge(&mut self, age: Option<Age>, wet_is_whole: bool, dirty_is_whole: bool) {
        let least = age.and_then(feeds_least_over_last_day);
        let is_past_first_day = least.is_some();
        self.feeds_enough = self.feeds.zip(least).map(|(feeds, least)| least <= feeds);
        let counted = LastDay {
            wet: self.wet,
            dirty: self.dirty,
            stool: self.stool,
            ..LastDay::default()
        };
        let against = age.and_then(|age| OutputAgainst::of(&counted, age));
        if let Some(against) = against {
            let known = |enough: Option<bool>, whole| enough.filter(|enough| *enough || whole);
            self.wet_enough = known(against.wet_enough, wet_is_whole);
            self.dirty_enough = known(against.dirty_enough, dirty_is_whole);
            self.colour_fits = against.colour_fits;
            self.urates_fit = self.urates.map(|seen| !seen || against.expected.urates);
        }
        let has_row = against.is_some();
        let lacks_count = |count: Option<u8>, enough: Option<bool>| {
            count.is_none() || (has_row && enough.is_none())
        };
        self.missing = [
            (
                MissingForOutput::WholeDay,
                age.is_some() && !is_past_first_day,
            ),
            (MissingForOutput::Expected, is_past_first_day && !has_row),
            (MissingForOutput::Feeds, self.feeds.is_none()),
            (
                MissingForOutput::Wet,
                lacks_count(self.wet, self.wet_enough),
            ),
            (
                MissingForOutput::Dirty,
                lacks_count(self.dirty, self.dirty_enough),
            ),
            (MissingForOutput::StoolColour, self.stool.is_none()),
            (MissingForOutput::Urates, self.urates.is_none()),
        ]
        .into_iter()
        .filter_map(|(what, lacks)| lacks.then_some(what))
        .collect();
    }
}
