//! An HL7 listener of the tests: keeps messages by their control id, and behaves as badly as it is
//! told, one message after the other.

use std::collections::{HashMap, VecDeque};
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::time::Duration;

/// What it does with a message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Does {
    /// Takes it and says so.
    Well,
    /// Closes before it has read anything.
    Drops,
    /// Takes it and closes without an answer.
    LosesTheAnswer,
    /// Takes it and answers too late.
    Dawdles,
    /// Takes it and answers a byte at a time.
    Dribbles,
    /// Answers with a code and a condition of table 0357; takes nothing.
    Says(&'static str, &'static str),
    /// Accepts another message than the one that came.
    AcceptsAnother,
    /// Answers what is no message.
    Babbles,
    /// Answers without an end.
    Floods,
}

#[derive(Default)]
pub struct Kept {
    /// Messages by control id, and how often each came.
    pub taken: HashMap<String, (String, u32)>,
    /// Control ids in the order in which they first came.
    pub order: Vec<String>,
    pub messages: usize,
    pub next: VecDeque<Does>,
}

pub struct Listener {
    pub address: String,
    pub kept: Arc<Mutex<Kept>>,
}

impl Listener {
    /// Starts it; it ends with the test program.
    pub fn start(does: &[Does]) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap().to_string();
        let kept = Arc::new(Mutex::new(Kept {
            next: does.iter().copied().collect(),
            ..Kept::default()
        }));
        let inside = Arc::clone(&kept);
        std::thread::spawn(move || {
            for stream in listener.incoming() {
                let _ = serve(&mut stream.unwrap(), &inside);
            }
        });
        Self { address, kept }
    }
}

fn serve(stream: &mut TcpStream, kept: &Mutex<Kept>) -> std::io::Result<()> {
    let does = {
        let mut kept = kept.lock().unwrap();
        kept.messages += 1;
        kept.next.pop_front().unwrap_or(Does::Well)
    };
    if does == Does::Drops {
        return Ok(());
    }
    let mut bytes = Vec::new();
    let mut chunk = [0; 8192];
    while !bytes.ends_with(&[0x1c, 0x0d]) {
        match stream.read(&mut chunk)? {
            0 => return Ok(()),
            read => bytes.extend(&chunk[..read]),
        }
    }
    assert_eq!(bytes[0], 0x0b);
    let message = String::from_utf8(bytes[1..bytes.len() - 2].to_vec()).unwrap();
    let id = message.split('|').nth(9).unwrap().to_owned();
    if matches!(
        does,
        Does::Well | Does::LosesTheAnswer | Does::Dawdles | Does::Dribbles
    ) {
        let mut kept = kept.lock().unwrap();
        if !kept.taken.contains_key(&id) {
            kept.order.push(id.clone());
        }
        let entry = kept.taken.entry(id.clone()).or_insert((message.clone(), 0));
        assert_eq!(entry.0, message, "the same message each time");
        entry.1 += 1;
    }
    let (code, of, condition) = match does {
        Does::Says(code, condition) => (code, id.as_str(), condition),
        Does::AcceptsAnother => ("AA", "another", ""),
        _ => ("AA", id.as_str(), ""),
    };
    let mut answer = format!(
        "MSH|^~\\&|FAR||FEEDSIDE||20260304||ACK^R01^ACK|1|P|2.5.1\rMSA|{code}|{of}|T. W. Bay 2\r"
    );
    if !condition.is_empty() {
        answer.push_str(&format!("ERR|||{condition}^x^HL70357|E\r"));
    }
    let block = [&[0x0b], answer.as_bytes(), &[0x1c, 0x0d]].concat();
    match does {
        Does::LosesTheAnswer => Ok(()),
        Does::Dawdles => {
            std::thread::sleep(Duration::from_millis(1_500));
            stream.write_all(&block)
        }
        Does::Dribbles => block.iter().try_for_each(|byte| {
            std::thread::sleep(Duration::from_micros(200));
            stream.write_all(&[*byte])
        }),
        Does::Babbles => stream.write_all(b"\x0bwho is there\x1c\x0d"),
        Does::Floods => loop {
            stream.write_all(&[b'x'; 4096])?;
        },
        _ => stream.write_all(&block),
    }
}
