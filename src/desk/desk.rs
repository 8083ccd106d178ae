//! The desk: scans in, records kept, receipts out. Time and random bytes are given to it.

use std::cell::RefCell;
use std::path::Path;

use sha2::{Digest, Sha256};

use super::inbox::{Address, Inbox, Tablet};
use super::listen::{Heard, Listener};
use super::{DeskError, Said};
use crate::handover::{
    self, DeskKeyPair, DeskPublic, HandoverError, Kid, Offered, TabletPublic, Waiting,
};
use crate::record::{Label, WallTime};
use crate::store::StoreError;

/// The inbox's file within the data folder.
const FILE: &str = "desk.sqlite";

/// One desk with its inbox and one scanner.
#[derive(Debug)]
pub struct Desk {
    inbox: Inbox,
    listener: Listener,
    /// The desk's keys, read once and again when a record asks for one that is not among them.
    keys: Vec<DeskKeyPair>,
    /// When each of them was retired.
    retired: Vec<Option<WallTime>>,
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

    /// Opens the desk whose inbox is on a server, which several desks may use at once.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn on_server(address: Address) -> Result<Self, DeskError> {
        Self::with(Inbox::on_server(address)?)
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
            retired: Vec::new(),
        };
        desk.read_keys()?;
        Ok(desk)
    }

    /// Its inbox.
    pub const fn inbox(&self) -> &Inbox {
        &self.inbox
    }

    /// The records begun of which pieces are still missing.
    pub fn waiting(&self) -> Vec<Waiting> {
        self.listener.waiting()
    }

    /// Whether something was typed that no answer was given to yet.
    pub fn is_within(&self) -> bool {
        self.listener.is_within()
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

    /// The key to give to tablets: of those not retired, the one made last.
    pub fn public(&self) -> Option<DeskPublic> {
        let mut newest_first = self.keys.iter().zip(&self.retired).rev();
        newest_first
            .find(|(_, retired)| retired.is_none())
            .map(|(pair, _)| pair.public())
    }

    /// Retires the key whose id begins so. It goes on opening what was sealed to it, and is no
    /// longer given to tablets.
    ///
    /// # Errors
    /// [`DeskError::NoSuchKey`] unless exactly one id begins so; [`DeskError::OnlyKey`] where no
    /// other would be left to give to tablets; as [`DeskError`].
    pub fn retire(&mut self, id: &str, now: WallTime) -> Result<DeskPublic, DeskError> {
        self.read_keys()?;
        let ids = self.keys.iter().map(|pair| pair.public().kid());
        let place = only_one(ids, id).ok_or_else(|| DeskError::NoSuchKey { id: id.to_owned() })?;
        let mut others = self.retired.iter().enumerate();
        if !others.any(|(at, retired)| at != place && retired.is_none()) {
            return Err(DeskError::OnlyKey);
        }
        let public = self.keys[place].public();
        self.inbox.retire(&public.kid(), now)?;
        self.read_keys()?;
        Ok(public)
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

    /// Strikes off the tablet of that name, or whose id begins so. Nothing is taken from it any
    /// more; its records stay.
    ///
    /// # Errors
    /// [`DeskError::NoSuchTablet`] unless exactly one enrolled tablet is meant; as [`DeskError`].
    pub fn strike_off(&self, which: &str, now: WallTime) -> Result<Tablet, DeskError> {
        let mut enrolled = self.inbox.tablets()?;
        enrolled.retain(|tablet| tablet.struck.is_none());
        let named = |tablet: &&Tablet| tablet.name.as_str() == which;
        let place = if enrolled.iter().filter(named).count() == 1 {
            enrolled.iter().position(|tablet| named(&tablet))
        } else {
            only_one(enrolled.iter().map(|tablet| tablet.public.kid()), which)
        };
        let place = place.ok_or_else(|| DeskError::NoSuchTablet {
            which: which.to_owned(),
        })?;
        let tablet = enrolled.swap_remove(place);
        self.inbox.strike_off(&tablet.public.kid(), now)?;
        Ok(Tablet {
            struck: Some(now),
            ..tablet
        })
    }

    /// Takes one whole scan, or the text of one picture's code.
    pub fn take(&mut self, text: &str, now: WallTime) -> Vec<Said> {
        let heard = self.listener.scan(text);
        self.answer(heard, now)
    }

    /// Hears what a scanner typed since the last time, whole or not.
    pub fn hear(&mut self, typed: &str, now: WallTime) -> Vec<Said> {
        let heard = self.listener.push_at(typed, Some(now.utc_ms()));
        self.answer(heard, now)
    }

    /// Nothing more is typed for now: tells what is left.
    pub fn finish(&mut self, now: WallTime) -> Vec<Said> {
        let heard = self.listener.finish();
        self.answer(heard, now)
    }

    fn answer(&mut self, heard: Vec<Heard>, now: WallTime) -> Vec<Said> {
        heard
            .into_iter()
            .map(|heard| match heard {
                Heard::Code(offered) => self.one(offered, now).unwrap_or_else(Said::Refused),
                Heard::Test(report) => Said::Test(report),
            })
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
                Some(known) => Said::TabletKnown(known),
                None => Said::TabletAsks(tablet),
            },
            Offered::Refused(error) => return Err(error.into()),
        })
    }

    /// Opens a sealed record and keeps it. The receipt is only given once it is on the disk.
    fn receive(&mut self, transfer: u32, sealed: &[u8], now: WallTime) -> Result<Said, DeskError> {
        if let Some(head) = self.inbox.by_digest(&Sha256::digest(sealed).into())? {
            return Ok(Said::Kept(super::Kept {
                head,
                again: true,
                key_retired: None,
            }));
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
        let opened = opened?;
        let mut kept = self.inbox.keep(transfer, sealed, &opened, now)?;
        let mut keys = self.keys.iter().zip(&self.retired);
        kept.key_retired = keys
            .find(|(pair, _)| pair.public().kid() == opened.desk)
            .and_then(|(_, retired)| *retired);
        Ok(Said::Kept(kept))
    }

    fn open_sealed(&self, sealed: &[u8]) -> Result<handover::Opened, DeskError> {
        if self.keys.is_empty() {
            return Err(DeskError::NotSetUp);
        }
        // A failure of the inbox, or a tablet struck off, must not read as "not enrolled".
        let failed = RefCell::new(None);
        let known = |kid: &Kid| match self.inbox.tablet(kid) {
            Ok(Some(Tablet {
                name,
                struck: Some(since),
                ..
            })) => {
                failed.replace(Some(DeskError::TabletStruckOff { name, since }));
                None
            }
            Ok(found) => found.map(|tablet| tablet.public),
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
        let keys = self.inbox.keys()?.into_iter();
        (self.keys, self.retired) = keys.map(|key| (key.pair, key.retired)).unzip();
        Ok(())
    }
}

/// Characters of an id that name it, at least: no slip of a finger means another.
const ID_CHARS_LEAST: usize = 4;

/// The place of the one id that begins so, in any case of its letters.
fn only_one(ids: impl Iterator<Item = Kid>, begin: &str) -> Option<usize> {
    let begin = begin.trim().to_lowercase();
    let mut places = ids
        .enumerate()
        .filter(|(_, id)| ID_CHARS_LEAST <= begin.len() && id.to_string().starts_with(&begin))
        .map(|(place, _)| place);
    places.next().filter(|_| places.next().is_none())
}
