//! `Words`: the chosen language, and the sentence for an id.

use fluent::FluentArgs;
use i18n_embed::fluent::FluentLanguageLoader;

use super::assets::LOADER;
use super::{Arg, Lang};

/// The words of one language. Cheap to make; may be used from any thread.
#[derive(Debug)]
pub struct Words {
    lang: Lang,
    loader: FluentLanguageLoader,
}

impl Words {
    /// The words of a language.
    pub fn new(lang: Lang) -> Self {
        Self {
            lang,
            loader: LOADER.select_languages(&[lang.id()]),
        }
    }

    /// Which language it is.
    pub const fn lang(&self) -> Lang {
        self.lang
    }

    /// Changes the language.
    pub fn set(&mut self, lang: Lang) {
        *self = Self::new(lang);
    }

    /// Whether there is a message of that id, in this language or in English.
    pub fn has(&self, id: &str) -> bool {
        self.loader.has(id)
    }

    /// The sentence for an id; in English if the language lacks it, and the id itself if nobody
    /// has it.
    pub fn say(&self, id: &str) -> String {
        if self.has(id) {
            self.loader.get(id)
        } else {
            id.to_owned()
        }
    }

    /// As [`Words::say`], with arguments by name.
    pub fn say_with(&self, id: &str, args: &[(&str, Arg)]) -> String {
        if !self.has(id) {
            return id.to_owned();
        }
        let mut filled = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            filled.set(*name, arg.as_fluent());
        }
        self.loader.get_args_fluent(id, Some(&filled))
    }
}

impl Clone for Words {
    fn clone(&self) -> Self {
        Self::new(self.lang)
    }
}

impl Default for Words {
    fn default() -> Self {
        Self::new(Lang::default())
    }
}
