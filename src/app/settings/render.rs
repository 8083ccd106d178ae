//! From the settings to their screen.

use slint::Global;

use crate::app::around::Around;
use crate::app::handover::{image_of, modules};
use crate::app::lists::list;
use crate::app::preferences::{LOCK_MINUTES, STAY_DAYS, TEXT_PERCENT};
use crate::app::{desk_key_file, ui, ward_policy};
use crate::fault;
use crate::handover::{Code, DeskPublic, VersionCap};
use crate::words::{Lang, Words};

use super::Model;

/// How much of a policy's hash is shown: enough to tell two files apart.
const HASH_SHOWN: usize = 12;

/// The tablet's own key, as it is shown.
pub struct TabletShown {
    /// The code that the desk scans.
    pub code: Code,
    /// The six words.
    pub words: String,
}

/// Draws the screen.
pub fn render(
    model: &Model,
    around: &Around<'_>,
    words: &Words,
    tablet: &TabletShown,
    window: &ui::AppWindow,
) {
    let screen = ui::SettingsAdapter::get(window);
    let preferences = around.preferences;
    let choice = |label: String, chosen: bool| ui::Choice {
        label: label.into(),
        chosen,
    };
    screen.set_languages(list(
        Lang::ALL
            .iter()
            .map(|lang| choice(lang.own_name().to_owned(), *lang == preferences.lang)),
    ));
    screen.set_lights(list([
        choice(words.say("settings-day"), !preferences.night),
        choice(words.say("settings-night"), preferences.night),
    ]));
    screen.set_hands(list([
        choice(words.say("settings-right"), !preferences.left_handed),
        choice(words.say("settings-left"), preferences.left_handed),
    ]));
    screen.set_texts(list(TEXT_PERCENT.iter().map(|percent| {
        choice(
            words.say_with(
                "settings-text-percent",
                &[("percent", i64::from(*percent).into())],
            ),
            *percent == preferences.text_percent,
        )
    })));
    screen.set_motions(list([
        choice(words.say("settings-motion-on"), preferences.motion),
        choice(words.say("settings-motion-off"), !preferences.motion),
    ]));
    screen.set_caps(list(VersionCap::ALL.iter().map(|cap| {
        let version = i64::from(cap.version());
        choice(
            words.say_with("settings-cap", &[("version", version.into())]),
            *cap == preferences.cap,
        )
    })));
    let number =
        |id: &str, name: &str, value: u16| words.say_with(id, &[(name, i64::from(value).into())]);
    screen.set_has_pin(around.has_pin);
    screen.set_locks(list(LOCK_MINUTES.iter().map(|minutes| {
        choice(
            number("settings-lock-minutes", "minutes", *minutes),
            *minutes == preferences.lock_minutes,
        )
    })));
    screen.set_stays(list(STAY_DAYS.iter().map(|days| {
        choice(
            number("settings-leave-days", "days", *days),
            *days == preferences.stay_days,
        )
    })));
    screen.set_specialist(preferences.specialist.as_str().into());
    desk(model, around, words, &screen);
    screen.set_tablet_code(image_of(&tablet.code));
    screen.set_tablet_code_modules(modules(&tablet.code));
    screen.set_tablet_words(tablet.words.as_str().into());
    let fact = |label: &str, value: String| ui::FactRow {
        label: words.say(label).into(),
        value: value.into(),
        quiet: "".into(),
    };
    let policy = around.policy;
    let mark = policy.mark();
    screen.set_about(list([
        fact(
            "settings-about-version",
            env!("CARGO_PKG_VERSION").to_owned(),
        ),
        ui::FactRow {
            quiet: words
                .say_with(
                    "settings-policy-facts",
                    &[
                        ("author", policy.author.as_str().into()),
                        ("date", policy.date.as_str().into()),
                        (
                            "hash",
                            mark.hash
                                .chars()
                                .take(HASH_SHOWN)
                                .collect::<String>()
                                .into(),
                        ),
                        ("file", ward_policy::FILE.into()),
                    ],
                )
                .into(),
            ..fact(
                "settings-about-policy",
                format!("{} {}", mark.name, mark.version),
            )
        },
        fact(
            "settings-about-licence",
            words.say("settings-about-licence-text"),
        ),
        fact(
            "settings-about-fonts",
            words.say("settings-about-fonts-text"),
        ),
        fact("settings-about-caution", words.say("frame-caution")),
    ]));
}

fn desk(model: &Model, around: &Around<'_>, words: &Words, screen: &ui::SettingsAdapter<'_>) {
    let kept = &around.preferences.desk_key;
    let (typed, told) = match &model.refused {
        Some((typed, error)) => {
            let explained = fault::handover(error, words);
            (
                typed.clone(),
                format!("{} {}", explained.happened, explained.now_do),
            )
        }
        None => match DeskPublic::from_typed(kept) {
            Ok(key) => (
                kept.clone(),
                words.say_with(
                    "settings-desk-words",
                    &[("words", key.fingerprint().join(" ").into())],
                ),
            ),
            Err(_) => (String::new(), words.say("settings-desk-none")),
        },
    };
    screen.set_desk_key(typed.into());
    screen.set_desk_told(told.into());
    let offered = (model.offered.as_ref()).filter(|it| desk_key_file::is_new(it, kept));
    screen.set_desk_file(
        offered
            .map_or_else(String::new, |it| desk_key_file::told(it, words))
            .into(),
    );
    screen.set_desk_file_holds(matches!(offered, Some(Ok(_))));
}
