//! A [`Printed`] page as PDF: A4, the bundled fonts embedded, every piece of text tagged in reading
//! order, checked against PDF/UA-1 (ISO 14289-1) as far as a program can.
//!
//! Lines of text come from `parley` (line breaks of UAX 14, both directions of UAX 9), the file from
//! `krilla`. Knows nothing of what the page says. A letter that no bundled font has is printed as a
//! question mark. The same page gives the same bytes.

mod draw;
mod flow;
mod line;

use super::printed::Printed;

/// Why there is no file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PdfError {
    /// The bundled fonts could not be read.
    #[error("bundled fonts cannot be read")]
    Fonts,
    /// The file could not be put together, or does not hold to PDF/UA-1.
    #[error("pages could not be written")]
    NotWritten,
}

/// The bytes of the PDF file, and how many sheets it has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// Its sheets.
    pub sheets: usize,
}

/// Writes a page as a PDF file.
///
/// # Errors
///
/// [`PdfError`], which tells a fault of the program: any text can be written.
pub fn write(printed: &Printed) -> Result<Pdf, PdfError> {
    let mut lines = line::Lines::new()?;
    let flow = flow::flow(printed, &mut lines);
    let sheets = flow.sheets.len();
    let bytes = draw::draw(printed, &flow, &mut lines)?;
    Ok(Pdf { bytes, sheets })
}
