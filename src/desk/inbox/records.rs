//! Records in and out.

use rusqlite::{OptionalExtension, Row, params};

use super::Inbox;
use crate::desk::DeskError;
use crate::findings::Level;
use crate::handover::{Handed, Kid, Opened, cbor, deflate, sign, wire};
use crate::record::{Label, VisitId, WallTime};
use crate::store::door;
use crate::store::row::Columns;

/// A record's line in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecordHead {
    /// Its number here.
    pub number: i64,
    /// Its receipt, ten digits.
    pub receipt: String,
    /// When it arrived.
    pub arrived: WallTime,
    /// The visit.
    pub visit: VisitId,
    /// The visit that it amends.
    pub replaces: Option<VisitId>,
    /// When the visit began.
    pub began: WallTime,
    /// Bay and bed.
    pub bed: Label,
    /// Initials.
    pub initials: Label,
    /// Who was at the bedside.
    pub specialist: Label,
    /// Whether the visit was signed.
    pub is_signed: bool,
    /// How many findings ask for a medical review now.
    pub reviews_now: u32,
    /// What the tablet is called here.
    pub tablet: Label,
    /// The later record that stands for this one: an amendment, or another showing of it.
    pub replaced_by: Option<i64>,
}

/// What became of a record that was offered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Its line in the list, with number and receipt.
    pub head: RecordHead,
    /// Whether it was here before, so that nothing was stored.
    pub again: bool,
    /// Since when the key that it was sealed to is retired; nothing for one that was here before.
    pub key_retired: Option<WallTime>,
}

/// A record read back, its signature proved again.
#[derive(Debug, Clone)]
pub struct KeptRecord {
    /// Its line in the list.
    pub head: RecordHead,
    /// What was handed over.
    pub handed: Handed,
    /// The tablet that signed it.
    pub tablet: Kid,
    /// SHA-256 of the sealed record.
    pub sealed_sha256: [u8; 32],
    /// The transfer's number.
    pub transfer: u32,
    /// The COSE_Sign1.
    pub signed: Vec<u8>,
}

impl Inbox {
    /// Keeps an opened record and the sealed bytes it came in, in one transaction that is on the
    /// disk when this returns. One that is here already stays as it is.
    ///
    /// # Errors
    /// As [`DeskError`]; then nothing was stored.
    pub fn keep(
        &self,
        transfer: u32,
        sealed: &[u8],
        opened: &Opened,
        now: WallTime,
    ) -> Result<Kept, DeskError> {
        let transaction = door::begin(&self.connection)?;
        if let Some(head) = self.by_digest(&opened.sealed_sha256)? {
            return Ok(Kept {
                head,
                again: true,
                key_retired: None,
            });
        }
        let Handed { pair, visit, .. } = &opened.handed;
        let reviews_now = opened
            .handed
            .findings
            .iter()
            .filter(|it| it.level == Level::MedicalReviewNow.as_word())
            .count();
        transaction
            .prepare_cached(include_str!("keep.sql"))?
            .execute(params![
                opened.sealed_sha256,
                transfer,
                sealed,
                opened.signed,
                opened.receipt.digits(),
                opened.tablet.as_bytes(),
                opened.desk.as_bytes(),
                now.utc_ms(),
                now.offset_min(),
                visit.id.uuid().as_bytes(),
                visit.replaces.map(|id| id.uuid().into_bytes()),
                visit.began.utc_ms(),
                visit.began.offset_min(),
                pair.bed.as_str(),
                pair.initials.as_str(),
                visit.specialist.as_str(),
                visit.journal.is_signed(),
                i64::try_from(reviews_now).unwrap_or(i64::MAX),
            ])?;
        let number = transaction.last_insert_rowid();
        transaction.commit()?;
        let head = self.head(number)?;
        Ok(Kept {
            head,
            again: false,
            key_retired: None,
        })
    }

    /// The record of these sealed bytes, if it is here.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn by_digest(&self, sealed_sha256: &[u8; 32]) -> Result<Option<RecordHead>, DeskError> {
        let number: Option<i64> = self
            .connection
            .prepare_cached(include_str!("by_digest.sql"))?
            .query_row([sealed_sha256], |row| row.get(0))
            .optional()?;
        number.map(|number| self.head(number)).transpose()
    }

    /// The lines of all records, in the order in which they arrived.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn heads(&self) -> Result<Vec<RecordHead>, DeskError> {
        let mut statement = self.connection.prepare_cached(include_str!("heads.sql"))?;
        let mut rows = statement.query([])?;
        let mut heads = Vec::new();
        while let Some(row) = rows.next()? {
            heads.push(read(row)?);
        }
        Ok(heads)
    }

    /// One record's line.
    ///
    /// # Errors
    /// [`DeskError::NoSuchRecord`]; as [`DeskError`].
    pub fn head(&self, number: i64) -> Result<RecordHead, DeskError> {
        self.connection
            .prepare_cached(include_str!("head.sql"))?
            .query_row([number], |row| Ok(read(row)))
            .optional()?
            .ok_or(DeskError::NoSuchRecord { number })?
    }

    /// A whole record, its signature proved again against the tablet's enrolled key.
    ///
    /// # Errors
    /// [`DeskError::NoSuchRecord`]; as [`DeskError`] where the inbox was tampered with.
    pub fn record(&self, number: i64) -> Result<KeptRecord, DeskError> {
        let head = self.head(number)?;
        let (signed, desk, sealed_sha256, transfer): (Vec<u8>, [u8; 8], [u8; 32], u32) = self
            .connection
            .prepare_cached(include_str!("opened.sql"))?
            .query_row([number], |row| {
                Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?))
            })?;
        let tablets = self.tablets()?;
        let known = |kid: &Kid| {
            let public = tablets.iter().map(|tablet| tablet.public);
            public.into_iter().find(|public| public.kid() == *kid)
        };
        let (packed, tablet) = sign::verify(&signed, &known, &Kid::of(desk))?;
        let (handed, _) = wire::of_wire(cbor::from_bytes(&deflate::inflate(&packed)?)?)?;
        Ok(KeptRecord {
            head,
            handed,
            tablet,
            sealed_sha256,
            transfer,
            signed,
        })
    }
}

fn read(row: &Row<'_>) -> Result<RecordHead, DeskError> {
    let mut columns = Columns::new(row, 0);
    let number = columns.get()?;
    Ok(RecordHead {
        number,
        receipt: columns.get()?,
        arrived: columns.wall()?,
        visit: VisitId::of(columns.uuid()?),
        replaces: columns.uuid_or_none()?.map(VisitId::of),
        began: columns.wall()?,
        bed: columns.label()?,
        initials: columns.label()?,
        specialist: columns.label()?,
        is_signed: columns.get()?,
        reviews_now: columns.get()?,
        tablet: columns.label()?,
        replaced_by: Some(columns.get()?).filter(|last| number < *last),
    })
}
