//! Packed bytes to a COSE_Sign1 (RFC 9052) with Ed25519, and back; and its short form.
//!
//! The short form is what is sealed: the id of the tablet's key (8 bytes), the signature (64), the
//! payload. The rest of a COSE_Sign1 is the same in every record.
//! The tablet's key is named in the protected header. The desk's key id goes into the external
//! data, so that a desk cannot seal a record that it got for another desk. Nothing inside is
//! looked at before the signature is proven.

use coset::iana::Algorithm;
use coset::{
    CborSerializable, CoseSign1, CoseSign1Builder, Header, HeaderBuilder,
    RegisteredLabelWithPrivate,
};

use super::limit::SEALED_BYTES_MOST;
use super::{HandoverError, Kid, TabletKey, TabletPublic};

/// Bytes of a key's id, and of a signature (RFC 8032).
const KID_BYTES: usize = 8;
const SIGNATURE_BYTES: usize = 64;

/// What stands before the desk's key id in the external data.
const BOUND: &[u8] = b"feedside record 2";

/// Signs bytes for one desk.
///
/// # Errors
/// Never for bytes in memory; an error of the writer is handed on.
pub fn sign(payload: Vec<u8>, tablet: &TabletKey, desk: &Kid) -> Result<Vec<u8>, HandoverError> {
    CoseSign1Builder::new()
        .protected(header(&tablet.public().kid()))
        .payload(payload)
        .create_signature(&bound_to(desk), |bytes| tablet.sign(bytes))
        .build()
        .to_vec()
        .map_err(|_| HandoverError::NotReadable)
}

/// Proves the signature of an enrolled tablet, made for this desk, and gives the signed bytes.
///
/// # Errors
/// [`HandoverError::TooLarge`]; [`HandoverError::NotReadable`] for anything but the one form that
/// [`sign`] writes; [`HandoverError::TabletNotEnrolled`]; [`HandoverError::SignatureWrong`].
pub fn verify(
    signed: &[u8],
    tablets: &dyn Fn(&Kid) -> Option<TabletPublic>,
    desk: &Kid,
) -> Result<(Vec<u8>, Kid), HandoverError> {
    if SEALED_BYTES_MOST < signed.len() {
        return Err(HandoverError::TooLarge);
    }
    let message = CoseSign1::from_slice(signed).map_err(|_| HandoverError::NotReadable)?;
    let header = &message.protected.header;
    let kid: [u8; 8] = header
        .key_id
        .as_slice()
        .try_into()
        .map_err(|_| HandoverError::NotReadable)?;
    let kid = Kid::of(kid);
    let as_expected = *header == self::header(&kid)
        && header.alg == Some(RegisteredLabelWithPrivate::Assigned(Algorithm::Ed25519))
        && message.unprotected.is_empty()
        && message.clone().to_vec().is_ok_and(|again| again == signed);
    if !as_expected {
        return Err(HandoverError::NotReadable);
    }
    let tablet = tablets(&kid).ok_or(HandoverError::TabletNotEnrolled { tablet: kid })?;
    if tablet.kid() != kid {
        return Err(HandoverError::SignatureWrong);
    }
    message.verify_signature(&bound_to(desk), |signature, bytes| {
        if tablet.verifies(bytes, signature) {
            Ok(())
        } else {
            Err(HandoverError::SignatureWrong)
        }
    })?;
    let payload = message.payload.ok_or(HandoverError::NotReadable)?;
    Ok((payload, kid))
}

/// The short form of what [`sign`] wrote.
///
/// # Errors
/// [`HandoverError::NotReadable`] for anything else.
pub fn shorten(signed: &[u8]) -> Result<Vec<u8>, HandoverError> {
    let message = CoseSign1::from_slice(signed).map_err(|_| HandoverError::NotReadable)?;
    let payload = message.payload.ok_or(HandoverError::NotReadable)?;
    let kid = message.protected.header.key_id;
    let short = [kid, message.signature, payload].concat();
    if lengthen(&short).is_ok_and(|again| again == signed) {
        Ok(short)
    } else {
        Err(HandoverError::NotReadable)
    }
}

/// The COSE_Sign1 of a short form. Nothing is proven by it.
///
/// # Errors
/// [`HandoverError::NotReadable`] for fewer bytes than id and signature have.
pub fn lengthen(short: &[u8]) -> Result<Vec<u8>, HandoverError> {
    let split = short.split_first_chunk::<KID_BYTES>();
    let split = split.and_then(|(kid, rest)| Some((kid, rest.split_at_checked(SIGNATURE_BYTES)?)));
    let (kid, (signature, payload)) = split.ok_or(HandoverError::NotReadable)?;
    CoseSign1Builder::new()
        .protected(header(&Kid::of(*kid)))
        .payload(payload.to_vec())
        .signature(signature.to_vec())
        .build()
        .to_vec()
        .map_err(|_| HandoverError::NotReadable)
}

fn header(tablet: &Kid) -> Header {
    HeaderBuilder::new()
        .algorithm(Algorithm::Ed25519)
        .key_id(tablet.as_bytes().to_vec())
        .build()
}

fn bound_to(desk: &Kid) -> Vec<u8> {
    [BOUND, desk.as_bytes()].concat()
}
