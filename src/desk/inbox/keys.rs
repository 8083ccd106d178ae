//! The desk's key pairs and the enrolled tablets.

use rusqlite::{Row, params};

use super::Inbox;
use crate::desk::DeskError;
use crate::handover::{DeskKeyPair, Kid, TabletPublic};
use crate::record::{Label, WallTime};
use crate::store::row::Columns;

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
        self.connection
            .prepare_cached(include_str!("add_key.sql"))?
            .execute(params![
                pair.public().kid().as_bytes(),
                pair.secret_bytes().as_slice(),
                made.utc_ms(),
                made.offset_min(),
            ])?;
        Ok(())
    }

    /// All key pairs, oldest first.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn keys(&self) -> Result<Vec<OwnKey>, DeskError> {
        let mut statement = self.connection.prepare_cached(include_str!("keys.sql"))?;
        let mut rows = statement.query([])?;
        let mut keys = Vec::new();
        while let Some(row) = rows.next()? {
            let mut columns = Columns::new(row, 0);
            keys.push(OwnKey {
                pair: DeskKeyPair::from_random(columns.get()?)?,
                made: columns.wall()?,
                retired: columns.wall_or_none()?,
            });
        }
        Ok(keys)
    }

    /// Retires a key pair; one that is retired already stays as it was.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn retire(&self, kid: &Kid, now: WallTime) -> Result<(), DeskError> {
        self.connection
            .prepare_cached(include_str!("retire.sql"))?
            .execute(params![kid.as_bytes(), now.utc_ms(), now.offset_min()])?;
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
        self.connection
            .prepare_cached(include_str!("enrol.sql"))?
            .execute(params![
                tablet.kid().as_bytes(),
                tablet.to_bytes(),
                name.as_str(),
                now.utc_ms(),
                now.offset_min(),
            ])?;
        Ok(())
    }

    /// Strikes a tablet off: from now on nothing is taken from it. Its records stay.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn strike_off(&self, kid: &Kid, now: WallTime) -> Result<(), DeskError> {
        self.connection
            .prepare_cached(include_str!("strike_off.sql"))?
            .execute(params![kid.as_bytes(), now.utc_ms(), now.offset_min()])?;
        Ok(())
    }

    /// The tablet of a key id, if it is enrolled here or once was.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn tablet(&self, kid: &Kid) -> Result<Option<Tablet>, DeskError> {
        let mut statement = self.connection.prepare_cached(include_str!("tablet.sql"))?;
        let mut rows = statement.query([kid.as_bytes()])?;
        rows.next()?.map(read_tablet).transpose()
    }

    /// All tablets, the first enrolled first; those struck off are among them.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn tablets(&self) -> Result<Vec<Tablet>, DeskError> {
        let mut statement = self
            .connection
            .prepare_cached(include_str!("tablets.sql"))?;
        let mut rows = statement.query([])?;
        let mut tablets = Vec::new();
        while let Some(row) = rows.next()? {
            tablets.push(read_tablet(row)?);
        }
        Ok(tablets)
    }
}

fn read_tablet(row: &Row<'_>) -> Result<Tablet, DeskError> {
    let mut columns = Columns::new(row, 0);
    Ok(Tablet {
        public: TabletPublic::of(&columns.get()?)?,
        name: columns.label()?,
        enrolled: columns.wall()?,
        struck: columns.wall_or_none()?,
    })
}
