//! `keys enrol`: a tablet's key comes in by code, people compare the six words, then it is kept.

use std::path::PathBuf;

use super::Hand;
use crate::desk::listen::{Heard, Listener};
use crate::desk::{Desk, DeskError};
use crate::handover::{Offered, TabletPublic};
use crate::record::Label;

impl Hand<'_, '_> {
    pub(super) fn enrol(
        &mut self,
        desk: &Desk,
        files: &[PathBuf],
        name: Option<&str>,
        typed: Option<&str>,
    ) -> Result<(), DeskError> {
        let tablet = if files.is_empty() {
            self.scanned_key()?
        } else {
            self.pictured_key(files)?
        };
        let six = tablet.fingerprint().join(" ");
        let name = match name {
            Some(name) => Label::new(name)?,
            None => Label::new(&tablet.fingerprint()[..2].join(" "))?,
        };
        match typed {
            Some(typed) if same_words(typed, &six) => {}
            Some(_) => return Err(DeskError::WordsDiffer),
            None => self.confirm(&six)?,
        }
        let now = self.now()?;
        desk.enrol(tablet, &name, now)?;
        let args = [("name", name.as_str().into())];
        let enrolled = self.words.say_with("desk-tablet-enrolled", &args);
        self.line(&enrolled)
    }

    /// The key that the scanner types.
    fn scanned_key(&mut self) -> Result<TabletPublic, DeskError> {
        let scan = self.words.say("desk-tablet-scan");
        self.line(&scan)?;
        let _keyboard = (self.world.keyboard)();
        let mut listener = Listener::new();
        while let Some(line) = self.typed_line()? {
            let heard = listener.push(&line);
            if let Some(tablet) = key_among(heard)? {
                return Ok(tablet);
            }
        }
        key_among(listener.finish())?.ok_or(DeskError::NoTabletKey)
    }

    fn pictured_key(&mut self, files: &[PathBuf]) -> Result<TabletPublic, DeskError> {
        for file in files {
            let mut listener = Listener::new();
            for text in super::read::texts_of(file)? {
                if let Some(tablet) = key_among(listener.scan(&text))? {
                    return Ok(tablet);
                }
            }
        }
        Err(DeskError::NoTabletKey)
    }

    fn confirm(&mut self, six: &str) -> Result<(), DeskError> {
        let yes = self.words.say("desk-yes");
        let compare = [("words", six.into())];
        let ask = [("yes", yes.as_str().into())];
        let lines = [
            self.words.say_with("desk-tablet-compare", &compare),
            self.words.say_with("desk-tablet-confirm", &ask),
        ];
        self.line(&lines.join("\n"))?;
        let answer = self.typed_line()?.unwrap_or_default();
        if answer.trim().to_lowercase() == yes.to_lowercase() {
            Ok(())
        } else {
            Err(DeskError::NotConfirmed)
        }
    }
}

/// The tablet's key, if that is what was heard first; a code of another kind is told.
fn key_among(heard: Vec<Heard>) -> Result<Option<TabletPublic>, DeskError> {
    match heard.into_iter().next() {
        None => Ok(None),
        Some(Heard::Code(Offered::TabletEnrolment(tablet))) => Ok(Some(tablet)),
        Some(Heard::Code(Offered::Refused(error))) => Err(error.into()),
        Some(_) => Err(DeskError::NoTabletKey),
    }
}

/// Whether two lists of words are the same, however they are spaced or written large.
fn same_words(a: &str, b: &str) -> bool {
    let words = |text: &str| -> Vec<String> {
        text.split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
            .map(str::to_lowercase)
            .collect()
    };
    words(a) == words(b)
}
