//! `send` and `queue`: records to other systems, and what became of them.

use std::path::{Path, PathBuf};
use std::time::Duration;

use super::arguments::Send;
use super::records::codes_of;
use super::{Hand, REFUSED};
use crate::desk::inbox::{Counts, Delivery, Problem, Settled, State, Trouble};
use crate::desk::send::{FhirSender, MllpSender, Patience, Place, Sender, Tried};
use crate::desk::{Desk, DeskError};
use crate::record::WallTime;
use crate::report::phrase;
use crate::words::{Arg, Words};

/// How often the inbox is looked at for what is new or due, in a watch. A choice of this project.
const LOOK_EVERY: Duration = Duration::from_secs(15);

impl Hand<'_, '_> {
    pub(super) fn send(&mut self, desk: &Desk, how: Send) -> Result<(), DeskError> {
        let codes = codes_of(how.codes.as_deref())?;
        let patience = Patience::default();
        let (place, mut sender): (Place, Box<dyn Sender>) = match (how.place.fhir, how.place.mllp) {
            (Some(url), _) => {
                let place = Place::fhir(&url, how.without_tls)?;
                let token = how.token.map(read).transpose()?;
                let token = token.map(|it| String::from_utf8_lossy(&it).trim().to_owned());
                let roots = how.roots.map(read).transpose()?;
                let url = place.name();
                let sender = FhirSender::new(&url, token.as_deref(), roots.as_deref(), patience)?;
                (place, Box::new(sender))
            }
            (None, Some(address)) => {
                let place = Place::mllp(&address)?;
                (place, Box::new(MllpSender::new(&address, patience)))
            }
            (None, None) => return Err(DeskError::PlaceAddress),
        };
        loop {
            let clock = self.world.now;
            let now = || WallTime::of(clock()).map_err(|_| DeskError::NoClock);
            let told = &mut |tried: Tried| self.tried(tried);
            let counts = desk.send(&place, &mut *sender, &codes, &now, told)?;
            if !how.watch {
                return self.counted(&place, counts);
            }
            std::thread::sleep(LOOK_EVERY);
        }
    }

    pub(super) fn queue(&mut self, desk: &Desk, again: &[i64]) -> Result<(), DeskError> {
        for number in again {
            let now = self.now()?;
            if desk.inbox().try_again(*number, now)? == 0 {
                return Err(DeskError::NotGivenUp { number: *number });
            }
        }
        let all = desk.inbox().deliveries()?;
        if all.is_empty() {
            let none = self.words.say("desk-queue-none");
            self.line(&none)?;
        }
        for it in &all {
            let line = queue_line(it, &self.words);
            self.line(&line)?;
        }
        Ok(())
    }

    /// One try, told at once; no more of the record than its number.
    fn tried(&mut self, tried: Tried) -> Result<(), DeskError> {
        let number = ("number", tried.record.into());
        let line = match tried.how {
            Settled::Sent => self.words.say_with("desk-sent", &[number]),
            Settled::Again(problem, due_ms) => {
                let args = [
                    number,
                    ("why", why(problem, &self.words).into()),
                    ("due", due(due_ms, &self.words).into()),
                ];
                self.words.say_with("desk-sent-again", &args)
            }
            Settled::Dead(problem) => {
                let args = [number, ("why", why(problem, &self.words).into())];
                self.words.say_with("desk-sent-dead", &args)
            }
        };
        self.line(&line)
    }

    fn counted(&mut self, place: &Place, counts: Counts) -> Result<(), DeskError> {
        let number = |count: u64| Arg::from(i64::try_from(count).unwrap_or(i64::MAX));
        let args = [
            ("place", place.name().into()),
            ("sent", number(counts.sent)),
            ("waiting", number(counts.waiting)),
            ("dead", number(counts.dead)),
        ];
        let line = self.words.say_with("desk-sent-counts", &args);
        if 0 < counts.waiting + counts.dead {
            self.worst = self.worst.max(REFUSED);
        }
        self.line(&line)
    }
}

fn queue_line(it: &Delivery, words: &Words) -> String {
    let why = it.problem.map_or_else(
        || words.say("desk-queue-not-tried"),
        |problem| why(problem, words),
    );
    let args = [
        ("number", it.record.into()),
        ("place", it.place.as_str().into()),
        ("tries", it.tries.into()),
        ("why", why.into()),
        ("due", due(it.due_utc_ms, words).into()),
    ];
    match it.state {
        State::Dead => words.say_with("desk-queue-dead", &args),
        State::Waiting | State::Sent | State::Replaced => {
            words.say_with("desk-queue-waiting", &args)
        }
    }
}

/// Why a try failed, with the other side's number.
fn why(problem: Problem, words: &Words) -> String {
    let said = phrase::of::<Trouble>(words, "desk-trouble", problem.trouble);
    match problem.given {
        Some(given) => format!("{said} ({given})"),
        None => said,
    }
}

fn due(utc_ms: i64, words: &Words) -> String {
    let local = chrono::DateTime::from_timestamp_millis(utc_ms).unwrap_or_default();
    words.date_time(local.with_timezone(&chrono::Local).fixed_offset())
}

fn read(path: PathBuf) -> Result<Vec<u8>, DeskError> {
    std::fs::read(&path).map_err(|_| DeskError::CannotRead {
        file: name_of(&path),
    })
}

fn name_of(path: &Path) -> String {
    let file = path.file_name().unwrap_or(path.as_os_str());
    file.to_string_lossy().into_owned()
}
