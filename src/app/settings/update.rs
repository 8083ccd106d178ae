//! What each event on the settings screen leads to.

use crate::app::around::Around;
use crate::app::preferences::{LOCK_MINUTES, STAY_DAYS, TEXT_PERCENT};
use crate::handover::{DeskPublic, VersionCap};
use crate::record::Label;
use crate::words::Lang;

use super::{Effect, Event, Model};

/// Takes an event; changes the model; says what is to be done.
pub fn update(model: &mut Model, event: Event, around: &Around<'_>) -> Vec<Effect> {
    let mut preferences = around.preferences.clone();
    match event {
        Event::LanguageChosen(index) => {
            preferences.lang = Lang::ALL.get(index).copied().unwrap_or(preferences.lang);
        }
        Event::NightChosen(night) => preferences.night = night,
        Event::LeftHandedChosen(left) => preferences.left_handed = left,
        Event::TextChosen(index) => {
            preferences.text_percent = TEXT_PERCENT
                .get(index)
                .copied()
                .unwrap_or(preferences.text_percent);
        }
        Event::MotionChosen(motion) => preferences.motion = motion,
        Event::CapChosen(index) => {
            preferences.cap = VersionCap::ALL
                .get(index)
                .copied()
                .unwrap_or(preferences.cap);
        }
        Event::SpecialistTyped(text) => {
            if let Ok(label) = Label::new(&text) {
                label.as_str().clone_into(&mut preferences.specialist);
            }
        }
        Event::DeskKeyTyped(text) => match DeskPublic::from_typed(&text) {
            Ok(key) => {
                model.refused = None;
                preferences.desk_key = key.to_typed();
            }
            Err(error) => model.refused = Some((text, error)),
        },
        Event::DeskFileKept => {
            if let Some(Ok(key)) = &model.offered {
                preferences.desk_key = key.to_typed();
                (model.offered, model.refused) = (None, None);
            }
        }
        Event::PinWanted => return vec![Effect::Pin],
        Event::LockWanted => return vec![Effect::Lock],
        Event::LockChosen(index) => {
            if let Some(minutes) = LOCK_MINUTES.get(index) {
                preferences.lock_minutes = *minutes;
            }
        }
        Event::StayChosen(index) => {
            if let Some(days) = STAY_DAYS.get(index) {
                preferences.stay_days = *days;
            }
        }
        Event::BackWanted => return vec![Effect::Leave],
    }
    if preferences == *around.preferences {
        vec![]
    } else {
        vec![Effect::Keep(Box::new(preferences))]
    }
}
