//! What the desk answers to a scan. Data only; the words come in `tell`.

use super::DeskError;
use super::inbox::{Kept, Tablet};
use super::listen::ScannerReport;
use crate::handover::TabletPublic;

/// The answer to one scanned code.
#[derive(Debug)]
pub enum Said {
    /// A piece arrived; others are still missing.
    Piece {
        /// The piece's number, from 1.
        index: u8,
        /// How many there are.
        count: u8,
        /// Those still missing, rising.
        missing: Vec<u8>,
        /// Whether it had arrived before.
        again: bool,
    },
    /// The record is whole and safe here.
    Kept(Kept),
    /// A tablet asks to be enrolled. Nothing was changed.
    TabletAsks(TabletPublic),
    /// A tablet that is enrolled already, or was struck off, shows its key.
    TabletKnown(Tablet),
    /// The test code was scanned: what the scanner made of it.
    Test(Box<ScannerReport>),
    /// Refused. What is stored was not touched.
    Refused(DeskError),
}
