//! A record to an HL7 listener over MLLP: one message after the other, each on a connection of its
//! own, each accepted by name before the next goes.
//!
//! Source: HL7, "Transport Specification: MLLP", release 1 (the block: 0x0B, the message, 0x1C
//! 0x0D), and HL7 v2.5.1 chapter 2 (`MSA`, `ERR`); from memory. Table 0357 as HL7 publishes it.

use std::io::{ErrorKind, Read, Write};
use std::net::{TcpStream, ToSocketAddrs};
use std::time::{Duration, Instant};

use super::{Failed, Patience, Sender};
use crate::desk::inbox::Trouble;
use crate::report::Facts;
use crate::report::codes::Codes;
use crate::report::hl7::{self, Message};

const START: u8 = 0x0b;
const END: [u8; 2] = [0x1c, 0x0d];

/// The longest answer that is read, in bytes: acknowledgements are far shorter. A choice of this
/// project.
const ANSWER_BYTES_MOST: usize = 64 * 1024;

/// The way to an HL7 listener.
pub struct MllpSender {
    address: String,
    patience: Patience,
}

impl MllpSender {
    /// The way to `host:port`.
    pub fn new(address: &str, patience: Patience) -> Self {
        Self {
            address: address.to_owned(),
            patience,
        }
    }

    fn one(&self, message: &Message) -> Result<(), Failed> {
        let mut stream = self.connect().map_err(|error| failed(&error))?;
        let mut block = Vec::with_capacity(message.text.len() + 3);
        block.push(START);
        block.extend(message.text.as_bytes());
        block.extend(END);
        let answer = exchange(&mut stream, &block, self.patience.answer)?;
        accepted(&answer, &message.control_id)
    }

    fn connect(&self) -> std::io::Result<TcpStream> {
        let mut last = std::io::Error::from(ErrorKind::NotFound);
        for address in self.address.to_socket_addrs()? {
            match TcpStream::connect_timeout(&address, self.patience.connect) {
                Ok(stream) => return Ok(stream),
                Err(error) => last = error,
            }
        }
        Err(last)
    }
}

impl Sender for MllpSender {
    fn send(&mut self, facts: &Facts, codes: &Codes) -> Result<(), Failed> {
        hl7::messages(facts, codes)
            .iter()
            .try_for_each(|message| self.one(message))
    }
}

/// Sends a block and reads the block that answers it.
fn exchange(stream: &mut TcpStream, block: &[u8], patience: Duration) -> Result<Vec<u8>, Failed> {
    // A listener that sends a byte now and then must not hold the desk for ever.
    let until = Instant::now() + patience;
    stream
        .set_write_timeout(Some(patience))
        .and_then(|()| stream.write_all(block))
        .map_err(|error| failed(&error))?;
    let mut answer = Vec::new();
    let mut chunk = [0; 4096];
    loop {
        let left = until.saturating_duration_since(Instant::now());
        if left.is_zero() {
            return Err(Failed::for_now(Trouble::Silent, None));
        }
        stream
            .set_read_timeout(Some(left))
            .map_err(|error| failed(&error))?;
        match stream.read(&mut chunk) {
            // Closed without an answer: it may or may not have taken the message.
            Ok(0) if answer.is_empty() => {
                return Err(Failed::for_now(Trouble::Unreachable, None));
            }
            Ok(0) => return Err(Failed::unclear(Trouble::Garbage, None)),
            Ok(length) => answer.extend(&chunk[..length]),
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) => return Err(failed(&error)),
        }
        if let Some(end) = answer.windows(2).position(|two| two == END) {
            answer.truncate(end);
            return match answer.iter().position(|byte| *byte == START) {
                Some(start) => Ok(answer.split_off(start + 1)),
                None => Err(Failed::unclear(Trouble::Garbage, None)),
            };
        }
        if ANSWER_BYTES_MOST < answer.len() {
            return Err(Failed::unclear(Trouble::Garbage, None));
        }
    }
}

fn failed(error: &std::io::Error) -> Failed {
    let trouble = match error.kind() {
        ErrorKind::TimedOut | ErrorKind::WouldBlock => Trouble::Silent,
        _ => Trouble::Unreachable,
    };
    Failed::for_now(trouble, None)
}

/// Whether an acknowledgement accepts the message of this id.
fn accepted(answer: &[u8], control_id: &str) -> Result<(), Failed> {
    const GARBAGE: Failed = Failed::unclear(Trouble::Garbage, None);
    let answer = String::from_utf8_lossy(answer);
    let header = answer.strip_prefix("MSH").ok_or(GARBAGE)?;
    let separator = header.chars().next().ok_or(GARBAGE)?;
    let part = header.chars().nth(1).ok_or(GARBAGE)?;
    let segment = |name: &str| -> Option<Vec<&str>> {
        answer
            .split(['\r', '\n'])
            .map(|line| line.split(separator).collect::<Vec<_>>())
            .find(|fields| fields[0] == name)
    };
    let msa = segment("MSA").ok_or(GARBAGE)?;
    let (Some(code), Some(of)) = (msa.get(1), msa.get(2)) else {
        return Err(GARBAGE);
    };
    // Of another message: it says nothing about this one.
    if of.trim() != control_id {
        return Err(GARBAGE);
    }
    match code.trim() {
        "AA" | "CA" => Ok(()),
        "AE" | "AR" | "CE" | "CR" => {
            let condition = segment("ERR").and_then(|err| {
                let field = err.get(3)?.split(part).next()?;
                field.trim().parse::<u16>().ok()
            });
            // Table 0357: 100 to 104 and 200 to 205 are about the message; 206 is a lock and 207
            // an error within. Systems differ in what they call an error and what a rejection, so
            // without a condition it is tried again for a while.
            Err(match condition {
                Some(100..=104 | 200..=205) => Failed::for_good(Trouble::Refused, condition),
                Some(206 | 207) => Failed::for_now(Trouble::Busy, condition),
                _ => Failed::unclear(Trouble::Busy, condition),
            })
        }
        _ => Err(GARBAGE),
    }
}
