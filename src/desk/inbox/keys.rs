//! The desk's key pairs and the enrolled tablets.

use rusqlite::{OptionalExtension, params};

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
}

/// A tablet enrolled at this desk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tablet {
    /// Its public key.
    pub public: TabletPublic,
    /// What it is called here.
    pub name: Label,
    /// When it was enrolled.
    pub enrolled: WallTime,
}

impl Inbox {
    /// Keeps a key pair; the one added last is the one to give to tablets.
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
            });
        }
        Ok(keys)
    }

    /// Enrols a tablet, or gives an enrolled one another name.
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

    /// The tablet of a key id, if it is enrolled.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn tablet(&self, kid: &Kid) -> Result<Option<(TabletPublic, Label)>, DeskError> {
        let found: Option<([u8; 32], String)> = self
            .connection
            .prepare_cached(include_str!("tablet.sql"))?
            .query_row([kid.as_bytes()], |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()?;
        found
            .map(|(public, name)| Ok((TabletPublic::of(&public)?, Label::new(&name)?)))
            .transpose()
    }

    /// All enrolled tablets, the first enrolled first.
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
            let mut columns = Columns::new(row, 0);
            tablets.push(Tablet {
                public: TabletPublic::of(&columns.get()?)?,
                name: columns.label()?,
                enrolled: columns.wall()?,
            });
        }
        Ok(tablets)
    }
}
