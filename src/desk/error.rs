//! What can go wrong at the desk, and its words.

use crate::fault::{self, Explained};
use crate::handover::HandoverError;
use crate::record::{Label, RecordError, WallTime};
use crate::report::codes::CodesError;
use crate::store::StoreError;
use crate::words::{Arg, Words};

/// Why the desk refused or failed.
#[derive(Debug, thiserror::Error)]
pub enum DeskError {
    /// The inbox could not be opened, read or added to.
    #[error("the inbox: {0}")]
    Store(#[from] StoreError),
    /// A scan, a record or a key was refused.
    #[error("{0}")]
    Handover(#[from] HandoverError),
    /// A value was refused.
    #[error("{0}")]
    Record(#[from] RecordError),
    /// This desk has no key of its own yet, so no record can be for it.
    #[error("the desk has no key yet")]
    NotSetUp,
    /// The tablet that signed it was struck off.
    #[error("the tablet was struck off")]
    TabletStruckOff {
        /// What it was called here.
        name: Label,
        /// When it was struck off.
        since: WallTime,
    },
    /// No key, or more than one, has an id that begins so.
    #[error("not one key's id")]
    NoSuchKey {
        /// What was typed.
        id: String,
    },
    /// No other key would be left to give to tablets.
    #[error("the only key")]
    OnlyKey,
    /// No enrolled tablet, or more than one, is meant.
    #[error("not one enrolled tablet")]
    NoSuchTablet {
        /// What was typed.
        which: String,
    },
    /// No record of that number is here.
    #[error("there is no record {number}")]
    NoSuchRecord {
        /// The number asked for.
        number: i64,
    },
    /// A file cannot be read.
    #[error("a file cannot be read")]
    CannotRead {
        /// Its name.
        file: String,
    },
    /// A file is no picture.
    #[error("a file is no picture")]
    NotAPicture {
        /// Its name.
        file: String,
    },
    /// A picture has no code in it.
    #[error("no code was found")]
    NoCode {
        /// Its name.
        file: String,
    },
    /// A file cannot be written.
    #[error("a file cannot be written")]
    CannotWrite {
        /// Its name.
        file: String,
    },
    /// What was scanned is no tablet's key.
    #[error("not a tablet's key")]
    NoTabletKey,
    /// The six words that were typed are not those of the key.
    #[error("the words differ")]
    WordsDiffer,
    /// The person did not confirm the six words.
    #[error("not confirmed")]
    NotConfirmed,
    /// The system gave no random numbers.
    #[error("no random numbers")]
    NoRandom,
    /// The system's clock shows no possible time.
    #[error("no possible time")]
    NoClock,
    /// No folder for the data is known.
    #[error("no folder for the data")]
    NoFolder,
    /// This program was made without the window.
    #[error("no window")]
    NoWindow,
    /// There is no display to open the window on.
    #[error("no display")]
    NoDisplay,
    /// A serial port cannot be opened, or is none.
    #[error("the serial port cannot be used")]
    NoSerial {
        /// Its name.
        port: String,
    },
    /// The input ended before a test code was scanned.
    #[error("no test code")]
    NoTestCode,
    /// The input broke off.
    #[error("the input broke off")]
    Input,
    /// The address of the inbox's server cannot be used.
    #[error("no address of a server")]
    ServerAddress,
    /// The inbox's server cannot be reached, or the connection broke.
    #[error("the server cannot be reached")]
    ServerUnreachable,
    /// The inbox's server does not let this desk in.
    #[error("the server refused the log-in")]
    ServerLogin,
    /// The inbox's server failed in another way.
    #[error("the server failed")]
    ServerFailed,
    /// The address of a place to send to cannot be used.
    #[error("no address of a place")]
    PlaceAddress,
    /// A place that is not this computer would be spoken to without TLS.
    #[error("no TLS")]
    PlaceNeedsTls,
    /// The file of certificates holds none.
    #[error("no certificate")]
    NoCertificate,
    /// No record of that number was given up.
    #[error("record {number} was not given up")]
    NotGivenUp {
        /// The number asked for.
        number: i64,
    },
    /// The site's table of codes was refused.
    #[error("the codes: {0}")]
    Codes(#[from] CodesError),
    /// A record could not be laid out in the form asked for.
    #[error("the record could not be laid out")]
    NotLaidOut,
}

impl DeskError {
    /// What happened and what to do now.
    pub fn explained(&self, words: &Words) -> Explained {
        let (name, args): (_, Vec<(&str, Arg)>) = match self {
            Self::Store(error) => return fault::store(error, words),
            Self::Handover(error) => return fault::handover(error, words),
            Self::Record(error) => return fault::record(error, words),
            Self::NotSetUp => ("desk-not-set-up", vec![]),
            Self::TabletStruckOff { name, since } => (
                "desk-tablet-struck-off",
                vec![
                    ("name", name.as_str().into()),
                    ("since", words.date_time(since.local()).into()),
                ],
            ),
            Self::NoSuchKey { id } => ("desk-no-such-key", vec![("id", id.as_str().into())]),
            Self::OnlyKey => ("desk-only-key", vec![]),
            Self::NoSuchTablet { which } => (
                "desk-no-such-tablet",
                vec![("which", which.as_str().into())],
            ),
            Self::NoSuchRecord { number } => {
                ("desk-no-such-record", vec![("number", (*number).into())])
            }
            Self::CannotRead { file } => ("desk-cannot-read", vec![named(file)]),
            Self::NotAPicture { file } => ("desk-not-a-picture", vec![named(file)]),
            Self::NoCode { file } => ("desk-no-code", vec![named(file)]),
            Self::CannotWrite { file } => ("desk-cannot-write", vec![named(file)]),
            Self::NoTabletKey => ("desk-no-tablet-key", vec![]),
            Self::WordsDiffer => ("desk-words-differ", vec![]),
            Self::NotConfirmed => ("desk-not-confirmed", vec![]),
            Self::NoRandom => ("desk-no-random", vec![]),
            Self::NoClock => ("desk-no-clock", vec![]),
            Self::NoFolder => ("desk-no-folder", vec![]),
            Self::NoWindow => ("desk-no-window", vec![]),
            Self::NoDisplay => ("desk-no-display", vec![]),
            Self::NoSerial { port } => ("desk-no-serial", vec![("port", port.as_str().into())]),
            Self::NoTestCode => ("desk-no-test-code", vec![]),
            Self::Input => ("desk-input", vec![]),
            Self::ServerAddress => ("desk-server-address", vec![]),
            Self::ServerUnreachable => ("desk-server-unreachable", vec![]),
            Self::ServerLogin => ("desk-server-login", vec![]),
            Self::ServerFailed => ("desk-server-failed", vec![]),
            Self::PlaceAddress => ("desk-place-address", vec![]),
            Self::PlaceNeedsTls => ("desk-place-needs-tls", vec![]),
            Self::NoCertificate => ("desk-no-certificate", vec![]),
            Self::NotGivenUp { number } => {
                ("desk-not-given-up", vec![("number", (*number).into())])
            }
            Self::Codes(error) => codes(error),
            Self::NotLaidOut => ("desk-not-laid-out", vec![]),
        };
        Explained::of(name, &args, words)
    }
}

fn codes(error: &CodesError) -> (&'static str, Vec<(&'static str, Arg)>) {
    let at = |line: &usize| {
        let line = i64::try_from(*line).unwrap_or(i64::MAX);
        vec![("line", line.into())]
    };
    match error {
        CodesError::Header => ("desk-codes-header", vec![]),
        CodesError::Line { line } => ("desk-codes-line", at(line)),
        CodesError::NotOurs { line } => ("desk-codes-not-ours", at(line)),
        CodesError::Twice { line } => ("desk-codes-twice", at(line)),
        CodesError::TooLong => ("desk-codes-too-long", vec![]),
    }
}

fn named(file: &str) -> (&'static str, Arg) {
    ("file", file.into())
}
