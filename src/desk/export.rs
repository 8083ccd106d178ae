//! A kept record to what leaves the desk: FHIR, HL7 version 2, a table, the note, and the page to
//! be read.

use super::inbox::KeptRecord;
use super::table::{self, UnknownWord};
use super::{Desk, DeskError};
use crate::growth::{self, Checked};
use crate::record::fold;
use crate::report::codes::Codes;
use crate::report::{Computed, Facts, Handover, RuleVersions, csv, fhir, hl7, note, pdf, plain};
use crate::words::{Lang, Words};

/// The form in which a record leaves the desk.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, clap::ValueEnum)]
pub enum As {
    /// A FHIR R4 transaction bundle, as JSON.
    Fhir,
    /// A FHIR R4 document bundle, as JSON.
    FhirDocument,
    /// HL7 version 2.5.1 messages, ORU^R01: the baby's, then the mother's.
    Hl7v2,
    /// A table of facts, RFC 4180.
    Csv,
    /// The page to be read, as PDF.
    Pdf,
    /// The note: one line of plain text.
    Note,
}

/// The facts of a kept record, and the words in it that this version does not know.
pub fn facts(record: &KeptRecord) -> (Facts, Vec<UnknownWord>) {
    let handed = &record.handed;
    let folded = fold(&handed.visit.journal);
    let told = table::computed(handed);
    // Figures of weight and output do not travel: they are computed here, from what was seen, as
    // of the last thing seen, and carry this program's version.
    let rule_versions = RuleVersions {
        growth: growth::RULE_VERSION.to_owned(),
        ..RuleVersions::from(handed.rule_versions.clone())
    };
    let entries = handed.visit.journal.entries().iter().rev();
    let until = entries
        .map(|entry| (entry.wall, entry.what.is_after_signing()))
        .find(|(_, is_after)| !is_after)
        .map_or(handed.visit.began, |(wall, _)| wall);
    let figures = growth::of_checked(
        &handed.pair,
        &folded.weighings,
        &Checked::of(&folded.acknowledged),
        until,
    );
    let computed = Computed {
        rhythms: &told.rhythms,
        growth: Some(&figures),
        judged: &told.judged,
        policy: &handed.policy,
        rule_versions: &rule_versions,
    };
    let facts =
        Facts::of(&handed.pair, &handed.visit, &folded, &computed).with_handover(Handover {
            transfer: Some(record.transfer.to_string()),
            sealed_sha256: Some(record.sealed_sha256),
            tablet_key: Some(record.tablet.to_string()),
            cose_sign1: Some(record.signed.clone()),
        });
    let unknown = told.unknown.iter();
    let unknown = unknown.map(|it| (it.of.to_owned(), it.word.clone()));
    let facts = facts.with_unknown(unknown.collect());
    (facts, told.unknown)
}

impl Desk {
    /// A record in a form of text, in English.
    ///
    /// # Errors
    /// [`DeskError::NoSuchRecord`]; as [`DeskError`].
    pub fn export(&self, number: i64, form: As) -> Result<String, DeskError> {
        self.export_in(number, form, &Words::new(Lang::En))
    }

    /// As [`Desk::export`], with what is to be read by people in a language.
    ///
    /// # Errors
    /// As [`Desk::export`].
    pub fn export_in(&self, number: i64, form: As, words: &Words) -> Result<String, DeskError> {
        let bytes = self.export_with(number, form, &Codes::built_in(), words)?;
        String::from_utf8(bytes).map_err(|_| DeskError::NotLaidOut)
    }

    /// As [`Desk::export_in`], with a site's own table of codes, in any form.
    ///
    /// # Errors
    /// As [`Desk::export`].
    pub fn export_with(
        &self,
        number: i64,
        form: As,
        codes: &Codes,
        words: &Words,
    ) -> Result<Vec<u8>, DeskError> {
        let (facts, _) = facts(&self.inbox().record(number)?);
        let json = |value: serde_json::Value| {
            serde_json::to_string_pretty(&value)
                .map(|json| json + "\n")
                .map_err(|_| DeskError::NotLaidOut)
        };
        let text = match form {
            As::Pdf => {
                let pdf = pdf::write(&plain::printed(&facts, words));
                return pdf.map(|it| it.bytes).map_err(|_| DeskError::NotLaidOut);
            }
            As::Fhir => json(fhir::bundle_with(&facts, codes)),
            As::FhirDocument => json(fhir::document(&facts, codes, words)),
            As::Hl7v2 => Ok(hl7::messages(&facts, codes)
                .into_iter()
                .map(|it| it.text)
                .collect()),
            As::Csv => Ok(csv::write(&facts)),
            As::Note => Ok(note::text(&facts, words) + "\n"),
        };
        Ok(text?.into_bytes())
    }

    /// A record as a page to be read, and the words in it that this version does not know.
    ///
    /// # Errors
    /// As [`Desk::export`].
    pub fn page(
        &self,
        number: i64,
        words: &Words,
    ) -> Result<(String, Vec<UnknownWord>), DeskError> {
        let (facts, unknown) = facts(&self.inbox().record(number)?);
        Ok((plain::text(&facts, words), unknown))
    }
}
