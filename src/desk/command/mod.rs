//! The commands of `feedside-desk`: arguments in, lines out, exit code back.
//!
//! What the world gives (input, output, time, random bytes, variables) comes in as [`World`], so
//! that a test can play a whole desk.

mod arguments;
mod enrol;
mod folder;
mod keys;
mod line;
mod listen;
mod patient;
mod read;
mod records;
mod scanner;
mod send;

use std::ffi::{OsStr, OsString};
use std::io::{Read, Write};
use std::path::PathBuf;

use chrono::{DateTime, FixedOffset};
use clap::Parser;

use super::inbox::Address;
use super::tell::{missing_line, refused};
use super::{Desk, DeskError, Said, tell};
use crate::handover::HandoverError;
use crate::record::WallTime;
use crate::words::{Lang, Words};
use arguments::{Arguments, Command};
pub use line::Keyboard;
pub use patient::{PATIENCE, Patient};

/// What the commands take from outside.
pub struct World<'a> {
    /// What a scanner or a person types. A read that ends with `TimedOut` tells that nothing came
    /// for a while; one that may be silent for long is wrapped in [`Patient`].
    pub input: &'a mut dyn Read,
    /// Gives the keyboard to the scanner, where there is one.
    pub keyboard: &'a dyn Fn() -> Option<Keyboard>,
    /// Answers.
    pub out: &'a mut dyn Write,
    /// What happened and what to do.
    pub err: &'a mut dyn Write,
    /// The wall clock.
    pub now: &'a dyn Fn() -> DateTime<FixedOffset>,
    /// Random bytes; `None` if the system gives none.
    pub random: &'a dyn Fn() -> Option<[u8; 32]>,
    /// An environment variable.
    pub variable: &'a dyn Fn(&str) -> Option<OsString>,
    /// Opens the desk's window and comes back when it is closed; `None` where the program was made
    /// without one.
    pub window: Option<&'a OpenWindow>,
}

/// Opens a window over a desk; files go into the folder, people read the language, and no signal
/// sounds if the last is true.
pub type OpenWindow = dyn Fn(Desk, PathBuf, Lang, bool) -> Result<(), DeskError>;

/// Done.
const DONE: u8 = 0;
/// Refused or failed.
const REFUSED: u8 = 1;
/// Bad input.
const BAD_INPUT: u8 = 2;

/// Runs one command; gives the exit code: 0 done, 1 refused or failed, 2 bad input.
pub fn run(arguments: impl IntoIterator<Item = OsString>, world: &mut World<'_>) -> u8 {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(told) => {
            // Help and version come this way too.
            let is_error = told.use_stderr();
            let place: &mut dyn Write = if is_error { world.err } else { world.out };
            let _ = write!(place, "{told}");
            return if is_error { BAD_INPUT } else { DONE };
        }
    };
    let lang = arguments.lang.unwrap_or_else(|| language(world));
    let mut hand = Hand {
        words: Words::new(lang),
        world,
        misread: Vec::new(),
        worst: DONE,
    };
    match hand.run(arguments) {
        Ok(()) => hand.worst,
        Err(error) => {
            hand.complain(&error);
            exit_code(&error)
        }
    }
}

/// The language of the computer, if it is one of ours.
fn language(world: &World<'_>) -> Lang {
    ["LC_ALL", "LC_MESSAGES", "LANG"]
        .iter()
        .find_map(|name| (world.variable)(name).filter(|value| !value.is_empty()))
        .and_then(|value| Lang::from_tag(&value.to_string_lossy()))
        .unwrap_or_default()
}

const fn exit_code(error: &DeskError) -> u8 {
    match error {
        DeskError::CannotRead { .. }
        | DeskError::NotAPicture { .. }
        | DeskError::NoCode { .. }
        | DeskError::NoTabletKey
        | DeskError::NoTestCode
        | DeskError::ServerAddress
        | DeskError::PlaceAddress
        | DeskError::PlaceNeedsTls
        | DeskError::NoCertificate
        | DeskError::Codes(_)
        | DeskError::Record(_)
        | DeskError::Handover(HandoverError::NotOurs) => BAD_INPUT,
        DeskError::Store(_)
        | DeskError::Handover(_)
        | DeskError::NotSetUp
        | DeskError::TabletStruckOff { .. }
        | DeskError::NoSuchKey { .. }
        | DeskError::OnlyKey
        | DeskError::NoSuchTablet { .. }
        | DeskError::NoSuchRecord { .. }
        | DeskError::CannotWrite { .. }
        | DeskError::WordsDiffer
        | DeskError::NotConfirmed
        | DeskError::NoRandom
        | DeskError::NoClock
        | DeskError::NoFolder
        | DeskError::NoWindow
        | DeskError::NoDisplay
        | DeskError::NoSerial { .. }
        | DeskError::Input
        | DeskError::NotGivenUp { .. }
        | DeskError::ServerUnreachable
        | DeskError::ServerLogin
        | DeskError::ServerFailed
        | DeskError::NotLaidOut => REFUSED,
    }
}

/// One command at work.
struct Hand<'w, 'a> {
    words: Words,
    world: &'w mut World<'a>,
    /// Codes that were read badly and not read whole since: their pieces, where they can be told.
    misread: Vec<Option<u8>>,
    /// The worst exit code so far.
    worst: u8,
}

impl Hand<'_, '_> {
    fn run(&mut self, arguments: Arguments) -> Result<(), DeskError> {
        let mut desk = self.open(arguments.data.clone(), arguments.inbox)?;
        match arguments.command {
            Command::Window { quiet } => {
                let open = self.world.window.ok_or(DeskError::NoWindow)?;
                let folder = self.folder(arguments.data)?;
                open(desk, folder, self.words.lang(), quiet)
            }
            Command::Keys { what } => self.keys(&mut desk, what),
            Command::Listen { line } => self.listen(&mut desk, &line),
            Command::Scanner { what } => self.scanner(&mut desk, what),
            Command::Read { files } => self.read(&mut desk, &files),
            Command::Send(how) => self.send(&desk, how),
            Command::Queue { again } => self.queue(&desk, &again),
            Command::Inbox { words, last } => self.inbox(&desk, &words, last),
            Command::Show { id } => self.show(&desk, id),
            Command::Export {
                id,
                form,
                out,
                codes,
            } => self.export(&desk, id, form, out, codes),
        }
    }

    /// Opens the desk's file, or the server that it shares with others.
    fn open(&self, data: Option<PathBuf>, inbox: Option<String>) -> Result<Desk, DeskError> {
        if let Some(url) = inbox {
            let password = (self.world.variable)("PGPASSWORD");
            let password = password.as_deref().and_then(OsStr::to_str);
            return Desk::on_server(Address::new(&url, password)?);
        }
        Desk::open(&self.folder(data)?)
    }

    /// Where the desk's data lie.
    fn folder(&self, data: Option<PathBuf>) -> Result<PathBuf, DeskError> {
        data.or_else(|| folder::default(self.world.variable))
            .ok_or(DeskError::NoFolder)
    }

    fn now(&self) -> Result<WallTime, DeskError> {
        WallTime::of((self.world.now)()).map_err(|_| DeskError::NoClock)
    }

    /// Writes an answer and lets it be seen at once.
    fn print(&mut self, text: &str) -> Result<(), DeskError> {
        self.print_bytes(text.as_bytes())
    }

    fn print_bytes(&mut self, bytes: &[u8]) -> Result<(), DeskError> {
        self.world
            .out
            .write_all(bytes)
            .and_then(|()| self.world.out.flush())
            .map_err(|_| DeskError::CannotWrite {
                file: "-".to_owned(),
            })
    }

    fn line(&mut self, line: &str) -> Result<(), DeskError> {
        self.print(&format!("{line}\n"))
    }

    fn complain(&mut self, error: &DeskError) {
        let told = refused(error, &self.words);
        let _ = self.world.err.write_all(told.as_bytes());
        let _ = self.world.err.flush();
    }

    /// Tells the answers to scans: refusals on the error stream, the rest on the other.
    fn told(&mut self, all: &[Said]) -> Result<(), DeskError> {
        for said in all {
            match said {
                Said::Refused(error) => {
                    self.complain(error);
                    match error {
                        DeskError::Handover(
                            error @ (HandoverError::CodeDamaged
                            | HandoverError::PieceDamaged { .. }
                            | HandoverError::PieceCut { .. }),
                        ) => self.misread.push(error.piece()),
                        error => self.worst = self.worst.max(exit_code(error)),
                    }
                }
                said => {
                    self.mended(said);
                    self.print(&tell(said, &self.words))?;
                }
            }
        }
        Ok(())
    }

    /// A bad scan on the way to a good one is no failure: what was read whole is no longer misread.
    fn mended(&mut self, said: &Said) {
        match said {
            Said::Piece { index, .. } => {
                let other = |piece: &u8| piece != index;
                self.misread
                    .retain(|piece| piece.as_ref().is_some_and(other));
            }
            Said::Kept(_) => self.misread.clear(),
            _ => {}
        }
    }

    /// Tells what is still missing of records begun; whether anything is.
    fn tell_missing(&mut self, desk: &Desk) -> bool {
        let waiting = desk.waiting();
        for it in &waiting {
            let line = missing_line(it, &self.words);
            let _ = writeln!(self.world.err, "{line}");
        }
        let _ = self.world.err.flush();
        !waiting.is_empty()
    }

    /// Tells, at the end, what is still missing of records begun. They are refused, and so is a
    /// code that was never read whole.
    fn missing(&mut self, desk: &Desk) {
        if self.tell_missing(desk) || !self.misread.is_empty() {
            self.worst = self.worst.max(REFUSED);
        }
    }
}
