//! The tablet's public key as a code that the desk scans.

use super::super::pieces::{ENROLMENT_VERSION_1, Piece};
use super::super::{Code, HandoverError, VersionCap, digits, qr};
use super::TabletPublic;

impl TabletPublic {
    /// The text of the code that enrols this tablet at a desk.
    pub fn to_code_text(self) -> String {
        let piece = Piece {
            version: ENROLMENT_VERSION_1,
            transfer: 0,
            index: digits::ENROLMENT,
            count: 0,
            payload: self.to_bytes().to_vec(),
        };
        digits::wrap(digits::ENROLMENT, &piece.to_bytes())
    }

    /// The code itself.
    ///
    /// # Errors
    /// Never for the fixed size of an enrolment.
    pub fn to_code(self) -> Result<Code, HandoverError> {
        qr::draw_digits(&self.to_code_text(), VersionCap::V20)
    }

    /// Reads what an enrolment code carries.
    pub(in super::super) fn of_enrolment(piece: &Piece) -> Result<Self, HandoverError> {
        let key: &[u8; 32] = piece
            .payload
            .as_slice()
            .try_into()
            .map_err(|_| HandoverError::CodeDamaged)?;
        Self::of(key)
    }
}
