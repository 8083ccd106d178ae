//! The desk: scans in, records kept, receipts out. Time and random bytes are given to it.

use std::cell::RefCell;
use std::path::Path;

use sha2::{Digest, Sha256};

use super::inbox::Inbox;
use super::listen::Listener;
use super::{DeskError, Said};
use crate::handover::{self, DeskKeyPair, DeskPublic, HandoverError, Kid, Offered, TabletPublic};
use crate::record::{Label, WallTime};
use crate::store::StoreError;

/// The inbox's file within the data folder.
const FILE: &str = "desk.sqlite";

/// One desk with its inbox and one scanner.
#[derive(Debug)]
pub struct Desk {
    inbox: Inbox,
    listener: Listener,
    /// The desk's key pairs, read once and again when a record asks for one that is not among them.
    keys: Vec<DeskKeyPair>,
}

impl Desk {
    /// Opens the desk whose data lie in a folder; makes the folder if it is not there.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn open(folder: &Path) -> Result<Self, DeskError> {
        std::fs::create_dir_all(folder).map_err(|_| StoreError::NoAccess)?;
        Self::with(Inbox::open(&folder.join(FILE))?)
    }

    /// A desk that is gone when it is dropped.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn in_memory() -> Result<Self, DeskError> {
        Self::with(Inbox::in_memory()?)
    }

    fn with(inbox: Inbox) -> Result<Self, DeskError> {
        let mut desk = Self {
            inbox,
            listener: Listener::new(),
            keys: Vec::new(),
        };
        desk.read_keys()?;
        Ok(desk)
    }

    /// Its inbox.
    pub const fn inbox(&self) -> &Inbox {
        &self.inbox
    }

    /// The pieces still missing of records begun: transfer, count, missing.
    pub fn missing(&self) -> Vec<(u32, u8, Vec<u8>)> {
        self.listener.missing()
    }

    /// Makes a key pair from random bytes and keeps it; from now on it is the one to give to
    /// tablets. Older ones stay, so that their records can be opened.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn new_key(&mut self, random: [u8; 32], now: WallTime) -> Result<DeskPublic, DeskError> {
        let pair = DeskKeyPair::from_random(random)?;
        self.inbox.add_key(&pair, now)?;
        let public = pair.public();
        self.read_keys()?;
        Ok(public)
    }

    /// The key to give to tablets: the one made last.
    pub fn public(&self) -> Option<DeskPublic> {
        self.keys.last().map(DeskKeyPair::public)
    }

    /// Enrols a tablet whose six words were compared, or gives an enrolled one another name.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn enrol(
        &self,
        tablet: TabletPublic,
        name: &Label,
        now: WallTime,
    ) -> Result<(), DeskError> {
        self.inbox.enrol(tablet, name, now)
    }

    /// Takes one whole scan, or the text of one picture's code.
    pub fn take(&mut self, text: &str, now: WallTime) -> Vec<Said> {
        let heard = self.listener.scan(text);
        self.answer(heard, now)
    }

    /// Hears what a scanner typed since the last time, whole or not.
    pub fn hear(&mut self, typed: &str, now: WallTime) -> Vec<Said> {
        let heard = self.listener.push(typed);
        self.answer(heard, now)
    }

    /// Nothing more is typed: tells what is left.
    pub fn finish(&mut self, now: WallTime) -> Vec<Said> {
        let heard = self.listener.finish();
        self.answer(heard, now)
    }

    fn answer(&mut self, heard: Vec<Offered>, now: WallTime) -> Vec<Said> {
        heard
            .into_iter()
            .map(|offered| self.one(offered, now).unwrap_or_else(Said::Refused))
            .collect()
    }

    fn one(&mut self, offered: Offered, now: WallTime) -> Result<Said, DeskError> {
        Ok(match offered {
            Offered::Complete { transfer, sealed }
            | Offered::Again {
                transfer,
                sealed: Some(sealed),
                ..
            } => self.receive(transfer, &sealed, now)?,
            Offered::Piece {
                transfer: _,
                index,
                count,
                missing,
            } => Said::Piece {
                index,
                count,
                missing,
                again: false,
            },
            Offered::Again {
                transfer: _,
                index,
                count,
                missing,
                sealed: None,
            } => Said::Piece {
                index,
                count,
                missing,
                again: true,
            },
            Offered::TabletEnrolment(tablet) => match self.inbox.tablet(&tablet.kid())? {
                Some((tablet, name)) => Said::TabletKnown { tablet, name },
                None => Said::TabletAsks(tablet),
            },
            Offered::Refused(error) => return Err(error.into()),
        })
    }

    /// Opens a sealed record and keeps it. The receipt is only given once it is on the disk.
    fn receive(&mut self, transfer: u32, sealed: &[u8], now: WallTime) -> Result<Said, DeskError> {
        if let Some(head) = self.inbox.by_digest(&Sha256::digest(sealed).into())? {
            return Ok(Said::Kept(super::Kept { head, again: true }));
        }
        let mut opened = self.open_sealed(sealed);
        if matches!(
            opened,
            Err(DeskError::NotSetUp | DeskError::Handover(HandoverError::NotForThisDesk { .. }))
        ) {
            // Another program may have made a key in the meantime.
            self.read_keys()?;
            opened = self.open_sealed(sealed);
        }
        if let Err(DeskError::Handover(HandoverError::Altered)) = opened {
            // Pieces that pass their checks and do not open together: begin again.
            self.listener.forget(transfer);
        }
        Ok(Said::Kept(
            self.inbox.keep(transfer, sealed, &opened?, now)?,
        ))
    }

    fn open_sealed(&self, sealed: &[u8]) -> Result<handover::Opened, DeskError> {
        if self.keys.is_empty() {
            return Err(DeskError::NotSetUp);
        }
        // A failure of the inbox must not read as "not enrolled".
        let failed = RefCell::new(None);
        let known = |kid: &Kid| match self.inbox.tablet(kid) {
            Ok(found) => found.map(|(tablet, _)| tablet),
            Err(error) => {
                failed.replace(Some(error));
                None
            }
        };
        let opened = handover::open(sealed, &self.keys, &known);
        match failed.take() {
            Some(error) => Err(error),
            None => Ok(opened?),
        }
    }

    fn read_keys(&mut self) -> Result<(), DeskError> {
        self.keys = self.inbox.keys()?.into_iter().map(|key| key.pair).collect();
        Ok(())
    }
}
