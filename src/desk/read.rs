//! Pictures to the texts of the codes in them.

use image::{DynamicImage, GenericImageView, ImageReader, Limits};

use super::DeskError;
use crate::handover::read_back;

/// The longest side of a picture that is read, in pixels: above what any camera of a phone gives.
const SIDE_PX_MOST: u32 = 20_000;
/// The most memory that a picture may take when unpacked.
const PICTURE_BYTES_MOST: u64 = 512 * 1024 * 1024;
/// Below this side a picture is not made smaller to find a code in it.
const HALVE_FROM_PX: u32 = 1_200;

/// Reads a picture file (PNG or JPEG) from its bytes.
///
/// # Errors
/// [`DeskError::NotAPicture`] naming the file, for anything else or one that is too large.
pub fn picture(bytes: &[u8], file: &str) -> Result<DynamicImage, DeskError> {
    let not_a_picture = || DeskError::NotAPicture {
        file: file.to_owned(),
    };
    let mut limits = Limits::default();
    limits.max_image_width = Some(SIDE_PX_MOST);
    limits.max_image_height = Some(SIDE_PX_MOST);
    limits.max_alloc = Some(PICTURE_BYTES_MOST);
    let mut reader = ImageReader::new(std::io::Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|_| not_a_picture())?;
    reader.limits(limits);
    reader.decode().map_err(|_| not_a_picture())
}

/// The texts of all codes in a picture; none where nothing is found. As it is first; then smaller,
/// for a sharp camera's noise; then with dark and light swapped, for a screen in night colours.
pub fn texts_in(picture: &DynamicImage) -> Vec<String> {
    let found = texts(picture);
    if !found.is_empty() {
        return found;
    }
    let (width, height) = picture.dimensions();
    if HALVE_FROM_PX <= width.min(height) {
        let found = texts(&picture.thumbnail(width / 2, height / 2));
        if !found.is_empty() {
            return found;
        }
    }
    let mut swapped = picture.clone();
    swapped.invert();
    texts(&swapped)
}

fn texts(picture: &DynamicImage) -> Vec<String> {
    let grey = picture.to_luma8();
    let (width, height) = (grey.width() as usize, grey.height() as usize);
    read_back::read_all(grey.into_raw(), width, height)
}
