//! Does what is asked of the desk, one thing after the other, on a thread of its own.
//!
//! Keys come faster than a disk writes: they wait here in order, never in the window. The clock is
//! read here, for each thing anew.

use std::path::PathBuf;
use std::sync::mpsc::{Sender, channel};
use std::thread;

use super::system::{Printer, write_privately};
use crate::desk::tell::unknown_lines;
use crate::desk::{As, Desk, DeskError, RecordHead, Said};
use crate::handover::{TabletPublic, Waiting};
use crate::record::{Label, WallTime};
use crate::report::codes::Codes;
use crate::words::Words;

/// The forms that a record can be written to a file in, in the order in which the window offers
/// them.
pub const FORMS: [As; 6] = [
    As::Pdf,
    As::Fhir,
    As::FhirDocument,
    As::Hl7v2,
    As::Csv,
    As::Note,
];

/// Something asked of the desk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Ask {
    /// Whether it is ready.
    Ready,
    /// The scanner typed this.
    Hear(String),
    /// The scanner types no more for now.
    Silence,
    /// The newest records with these words, at most so many.
    Search(String, u32),
    /// A record as a page.
    Page(i64),
    /// A record to a file.
    Export(i64, As),
    /// A record to the printer.
    Print(i64),
    /// A tablet whose six words are the same on both sides, and what it is called.
    Enrol(Box<TabletPublic>, Label),
}

/// The desk's answer.
#[derive(Debug)]
pub enum Told {
    /// It is ready.
    Ready {
        /// Whether it has a key of its own.
        has_key: bool,
    },
    /// What became of each scan, and what is missing now.
    Said(Vec<Said>, Vec<Waiting>),
    /// The records with these words.
    Heads(String, Vec<RecordHead>),
    /// A record's number, its page, and what of it is not known here.
    Page(i64, String, Vec<String>),
    /// A record lies in this file.
    Written(PathBuf),
    /// The printer took it.
    Printed,
    /// No printer can be reached from here; the page lies in this file.
    NoPrinter(PathBuf),
    /// A tablet is enrolled under this name.
    Enrolled(String),
    /// It was refused or failed.
    Failed(DeskError),
}

/// What the desk's work needs besides the desk.
pub struct Around {
    /// Where files for other systems go.
    pub folder: PathBuf,
    /// The language of what people read.
    pub words: Words,
    /// The wall clock; `None` if it shows no possible time.
    pub now: Box<dyn Fn() -> Option<WallTime> + Send>,
    /// The printer.
    pub printer: Printer,
}

/// Answers one thing.
pub fn answer(desk: &mut Desk, around: &Around, ask: Ask) -> Told {
    done(desk, around, ask).unwrap_or_else(Told::Failed)
}

fn done(desk: &mut Desk, around: &Around, ask: Ask) -> Result<Told, DeskError> {
    let now = || (around.now)().ok_or(DeskError::NoClock);
    Ok(match ask {
        Ask::Ready => Told::Ready {
            has_key: desk.public().is_some(),
        },
        Ask::Hear(typed) => {
            let said = desk.hear(&typed, now()?);
            Told::Said(said, desk.waiting())
        }
        Ask::Silence => {
            let said = desk.finish(now()?);
            Told::Said(said, desk.waiting())
        }
        Ask::Search(text, most) => {
            let heads = desk.inbox().search(&text, most)?;
            Told::Heads(text, heads)
        }
        Ask::Page(number) => {
            let (page, unknown) = desk.page(number, &around.words)?;
            Told::Page(number, page, unknown_lines(&unknown, &around.words))
        }
        Ask::Export(number, form) => Told::Written(written(desk, around, number, form)?),
        Ask::Print(number) => {
            let file = written(desk, around, number, As::Pdf)?;
            if (around.printer)(&file) {
                // The printer has its own copy now.
                let _ = std::fs::remove_file(&file);
                Told::Printed
            } else {
                Told::NoPrinter(file)
            }
        }
        Ask::Enrol(tablet, name) => {
            desk.enrol(*tablet, &name, now()?)?;
            Told::Enrolled(name.as_str().to_owned())
        }
    })
}

/// Writes a record to a file that only this account may read.
fn written(desk: &Desk, around: &Around, number: i64, form: As) -> Result<PathBuf, DeskError> {
    let bytes = desk.export_with(number, form, &Codes::built_in(), &around.words)?;
    let file = around.folder.join(file_name(number, form));
    match write_privately(&file, &bytes) {
        Ok(()) => Ok(file),
        Err(_) => Err(DeskError::CannotWrite {
            file: file.to_string_lossy().into_owned(),
        }),
    }
}

/// A file's name: nothing of a person stands in it.
fn file_name(number: i64, form: As) -> String {
    let ending = match form {
        As::Pdf => "pdf",
        As::Fhir => "fhir.json",
        As::FhirDocument => "document.json",
        As::Hl7v2 => "hl7",
        As::Csv => "csv",
        As::Note => "txt",
    };
    format!("record-{number}.{ending}")
}

/// Answers all that is asked from now on, in order, on a thread of its own, which ends when nobody
/// can ask any more. `hear` is called there.
pub fn start(mut desk: Desk, around: Around, hear: impl Fn(Told) + Send + 'static) -> Sender<Ask> {
    let (asks, asked) = channel();
    thread::spawn(move || {
        while let Ok(mut ask) = asked.recv() {
            // What was typed in the meantime is heard at once.
            let mut next = None;
            if let Ask::Hear(typed) = &mut ask {
                while let Ok(more) = asked.try_recv() {
                    match more {
                        Ask::Hear(more) => typed.push_str(&more),
                        other => {
                            next = Some(other);
                            break;
                        }
                    }
                }
            }
            for ask in [Some(ask), next].into_iter().flatten() {
                hear(answer(&mut desk, &around, ask));
            }
        }
    });
    asks
}
