//! Keys of tablets and desks: what signs, what is sealed to, and the short ids that name them.
//!
//! Random bytes come in from outside; where keys are kept is not this room's matter. Secret halves
//! are wiped after use and never shown by `Debug`.

mod enrolment;
mod fingerprint;
mod typed;

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use hpke::kem::X25519HkdfSha256;
use hpke::{Deserializable, Kem, Serializable};
use sha2::{Digest, Sha256};
use zeroize::{Zeroize, Zeroizing};

use super::HandoverError;
pub use fingerprint::FINGERPRINT_WORDS;
pub use typed::{KEY_GROUP_CHARS, KEY_GROUPS};

type DeskPrivate = <X25519HkdfSha256 as Kem>::PrivateKey;
type DeskPoint = <X25519HkdfSha256 as Kem>::PublicKey;

/// The short id of a key: the first eight bytes of a digest of its public half.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Kid([u8; 8]);

impl Kid {
    /// An id from its bytes.
    pub const fn of(bytes: [u8; 8]) -> Self {
        Self(bytes)
    }

    /// Its bytes.
    pub const fn as_bytes(&self) -> &[u8; 8] {
        &self.0
    }

    fn of_key(kind: &str, public: &[u8; 32]) -> Self {
        let digest = Sha256::new()
            .chain_update(kind)
            .chain_update(public)
            .finalize();
        let mut id = [0; 8];
        id.copy_from_slice(&digest[..8]);
        Self(id)
    }
}

impl std::fmt::Display for Kid {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

/// What each kind of key puts before its public half when its id and its words are made.
const TABLET: &str = "feedside tablet key 1";
const DESK: &str = "feedside desk key 1";

/// The tablet's signing key (Ed25519).
pub struct TabletKey(SigningKey);

impl TabletKey {
    /// A key from 32 random bytes, or from the bytes that [`TabletKey::secret_bytes`] gave.
    pub fn from_random(mut bytes: [u8; 32]) -> Self {
        let key = Self(SigningKey::from_bytes(&bytes));
        bytes.zeroize();
        key
    }

    /// The secret, to be kept sealed.
    pub fn secret_bytes(&self) -> Zeroizing<[u8; 32]> {
        Zeroizing::new(self.0.to_bytes())
    }

    /// The public half.
    pub fn public(&self) -> TabletPublic {
        TabletPublic(self.0.verifying_key())
    }

    pub(super) fn sign(&self, bytes: &[u8]) -> Vec<u8> {
        self.0.sign(bytes).to_bytes().to_vec()
    }
}

impl std::fmt::Debug for TabletKey {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("TabletKey(…)")
    }
}

/// The public half of a tablet's key, enrolled at a desk.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TabletPublic(VerifyingKey);

impl TabletPublic {
    /// A public half from its 32 bytes.
    ///
    /// # Errors
    /// [`HandoverError::KeyUnusable`] for bytes that are no key, or a weak one.
    pub fn of(bytes: &[u8; 32]) -> Result<Self, HandoverError> {
        VerifyingKey::from_bytes(bytes)
            .ok()
            .filter(|key| !key.is_weak())
            .map(Self)
            .ok_or(HandoverError::KeyUnusable)
    }

    /// Its bytes.
    pub fn to_bytes(self) -> [u8; 32] {
        self.0.to_bytes()
    }

    /// Its id.
    pub fn kid(self) -> Kid {
        Kid::of_key(TABLET, &self.to_bytes())
    }

    /// Six short words to compare on both sides.
    pub fn fingerprint(self) -> [&'static str; FINGERPRINT_WORDS] {
        fingerprint::words_of(TABLET, &self.to_bytes())
    }

    pub(super) fn verifies(self, bytes: &[u8], signature: &[u8]) -> bool {
        Signature::from_slice(signature)
            .is_ok_and(|signature| self.0.verify_strict(bytes, &signature).is_ok())
    }
}

/// The desk's key pair (X25519), to which records are sealed.
pub struct DeskKeyPair {
    secret: DeskPrivate,
    public: DeskPublic,
}

impl DeskKeyPair {
    /// A pair from 32 random bytes, or from the bytes that [`DeskKeyPair::secret_bytes`] gave.
    ///
    /// # Errors
    /// [`HandoverError::KeyUnusable`] for bytes that make no key.
    pub fn from_random(mut bytes: [u8; 32]) -> Result<Self, HandoverError> {
        let secret = DeskPrivate::from_bytes(&bytes).map_err(|_| HandoverError::KeyUnusable);
        bytes.zeroize();
        let secret = secret?;
        let public = DeskPublic(X25519HkdfSha256::sk_to_pk(&secret));
        Ok(Self { secret, public })
    }

    /// The secret, to be kept sealed.
    pub fn secret_bytes(&self) -> Zeroizing<[u8; 32]> {
        let mut bytes = Zeroizing::new([0; 32]);
        self.secret.write_exact(&mut *bytes);
        bytes
    }

    /// The public half.
    pub fn public(&self) -> DeskPublic {
        self.public.clone()
    }

    pub(super) const fn secret(&self) -> &DeskPrivate {
        &self.secret
    }
}

impl std::fmt::Debug for DeskKeyPair {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("DeskKeyPair(…)")
    }
}

/// The public half of a desk's key.
#[derive(Clone)]
pub struct DeskPublic(DeskPoint);

impl DeskPublic {
    /// A public half from its 32 bytes.
    ///
    /// # Errors
    /// [`HandoverError::KeyUnusable`] for bytes that are no key, or one that gives no secret.
    pub fn of(bytes: &[u8; 32]) -> Result<Self, HandoverError> {
        let point = DeskPoint::from_bytes(bytes).map_err(|_| HandoverError::KeyUnusable)?;
        // A point of small order gives the same secret with any key; sealing to it once shows it.
        let key = Self(point);
        super::seal::seal_with(&key, &[0; 32], b"", b"", b"")?;
        Ok(key)
    }

    /// Its bytes.
    pub fn to_bytes(&self) -> [u8; 32] {
        let mut bytes = [0; 32];
        self.0.write_exact(&mut bytes);
        bytes
    }

    /// Its id.
    pub fn kid(&self) -> Kid {
        Kid::of_key(DESK, &self.to_bytes())
    }

    /// Six short words to compare on both sides.
    pub fn fingerprint(&self) -> [&'static str; FINGERPRINT_WORDS] {
        fingerprint::words_of(DESK, &self.to_bytes())
    }

    pub(super) const fn point(&self) -> &DeskPoint {
        &self.0
    }
}

impl PartialEq for DeskPublic {
    fn eq(&self, other: &Self) -> bool {
        self.to_bytes() == other.to_bytes()
    }
}

impl Eq for DeskPublic {}

impl std::fmt::Debug for DeskPublic {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "DeskPublic({})", self.kid())
    }
}
