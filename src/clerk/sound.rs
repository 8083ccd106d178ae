//! What the desk sounds like: two rising notes for a record that is safe, one note for a piece, two
//! falling low ones for a refusal.
//!
//! The scanner itself beeps when it read a code; these tell what became of it, to somebody who looks
//! at the tablet. Made here as a sound file and given to whatever the system plays such files with;
//! where there is nothing, the terminal's bell. What is heard is always seen, too.

use std::f64::consts::TAU;
use std::io::Write;
use std::path::{Path, PathBuf};

use super::system::{quietly, write_privately};

/// A signal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Tone {
    /// A record is safe, or what was asked for is done.
    Kept,
    /// A piece arrived, others are missing; or a person has to look.
    Piece,
    /// Refused.
    Refused,
}

impl Tone {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Kept, Self::Piece, Self::Refused];

    /// Its notes: hertz and milliseconds. Well within what is heard best, 500 Hz to 3 kHz, but for
    /// the low one of a refusal, which is told by being low; common practice.
    pub const fn notes(self) -> &'static [(f64, u64)] {
        match self {
            Self::Kept => &[(880.0, 90), (1_320.0, 160)],
            Self::Piece => &[(880.0, 90)],
            Self::Refused => &[(440.0, 160), (330.0, 260)],
        }
    }

    const fn file_name(self) -> &'static str {
        match self {
            Self::Kept => "kept.wav",
            Self::Piece => "piece.wav",
            Self::Refused => "refused.wav",
        }
    }
}

/// Samples a second.
const SAMPLES: u32 = 22_050;
/// How loud, of the loudest.
const LOUDNESS: f64 = 0.4;
/// Each note swells and fades for so long, in seconds, so that it does not click.
const FADE_S: f64 = 0.008;
/// Bytes of the file's head: RIFF, the format, and the data's own head.
const HEAD_BYTES: u32 = 44;

/// The signal as a sound file: RIFF WAVE, PCM of 16 bits, one channel.
pub fn wave(tone: Tone) -> Vec<u8> {
    let mut samples: Vec<i16> = Vec::new();
    for (hertz, ms) in tone.notes() {
        let count = u64::from(SAMPLES) * ms / 1_000;
        let lasts_s = count as f64 / f64::from(SAMPLES);
        samples.extend((0..count).map(|at| {
            let at_s = at as f64 / f64::from(SAMPLES);
            let fade = (at_s / FADE_S).min((lasts_s - at_s) / FADE_S).min(1.0);
            let swing = (TAU * hertz * at_s).sin();
            (swing * fade * LOUDNESS * f64::from(i16::MAX)) as i16
        }));
    }
    let data_bytes = 2 * u32::try_from(samples.len()).unwrap_or(0);
    let mut file = Vec::with_capacity((HEAD_BYTES + data_bytes) as usize);
    file.extend(b"RIFF");
    file.extend((HEAD_BYTES - 8 + data_bytes).to_le_bytes());
    file.extend(b"WAVEfmt ");
    file.extend(16_u32.to_le_bytes());
    // Plain samples, one channel.
    file.extend([1_u16, 1].iter().flat_map(|it| it.to_le_bytes()));
    file.extend(
        [SAMPLES, 2 * SAMPLES]
            .iter()
            .flat_map(|it| it.to_le_bytes()),
    );
    // Bytes for one moment, bits for one sample.
    file.extend([2_u16, 16].iter().flat_map(|it| it.to_le_bytes()));
    file.extend(b"data");
    file.extend(data_bytes.to_le_bytes());
    file.extend(samples.iter().flat_map(|it| it.to_le_bytes()));
    file
}

/// What plays sound files on the systems that a desk runs on, the usual first.
const PLAYERS: &[(&str, &[&str])] = if cfg!(target_os = "macos") {
    &[("afplay", &[])]
} else {
    &[("pw-play", &[]), ("paplay", &[]), ("aplay", &["-q"])]
};

/// Plays signals.
#[derive(Debug)]
pub struct Sounder {
    folder: PathBuf,
}

impl Sounder {
    /// Lays the sound files into a folder, where the players find them.
    pub fn over(folder: &Path) -> Self {
        for tone in Tone::ALL {
            // Without a file there is still the bell.
            let _ = write_privately(&folder.join(tone.file_name()), &wave(tone));
        }
        Self {
            folder: folder.to_owned(),
        }
    }

    /// Plays a signal and does not wait for its end.
    pub fn play(&self, tone: Tone) {
        let file = self.folder.join(tone.file_name());
        std::thread::spawn(move || {
            let mut players = PLAYERS.iter();
            if !players.any(|(player, arguments)| quietly(player, arguments, &file)) {
                let mut bell = std::io::stderr();
                let _ = bell.write_all(b"\x07").and_then(|()| bell.flush());
            }
        });
    }
}
