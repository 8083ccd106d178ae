//! A FHIR server of the tests: keeps what conditional creates and updates make, and behaves as badly
//! as it is told, one request after the other.
//!
//! Rules: FHIR R4, RESTful API, conditional create (`ifNoneExist`: nothing is made where one exists)
//! and conditional update; from memory.

use std::collections::{HashMap, VecDeque};
use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use serde_json::{Value, json};

/// What it does with a request.
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
    /// Answers with a status and an error that quotes the record; takes nothing.
    Says(u16),
    /// Answers 200 with something else.
    Babbles,
    /// Answers what is not HTTP.
    Screams,
    /// Answers that it did all but one entry.
    LeavesOneOut,
    /// Answers that one entry failed.
    FailsOne,
    /// Sends the sender elsewhere.
    Redirects,
}

#[derive(Default)]
pub struct Kept {
    /// What is there, by kind and identifier, and how often it was made.
    pub made: HashMap<String, (Value, u32)>,
    /// The kinds in the order in which they were written, with their status.
    pub written: Vec<(String, String)>,
    pub requests: usize,
    pub headers: String,
    pub next: VecDeque<Does>,
}

impl Kept {
    pub fn of_kind(&self, kind: &str) -> Vec<&(Value, u32)> {
        let all = self.made.values();
        all.filter(|it| it.0["resourceType"] == kind).collect()
    }
}

pub struct Server {
    pub url: String,
    pub kept: Arc<Mutex<Kept>>,
}

impl Server {
    /// Starts it; it ends with the test program.
    pub fn start(does: &[Does]) -> Self {
        Self::over(does, "http://127.0.0.1", |stream| Some(Box::new(stream)))
    }

    /// Starts it behind a layer.
    pub fn over(
        does: &[Does],
        scheme_and_host: &str,
        layer: impl Fn(TcpStream) -> Option<Box<dyn ReadWrite>> + Send + 'static,
    ) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let port = listener.local_addr().unwrap().port();
        let kept = Arc::new(Mutex::new(Kept {
            next: does.iter().copied().collect(),
            ..Kept::default()
        }));
        let inside = Arc::clone(&kept);
        std::thread::spawn(move || {
            for stream in listener.incoming() {
                if let Some(mut stream) = layer(stream.unwrap()) {
                    let _ = serve(&mut *stream, &inside);
                }
            }
        });
        Self {
            url: format!("{scheme_and_host}:{port}/fhir"),
            kept,
        }
    }
}

pub trait ReadWrite: Read + Write {}
impl<T: Read + Write> ReadWrite for T {}

fn serve(stream: &mut dyn ReadWrite, kept: &Mutex<Kept>) -> std::io::Result<()> {
    let does = {
        let mut kept = kept.lock().unwrap();
        kept.requests += 1;
        kept.next.pop_front().unwrap_or(Does::Well)
    };
    if does == Does::Drops {
        return Ok(());
    }
    let (headers, body) = request(stream)?;
    let bundle: Value = serde_json::from_slice(&body).unwrap();
    kept.lock().unwrap().headers = headers;
    let takes = matches!(does, Does::Well | Does::LosesTheAnswer | Does::Dawdles);
    let mut answer = if takes {
        take(&bundle, &mut kept.lock().unwrap())
    } else {
        json!({
            "resourceType": "Bundle",
            "type": "transaction-response",
            "entry": bundle["entry"].as_array().unwrap().iter()
                .map(|_| json!({ "response": { "status": "200" } })).collect::<Vec<_>>(),
        })
    };
    match does {
        Does::LosesTheAnswer => return Ok(()),
        Does::Dawdles => std::thread::sleep(Duration::from_millis(1_500)),
        Does::Screams => return stream.write_all(b"\x00\xff\r\nno\r\n\r\n"),
        Does::Babbles => answer = json!({ "hello": "T. W." }),
        Does::LeavesOneOut => {
            answer["entry"].as_array_mut().unwrap().pop();
        }
        Does::FailsOne => answer["entry"][0]["response"]["status"] = "422 no".into(),
        _ => {}
    }
    let (status, more) = match does {
        Does::Says(status) => {
            answer = json!({ "resourceType": "OperationOutcome", "quotes": "T. W. Bay 2 bed 4" });
            (status, String::new())
        }
        Does::Redirects => (307, "Location: http://127.0.0.1:9/\r\n".to_owned()),
        _ => (200, String::new()),
    };
    let body = answer.to_string();
    let length = body.len();
    write!(
        stream,
        "HTTP/1.1 {status} x\r\nContent-Type: application/fhir+json\r\n{more}\
         Content-Length: {length}\r\nConnection: close\r\n\r\n{body}"
    )?;
    stream.flush()
}

fn request(stream: &mut dyn ReadWrite) -> std::io::Result<(String, Vec<u8>)> {
    let mut bytes = Vec::new();
    let mut chunk = [0; 8192];
    loop {
        if let Some(end) = bytes.windows(4).position(|four| four == b"\r\n\r\n") {
            let headers = String::from_utf8_lossy(&bytes[..end]).to_lowercase();
            let length: usize = headers
                .lines()
                .find_map(|line| line.strip_prefix("content-length:"))
                .map_or(0, |it| it.trim().parse().unwrap());
            if end + 4 + length <= bytes.len() {
                return Ok((headers, bytes[end + 4..].to_vec()));
            }
        }
        match stream.read(&mut chunk)? {
            0 => return Err(std::io::ErrorKind::UnexpectedEof.into()),
            read => bytes.extend(&chunk[..read]),
        }
    }
}

fn take(bundle: &Value, kept: &mut Kept) -> Value {
    assert_eq!(bundle["type"], "transaction");
    let mut done = Vec::new();
    for entry in bundle["entry"].as_array().unwrap() {
        let (request, resource) = (&entry["request"], &entry["resource"]);
        let kind = resource["resourceType"].as_str().unwrap();
        let is_create = request["method"] == "POST";
        let key = match request["ifNoneExist"].as_str() {
            Some(search) if is_create => format!("{kind}?{search}"),
            _ => request["url"].as_str().unwrap().to_owned(),
        };
        let is_new = !kept.made.contains_key(&key);
        if is_new || !is_create {
            let status = resource["status"].as_str().unwrap_or_default().to_owned();
            kept.written.push((kind.to_owned(), status));
            let before = kept.made.get(&key).map_or(0, |it| it.1);
            let made = before + u32::from(is_new);
            kept.made.insert(key, (resource.clone(), made));
        }
        let status = if is_new { "201 Created" } else { "200 OK" };
        done.push(json!({ "response": { "status": status } }));
    }
    json!({ "resourceType": "Bundle", "type": "transaction-response", "entry": done })
}
