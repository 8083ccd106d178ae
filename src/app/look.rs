//! How the lock's screen looks before the settings can be read: they lie with all else in the
//! encrypted database. What is needed for it, and says nothing of anybody, is kept beside it.

use std::path::Path;

use serde::{Deserialize, Serialize};

use super::preferences::{Preferences, TEXT_PERCENT};
use super::ui;
use crate::words::{Lang, Words};

/// The file in the data folder.
const FILE: &str = "feedside.look";

/// The look.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// The language.
    pub lang: Lang,
    night: bool,
    left_handed: bool,
    text_percent: u16,
}

/// As it is written.
#[derive(Serialize, Deserialize)]
struct Written {
    language: String,
    night: bool,
    left_handed: bool,
    text_percent: u16,
}

impl Look {
    /// The look that the settings ask for.
    pub const fn of(preferences: &Preferences) -> Self {
        Self {
            lang: preferences.lang,
            night: preferences.night,
            left_handed: preferences.left_handed,
            text_percent: preferences.text_percent,
        }
    }

    /// The look that was kept in a folder; what cannot be read is as usual.
    pub fn read(folder: &Path) -> Self {
        let usual = Self::of(&Preferences::default());
        let Some(written) = std::fs::read(folder.join(FILE))
            .ok()
            .and_then(|bytes| serde_json::from_slice::<Written>(&bytes).ok())
        else {
            return usual;
        };
        Self {
            lang: Lang::from_tag(&written.language).unwrap_or(usual.lang),
            night: written.night,
            left_handed: written.left_handed,
            text_percent: TEXT_PERCENT
                .into_iter()
                .find(|percent| *percent == written.text_percent)
                .unwrap_or(usual.text_percent),
        }
    }

    /// Keeps it in a folder. Where it cannot be written, the lock looks as it did.
    pub fn write(&self, folder: &Path) {
        let written = Written {
            language: self.lang.tag().to_owned(),
            night: self.night,
            left_handed: self.left_handed,
            text_percent: self.text_percent,
        };
        if let Ok(bytes) = serde_json::to_vec(&written) {
            let _ = std::fs::write(folder.join(FILE), bytes);
        }
    }

    /// Puts it on a window.
    pub fn put(&self, theme: &ui::Theme<'_>) {
        theme.set_night(self.night);
        theme.set_left_handed(self.left_handed);
        theme.set_text(f32::from(self.text_percent) / 100.0);
    }
}

/// Puts the words on a window that need no arguments.
pub fn fill(words: &Words, window: &ui::AppWindow) {
    use slint::Global;
    super::strings::fill(&ui::Strings::get(window), &|id| words.say(id));
}
