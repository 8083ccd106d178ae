//! Places outside that records are sent to, checked before anything goes there.

use std::net::IpAddr;

use crate::desk::DeskError;

/// Where records go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// The base address of a FHIR server.
    Fhir(String),
    /// The listener of an HL7 interface, as `host:port`.
    Mllp(String),
}

/// The longest address that is taken, in bytes; longer ones are no addresses of a ward.
const BYTES_MOST: usize = 300;

impl Place {
    /// A FHIR server. Without `plain`, one that is not this computer must be spoken to under TLS.
    ///
    /// # Errors
    /// [`DeskError::PlaceAddress`]; [`DeskError::PlaceNeedsTls`].
    pub fn fhir(url: &str, plain: bool) -> Result<Self, DeskError> {
        let (scheme, rest) = url.split_once("://").ok_or(DeskError::PlaceAddress)?;
        let host = rest.split('/').next().unwrap_or_default();
        // A password in an address would end up in lists and logs.
        let is_wrong = host.is_empty() || host.contains('@') || rest.contains(['?', '#']);
        if is_wrong || !is_sound(url) {
            return Err(DeskError::PlaceAddress);
        }
        match scheme {
            "https" => {}
            "http" if plain || is_here(host) => {}
            "http" => return Err(DeskError::PlaceNeedsTls),
            _ => return Err(DeskError::PlaceAddress),
        }
        Ok(Self::Fhir(url.trim_end_matches('/').to_owned()))
    }

    /// An HL7 listener, `host:port`. The protocol has no TLS of its own.
    ///
    /// # Errors
    /// [`DeskError::PlaceAddress`].
    pub fn mllp(address: &str) -> Result<Self, DeskError> {
        let (host, port) = address.rsplit_once(':').ok_or(DeskError::PlaceAddress)?;
        let port: u16 = port.parse().map_err(|_| DeskError::PlaceAddress)?;
        if host.is_empty() || port == 0 || host.contains(['/', '@']) || !is_sound(address) {
            return Err(DeskError::PlaceAddress);
        }
        Ok(Self::Mllp(address.to_owned()))
    }

    /// Its name in the queue, always the same.
    pub fn name(&self) -> String {
        match self {
            Self::Fhir(url) => url.clone(),
            Self::Mllp(address) => format!("mllp://{address}"),
        }
    }
}

fn is_sound(address: &str) -> bool {
    address.len() <= BYTES_MOST && address.chars().all(|sign| sign.is_ascii_graphic())
}

/// Whether a host, with or without a port, is this computer.
fn is_here(host: &str) -> bool {
    let name = match host.strip_prefix('[') {
        Some(rest) => rest.split(']').next().unwrap_or_default(),
        None => host.split(':').next().unwrap_or_default(),
    };
    let is_loopback = |ip: IpAddr| ip.is_loopback();
    name == "localhost" || name.parse().is_ok_and(is_loopback)
}
