//! The trust that TLS begins with: the roots that browsers trust, or those of one file alone.
//!
//! Used for the inbox's server; the sender has its own way into the same library.

use std::sync::Arc;

use rustls::pki_types::CertificateDer;
use rustls::pki_types::pem::PemObject;
use rustls::{ClientConfig, RootCertStore};

/// The settings of a client; `None` if the file holds no certificate.
pub(super) fn client(roots: Option<&[u8]>) -> Option<ClientConfig> {
    let mut store = RootCertStore::empty();
    match roots {
        None => store.extend(webpki_roots::TLS_SERVER_ROOTS.iter().cloned()),
        Some(pem) => {
            for certificate in CertificateDer::pem_slice_iter(pem) {
                store.add(certificate.ok()?).ok()?;
            }
        }
    }
    if store.is_empty() {
        return None;
    }
    let provider = Arc::new(rustls::crypto::ring::default_provider());
    let builder = ClientConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()
        .ok()?;
    Some(builder.with_root_certificates(store).with_no_client_auth())
}
