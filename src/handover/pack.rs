//! The whole chain: a checked record to codes, and a sealed record back to checked values.

use sha2::{Digest, Sha256};

use super::{
    Code, DeskKeyPair, DeskPublic, Fresh, Handed, HandoverError, Kid, Receipt, TabletKey,
    TabletPublic, VersionCap, coding, digits, pieces, qr, read_back, seal, sign,
};

/// A record ready to be shown.
#[derive(Debug, Clone)]
pub struct Packed {
    /// The text of each code.
    pub pieces: Vec<String>,
    /// The codes, each read back once.
    pub codes: Vec<Code>,
    /// The transfer's number.
    pub transfer: u32,
    /// The number that the desk will show once the record is safe there.
    pub receipt: Receipt,
    /// The sealed record.
    pub sealed: Vec<u8>,
}

/// A record as the desk opened it.
#[derive(Debug, Clone)]
pub struct Opened {
    /// What was handed over.
    pub handed: Handed,
    /// The number to show once it is kept.
    pub receipt: Receipt,
    /// The tablet that signed it.
    pub tablet: Kid,
    /// The desk's key that it was sealed to.
    pub desk: Kid,
    /// SHA-256 of the sealed record.
    pub sealed_sha256: [u8; 32],
    /// The COSE_Sign1: proof of the tablet's signature, readable without the desk's key.
    pub signed: Vec<u8>,
}

/// Lays out, squeezes, signs, seals, cuts and draws a record. It is read back before it is given:
/// the layout before signing, and each drawn code.
///
/// # Errors
/// [`HandoverError::TooLarge`] for more than a transfer may have; [`HandoverError::KeyUnusable`];
/// [`HandoverError::NotReadable`] or [`HandoverError::ReadBackFailed`] where reading back gave
/// something else.
pub fn pack(
    handed: &Handed,
    tablet: &TabletKey,
    desk: &DeskPublic,
    fresh: &Fresh,
    cap: VersionCap,
) -> Result<Packed, HandoverError> {
    let signed = sign::sign(coding::pack(handed)?, tablet, &desk.kid())?;
    let (sealed, secret) = seal::seal(&sign::shorten(&signed)?, desk, &fresh.ephemeral_seed)?;

    let version = qr::version_for(sealed.len(), cap);
    let cut = pieces::cut(&sealed, fresh.transfer, qr::payload_most(version))?;
    let mut texts = Vec::with_capacity(cut.len());
    let mut codes = Vec::with_capacity(cut.len());
    for piece in cut {
        let text = digits::wrap(piece.index, &piece.to_bytes());
        let code = qr::draw_digits_at(&text, version)?;
        read_back::check(&code, &text, piece.index)?;
        texts.push(text);
        codes.push(code);
    }
    Ok(Packed {
        pieces: texts,
        codes,
        transfer: fresh.transfer,
        receipt: Receipt::of(&secret, &sealed),
        sealed,
    })
}

/// Opens a sealed record with the desk's keys, new and old, and the tablets enrolled there.
///
/// # Errors
/// Each step has its own, in this order: size and format version, layout, desk, seal; layout,
/// tablet, signature; unpacking; CBOR; wire version; checked values.
pub fn open(
    sealed: &[u8],
    desks: &[DeskKeyPair],
    tablets: &dyn Fn(&Kid) -> Option<TabletPublic>,
) -> Result<Opened, HandoverError> {
    let (short, desk, secret) = seal::open(sealed, desks)?;
    let signed = sign::lengthen(&short)?;
    let (packed, tablet) = sign::verify(&signed, tablets, &desk)?;
    let handed = coding::unpack(&packed)?;
    Ok(Opened {
        handed,
        receipt: Receipt::of(&secret, sealed),
        tablet,
        desk,
        sealed_sha256: Sha256::digest(sealed).into(),
        signed,
    })
}
