//! The desk's key pairs and the enrolled tablets.

use super::Inbox;
use super::base::Cells;
use crate::desk::DeskError;
use crate::handover::{DeskKeyPair, Kid, TabletPublic};
use crate::record::{Label, WallTime};

/// A key pair of this desk.
#[derive(Debug)]
pub struct OwnKey {
    /// The pair.
    pub pair: DeskKeyPair,
    /// When it was made.
    pub made: WallTime,
    /// When it was retired: it is no longer given to tablets, and still opens what they seal to it.
    pub retired: Option<WallTime>,
}

/// A tablet enrolled at this desk, now or once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tablet {
    /// Its public key.
    pub public: TabletPublic,
    /// What it is called here.
    pub name: Label,
    /// When it was enrolled.
    pub enrolled: WallTime,
    /// When it was struck off: nothing is taken from it since.
    pub struck: Option<WallTime>,
}

impl Inbox {
    /// Keeps a key pair; of those not retired, the one added last is the one to give to tablets.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn add_key(&self, pair: &DeskKeyPair, made: WallTime) -> Result<(), DeskError> {
        let values = [
            pair.public().kid().as_bytes().into(),
            pair.secret_bytes().as_slice().into(),
            made.utc_ms().into(),
            made.offset_min().into(),
        ];
        self.base.change(include_str!("add_key.sql"), &values)?;
        Ok(())
    }

    /// All key pairs, oldest first.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn keys(&self) -> Result<Vec<OwnKey>, DeskError> {
        let rows = self.base.rows(include_str!("keys.sql"), &[])?;
        let key = |mut row: Cells| {
            Ok(OwnKey {
                pair: DeskKeyPair::from_random(row.array()?)?,
                made: row.wall()?,
                retired: row.wall_or_none()?,
            })
        };
        rows.into_iter().map(key).collect()
    }

    /// Retires a key pair; one that is retired already stays as it was.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn retire(&self, kid: &Kid, now: WallTime) -> Result<(), DeskError> {
        let values = [
            kid.as_bytes().into(),
            now.utc_ms().into(),
            now.offset_min().into(),
        ];
        self.base.change(include_str!("retire.sql"), &values)?;
        Ok(())
    }

    /// Enrols a tablet, also one that was struck off, or gives an enrolled one another name.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn enrol(
        &self,
        tablet: TabletPublic,
        name: &Label,
        now: WallTime,
    ) -> Result<(), DeskError> {
        let values = [
            tablet.kid().as_bytes().into(),
            (&tablet.to_bytes()).into(),
            name.as_str().into(),
            now.utc_ms().into(),
            now.offset_min().into(),
        ];
        self.base.change(include_str!("enrol.sql"), &values)?;
        Ok(())
    }

    /// Strikes a tablet off: from now on nothing is taken from it. Its records stay.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn strike_off(&self, kid: &Kid, now: WallTime) -> Result<(), DeskError> {
        let values = [
            kid.as_bytes().into(),
            now.utc_ms().into(),
            now.offset_min().into(),
        ];
        self.base.change(include_str!("strike_off.sql"), &values)?;
        Ok(())
    }

    /// The tablet of a key id, if it is enrolled here or once was.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn tablet(&self, kid: &Kid) -> Result<Option<Tablet>, DeskError> {
        let values = [kid.as_bytes().into()];
        let found = self.base.row(include_str!("tablet.sql"), &values)?;
        found.map(read_tablet).transpose()
    }

    /// All tablets, the first enrolled first; those struck off are among them.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn tablets(&self) -> Result<Vec<Tablet>, DeskError> {
        let rows = self.base.rows(include_str!("tablets.sql"), &[])?;
        rows.into_iter().map(read_tablet).collect()
    }
}

fn read_tablet(mut row: Cells) -> Result<Tablet, DeskError> {
    Ok(Tablet {
        public: TabletPublic::of(&row.array()?)?,
        name: row.label()?,
        enrolled: row.wall()?,
        struck: row.wall_or_none()?,
    })
}
