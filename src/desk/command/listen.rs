//! `listen`: what a scanner types, until the input ends.

use std::io::{ErrorKind, Read};

use super::arguments::Line;
use super::line::{CTRL_C, Keyboard, serial};
use super::{Hand, Patient};
use crate::desk::{Desk, DeskError, Said};

/// Bytes taken at once.
const CHUNK_BYTES: usize = 4_096;
/// The longest line that a person types.
const LINE_BYTES_MOST: usize = 65_536;
/// After so many reads in a row that gave nothing, what is missing is told: ten seconds, time to
/// find the next code on the tablet. A choice of this project.
const SILENCES: u32 = 5;

impl Hand<'_, '_> {
    pub(super) fn listen(&mut self, desk: &mut Desk, line: &Line) -> Result<(), DeskError> {
        let ready = match &line.serial {
            None => self.words.say("desk-ready"),
            Some(port) => {
                let port = [("port", port.to_string_lossy().into_owned().into())];
                self.words.say_with("desk-ready-serial", &port)
            }
        };
        self.hear(desk, line, &ready, false)?;
        self.missing(desk);
        Ok(())
    }

    /// Says that it is ready once it is, and hears until the input ends, or until a test code was
    /// heard; whether one was.
    pub(super) fn hear(
        &mut self,
        desk: &mut Desk,
        line: &Line,
        ready: &str,
        until_test: bool,
    ) -> Result<bool, DeskError> {
        let port = line.serial.as_ref().map(|port| {
            let opened = serial(port, line.baud).map(Patient::new);
            opened.map_err(|_| DeskError::NoSerial {
                port: port.to_string_lossy().into_owned(),
            })
        });
        let mut port = port.transpose()?;
        let keyboard = match port {
            None => (self.world.keyboard)(),
            Some(_) => None,
        };
        self.line(ready)?;
        let mut bytes = Vec::new();
        let mut silences = 0;
        let mut is_test = false;
        loop {
            let heard = self.chunk(port.as_mut(), keyboard.as_ref(), &mut bytes)?;
            let now = self.now()?;
            let said = match heard {
                Chunk::Bytes => {
                    silences = 0;
                    desk.hear(&whole_characters(&mut bytes), now)
                }
                Chunk::Silence => {
                    silences += 1;
                    if silences == SILENCES {
                        self.tell_missing(desk);
                    }
                    if desk.is_within() {
                        desk.finish(now)
                    } else {
                        Vec::new()
                    }
                }
                Chunk::End => desk.finish(now),
            };
            self.told(&said)?;
            is_test |= said.iter().any(|said| matches!(said, Said::Test(_)));
            if heard == Chunk::End || (until_test && is_test) {
                return Ok(is_test);
            }
        }
    }

    /// Reads what came next.
    fn chunk(
        &mut self,
        port: Option<&mut Patient>,
        keyboard: Option<&Keyboard>,
        bytes: &mut Vec<u8>,
    ) -> Result<Chunk, DeskError> {
        let mut chunk = [0; CHUNK_BYTES];
        let input: &mut dyn Read = match port {
            Some(port) => port,
            None => self.world.input,
        };
        loop {
            let length = match input.read(&mut chunk) {
                Ok(0) => return Ok(Chunk::End),
                Ok(length) => length,
                Err(error) if error.kind() == ErrorKind::Interrupted => continue,
                Err(error) if error.kind() == ErrorKind::TimedOut => return Ok(Chunk::Silence),
                Err(_) => return Err(DeskError::Input),
            };
            let typed = &chunk[..length];
            if keyboard.is_some() && typed.contains(&CTRL_C) {
                return Ok(Chunk::End);
            }
            bytes.extend(typed);
            return Ok(Chunk::Bytes);
        }
    }

    /// One line from the input, or what came before a silence; `None` at its end.
    pub(super) fn typed_line(&mut self) -> Result<Option<String>, DeskError> {
        let mut bytes = Vec::new();
        let mut one = [0];
        // One at a time: what follows the line is somebody else's to read.
        while bytes.len() < LINE_BYTES_MOST && !bytes.ends_with(b"\n") {
            match self.world.input.read(&mut one) {
                Ok(0) => break,
                Ok(_) => bytes.extend(one),
                Err(error) if error.kind() == ErrorKind::Interrupted => {}
                Err(error) if error.kind() == ErrorKind::TimedOut => {
                    if !bytes.is_empty() {
                        break;
                    }
                }
                Err(_) => return Err(DeskError::Input),
            }
        }
        let line = String::from_utf8_lossy(&bytes).into_owned();
        Ok((!bytes.is_empty()).then_some(line))
    }
}

/// What a read gave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Chunk {
    /// Something was typed.
    Bytes,
    /// Nothing, for a while.
    Silence,
    /// The input ended.
    End,
}

/// Takes the characters that are whole; a character cut by the chunk's end stays for the next.
/// What is no character becomes a mark of replacement, which no code holds.
fn whole_characters(bytes: &mut Vec<u8>) -> String {
    let mut text = String::new();
    loop {
        match std::str::from_utf8(bytes) {
            Ok(all) => {
                text.push_str(all);
                bytes.clear();
                return text;
            }
            Err(error) => {
                let whole = error.valid_up_to();
                text.push_str(&String::from_utf8_lossy(&bytes[..whole]));
                match error.error_len() {
                    Some(wrong) => {
                        text.push(char::REPLACEMENT_CHARACTER);
                        bytes.drain(..whole + wrong);
                    }
                    None => {
                        bytes.drain(..whole);
                        return text;
                    }
                }
            }
        }
    }
}
