//! The command line of `feedside-desk`.

use std::path::PathBuf;

use clap::{Parser, Subcommand};

use crate::desk::As;
use crate::words::Lang;

/// Receives feeding records from the ward's tablets by scanned codes.
#[derive(Debug, Parser)]
#[command(name = "feedside-desk", version)]
pub(super) struct Arguments {
    /// The folder of this desk's data.
    #[arg(long, global = true, value_name = "DIR")]
    pub data: Option<PathBuf>,
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
    /// Take what a keyboard scanner types on standard input.
    Listen,
    /// Take pictures of codes.
    Read {
        /// Pictures (PNG or JPEG), in any order, with one or several codes each.
        #[arg(required = true, value_name = "FILE")]
        files: Vec<PathBuf>,
    },
    /// List the records.
    Inbox,
    /// Show a record as a page.
    Show {
        /// The record's number in the inbox.
        id: i64,
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
    },
}

#[derive(Debug, Subcommand)]
pub(super) enum Keys {
    /// Make a new key for this desk.
    New,
    /// Show the key to type into a tablet.
    Show,
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
