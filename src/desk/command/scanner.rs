//! `scanner`: the test code, and what a scanner makes of it.

use std::path::PathBuf;

use image::GrayImage;

use super::Hand;
use super::arguments::{Largest, Line, Scanner};
use crate::desk::{Desk, DeskError};
use crate::handover::qr::QUIET_MODULES;
use crate::handover::{Code, VersionCap, test_code};

/// Pixels of a module in the picture: 105 modules make 840 pixels.
const MODULE_PX: usize = 8;
/// Black on white, whatever the terminal's colours are (ECMA-48, SGR 38 and 48 with 256 colours).
const BLACK_ON_WHITE: &str = "\u{1b}[38;5;16;48;5;231m";
const AS_BEFORE: &str = "\u{1b}[0m";

impl Hand<'_, '_> {
    pub(super) fn scanner(&mut self, desk: &mut Desk, what: Scanner) -> Result<(), DeskError> {
        match what {
            Scanner::Code { largest, out } => self.test_code(largest, out),
            Scanner::Test { line } => self.test(desk, &line),
        }
    }

    fn test_code(&mut self, largest: Largest, out: Option<PathBuf>) -> Result<(), DeskError> {
        let cap: VersionCap = largest.into();
        let code = test_code::code(cap)?;
        match out {
            None => self.print(&in_blocks(&code))?,
            Some(path) => {
                let file = path.file_name().unwrap_or(path.as_os_str());
                let file = file.to_string_lossy().into_owned();
                let cannot = || DeskError::CannotWrite { file: file.clone() };
                let (side, pixels) = code.to_luma(MODULE_PX, QUIET_MODULES);
                let side = u32::try_from(side).map_err(|_| cannot())?;
                let picture = GrayImage::from_raw(side, side, pixels).ok_or_else(cannot)?;
                picture
                    .save_with_format(&path, image::ImageFormat::Png)
                    .map_err(|_| cannot())?;
                let written = self
                    .words
                    .say_with("desk-written", &[("file", file.as_str().into())]);
                self.line(&written)?;
            }
        }
        let version = [("version", i64::from(cap.version()).into())];
        let show = self.words.say_with("desk-scanner-show", &version);
        self.line(&show)
    }

    fn test(&mut self, desk: &mut Desk, line: &Line) -> Result<(), DeskError> {
        let scan = self.words.say("desk-scanner-scan");
        if self.hear(desk, line, &scan, true)? {
            Ok(())
        } else {
            Err(DeskError::NoTestCode)
        }
    }
}

/// A code in half blocks, two modules a character.
fn in_blocks(code: &Code) -> String {
    let (side, pixels) = code.to_luma(1, QUIET_MODULES);
    let dark = |row: usize, column: usize| {
        let pixel = pixels.get(row * side + column);
        pixel.is_some_and(|pixel| *pixel == 0)
    };
    let mut text = String::new();
    for row in (0..side).step_by(2) {
        text += BLACK_ON_WHITE;
        text.extend(
            (0..side).map(|column| match (dark(row, column), dark(row + 1, column)) {
                (false, false) => ' ',
                (true, false) => '▀',
                (false, true) => '▄',
                (true, true) => '█',
            }),
        );
        text += AS_BEFORE;
        text.push('\n');
    }
    text
}
