//! The tablet's program: arguments in, exit code out.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Parser, Subcommand};
use feedside::app::command::{self, BadInput};
use feedside::app::start;
use feedside::rehearse::{self, RehearseError};

/// The tool of the infant-feeding specialist at the bedside.
#[derive(Parser)]
#[command(version, about)]
struct Arguments {
    /// Keep the data in this folder.
    #[arg(long, value_name = "DIR", global = true)]
    data: Option<PathBuf>,
    /// Print the number of each entry once the screen shows it as safe.
    #[arg(long, hide = true)]
    say_safe: bool,
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand)]
enum Command {
    /// The whole job with no display, written to a folder.
    ///
    /// The folder is new or empty, or an earlier rehearsal's, which is replaced; any other is refused
    /// with exit code 2.
    Rehearse {
        /// Where to write.
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
        /// Which simulated feed.
        #[arg(long, default_value_t = 1)]
        seed: u64,
        /// Measure the figures, too.
        #[arg(long)]
        timings: bool,
    },
    /// Analyse one tap file.
    ///
    /// The lines count from the file's first row. All times of the JSON object are the file's own.
    Rhythm {
        /// A file with the header ms,what.
        file: PathBuf,
        /// Print one JSON object.
        #[arg(long)]
        json: bool,
    },
    /// Weight and output figures of one pair.
    Growth {
        /// A JSON file.
        file: PathBuf,
        /// Print one JSON object.
        #[arg(long)]
        json: bool,
    },
    /// Print every rule of the findings, for review by the ward's clinical lead.
    Rules {
        /// In this language.
        #[arg(long, value_name = "TAG", default_value = "en")]
        lang: String,
        /// With the thresholds of this ward policy.
        #[arg(long, value_name = "FILE")]
        policy: Option<PathBuf>,
    },
    /// Check a ward policy.
    CheckPolicy {
        /// A TOML file.
        file: PathBuf,
    },
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    match arguments.command {
        None => app(
            &arguments.data.unwrap_or_else(start::usual_data_folder),
            arguments.say_safe,
        ),
        Some(Command::Rehearse { out, seed, timings }) => {
            match rehearse::run(&out, seed, timings) {
                Ok(story) => say(&story),
                Err(error @ RehearseError::NotARehearsal { .. }) => refused(&format!(
                    "{error}. Nothing was touched; name a folder that is new or empty."
                )),
                Err(error) => failed(&format!("The rehearsal stopped: {error}.")),
            }
        }
        Some(Command::Rhythm { file, json }) => printed(command::taps(&file, json)),
        Some(Command::Growth { file, json }) => printed(command::pair(&file, json)),
        Some(Command::Rules { lang, policy }) => printed(command::rules(&lang, policy.as_deref())),
        Some(Command::CheckPolicy { file }) => printed(command::policy(&file)),
    }
}

fn app(data: &Path, say_safe: bool) -> ExitCode {
    match start::run(data, say_safe) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => failed(&error.told()),
    }
}

fn failed(why: &str) -> ExitCode {
    eprintln!("{why}");
    ExitCode::from(1)
}

fn refused(why: &str) -> ExitCode {
    eprintln!("{why}");
    ExitCode::from(2)
}

/// Prints a text. A reader that has enough, as `head`, closes the pipe: that is no failure.
fn say(text: &str) -> ExitCode {
    let _ = writeln!(std::io::stdout(), "{}", text.trim_end());
    ExitCode::SUCCESS
}

fn printed(told: Result<String, BadInput>) -> ExitCode {
    match told {
        Ok(text) => say(&text),
        Err(BadInput(why)) => refused(&why),
    }
}
