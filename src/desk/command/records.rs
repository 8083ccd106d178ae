//! `inbox`, `show`, `export`: what is kept here, and how it leaves.

use std::path::{Path, PathBuf};

use super::Hand;
use crate::desk::tell::{inbox_lines, unknown_lines};
use crate::desk::{As, Desk, DeskError};
use crate::report::codes::Codes;

impl Hand<'_, '_> {
    pub(super) fn inbox(
        &mut self,
        desk: &Desk,
        asked: &[String],
        last: Option<u32>,
    ) -> Result<(), DeskError> {
        let heads = if asked.is_empty() && last.is_none() {
            desk.inbox().heads()?
        } else {
            let most = last.unwrap_or(u32::MAX);
            desk.inbox().search(&asked.join(" "), most)?
        };
        if heads.is_empty() && !asked.is_empty() {
            let none = self.words.say("desk-inbox-none-found");
            self.line(&none)?;
        } else if heads.is_empty() {
            let none = self.words.say("desk-inbox-none");
            self.line(&none)?;
        }
        for head in heads {
            self.print(&inbox_lines(&head, &self.words))?;
        }
        Ok(())
    }

    pub(super) fn show(&mut self, desk: &Desk, number: i64) -> Result<(), DeskError> {
        let (page, unknown) = desk.page(number, &self.words)?;
        self.print(&page)?;
        if let Some(replaced) = self.replaced(desk, number)? {
            self.line(&replaced)?;
        }
        for doubt in unknown_lines(&unknown, &self.words) {
            self.line(&doubt)?;
        }
        Ok(())
    }

    /// What is told of a record that another one stands for.
    fn replaced(&self, desk: &Desk, number: i64) -> Result<Option<String>, DeskError> {
        let by = desk.inbox().head(number)?.replaced_by;
        Ok(by.map(|by| {
            self.words
                .say_with("desk-replaced-by", &[("number", by.into())])
        }))
    }

    pub(super) fn export(
        &mut self,
        desk: &Desk,
        number: i64,
        form: As,
        out: Option<PathBuf>,
        codes: Option<PathBuf>,
    ) -> Result<(), DeskError> {
        let codes = codes_of(codes.as_deref())?;
        let bytes = desk.export_with(number, form, &codes, &self.words)?;
        if let Some(replaced) = self.replaced(desk, number)? {
            // Beside the export, not in it: an older version may be asked for.
            let _ = writeln!(self.world.err, "{replaced}");
        }
        let Some(path) = out else {
            return self.print_bytes(&bytes);
        };
        let file = path.file_name().unwrap_or(path.as_os_str());
        let file = file.to_string_lossy().into_owned();
        std::fs::write(&path, bytes).map_err(|_| DeskError::CannotWrite { file: file.clone() })?;
        let written = self
            .words
            .say_with("desk-written", &[("file", file.into())]);
        self.line(&written)
    }
}

/// The table of codes: the built-in one, with the site's file over it if it names one.
pub(super) fn codes_of(path: Option<&Path>) -> Result<Codes, DeskError> {
    let Some(path) = path else {
        return Ok(Codes::built_in());
    };
    let text = std::fs::read_to_string(path).map_err(|_| {
        let file = path.file_name().unwrap_or(path.as_os_str());
        let file = file.to_string_lossy().into_owned();
        DeskError::CannotRead { file }
    })?;
    Ok(Codes::with_site(&text)?)
}
