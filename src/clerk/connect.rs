//! Joins the window to its model: each callback becomes one event, each effect is carried out.

use std::cell::RefCell;
use std::rc::Rc;

use slint::{ComponentHandle, Global, Weak};

use super::effect::Effect;
use super::event::Event;
use super::model::Model;
use super::render::{render, render_list};
use super::sound::Tone;
use super::typing::Key;
use super::ui::{ClerkAdapter, ClerkStrings, ClerkWindow};
use super::update::{pressed, update};
use super::worker::Ask;
use crate::words::Words;

/// What the window needs from outside.
pub struct Parts {
    /// The language.
    pub words: Words,
    /// Asks something of the desk.
    pub ask: Box<dyn Fn(Ask)>,
    /// Lets a signal be heard.
    pub sound: Box<dyn Fn(Tone)>,
    /// Milliseconds of a clock that only goes on.
    pub now_ms: Box<dyn Fn() -> u64>,
}

/// The window with its model.
pub struct Shell {
    window: Weak<ClerkWindow>,
    model: RefCell<Model>,
    parts: Parts,
}

impl Shell {
    /// Joins a window to a new model.
    pub fn over(window: &ClerkWindow, parts: Parts) -> Rc<Self> {
        super::strings::fill(&ClerkStrings::get(window), &|id| parts.words.say(id));
        let shell = Rc::new(Self {
            window: window.as_weak(),
            model: RefCell::default(),
            parts,
        });
        connect(window, &shell);
        (shell.parts.ask)(Ask::Ready);
        shell.draw();
        shell
    }

    /// Takes an event.
    pub fn hear(&self, event: Event) {
        let effects = update(&mut self.model.borrow_mut(), event);
        self.carry_out(effects);
        self.draw();
    }

    /// Time passed. As long as nothing is due nothing is drawn.
    pub fn tick(&self) {
        let event = Event::Ticked((self.parts.now_ms)());
        let effects = update(&mut self.model.borrow_mut(), event);
        if !effects.is_empty() {
            self.carry_out(effects);
            self.draw();
        }
    }

    /// Takes a key; whether the toolkit must not have it.
    fn press(&self, key: Key<'_>) -> bool {
        let now_ms = (self.parts.now_ms)();
        let (effects, is_toolkits) = pressed(&mut self.model.borrow_mut(), key, now_ms);
        self.carry_out(effects);
        self.draw();
        !is_toolkits
    }

    fn carry_out(&self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Ask(ask) => (self.parts.ask)(ask),
                Effect::Sound(tone) => (self.parts.sound)(tone),
                Effect::ShowList => {
                    if let Some(window) = self.window.upgrade() {
                        render_list(&self.model.borrow(), &self.parts.words, &window);
                    }
                }
                Effect::HearKeys => {
                    if let Some(window) = self.window.upgrade() {
                        window.invoke_hear_keys();
                    }
                }
            }
        }
    }

    fn draw(&self) {
        if let Some(window) = self.window.upgrade() {
            render(&self.model.borrow(), &self.parts.words, &window);
        }
    }
}

/// What a key of the toolkit is to us. Held with Control it is a command or a control character of
/// the scanner's prefix; neither is part of a code. With Alt as well it is how some layouts write.
pub fn key_of(text: &str, control: bool, alt: bool) -> Key<'_> {
    let named = |key: slint::platform::Key| slint::SharedString::from(key) == text;
    if named(slint::platform::Key::Return) {
        Key::Enter
    } else if named(slint::platform::Key::Tab) || named(slint::platform::Key::Backtab) {
        Key::Tab
    } else if named(slint::platform::Key::Backspace) {
        Key::Backspace
    } else if named(slint::platform::Key::Escape) {
        Key::Escape
    } else if (control && !alt) || text.is_empty() || text.chars().any(is_no_character) {
        Key::Other
    } else {
        Key::Text(text)
    }
}

/// Control characters, and the private ones by which the toolkit names keys that write nothing.
fn is_no_character(c: char) -> bool {
    c.is_control() || ('\u{f700}'..='\u{f8ff}').contains(&c)
}

fn connect(window: &ClerkWindow, shell: &Rc<Shell>) {
    let it = ClerkAdapter::get(window);
    macro_rules! on {
        ($on:ident ( $($arg:ident),* ) => $event:expr) => {{
            let shell = Rc::clone(shell);
            it.$on(move |$($arg),*| shell.hear($event));
        }};
    }
    let place = |index: i32| usize::try_from(index).unwrap_or(usize::MAX);
    on!(on_search() => Event::SearchWanted);
    on!(on_leave_search() => Event::SearchLeft);
    on!(on_open(index) => Event::Opened(place(index)));
    on!(on_leave_page() => Event::PageLeft);
    on!(on_print() => Event::PrintWanted);
    on!(on_export(index) => Event::ExportWanted(place(index)));
    on!(on_words_are_same() => Event::WordsAreSame);
    on!(on_words_differ() => Event::WordsDiffer);
    let shell = Rc::clone(shell);
    it.on_key(move |text, control, alt| shell.press(key_of(&text, control, alt)));
}
