//! Input with an end to waiting: a read that gives nothing for a while says so.

use std::io::{ErrorKind, Read, Result};
use std::sync::mpsc::{Receiver, RecvTimeoutError, sync_channel};
use std::time::Duration;

/// How long nothing may come before a read ends with [`ErrorKind::TimedOut`]. A scanner pauses for
/// milliseconds between characters, so a code that stops for this long was cut. Common practice: one
/// to two seconds.
pub const PATIENCE: Duration = Duration::from_secs(2);

/// Bytes taken at once.
const CHUNK_BYTES: usize = 4_096;
/// Chunks that may wait to be read; a scanner fills one in seconds.
const CHUNKS_MOST: usize = 64;

/// Reads from something that may be silent for long. The reading itself goes on in a thread of its
/// own, which begins with the first read and ends with the input or the program.
pub struct Patient {
    from: Option<Box<dyn Read + Send>>,
    chunks: Option<Receiver<Result<Vec<u8>>>>,
    /// What came and was not taken yet.
    left: Vec<u8>,
}

impl Patient {
    /// Reads from this, once it is read from.
    pub fn new(from: impl Read + Send + 'static) -> Self {
        Self {
            from: Some(Box::new(from)),
            chunks: None,
            left: Vec::new(),
        }
    }

    fn begin(&mut self) {
        let Some(mut from) = self.from.take() else {
            return;
        };
        let (send, chunks) = sync_channel(CHUNKS_MOST);
        self.chunks = Some(chunks);
        std::thread::spawn(move || {
            let mut chunk = vec![0; CHUNK_BYTES];
            loop {
                let read = match from.read(&mut chunk) {
                    Ok(length) => Ok(chunk[..length].to_vec()),
                    Err(error) if error.kind() == ErrorKind::Interrupted => continue,
                    Err(error) => Err(error),
                };
                let is_last = read.as_ref().map_or(true, Vec::is_empty);
                if send.send(read).is_err() || is_last {
                    return;
                }
            }
        });
    }
}

impl Read for Patient {
    fn read(&mut self, into: &mut [u8]) -> Result<usize> {
        self.begin();
        if self.left.is_empty()
            && let Some(chunks) = &self.chunks
        {
            self.left = match chunks.recv_timeout(PATIENCE) {
                Ok(read) => read?,
                Err(RecvTimeoutError::Timeout) => return Err(ErrorKind::TimedOut.into()),
                Err(RecvTimeoutError::Disconnected) => Vec::new(),
            };
        }
        let length = into.len().min(self.left.len());
        into[..length].copy_from_slice(&self.left[..length]);
        self.left.drain(..length);
        Ok(length)
    }
}

impl std::fmt::Debug for Patient {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Patient")
    }
}
