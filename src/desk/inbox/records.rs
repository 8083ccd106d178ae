//! Records in and out.

use super::Inbox;
use super::base::{Cells, Value};
use super::search;
use crate::desk::DeskError;
use crate::findings::Level;
use crate::handover::{Handed, Kid, Opened, coding, sign};
use crate::record::{Label, VisitId, WallTime};
use crate::store::StoreError;

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
        let Handed { pair, visit, .. } = &opened.handed;
        let reviews_now = opened
            .handed
            .findings
            .iter()
            .filter(|it| it.level == Level::MedicalReviewNow.as_word())
            .count();
        let values = [
            (&opened.sealed_sha256).into(),
            transfer.into(),
            sealed.into(),
            opened.signed.as_slice().into(),
            opened.receipt.digits().as_str().into(),
            opened.tablet.as_bytes().into(),
            opened.desk.as_bytes().into(),
            now.utc_ms().into(),
            now.offset_min().into(),
            visit.id.uuid().as_bytes().into(),
            visit
                .replaces
                .map_or(Value::Null, |id| id.uuid().as_bytes().into()),
            visit.began.utc_ms().into(),
            visit.began.offset_min().into(),
            pair.bed.as_str().into(),
            pair.initials.as_str().into(),
            visit.specialist.as_str().into(),
            visit.journal.is_signed().into(),
            i64::try_from(reviews_now).unwrap_or(i64::MAX).into(),
        ];
        self.base.at_once(|| {
            let Some(mut row) = self.base.row(include_str!("keep.sql"), &values)? else {
                let head = self.by_digest(&opened.sealed_sha256)?;
                let head = head.ok_or(StoreError::Refused)?;
                return Ok(Kept {
                    head,
                    again: true,
                    key_retired: None,
                });
            };
            let number = row.whole()?;
            self.keep_version(number, &opened.handed)?;
            let head = self.head(number)?;
            self.base.change(
                include_str!("keep_words.sql"),
                &[head.number.into(), search::words_of(&head).as_str().into()],
            )?;
            Ok(Kept {
                head,
                again: false,
                key_retired: None,
            })
        })
    }

    /// The record of these sealed bytes, if it is here.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn by_digest(&self, sealed_sha256: &[u8; 32]) -> Result<Option<RecordHead>, DeskError> {
        let values = [sealed_sha256.into()];
        let found = self.base.row(include_str!("by_digest.sql"), &values)?;
        found.map(|mut row| self.head(row.whole()?)).transpose()
    }

    /// The lines of all records, in the order in which they arrived.
    ///
    /// # Errors
    /// As [`DeskError`].
    pub fn heads(&self) -> Result<Vec<RecordHead>, DeskError> {
        self.heads_where("ORDER BY r.number", &[])
    }

    /// One record's line.
    ///
    /// # Errors
    /// [`DeskError::NoSuchRecord`]; as [`DeskError`].
    pub fn head(&self, number: i64) -> Result<RecordHead, DeskError> {
        let found = self.heads_where("WHERE r.number = ?1", &[number.into()])?;
        let head = found.into_iter().next();
        head.ok_or(DeskError::NoSuchRecord { number })
    }

    /// The lines that fit a condition, in its order.
    pub(super) fn heads_where(
        &self,
        condition: &str,
        values: &[Value],
    ) -> Result<Vec<RecordHead>, DeskError> {
        let sql = format!("{}{condition}", include_str!("heads.sql"));
        let rows = self.base.rows(&sql, values)?;
        let found: Result<_, _> = rows.into_iter().map(read).collect();
        self.mark_replaced(found?)
    }

    /// A whole record, its signature proved again against the tablet's enrolled key.
    ///
    /// # Errors
    /// [`DeskError::NoSuchRecord`]; as [`DeskError`] where the inbox was tampered with.
    pub fn record(&self, number: i64) -> Result<KeptRecord, DeskError> {
        let head = self.head(number)?;
        let found = self
            .base
            .row(include_str!("opened.sql"), &[number.into()])?;
        let mut row = found.ok_or(DeskError::NoSuchRecord { number })?;
        let (signed, desk, sealed_sha256) = (row.bytes()?, row.array()?, row.array()?);
        let transfer = row.whole()?;
        let tablets = self.tablets()?;
        let known = |kid: &Kid| {
            let public = tablets.iter().map(|tablet| tablet.public);
            public.into_iter().find(|public| public.kid() == *kid)
        };
        let (packed, tablet) = sign::verify(&signed, &known, &Kid::of(desk))?;
        let handed = coding::unpack(&packed)?;
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

/// A line, its occasion, and how many records that has.
fn read(mut row: Cells) -> Result<(RecordHead, Option<[u8; 16]>, u32), DeskError> {
    let head = RecordHead {
        number: row.whole()?,
        receipt: row.text()?,
        arrived: row.wall()?,
        visit: VisitId::of(row.uuid()?),
        replaces: row.uuid_or_none()?.map(VisitId::of),
        began: row.wall()?,
        bed: row.label()?,
        initials: row.label()?,
        specialist: row.label()?,
        is_signed: row.yes()?,
        reviews_now: row.whole()?,
        tablet: row.label()?,
        replaced_by: None,
    };
    let occasion = row.uuid_or_none()?.map(uuid::Uuid::into_bytes);
    Ok((head, occasion, row.whole()?))
}
