//! Signed bytes to a sealed record for one desk, and back: HPKE in base mode (RFC 9180) with
//! X25519, HKDF-SHA256 and ChaCha20-Poly1305.
//!
//! A sealed record is one byte of format version, the id of the desk's key (8 bytes), the
//! encapsulated key (32), and the ciphertext. The seal also covers the COSE Enc_structure (RFC
//! 9052) that a COSE_Encrypt0 with these values would have; what is the same in every record is not
//! sent. The COSE numbers for HPKE are still a draft (draft-ietf-cose-hpke), and the version byte
//! lets them change.

use std::convert::Infallible;

use hpke::aead::ChaCha20Poly1305;
use hpke::kdf::HkdfSha256;
use hpke::kem::X25519HkdfSha256;
use hpke::{Deserializable, OpModeR, OpModeS, Serializable};
use minicbor::Encoder;
use rand::SeedableRng;
use rand::rand_core::{TryCryptoRng, TryRng};
use rand_chacha::ChaCha20Rng;

use super::limit::SEALED_BYTES_MOST;
use super::{DeskKeyPair, DeskPublic, HandoverError, Kid};

/// The format version, the first byte of a sealed record.
pub const SEAL_VERSION: u8 = 2;

/// COSE header parameters: algorithm and key id (RFC 9052, 3.1).
const ALG: i64 = 1;
const KEY_ID: i64 = 4;
/// HPKE-4 of draft-ietf-cose-hpke: X25519, HKDF-SHA256, ChaCha20-Poly1305.
const HPKE_4: i64 = 42;
/// What HPKE calls `info`.
const INFO: &[u8] = b"feedside record";

type EncappedKey = <X25519HkdfSha256 as hpke::Kem>::EncappedKey;

/// Bytes of the receipt's secret.
const SECRET_BYTES: usize = 16;
/// What the receipt's secret is exported for (RFC 9180, 5.3).
const RECEIPT: &[u8] = b"feedside receipt";

/// The secret that the receipt is made from: both ends of the seal know it, nobody else.
pub type ReceiptSecret = zeroize::Zeroizing<[u8; SECRET_BYTES]>;

/// Seals bytes to a desk; the one-time key is derived from the seed. With them the secret that the
/// receipt is made from.
///
/// # Errors
/// [`HandoverError::KeyUnusable`] for a desk key that gives no secret.
pub fn seal(
    signed: &[u8],
    desk: &DeskPublic,
    ephemeral_seed: &[u8; 32],
) -> Result<(Vec<u8>, ReceiptSecret), HandoverError> {
    let protected = protected(&desk.kid());
    let aad = enc_structure(&protected);
    let (encapsulated, mut context) = sender(desk, ephemeral_seed, INFO)?;
    let unusable = |_| HandoverError::KeyUnusable;
    let ciphertext = context.seal(signed, &aad).map_err(unusable)?;
    let mut secret = ReceiptSecret::default();
    context
        .export(RECEIPT, secret.as_mut_slice())
        .map_err(unusable)?;
    let sealed = [
        &[SEAL_VERSION],
        desk.kid().as_bytes().as_slice(),
        &encapsulated,
        &ciphertext,
    ]
    .concat();
    Ok((sealed, secret))
}

/// Opens a sealed record with whichever of the desk's keys it was sealed to: the signed bytes, the
/// key's id, and the secret that the receipt is made from.
///
/// # Errors
/// [`HandoverError::TooLarge`]; [`HandoverError::UnknownVersion`]; [`HandoverError::NotReadable`]
/// for another layout; [`HandoverError::NotForThisDesk`]; [`HandoverError::Altered`].
pub fn open(
    sealed: &[u8],
    desks: &[DeskKeyPair],
) -> Result<(Vec<u8>, Kid, ReceiptSecret), HandoverError> {
    if SEALED_BYTES_MOST < sealed.len() {
        return Err(HandoverError::TooLarge);
    }
    match sealed.first() {
        Some(&SEAL_VERSION) => {}
        Some(&found) => return Err(HandoverError::UnknownVersion { found }),
        None => return Err(HandoverError::NotReadable),
    }
    let parts = parse(&sealed[1..]).ok_or(HandoverError::NotReadable)?;
    let protected = protected(&parts.desk);
    let desk = desks
        .iter()
        .find(|desk| desk.public().kid() == parts.desk)
        .ok_or(HandoverError::NotForThisDesk { desk: parts.desk })?;
    let altered = |_| HandoverError::Altered;
    let mut context = receiver(desk, &parts.encapsulated, INFO)?;
    let signed = context
        .open(parts.ciphertext, &enc_structure(&protected))
        .map_err(altered)?;
    let mut secret = ReceiptSecret::default();
    context
        .export(RECEIPT, secret.as_mut_slice())
        .map_err(altered)?;
    Ok((signed, parts.desk, secret))
}

type Sender = hpke::aead::AeadCtxS<ChaCha20Poly1305, HkdfSha256, X25519HkdfSha256>;
type Receiver = hpke::aead::AeadCtxR<ChaCha20Poly1305, HkdfSha256, X25519HkdfSha256>;

fn sender(
    desk: &DeskPublic,
    ephemeral_seed: &[u8; 32],
    info: &[u8],
) -> Result<([u8; 32], Sender), HandoverError> {
    let mut seed = Seed::new(ephemeral_seed);
    let (encapsulated, context): (EncappedKey, Sender) =
        hpke::setup_sender_with_rng(&OpModeS::Base, desk.point(), info, &mut seed)
            .map_err(|_| HandoverError::KeyUnusable)?;
    let mut bytes = [0; 32];
    encapsulated.write_exact(&mut bytes);
    Ok((bytes, context))
}

fn receiver(
    desk: &DeskKeyPair,
    encapsulated: &[u8; 32],
    info: &[u8],
) -> Result<Receiver, HandoverError> {
    let encapsulated = EncappedKey::from_bytes(encapsulated).map_err(|_| HandoverError::Altered)?;
    hpke::setup_receiver(&OpModeR::Base, desk.secret(), &encapsulated, info)
        .map_err(|_| HandoverError::Altered)
}

/// HPKE alone: seals with any info and associated data; gives the encapsulated key and the
/// ciphertext.
///
/// # Errors
/// [`HandoverError::KeyUnusable`] for a desk key that gives no secret.
pub fn seal_with(
    desk: &DeskPublic,
    ephemeral_seed: &[u8; 32],
    info: &[u8],
    aad: &[u8],
    plaintext: &[u8],
) -> Result<([u8; 32], Vec<u8>), HandoverError> {
    let (encapsulated, mut context) = sender(desk, ephemeral_seed, info)?;
    let ciphertext = context
        .seal(plaintext, aad)
        .map_err(|_| HandoverError::KeyUnusable)?;
    Ok((encapsulated, ciphertext))
}

/// HPKE alone: opens with any info and associated data.
///
/// # Errors
/// [`HandoverError::Altered`] where key, info, associated data and ciphertext do not fit.
pub fn open_with(
    desk: &DeskKeyPair,
    encapsulated: &[u8; 32],
    info: &[u8],
    aad: &[u8],
    ciphertext: &[u8],
) -> Result<Vec<u8>, HandoverError> {
    receiver(desk, encapsulated, info)?
        .open(ciphertext, aad)
        .map_err(|_| HandoverError::Altered)
}

/// The protected header, as bytes.
fn protected(desk: &Kid) -> Vec<u8> {
    written(|encoder| {
        encoder.map(2)?.i64(ALG)?.i64(HPKE_4)?;
        encoder.i64(KEY_ID)?.bytes(desk.as_bytes())?.ok()
    })
}

/// What the seal also covers: the COSE Enc_structure, with the format version as external data.
fn enc_structure(protected: &[u8]) -> Vec<u8> {
    written(|encoder| {
        encoder.array(3)?.str("Encrypt0")?.bytes(protected)?;
        encoder.bytes(&[SEAL_VERSION])?.ok()
    })
}

type Written = Result<(), minicbor::encode::Error<Infallible>>;

/// Bytes written into memory, which cannot fail.
fn written(write: impl FnOnce(&mut Encoder<Vec<u8>>) -> Written) -> Vec<u8> {
    let mut encoder = Encoder::new(Vec::new());
    let outcome = write(&mut encoder);
    debug_assert!(outcome.is_ok());
    encoder.into_writer()
}

struct Parts<'b> {
    desk: Kid,
    encapsulated: [u8; 32],
    ciphertext: &'b [u8],
}

fn parse(bytes: &[u8]) -> Option<Parts<'_>> {
    let (desk, rest) = bytes.split_first_chunk()?;
    let (encapsulated, ciphertext) = rest.split_first_chunk()?;
    Some(Parts {
        desk: Kid::of(*desk),
        encapsulated: *encapsulated,
        ciphertext,
    })
}

/// Hands the library the seed as the input key material of the one-time key, as RFC 9180 derives
/// it; more than the seed is never asked for, and would come from a generator started with it.
struct Seed {
    seed: [u8; 32],
    used: usize,
    further: ChaCha20Rng,
}

impl Seed {
    fn new(seed: &[u8; 32]) -> Self {
        Self {
            seed: *seed,
            used: 0,
            further: ChaCha20Rng::from_seed(*seed),
        }
    }
}

impl Drop for Seed {
    fn drop(&mut self) {
        zeroize::Zeroize::zeroize(&mut self.seed);
    }
}

impl TryRng for Seed {
    type Error = Infallible;

    fn try_next_u32(&mut self) -> Result<u32, Infallible> {
        let mut bytes = [0; 4];
        self.try_fill_bytes(&mut bytes)?;
        Ok(u32::from_le_bytes(bytes))
    }

    fn try_next_u64(&mut self) -> Result<u64, Infallible> {
        let mut bytes = [0; 8];
        self.try_fill_bytes(&mut bytes)?;
        Ok(u64::from_le_bytes(bytes))
    }

    fn try_fill_bytes(&mut self, into: &mut [u8]) -> Result<(), Infallible> {
        let left = &self.seed[self.used..];
        let count = left.len().min(into.len());
        into[..count].copy_from_slice(&left[..count]);
        self.used += count;
        self.further.try_fill_bytes(&mut into[count..])
    }
}

impl TryCryptoRng for Seed {}
