//! `listen`: what a keyboard scanner types on standard input, until it ends.

use std::io::{ErrorKind, Read};

use super::{DONE, Hand};
use crate::desk::{Desk, DeskError};

/// Bytes taken at once.
const CHUNK_BYTES: usize = 4_096;
/// The longest line that a person types.
const LINE_BYTES_MOST: usize = 65_536;

impl Hand<'_, '_> {
    pub(super) fn listen(&mut self, desk: &mut Desk) -> Result<(), DeskError> {
        let ready = self.words.say("desk-ready");
        self.line(&ready)?;
        let mut chunk = [0; CHUNK_BYTES];
        let mut bytes = Vec::new();
        loop {
            match self.world.input.read(&mut chunk) {
                Ok(0) => break,
                Ok(length) => bytes.extend(&chunk[..length]),
                Err(error) if error.kind() == ErrorKind::Interrupted => continue,
                Err(_) => return Err(DeskError::Input),
            }
            let typed = whole_characters(&mut bytes);
            let now = self.now()?;
            let said = desk.hear(&typed, now);
            self.told(&said)?;
        }
        let now = self.now()?;
        let said = desk.finish(now);
        self.told(&said)?;
        self.missing(desk);
        if 0 < self.kept {
            // A bad scan on the way to a record that is safe is no failure.
            self.worst = DONE;
        }
        Ok(())
    }

    /// One line from the input; `None` at its end.
    pub(super) fn typed_line(&mut self) -> Result<Option<String>, DeskError> {
        let mut bytes = Vec::new();
        for byte in self.world.input.bytes() {
            let byte = byte.map_err(|_| DeskError::Input)?;
            bytes.push(byte);
            if byte == b'\n' || LINE_BYTES_MOST <= bytes.len() {
                break;
            }
        }
        let line = String::from_utf8_lossy(&bytes).into_owned();
        Ok((!bytes.is_empty()).then_some(line))
    }
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
