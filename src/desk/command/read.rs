//! `read`: pictures of codes, in any order, with one or several codes each.

use std::path::{Path, PathBuf};

use super::Hand;
use crate::desk::{Desk, DeskError, read};

impl Hand<'_, '_> {
    pub(super) fn read(&mut self, desk: &mut Desk, files: &[PathBuf]) -> Result<(), DeskError> {
        for file in files {
            match texts_of(file) {
                Ok(texts) => {
                    for text in texts {
                        let now = self.now()?;
                        let said = desk.take(&text, now);
                        self.told(&said)?;
                    }
                }
                Err(error) => {
                    self.complain(&error);
                    self.worst = self.worst.max(super::exit_code(&error));
                }
            }
        }
        self.missing(desk);
        Ok(())
    }
}

/// The texts of the codes in a picture file.
pub(super) fn texts_of(path: &Path) -> Result<Vec<String>, DeskError> {
    let file = path.file_name().unwrap_or(path.as_os_str());
    let file = file.to_string_lossy().into_owned();
    let bytes = std::fs::read(path).map_err(|_| DeskError::CannotRead { file: file.clone() })?;
    let texts = read::texts_in(&read::picture(&bytes, &file)?);
    if texts.is_empty() {
        Err(DeskError::NoCode { file })
    } else {
        Ok(texts)
    }
}
