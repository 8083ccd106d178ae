//! Pictures of the screen that is seen: each size, language and light.

use std::path::PathBuf;

use crate::app::event::Event;
use crate::app::picture::Canvas;
use crate::app::settings;
use crate::words::Lang;

use super::RehearseError;
use super::eye::Eye;
use super::ward::Tablet;

/// Width and height of the pictures: a ten-inch tablet lying and standing.
const SIZES: [(u32, u32); 2] = [(1280, 800), (800, 1280)];

/// Where pictures go.
pub struct Album {
    canvas: Canvas,
    folder: PathBuf,
    /// How many were taken.
    pub taken: usize,
}

impl Album {
    /// An album in a folder that exists.
    pub const fn new(canvas: Canvas, folder: PathBuf) -> Self {
        Self {
            canvas,
            folder,
            taken: 0,
        }
    }

    fn one(&mut self, name: &str, width: u32, height: u32) -> Result<(), RehearseError> {
        self.canvas.resize(width, height);
        let file = self.folder.join(name);
        self.canvas
            .draw()
            .save(&file)
            .map_err(|error| RehearseError::file(&file, error))?;
        self.taken += 1;
        Ok(())
    }

    /// Draws the screen as it is and throws the picture away, for measuring.
    pub fn draw(&self) {
        let _ = self.canvas.draw();
    }
}

impl Eye for Album {
    /// Takes the screen in every size, language and light, and leaves the shell in English by day.
    fn look(&mut self, tablet: &mut Tablet, name: &str) -> Result<(), RehearseError> {
        let shell = &mut tablet.shell;
        for (place, lang) in Lang::ALL.iter().enumerate() {
            for night in [false, true] {
                shell.hear(Event::Settings(settings::Event::LanguageChosen(place)));
                shell.hear(Event::Settings(settings::Event::NightChosen(night)));
                for (width, height) in SIZES {
                    let light = if night { "-night" } else { "" };
                    let file = format!("{name}-{}-{width}x{height}{light}.png", lang.tag());
                    self.one(&file, width, height)?;
                }
            }
        }
        shell.hear(Event::Settings(settings::Event::LanguageChosen(0)));
        shell.hear(Event::Settings(settings::Event::NightChosen(false)));
        Ok(())
    }
}
