//! `keys`: the desk's own keys, and which tablets are enrolled.

use std::path::Path;

use super::Hand;
use super::arguments::Keys;
use crate::desk::{Desk, DeskError};
use crate::handover::DeskPublic;

impl Hand<'_, '_> {
    pub(super) fn keys(&mut self, desk: &mut Desk, what: Keys) -> Result<(), DeskError> {
        match what {
            Keys::New => {
                let random = (self.world.random)().ok_or(DeskError::NoRandom)?;
                let now = self.now()?;
                let public = desk.new_key(random, now)?;
                let made = self.words.say("desk-key-made");
                self.line(&made)?;
                self.show_key(&public)
            }
            Keys::Show { out } => {
                let public = desk.public().ok_or(DeskError::NotSetUp)?;
                self.show_key(&public)?;
                out.map_or(Ok(()), |path| self.write_key(&public, &path))
            }
            Keys::List => self.list_keys(desk),
            Keys::Retire { id } => {
                let now = self.now()?;
                let retired = desk.retire(&id, now)?;
                let args = [("id", retired.kid().to_string().into())];
                let line = self.words.say_with("desk-key-retired", &args);
                self.line(&line)
            }
            Keys::Enrol { files, name, words } => {
                self.enrol(desk, &files, name.as_deref(), words.as_deref())
            }
            Keys::Tablets => self.list_tablets(desk),
            Keys::StrikeOff { tablet } => {
                let now = self.now()?;
                let struck = desk.strike_off(&tablet, now)?;
                let args = [("name", struck.name.as_str().into())];
                let line = self.words.say_with("desk-tablet-struck", &args);
                self.line(&line)
            }
        }
    }

    fn show_key(&mut self, public: &DeskPublic) -> Result<(), DeskError> {
        let six = public.fingerprint().join(" ");
        let lines = [
            self.words.say("desk-key-type"),
            format!("  {}", public.to_typed()),
            self.words
                .say_with("desk-key-words", &[("words", six.into())]),
        ];
        self.line(&lines.join("\n"))
    }

    /// Writes the key as the tablet reads it: what people compare stands behind a `#`.
    fn write_key(&mut self, public: &DeskPublic, path: &Path) -> Result<(), DeskError> {
        let file = path.file_name().unwrap_or(path.as_os_str());
        let file = file.to_string_lossy().into_owned();
        let six = public.fingerprint().join(" ");
        let text = format!("# {six}\n{}\n", public.to_typed());
        std::fs::write(path, text).map_err(|_| DeskError::CannotWrite { file: file.clone() })?;
        let written = self
            .words
            .say_with("desk-written", &[("file", file.into())]);
        self.line(&written)
    }

    fn list_keys(&mut self, desk: &Desk) -> Result<(), DeskError> {
        let keys = desk.inbox().keys()?;
        if keys.is_empty() {
            return Err(DeskError::NotSetUp);
        }
        for key in keys {
            let public = key.pair.public();
            let args = [
                ("id", public.kid().to_string().into()),
                ("made", self.words.date_time(key.made.local()).into()),
                ("words", public.fingerprint().join(" ").into()),
            ];
            let line = self.words.say_with("desk-key-line", &args);
            self.line(&line)?;
            if let Some(since) = key.retired {
                let since = [("since", self.words.date_time(since.local()).into())];
                let line = self.words.say_with("desk-key-line-retired", &since);
                self.line(&format!("   {line}"))?;
            }
        }
        Ok(())
    }

    fn list_tablets(&mut self, desk: &Desk) -> Result<(), DeskError> {
        let tablets = desk.inbox().tablets()?;
        if tablets.is_empty() {
            let none = self.words.say("desk-tablets-none");
            self.line(&none)?;
        }
        for tablet in tablets {
            let args = [
                ("id", tablet.public.kid().to_string().into()),
                ("name", tablet.name.as_str().into()),
                ("words", tablet.public.fingerprint().join(" ").into()),
                (
                    "enrolled",
                    self.words.date_time(tablet.enrolled.local()).into(),
                ),
            ];
            let line = self.words.say_with("desk-tablet-line", &args);
            self.line(&line)?;
            if let Some(since) = tablet.struck {
                let since = [("since", self.words.date_time(since.local()).into())];
                let line = self.words.say_with("desk-tablet-line-struck", &since);
                self.line(&format!("   {line}"))?;
            }
        }
        Ok(())
    }
}
