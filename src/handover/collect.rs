//! Scanned texts to whole sealed records: any order, any number of times, several records at once.
//!
//! Nothing is opened here. What is refused leaves all that was taken before as it was.

use std::collections::VecDeque;

use super::digits::Scanned;
use super::limit::{SEALED_BYTES_MOST, WAITING_MOST};
use super::pieces::{ENROLMENT_VERSION_1, HEADER_BYTES, PIECE_VERSION_1, Piece};
use super::{HandoverError, TabletPublic, digits};

/// What became of one scanned text.
#[derive(Clone, PartialEq, Eq)]
pub enum Offered {
    /// A piece was taken; others are still missing.
    Piece {
        /// The transfer's number.
        transfer: u32,
        /// The piece's number, from 1.
        index: u8,
        /// How many there are.
        count: u8,
        /// Those still missing, rising.
        missing: Vec<u8>,
    },
    /// The last missing piece was taken: this is the sealed record.
    Complete {
        /// The transfer's number.
        transfer: u32,
        /// The sealed record.
        sealed: Vec<u8>,
    },
    /// The same piece was taken before.
    Again {
        /// The transfer's number.
        transfer: u32,
        /// The piece's number, from 1.
        index: u8,
        /// How many there are.
        count: u8,
        /// Those still missing, rising.
        missing: Vec<u8>,
        /// The sealed record, where it is complete: its receipt can be shown again.
        sealed: Option<Vec<u8>>,
    },
    /// A tablet asks to be enrolled; people compare the words first.
    TabletEnrolment(TabletPublic),
    /// Refused, and why.
    Refused(HandoverError),
}

impl std::fmt::Debug for Offered {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Piece { index, count, .. } => write!(f, "Piece({index} of {count})"),
            Self::Complete { .. } => f.write_str("Complete(…)"),
            Self::Again { index, count, .. } => write!(f, "Again({index} of {count})"),
            Self::TabletEnrolment(tablet) => write!(f, "TabletEnrolment({})", tablet.kid()),
            Self::Refused(error) => write!(f, "Refused({error:?})"),
        }
    }
}

/// One record of which not all pieces are there yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiting {
    /// The transfer's number.
    pub transfer: u32,
    /// How many pieces there are.
    pub count: u8,
    /// Those still missing, rising.
    pub missing: Vec<u8>,
}

struct Partial {
    transfer: u32,
    pieces: Vec<Option<Vec<u8>>>,
}

impl Partial {
    fn missing(&self) -> Vec<u8> {
        (1u8..)
            .zip(&self.pieces)
            .filter(|(_, piece)| piece.is_none())
            .map(|(index, _)| index)
            .collect()
    }

    fn sealed(&self) -> Option<Vec<u8>> {
        let pieces: Option<Vec<&[u8]>> = self.pieces.iter().map(Option::as_deref).collect();
        pieces.map(|pieces| pieces.concat())
    }

    fn bytes(&self) -> usize {
        self.pieces.iter().flatten().map(Vec::len).sum()
    }
}

/// Collects pieces. Keeps the last few records, whole and half-read; older ones are let go.
#[derive(Default)]
pub struct Collector {
    /// The last one used stands at the back.
    partials: VecDeque<Partial>,
}

impl Collector {
    /// An empty one.
    pub const fn new() -> Self {
        Self {
            partials: VecDeque::new(),
        }
    }

    /// Takes one scanned text: the first code in it.
    pub fn offer(&mut self, text: &str) -> Offered {
        self.offer_first(text).0
    }

    /// Takes the first code in a text if it is whole and sound; otherwise the text may go on.
    pub fn offer_whole(&mut self, text: &str) -> Option<Offered> {
        let (piece, _) = piece_in(&digits::unwrap(text).ok()?).ok()?;
        Some(self.take(piece).unwrap_or_else(Offered::Refused))
    }

    /// Takes one scanned text with any number of codes behind each other, as a scanner without a
    /// suffix types them. At least one answer.
    pub fn offer_all(&mut self, text: &str) -> Vec<Offered> {
        let mut all = Vec::new();
        let mut rest = text.to_owned();
        loop {
            let (offered, end) = self.offer_first(&rest);
            all.push(offered);
            let Some(end) = end else { return all };
            rest = rest.chars().skip(end).collect();
            if digits::unwrap(&rest).is_err() {
                return all;
            }
        }
    }

    /// The records that wait for more pieces, the last one used first.
    pub fn waiting(&self) -> Vec<Waiting> {
        self.partials
            .iter()
            .rev()
            .map(|partial| Waiting {
                transfer: partial.transfer,
                count: u8::try_from(partial.pieces.len()).unwrap_or(u8::MAX),
                missing: partial.missing(),
            })
            .filter(|waiting| !waiting.missing.is_empty())
            .collect()
    }

    /// Lets go of a record.
    pub fn forget(&mut self, transfer: u32) {
        self.partials.retain(|it| it.transfer != transfer);
    }

    /// What became of the first code, and where the text goes on behind it.
    fn offer_first(&mut self, text: &str) -> (Offered, Option<usize>) {
        match read(text) {
            Ok((piece, end)) => {
                let offered = self.take(piece).unwrap_or_else(Offered::Refused);
                (offered, Some(end))
            }
            Err(error) => (Offered::Refused(error), None),
        }
    }

    fn take(&mut self, piece: Piece) -> Result<Offered, HandoverError> {
        if piece.version == ENROLMENT_VERSION_1 {
            return TabletPublic::of_enrolment(&piece).map(Offered::TabletEnrolment);
        }
        let Piece {
            version: _,
            transfer,
            index,
            count,
            payload,
        } = piece;
        let mixed = HandoverError::PieceMixed { piece: index };
        let place = usize::from(index) - 1;
        let mut partial = match self.partials.iter().position(|it| it.transfer == transfer) {
            Some(at) => {
                let known = &self.partials[at];
                let other = known.pieces.len() != usize::from(count)
                    || known.pieces[place]
                        .as_ref()
                        .is_some_and(|before| *before != payload);
                if other {
                    return Err(mixed);
                }
                self.partials.remove(at)
            }
            None => None,
        }
        .unwrap_or_else(|| Partial {
            transfer,
            pieces: vec![None; count.into()],
        });
        let again = partial.pieces[place].is_some();
        let fits = partial.bytes() + payload.len() <= SEALED_BYTES_MOST;
        if !again && fits {
            partial.pieces[place] = Some(payload);
        }
        let (missing, sealed) = (partial.missing(), partial.sealed());
        self.partials.push_back(partial);
        if WAITING_MOST < self.partials.len() {
            self.partials.pop_front();
        }
        if !again && !fits {
            return Err(HandoverError::TooLarge);
        }
        Ok(match sealed {
            sealed if again => Offered::Again {
                transfer,
                index,
                count,
                missing,
                sealed,
            },
            Some(sealed) => Offered::Complete { transfer, sealed },
            None => Offered::Piece {
                transfer,
                index,
                count,
                missing,
            },
        })
    }
}

/// The first piece in a text, and where the text goes on behind it.
fn read(text: &str) -> Result<(Piece, usize), HandoverError> {
    let scanned = digits::unwrap(text)?;
    piece_in(&scanned).map_err(|error| match error {
        HandoverError::PieceDamaged { piece } | HandoverError::PieceCut { piece }
            if !may_be_number(&scanned, piece) =>
        {
            // The two numbers differ: name the piece only if one slip explains it.
            match named_but_for_a_slip(&scanned) {
                None => HandoverError::CodeDamaged,
                Some(piece) => HandoverError::PieceDamaged { piece },
            }
        }
        HandoverError::CodeDamaged => match named_but_for_a_slip(&scanned) {
            None => HandoverError::CodeDamaged,
            Some(piece) => HandoverError::PieceDamaged { piece },
        },
        error => error,
    })
}

/// Whether a header stands there that has this number, or none because the scan was cut. The number
/// alone would not do: with a digit lost before them, both numbers are ten times what they were.
fn may_be_number(scanned: &Scanned, piece: u8) -> bool {
    match scanned.bytes(HEADER_BYTES + 1).as_deref() {
        None => false,
        Some([version, _, _, _, _, index, count, ..]) => {
            *version == PIECE_VERSION_1 && *index == piece && index <= count
        }
        Some(_) => true,
    }
}

/// The number of the piece that stands here if one digit of its name or header was typed wrong,
/// lost, or doubled. The check of 32 bits makes a wrong guess a matter of millions.
fn named_but_for_a_slip(scanned: &Scanned) -> Option<u8> {
    let is_ours = |it: &Scanned| {
        let begin = it.bytes(HEADER_BYTES);
        begin.is_some_and(|begin| begin.first() == Some(&PIECE_VERSION_1))
    };
    scanned
        .with_one_slip()
        .filter(is_ours)
        .find_map(|it| piece_in(&it).ok())
        .map(|(piece, _)| piece.index)
}

fn piece_in(scanned: &Scanned) -> Result<(Piece, usize), HandoverError> {
    let told = scanned.name;
    let undigitable = || Piece::of_bytes(&[0xff; HEADER_BYTES], told);
    let head = match scanned.bytes(HEADER_BYTES + 1) {
        Some(head) => head,
        None => return undigitable().map(|piece| (piece, 0)),
    };
    let total = Piece::bytes_told(&head).unwrap_or(HEADER_BYTES);
    let bytes = match scanned.bytes(total) {
        Some(bytes) => bytes,
        None => return undigitable().map(|piece| (piece, 0)),
    };
    let piece = Piece::of_bytes(&bytes, told)?;
    if scanned.preamble_damaged {
        // Sound behind a damaged preamble: told as damaged, so that it is scanned once more.
        return Err(match told {
            digits::ENROLMENT => HandoverError::CodeDamaged,
            piece => HandoverError::PieceDamaged { piece },
        });
    }
    Ok((piece, scanned.end_after(total)))
}
