//! Pictures that were looked at and found good, and what is drawn now held against them.
//!
//! `FEEDSIDE_RECORD_PICTURES=1` records them anew; then look at each before keeping it.

use std::path::{Path, PathBuf};

use image::RgbImage;
use image::imageops::{self, FilterType};

/// So much may a pixel's channel differ before the pixel counts, of 255.
const CHANNEL_MOST: u8 = 24;
/// So large a share of pixels may count. Common practice for drawn text.
const SHARE_MOST: f64 = 0.001;

/// One folder of pictures.
pub struct Golden {
    kept: PathBuf,
    record: bool,
    faults: Vec<String>,
    compared: usize,
}

impl Golden {
    /// The pictures in this folder of `tests/golden`.
    pub fn of(folder: &str) -> Self {
        let golden = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden");
        Self {
            kept: golden.join(folder),
            record: std::env::var_os("FEEDSIDE_RECORD_PICTURES").is_some(),
            faults: Vec::new(),
            compared: 0,
        }
    }

    /// Holds what is drawn, at half its size, against a picture; or records it.
    pub fn compare(&mut self, drawn: &RgbImage, file: &str) {
        let half = imageops::resize(
            drawn,
            drawn.width() / 2,
            drawn.height() / 2,
            FilterType::Triangle,
        );
        let path = self.kept.join(file);
        if self.record {
            std::fs::create_dir_all(&self.kept).unwrap();
            half.save(&path).unwrap();
            return;
        }
        self.compared += 1;
        match image::open(&path).map(|it| it.to_rgb8()) {
            Ok(kept) if kept.dimensions() == half.dimensions() => {
                let differing = kept.pixels().zip(half.pixels()).filter(|(one, other)| {
                    let mut channels = one.0.iter().zip(other.0);
                    channels.any(|(one, other)| CHANNEL_MOST < one.abs_diff(other))
                });
                let share = differing.count() as f64 / f64::from(half.width() * half.height());
                if SHARE_MOST < share {
                    self.faults
                        .push(format!("{file}: {:.2} % differ", share * 100.0));
                }
            }
            Ok(_) => self.faults.push(format!("{file}: of another size")),
            Err(why) => self.faults.push(format!("{file}: {why}")),
        }
    }

    /// All were as their pictures, and none is left over.
    pub fn stand(&self) {
        assert!(
            !self.record,
            "recorded: look at them, then run without recording"
        );
        assert!(self.faults.is_empty(), "{}", self.faults.join("\n"));
        let kept = std::fs::read_dir(&self.kept).unwrap().count();
        assert_eq!(self.compared, kept, "a picture is left over, or lacking");
    }
}
