//! What the specialist has set: language, light, hand, her sign, the desk's key, the largest code.
//!
//! Kept in the store as words; a word that is not known reads as the usual value.

use crate::handover::VersionCap;
use crate::words::Lang;

/// The settings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Preferences {
    /// The language of the screens.
    pub lang: Lang,
    /// The night theme.
    pub night: bool,
    /// The pads under the left thumb.
    pub left_handed: bool,
    /// How large text is, in per cent of its usual size.
    pub text_percent: u16,
    /// Whether what moves may move.
    pub motion: bool,
    /// How the specialist signs.
    pub specialist: String,
    /// The desk's public key as it was typed.
    pub desk_key: String,
    /// The largest code that the desk's scanner reads.
    pub cap: VersionCap,
    /// After how many minutes without a touch the data are locked.
    pub lock_minutes: u16,
    /// How many days a pair stays after its last receipt.
    pub stay_days: u16,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            lang: Lang::En,
            night: false,
            left_handed: false,
            text_percent: TEXT_PERCENT[0],
            motion: true,
            specialist: String::new(),
            desk_key: String::new(),
            cap: VersionCap::default(),
            lock_minutes: 5,
            stay_days: 30,
        }
    }
}

/// The names under which settings are kept.
pub const NAMES: [&str; 10] = [
    "language",
    "night",
    "left_handed",
    "specialist",
    "desk_key",
    "version_cap",
    "text_percent",
    "motion",
    "lock_minutes",
    "stay_days",
];

/// The minutes that can be chosen until the data are locked. Common practice.
pub const LOCK_MINUTES: [u16; 5] = [1, 2, 5, 10, 15];

/// The days that can be chosen for a pair to stay. A choice of this project.
pub const STAY_DAYS: [u16; 4] = [7, 14, 30, 90];

/// The sizes of text that can be chosen, in per cent.
pub const TEXT_PERCENT: [u16; 5] = [100, 125, 150, 175, 200];

impl Preferences {
    /// Reads settings through a function that finds one by name.
    pub fn read(mut find: impl FnMut(&str) -> Option<String>) -> Self {
        let usual = Self::default();
        let mut one_of = |name: &str, all: &[u16], usual: u16| {
            let word = find(name);
            let chosen = |number: &&u16| word == Some(number.to_string());
            all.iter().find(chosen).copied().unwrap_or(usual)
        };
        let text_percent = one_of("text_percent", &TEXT_PERCENT, usual.text_percent);
        let lock_minutes = one_of("lock_minutes", &LOCK_MINUTES, usual.lock_minutes);
        let stay_days = one_of("stay_days", &STAY_DAYS, usual.stay_days);
        let mut yes = |name: &str| find(name).is_some_and(|word| word == "yes");
        let (night, left_handed) = (yes("night"), yes("left_handed"));
        Self {
            lang: find("language")
                .and_then(|tag| Lang::from_tag(&tag))
                .unwrap_or(usual.lang),
            night,
            left_handed,
            text_percent,
            lock_minutes,
            stay_days,
            motion: find("motion").is_none_or(|word| word != "no"),
            specialist: find("specialist").unwrap_or_default(),
            desk_key: find("desk_key").unwrap_or_default(),
            cap: VersionCap::ALL
                .into_iter()
                .find(|cap| find("version_cap") == Some(cap.version().to_string()))
                .unwrap_or(usual.cap),
        }
    }

    /// Each setting's name and the word under which it is kept.
    pub fn words(&self) -> [(&'static str, String); 10] {
        let yes = |is: bool| if is { "yes" } else { "no" }.to_owned();
        [
            (NAMES[0], self.lang.tag().to_owned()),
            (NAMES[1], yes(self.night)),
            (NAMES[2], yes(self.left_handed)),
            (NAMES[3], self.specialist.clone()),
            (NAMES[4], self.desk_key.clone()),
            (NAMES[5], self.cap.version().to_string()),
            (NAMES[6], self.text_percent.to_string()),
            (NAMES[7], yes(self.motion)),
            (NAMES[8], self.lock_minutes.to_string()),
            (NAMES[9], self.stay_days.to_string()),
        ]
    }
}
