//! The command line of `feedside-desk`.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};

use crate::desk::As;
use crate::handover::VersionCap;
use crate::words::Lang;

/// Receives feeding records from the ward's tablets by scanned codes.
#[derive(Debug, Parser)]
#[command(name = "feedside-desk", version)]
pub(super) struct Arguments {
    /// The folder of this desk's data.
    #[arg(long, global = true, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// The inbox on a PostgreSQL server that several desks share, as
    /// postgres://user@host/database; otherwise a file in the data folder. A password is better
    /// given as PGPASSWORD.
    #[arg(long, global = true, value_name = "URL")]
    pub inbox: Option<String>,
    /// The language of the messages: en or de.
    #[arg(long, global = true, value_name = "LANG", value_parser = lang)]
    pub lang: Option<Lang>,
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

fn lang(tag: &str) -> Result<Lang, String> {
    Lang::from_tag(tag).ok_or_else(|| {
        let tags: Vec<&str> = Lang::ALL.iter().map(|lang| lang.tag()).collect();
        format!("one of {} was expected", tags.join(", "))
    })
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// The desk's keys and the enrolled tablets.
    Keys {
        #[command(subcommand)]
        what: Keys,
    },
    /// Take what a scanner types on standard input, or on a serial port.
    ///
    /// Ends with the input: with 0 where everything scanned is kept (a code that was read badly and
    /// then read whole is no failure), with 1 where anything was refused or a record was scanned in
    /// part, with 2 where something was scanned that is no code of ours.
    Listen {
        #[command(flatten)]
        line: Line,
    },
    /// Open the desk's window: scan, see receipts, search, read, print, export.
    Window {
        /// No sounds.
        #[arg(long)]
        quiet: bool,
    },
    /// Try a scanner: make a test code, and see what arrives.
    Scanner {
        #[command(subcommand)]
        what: Scanner,
    },
    /// Take pictures of codes.
    ///
    /// Ends with 0 where everything in them is kept, with 1 where anything was refused or a record is
    /// there in part, with 2 where a file is no picture, or shows no code, or none of ours.
    Read {
        /// Pictures (PNG or JPEG), in any order, with one or several codes each.
        #[arg(required = true, value_name = "FILE")]
        files: Vec<PathBuf>,
    },
    /// List the records.
    Inbox {
        /// Only those that have all these words: bed, initials, specialist, receipt, number, or
        /// the visit's day as 2026-03-04.
        #[arg(value_name = "WORD")]
        words: Vec<String>,
        /// At most so many, the newest first.
        #[arg(long, value_name = "COUNT")]
        last: Option<u32>,
    },
    /// Show a record as a page.
    Show {
        /// The record's number in the inbox.
        id: i64,
    },
    /// Send the signed records to another system, each once.
    Send(Send),
    /// List what waits to be sent, and what a person has to look at.
    Queue {
        /// Try these records again that were given up.
        #[arg(long, value_name = "NUMBER", num_args = 1..)]
        again: Vec<i64>,
    },
    /// Give a record out for another system.
    Export {
        /// The record's number in the inbox.
        id: i64,
        /// In which form.
        #[arg(long = "as", value_name = "FORM")]
        form: As,
        /// Into which file; otherwise to standard output.
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
        /// The site's own table of codes, in place of the built-in ones.
        #[arg(long, value_name = "FILE")]
        codes: Option<PathBuf>,
    },
}

/// Where the scanner types.
#[derive(Debug, clap::Args)]
pub(super) struct Line {
    /// The serial port of the scanner; without it, standard input.
    #[arg(long, value_name = "PORT")]
    pub serial: Option<PathBuf>,
    /// The speed of the serial port, in bits a second.
    #[arg(
        long,
        value_name = "BAUD",
        default_value_t = 9_600,
        requires = "serial"
    )]
    pub baud: u32,
}

#[derive(Debug, Subcommand)]
pub(super) enum Scanner {
    /// Show the test code, to be scanned from the screen or printed.
    Code {
        /// The largest version that codes shall have: 15, 20 or 25.
        #[arg(long, value_name = "VERSION", value_enum, default_value_t = Largest::V20)]
        largest: Largest,
        /// Into which file (PNG); otherwise in the terminal.
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// Scan the test code and see what arrived.
    Test {
        #[command(flatten)]
        line: Line,
    },
}

/// The largest version of a code.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(super) enum Largest {
    #[value(name = "15")]
    V15,
    #[value(name = "20")]
    V20,
    #[value(name = "25")]
    V25,
}

impl From<Largest> for VersionCap {
    fn from(largest: Largest) -> Self {
        match largest {
            Largest::V15 => Self::V15,
            Largest::V20 => Self::V20,
            Largest::V25 => Self::V25,
        }
    }
}

/// Where to and how.
#[derive(Debug, Args)]
pub(super) struct Send {
    #[command(flatten)]
    pub place: To,
    /// The site's own table of codes, in place of the built-in ones.
    #[arg(long, value_name = "FILE")]
    pub codes: Option<PathBuf>,
    /// A file with the bearer token for the FHIR server.
    #[arg(long, value_name = "FILE", conflicts_with = "mllp")]
    pub token: Option<PathBuf>,
    /// A file with the certificates to trust (PEM), instead of those that browsers do.
    #[arg(long, value_name = "FILE", conflicts_with = "mllp")]
    pub roots: Option<PathBuf>,
    /// Send over a network without TLS, where everybody on the way can read along.
    #[arg(long, conflicts_with = "mllp")]
    pub without_tls: bool,
    /// Go on for ever: what fails is tried again later, what arrives is sent.
    #[arg(long)]
    pub watch: bool,
}

/// One place.
#[derive(Debug, Args)]
#[group(required = true, multiple = false)]
pub(super) struct To {
    /// The base address of a FHIR server.
    #[arg(long, value_name = "URL")]
    pub fhir: Option<String>,
    /// An HL7 listener. MLLP has no TLS: only within a protected network.
    #[arg(long, value_name = "HOST:PORT")]
    pub mllp: Option<String>,
}

#[derive(Debug, Subcommand)]
pub(super) enum Keys {
    /// Make a new key for this desk.
    New,
    /// Show the key to type into a tablet.
    Show {
        /// Write it into a file, too: laid into a tablet's data folder as desk-key.txt, the tablet
        /// offers it in its settings, where its six words are compared.
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// List this desk's keys.
    List,
    /// Retire a key: it is no longer given to tablets, and still opens what they seal to it.
    Retire {
        /// The key's id, or the first four or more of its characters.
        id: String,
    },
    /// Enrol a tablet from its key code, scanned or in a picture.
    Enrol {
        /// Pictures of the key code; without any, scan it on standard input.
        #[arg(value_name = "FILE")]
        files: Vec<PathBuf>,
        /// What the tablet is called here.
        #[arg(long)]
        name: Option<String>,
        /// The six words as the tablet shows them; without them the words are asked about.
        #[arg(long)]
        words: Option<String>,
    },
    /// List the enrolled tablets, and those that were struck off.
    Tablets,
    /// Strike a tablet off, as when it is lost: nothing is taken from it any more.
    StrikeOff {
        /// The tablet's name, or its id or the first four or more of its characters.
        tablet: String,
    },
}
