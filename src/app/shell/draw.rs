//! Draws the screen that is seen, and what stands around every screen: theme, banner, trouble.

use slint::Global;

use super::{Said, Shell};
use crate::app::around::Around;
use crate::app::look::{self, Look};
use crate::app::route::Route;
use crate::app::{
    bedside, before, handover, looking_back, month, pair, pin, plan, practice, settings, ui, ward,
};
use crate::report::phrase;

impl Shell {
    pub(super) fn fill_words(&self, window: &ui::AppWindow) {
        look::fill(&self.words, window);
    }

    /// Draws the screen that is seen; `only_clock` where nothing but the time has changed.
    pub fn render(&mut self, only_clock: bool) {
        let Some(window) = self.parts.window.upgrade() else {
            return;
        };
        let around = Around {
            now: self.now(),
            open: self.open.as_ref(),
            preferences: &self.parts.preferences,
            policy: &self.parts.policy,
            has_pin: self.parts.has_pin,
        };
        let (models, words) = (&self.models, &self.words);
        if only_clock && self.route == Route::Bedside {
            bedside::render_clock(
                &models.bedside,
                &around,
                words,
                &self.lists.bedside,
                &window,
            );
            self.tell_safe();
            return;
        }
        if only_clock && self.route == Route::Practice && models.practice.is_playing() {
            practice::render_clock(&models.practice, &around, words, &window);
            return;
        }
        self.frame(&window);
        match self.route {
            Route::Ward => ward::render(&models.ward, &around, words, &window),
            Route::Pair => pair::render(&models.pair, &around, words, &window),
            Route::Before => {
                before::render(&models.before, &around, words, &self.lists.before, &window);
            }
            Route::Bedside => {
                bedside::render(
                    &models.bedside,
                    &around,
                    words,
                    &self.lists.bedside,
                    &window,
                );
            }
            Route::LookingBack => {
                looking_back::render(&models.looking_back, &around, words, &window);
            }
            Route::Plan => plan::render(&models.plan, &around, words, &window),
            Route::Handover => handover::render(&models.handover, &around, words, &window),
            Route::Practice => practice::render(&models.practice, &around, words, &window),
            Route::Settings => {
                if let Some(tablet) = &self.tablet_shown {
                    settings::render(&models.settings, &around, words, tablet, &window);
                }
            }
            Route::Month => month::render(&models.month, words, &window),
            Route::Pin => pin::render(&models.pin, around.now, words, &window),
        }
        self.tell_safe();
    }

    /// What stands around every screen: theme, banner, trouble, route.
    fn frame(&self, window: &ui::AppWindow) {
        let theme = ui::Theme::get(window);
        Look::of(&self.parts.preferences).put(&theme);
        theme.set_motion(self.parts.preferences.motion);
        let frame = ui::FrameAdapter::get(window);
        let running = self
            .open
            .iter()
            .chain(&self.parked)
            .find(|open| open.folded.running().is_some());
        frame.set_running(
            running
                .map_or_else(String::new, |open| {
                    self.words
                        .say_with("frame-running", &[("bed", open.pair.bed.as_str().into())])
                })
                .into(),
        );
        frame.set_review(self.review().into());
        frame.set_trouble(self.trouble.as_deref().unwrap_or_default().into());
        if self.route != Route::Pin {
            pin::clear(window);
        }
        frame.set_route(match self.route {
            Route::Ward => ui::Route::Ward,
            Route::Pair => ui::Route::Pair,
            Route::Before => ui::Route::Before,
            Route::Bedside => ui::Route::Bedside,
            Route::LookingBack => ui::Route::LookingBack,
            Route::Plan => ui::Route::Plan,
            Route::Handover => ui::Route::Handover,
            Route::Practice => ui::Route::Practice,
            Route::Settings => ui::Route::Settings,
            Route::Pin => ui::Route::Pin,
            Route::Month => ui::Route::Month,
        });
    }

    /// What calls for medical review now, for the banner; nothing where it is read already.
    fn review(&self) -> String {
        let Some((open, findings)) = self.in_review() else {
            return String::new();
        };
        let is_here = self
            .open
            .as_ref()
            .is_some_and(|here| here.visit.id == open.visit.id);
        let (Some(first), false) = (
            findings.first(),
            self.route == Route::Pin || self.route == Route::LookingBack && is_here,
        ) else {
            return String::new();
        };
        let more = i64::try_from(findings.len() - 1).unwrap_or(0);
        // At the bedside it stands in the place of the title, as nothing there may grow smaller.
        let id = if self.route == Route::Bedside && is_here {
            "frame-review-short"
        } else {
            "frame-review"
        };
        self.words.say_with(
            id,
            &[
                ("bed", open.pair.bed.as_str().into()),
                ("what", phrase::finding(&self.words, first).into()),
                ("more", more.into()),
            ],
        )
    }

    pub(super) fn tell_safe(&mut self) {
        if let (Some(say), Some(open)) = (&mut self.parts.say_safe, &self.open) {
            say(Said::Safe(open.safe_seq));
        }
    }
}
