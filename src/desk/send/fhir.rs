//! A record to a FHIR server: one transaction, all of it or nothing (FHIR R4, RESTful API,
//! transaction). Redirects are not followed and no proxy is asked: a record goes where it was told
//! to go, or nowhere.

use serde_json::Value;
use ureq::Agent;
use ureq::tls::{Certificate, PemItem, RootCerts, TlsConfig, parse_pem};

use super::{Failed, Patience, Sender};
use crate::desk::DeskError;
use crate::desk::inbox::Trouble;
use crate::report::Facts;
use crate::report::codes::Codes;
use crate::report::fhir;

/// The longest answer that is read, in bytes: a choice of this project.
const ANSWER_BYTES_MOST: u64 = 8 * 1024 * 1024;
/// The media type of FHIR as JSON (FHIR R4, Resource formats).
const MEDIA_TYPE: &str = "application/fhir+json";

/// The way to a FHIR server.
pub struct FhirSender {
    agent: Agent,
    url: String,
    /// The whole `Authorization` header.
    authorization: Option<String>,
}

impl FhirSender {
    /// The way to a server by its base address. `token` is a bearer token; `roots` are the
    /// certificates to trust, in PEM, instead of those that browsers do.
    ///
    /// # Errors
    /// [`DeskError::NoCertificate`].
    pub fn new(
        url: &str,
        token: Option<&str>,
        roots: Option<&[u8]>,
        patience: Patience,
    ) -> Result<Self, DeskError> {
        let mut tls = TlsConfig::builder();
        if let Some(pem) = roots {
            let certificates: Vec<Certificate<'static>> = parse_pem(pem)
                .filter_map(|item| match item {
                    Ok(PemItem::Certificate(it)) => Some(it),
                    _ => None,
                })
                .collect();
            if certificates.is_empty() {
                return Err(DeskError::NoCertificate);
            }
            tls = tls.root_certs(RootCerts::from(certificates.into_iter()));
        }
        let agent = Agent::config_builder()
            .tls_config(tls.build())
            .proxy(None)
            .max_redirects(0)
            .http_status_as_error(false)
            .timeout_connect(Some(patience.connect))
            .timeout_global(Some(patience.answer))
            .user_agent("feedside-desk")
            .build()
            .new_agent();
        Ok(Self {
            agent,
            url: url.to_owned(),
            authorization: token.map(|token| format!("Bearer {token}")),
        })
    }
}

impl Sender for FhirSender {
    fn send(&mut self, facts: &Facts, codes: &Codes) -> Result<(), Failed> {
        let bundle = fhir::bundle_with(facts, codes);
        let sent = bundle["entry"].as_array().map_or(0, Vec::len);
        let mut request = self
            .agent
            .post(&self.url)
            .header("Content-Type", MEDIA_TYPE)
            .header("Accept", MEDIA_TYPE)
            // The answer need not carry everything back.
            .header("Prefer", "return=minimal");
        if let Some(authorization) = &self.authorization {
            request = request.header("Authorization", authorization);
        }
        let mut answer = request
            .send(bundle.to_string().as_bytes())
            .map_err(|error| Failed::for_now(trouble(&error), None))?;
        let status = answer.status().as_u16();
        judged(status)?;
        let body = answer
            .body_mut()
            .with_config()
            .limit(ANSWER_BYTES_MOST)
            .read_to_vec()
            .map_err(|error| Failed::for_now(trouble(&error), Some(status)))?;
        if is_whole(&body, sent) {
            Ok(())
        } else {
            Err(Failed::unclear(Trouble::Garbage, Some(status)))
        }
    }
}

/// What a status says (RFC 9110, 15; RFC 6585, 4). Refused for good is what would be refused again:
/// the server read the bundle and does not take it. An error within the server (500) may be of this
/// bundle's making.
const fn judged(status: u16) -> Result<(), Failed> {
    match status {
        200 | 201 => Ok(()),
        400 | 406 | 409..=413 | 415 | 422 => Err(Failed::for_good(Trouble::Refused, Some(status))),
        401 | 403 | 407 => Err(Failed::for_now(Trouble::NotLetIn, Some(status))),
        408 | 425 | 429 | 502..=504 => Err(Failed::for_now(Trouble::Busy, Some(status))),
        500..=599 => Err(Failed::unclear(Trouble::Busy, Some(status))),
        _ => Err(Failed::unclear(Trouble::Garbage, Some(status))),
    }
}

fn trouble(error: &ureq::Error) -> Trouble {
    match error {
        ureq::Error::Timeout(_) => Trouble::Silent,
        ureq::Error::Io(error) if error.kind() == std::io::ErrorKind::TimedOut => Trouble::Silent,
        // The library wraps what TLS refuses.
        ureq::Error::Io(error) if error.get_ref().is_some_and(|it| it.is::<rustls::Error>()) => {
            Trouble::NotTrusted
        }
        ureq::Error::Io(_) | ureq::Error::HostNotFound | ureq::Error::ConnectionFailed => {
            Trouble::Unreachable
        }
        ureq::Error::Tls(_) | ureq::Error::Rustls(_) => Trouble::NotTrusted,
        _ => Trouble::Garbage,
    }
}

/// Whether an answer says that every entry was done: a `transaction-response` with as many entries,
/// each with a status of success (FHIR R4, Bundle, `entry.response.status`).
fn is_whole(body: &[u8], sent: usize) -> bool {
    let Ok(answer) = serde_json::from_slice::<Value>(body) else {
        return false;
    };
    let is_done = |entry: &Value| {
        let status = entry["response"]["status"].as_str();
        status.is_some_and(|it| it.starts_with('2') || it.starts_with("304"))
    };
    let entries = answer["entry"].as_array();
    answer["resourceType"] == "Bundle"
        && answer["type"] == "transaction-response"
        && entries.is_some_and(|all| all.len() == sent && all.iter().all(is_done))
}
